// Package journal holds what the maker wrote, typed: people and their measuring
// sessions, builds, dated notes, patterns, references, materials, techniques and
// occasions, each with the places it was read from.
//
// Reading has two steps. [Parse] types one file and looks at no other. [Resolve]
// puts all drafts together into a [Journal] in which links can be followed both
// ways. [Open] does both for a folder. Whatever is wrong with the words is a
// finding; an error is trouble with the disk.
//
// Nothing here is computed from what was written, and nothing is changed after
// Resolve: readers may share a Journal freely.
package journal
