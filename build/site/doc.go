// Package site makes the pages of a journal: it works out which there are, gathers
// what each has to say from the journal and from what was computed, and hands it
// to the theme as a view. There is a file for each kind of page, named as its
// template is.
package site
