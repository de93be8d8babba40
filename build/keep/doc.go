// Package keep answers, for a step that takes long: has this been made before,
// and is what was kept still whole?
//
// A [Store] is a folder that may be deleted at any time, also while it is in
// use: all in it can be made again. It never lies inside a journal, since it
// may hold pictures of which the maker shares only some; whoever opens it says
// where it is.
//
// It holds three sorts of things. A record is a few bytes kept under a [Recipe],
// which stands for everything that decided them. A file is kept under the hash
// of its own bytes, so that a record can name it and a page can copy it. What
// a step knew when it last ended is kept under the step's name. All
// are checked whenever they are read: what a crash, a full disk or a curious
// hand has damaged counts as never kept, and is made again. So nothing is
// forced to disk when it is written.
//
// Any number of processes may use one store at once. Everything is written
// under another name first and then renamed, and two that write the same thing
// write the same bytes.
package keep
