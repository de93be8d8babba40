// Package search answers which words stand on which page of a site, in files that
// the site's search page reads: an index made beforehand, for the library MiniSearch
// (its serialization, version 2), so that a browser has nothing to work out but where
// its parts join.
//
// The index comes in parts. A record always lies in the same one as the build it
// belongs to, chosen by the build's name, so that an edit changes one part and not
// all. A part is a script and no data file: a page that was opened from a disk may
// load scripts, but may not read files.
//
// What counts as one word is decided here and in theme/scripts/search.js alike; a test
// holds each to the other. Letters are told apart neither by case nor by their marks
// (Unicode Standard Annex 15, form D, without the marks), ß is ss, and German words
// are found by both ways of writing an umlaut: ä as a and as ae.
package search
