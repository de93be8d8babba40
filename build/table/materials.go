package table

import (
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

func materials() Subject {
	return Subject{
		Name: "materials",
		Doc:  "what was bought, used and left over",
		Columns: []Column{
			{"day", "when"},
			{"material", "of which material"},
			{"what", "bought, used or left over"},
			{"amount_shown", "how much, as the journal shows it"},
			{"amount_mm", "a length, in millimetres"},
			{"count", "a number of things; a part of one in decimals"},
			{"thing", "what is counted"},
			{"size_shown", "the size of a piece, as the journal shows it"},
			{"width_mm", "its width in millimetres"},
			{"length_mm", "its length in millimetres"},
			{"pieces", "how many pieces of that size"},
			{"grain", "how the grain lies in it"},
			{"cost", "what was paid"},
			{"currency", "in which currency (ISO 4217)"},
			{"seller", "from whom"},
			{"lot", "of which lot or bolt"},
			{"build", "for which garment"},
			{"from", "the note that says so"},
		},
		rows: materialRows,
	}
}

// materialRows lists the movements by the day of their notes.
func materialRows(j *journal.Journal, _ edtf.Day) [][]Cell {
	var rows [][]Cell
	for _, n := range j.Notes() {
		for _, group := range []struct {
			what  string
			moved []journal.Movement
		}{{"bought", n.Bought}, {"used", n.Used}, {"left over", n.LeftOver}} {
			for _, m := range group.moved {
				row := []Cell{day(n.Date), Text(to(j, m.Material, journal.KindMaterial)), Text(group.what)}
				row = append(row, amount(m.Amount, j.Settings.Format)...)
				row = append(row, piece(m, j.Settings.Format)...)
				cost, currency := price(m.Cost)
				rows = append(rows, append(row, Text(m.Grain), cost, currency, Text(m.From), Text(m.Lot), Text(idOf(n.Of)), Text(n.ID)))
			}
		}
	}
	return rows
}

// amount returns the cells of an amount, shown and by its kind. One that is a piece
// is told as such.
func amount(a quantity.Amount, f quantity.Format) []Cell {
	cells := make([]Cell, 4)
	if a.Kind != quantity.Nothing {
		cells[0] = Text(f.Amount(a))
	}
	switch a.Kind {
	case quantity.ByLength:
		cells[1] = mm(a.Length)
	case quantity.ByCount:
		cells[2], cells[3] = fraction(a.Number), Text(a.Thing)
	}
	return cells
}

// piece returns the cells of the size of a movement's pieces and of their number.
func piece(m journal.Movement, f quantity.Format) []Cell {
	size := m.Size
	if size == (quantity.Size{}) && m.Amount.Kind == quantity.ByPiece {
		size = m.Amount.Size
	}
	if size == (quantity.Size{}) {
		return make([]Cell, 4)
	}
	return []Cell{Text(f.Size(size)), mm(size.Width), mm(size.Length), Count(max(m.Pieces, 1))}
}
