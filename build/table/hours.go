package table

import (
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

func hours() Subject {
	return Subject{
		Name: "hours",
		Doc:  "the hours of work that notes tell of",
		Columns: []Column{
			{"day", "when"},
			{"build", "on which garment"},
			{"stage", "at which stage of the work"},
			{"hours", "how long, in hours"},
			{"hours_shown", "the same in hours and minutes"},
			{"from", "the note that says so"},
		},
		rows: hourRows,
	}
}

// hourRows lists the notes with hours by their days.
func hourRows(j *journal.Journal, _ edtf.Day) [][]Cell {
	var rows [][]Cell
	for _, n := range j.Notes() {
		if n.Hours == 0 {
			continue
		}
		rows = append(rows, []Cell{
			day(n.Date), Text(idOf(n.Of)), Text(n.Stage), inHours(n.Hours), Text(quantity.FormatDuration(n.Hours)), Text(n.ID),
		})
	}
	return rows
}
