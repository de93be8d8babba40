// Package show puts what several kinds of pages say into the views of the theme: facts,
// tables, days, an index from A to Z, and what references say of a feature. The pages of
// a journal and those of a circle are made with it.
package show
