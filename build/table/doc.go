// Package table answers what a spreadsheet or another program may want of a
// journal: every record of one sort as rows, with named columns that are told what
// they hold.
//
// Lengths stand twice: as a plain number of millimetres, exact, in a column whose
// name ends in "_mm", and as the journal shows them in one that ends in "_shown".
// What is not known is an empty cell, never a zero.
//
// # CSV
//
// CSV is as RFC 4180 describes it, in UTF-8 with a head row. Spreadsheets take a cell
// for a formula, quoted or not, where it begins with "=", "+", "-" or "@", and some
// where it begins with the full-width form of one of these or has blanks before it
// (OWASP, CSV Injection; the full-width forms by common practice). Text that begins
// so gets an apostrophe before it; so that this can be undone, so does text that
// begins with apostrophes before such a sign. Numbers are written with the plain
// "-" of machines and get none. Shown lengths begin with U+2212 where they are less
// than nothing, with which no formula begins, and get none either.
//
// JSON is a list of objects, one a row, each with all columns in their order; an
// empty cell is null, a list of names is a list, and nothing is put before text.
package table
