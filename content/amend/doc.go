// Package amend answers how one entry more is written into a page that somebody
// keeps by hand, so that nothing else in it changes: no comment, order, quotation
// mark, line end or byte order mark.
//
// [Append] never writes the front matter anew. It works out from the places that
// the tree of [front.Parse] knows where a few bytes have to be put in, puts them
// in, and reads the outcome again: the tree must be the old one with the new entry
// at its end, and the text below it the same bytes. Where several places could be
// right they are tried in order, the one that leaves comments where they belong
// first. Where none passes, nothing is written and a [Refusal] says why.
package amend
