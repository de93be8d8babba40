// Package source is the floor of the journal: the bytes of a file, where things
// stand in it, and what there is to tell the maker about them.
//
// A place is a file and a byte offset. Line and column are worked out only when a
// place is printed, so they can never disagree with the bytes. A [Finding] is a
// value until the last moment; [Print] and [PrintJSON] are two renderings of it.
package source
