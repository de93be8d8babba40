package table

import (
	"hussif/content/edtf"
	"hussif/content/journal"
)

// A Table is records of one sort as rows.
type Table struct {
	Name    string
	Columns []Column
	Rows    [][]Cell // each with a cell for every column
}

// A Column is a column's name, for machines, and what it holds.
type Column struct{ Name, Doc string }

// A Subject is a table that can be made of any journal.
type Subject struct {
	Name    string
	Doc     string // in a line: what its rows are
	Columns []Column
	AsOf    bool // whether its rows depend on the day asked for
	rows    func(j *journal.Journal, day edtf.Day) [][]Cell
}

// Subjects returns all subjects in the order in which help lists them.
func Subjects() []Subject {
	return []Subject{measures(), fits(), lessons(), decisions(), features(), materials(), hours()}
}

// Of makes the table of a subject. The same journal and day give the same rows.
func (s Subject) Of(j *journal.Journal, day edtf.Day) Table {
	return Table{Name: s.Name, Columns: s.Columns, Rows: s.rows(j, day)}
}
