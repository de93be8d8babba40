package table

import (
	"hussif/build/lesson"
	"hussif/content/edtf"
	"hussif/content/journal"
)

func lessons() Subject {
	return Subject{
		Name: "next",
		Doc:  "everything that was to be done otherwise next time",
		Columns: []Column{
			{"day", "when it was noted"},
			{"text", "what to do"},
			{"from", "the page that says so"},
			{"anchor", "where on that page"},
			{"build", "the garment that taught it"},
			{"patterns", "about which patterns"},
			{"techniques", "about which techniques"},
			{"materials", "about which materials"},
			{"people", "about which wearers"},
			{"garments", "about which kinds of garment"},
			{"others", "about which builds, notes, references and occasions"},
			{"state", "open, carried or set aside, anywhere"},
			{"answered_by", "the builds and notes that carry it or set it aside"},
		},
		rows: lessonRows,
	}
}

// lessonRows lists the lessons, newest first.
func lessonRows(j *journal.Journal, _ edtf.Day) [][]Cell {
	var rows [][]Cell
	for _, l := range lesson.Gather(j).All {
		var answers []journal.ID
		for _, a := range l.Answers {
			answers = append(answers, a.From)
		}
		rows = append(rows, []Cell{
			day(l.Day), Text(j.Titled(l.Text)), Text(l.From), Text(l.Anchor), Text(l.Build),
			List(l.Patterns), List(l.Techniques), List(l.Materials), List(l.People), List(l.Garments), List(l.Others),
			Text(l.State()), List(answers),
		})
	}
	return rows
}
