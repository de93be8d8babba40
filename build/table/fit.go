package table

import (
	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

func fits() Subject {
	return Subject{
		Name: "fit",
		Doc:  "how each garment fits its wearer at each measure on a day",
		AsOf: true,
		Columns: []Column{
			{"build", "the garment"},
			{"wearer", "whom it is made for"},
			{"day", "the day it is told for"},
			{"over", "the layers it is worn over, from the skin out"},
			{"measure", "where"},
			{"body_mm", "the body over those layers, in millimetres"},
			{"body_shown", "the same as the journal shows it"},
			{"body_state", "exact, about, unknown or not measured, or estimated where carried over from other layers"},
			{"garment_mm", "the garment, in millimetres"},
			{"garment_shown", "the same as the journal shows it"},
			{"garment_state", "exact, about, unknown or not measured, or expected where altered since it was measured"},
			{"ease_least_mm", "garment less body, in millimetres; where lacing or a lap changes it, the least"},
			{"ease_most_mm", "and the most"},
			{"ease_shown", "both as the journal shows them"},
			{"wanted_least_mm", "the least ease wanted, in millimetres"},
			{"wanted_most_mm", "the most ease wanted"},
			{"wanted_shown", "both as the journal shows them"},
			{"delta_mm", "ease less the nearer end of what is wanted, in millimetres; less than nothing where short"},
			{"delta_shown", "the same as the journal shows it"},
			{"error_mm", "the error of measuring in that, in millimetres"},
			{"error_shown", "the same as the journal shows it"},
			{"verdict", "what can be said, in words"},
		},
		rows: fitRows,
	}
}

func fitRows(j *journal.Journal, on edtf.Day) [][]Cell {
	var rows [][]Cell
	for _, b := range j.Builds() {
		t := fit.Of(j, b, on)
		for _, r := range t.Rows {
			row := []Cell{Text(t.Build), Text(t.Wearer), day(t.Day), List(r.Over), Text(r.Point.String())}
			rows = append(rows, append(row, fitCells(r, j.Settings.Format)...))
		}
	}
	return rows
}

// fitCells returns the cells of one measure from the body's on.
func fitCells(r fit.Row, f quantity.Format) []Cell {
	body, bodyShown, bodyState := estimate(quantity.Estimate{Length: r.Body.Length, State: r.Body.Read.State}, f)
	if r.Body.Estimated() {
		bodyState = Text("estimated")
	}
	garment, garmentShown, garmentState := estimate(quantity.Estimate{Length: r.Garment.Length, State: r.Garment.Measured.State}, f)
	if r.Garment.Expected() {
		garmentState = Text("expected")
	}
	var ease, wanted [3]Cell
	var err, errShown, delta, deltaShown Cell
	if r.Verdict.Compared() {
		ease = span(r.Had, f)
		err, errShown = mm(r.Error), Text(f.Length(r.Error))
	}
	if r.Wanted != nil && r.Wanted.Named {
		wanted = span(r.Wanted.Ease, f)
	}
	if r.Verdict.Judged() {
		delta, deltaShown = mm(r.Delta), Text(f.Length(r.Delta))
	}
	cells := []Cell{body, bodyShown, bodyState, garment, garmentShown, garmentState}
	cells = append(cells, ease[:]...)
	cells = append(cells, wanted[:]...)
	return append(cells, delta, deltaShown, err, errShown, Text(r.Words(f)))
}

// span returns the cells of a range: its ends in millimetres, and both as shown.
func span(r quantity.Range, f quantity.Format) [3]Cell {
	return [3]Cell{mm(r.Least), mm(r.Most), Text(f.Range(r))}
}
