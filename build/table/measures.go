package table

import (
	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

func measures() Subject {
	return Subject{
		Name: "measures",
		Doc:  "every dated measure of a body or a garment",
		Columns: []Column{
			{"person", "whose body was measured; empty for a garment"},
			{"build", "which garment was measured; empty for a body"},
			{"day", "when"},
			{"over", "the layers worn under the tape, from the skin out; empty for a garment or an unclothed body"},
			{"by", "who held the tape"},
			{"measure", "what was measured"},
			{"mm", "the value in millimetres; empty where it is not known"},
			{"shown", "the value as the journal shows it"},
			{"state", "exact, about, unknown or not measured"},
			{"from", "the page that says so"},
		},
		rows: measureRows,
	}
}

// measureRows lists the sessions of each person, oldest first, then the garments'
// measures by the day of their notes. Sessions without a day are left out, as in all
// that is reckoned from them.
func measureRows(j *journal.Journal, _ edtf.Day) [][]Cell {
	var rows [][]Cell
	f := j.Settings.Format
	for _, p := range j.People() {
		for _, s := range fit.Sessions(j, p) {
			for _, r := range s.Readings {
				value, shown, state := estimate(r.Value, f)
				rows = append(rows, []Cell{
					Text(p.ID), {}, day(s.Day), List(s.Over), Text(s.By), Text(r.Point.String()), value, shown, state, Text(s.From.Record),
				})
			}
		}
	}
	for _, n := range j.Notes() {
		for _, r := range n.Measured {
			value, shown, state := estimate(r.Value, f)
			rows = append(rows, []Cell{
				{}, Text(idOf(n.Of)), day(n.Date), {}, {}, Text(r.Point.String()), value, shown, state, Text(n.ID),
			})
		}
	}
	return rows
}

// estimate returns the cells of a value: in millimetres, as shown, and how well it
// is known.
func estimate(e quantity.Estimate, f quantity.Format) (value, shown, state Cell) {
	switch e.State {
	case quantity.Exact:
		return mm(e.Length), Text(f.Length(e.Length)), Text("exact")
	case quantity.About:
		return mm(e.Length), Text(f.Length(e.Length)), Text("about")
	case quantity.NotMeasured:
		return Cell{}, Cell{}, Text("not measured")
	}
	return Cell{}, Cell{}, Text("unknown")
}
