// Package worked answers the worksheets that stand in the text of a journal: which
// sheet is meant, what its figures are, which of them are taken from the record and
// as of which day, and what comes out.
//
// A figure that is taken from the record is that of the day of its note, so that an
// old note goes on saying what was done; a text without a date takes the newest.
// Where the same was measured again after that day and differs, the sheet says so.
// Measures of a body are read over the layers that are named, or else over those of
// the build that the text belongs to, by the rules of package fit: what was taken
// over other layers is carried over where a day gives the difference, and is called
// estimated.
package worked
