package stock

import (
	"cmp"
	"slices"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// A Row is one entry of a material's ledger.
type Row struct {
	Way       Way
	From      fit.Reason
	Day       edtf.Day        // 0 where the note has no date
	Build     journal.ID      // empty where the note belongs to none
	Amount    quantity.Amount // a length or a count; Nothing where only a size is written, or neither
	Size      quantity.Size   // of each piece; zero where none is written
	Pieces    int             // of that size
	Grain     string
	Lot       string
	Supplier  string
	Cost      quantity.Money
	Unpicking bool // in a note of that stage, where what is left over has come back
}

// A Way is how a row moves material.
type Way int

// The ways.
const (
	Bought Way = iota + 1
	Used
	LeftOver
)

// String returns the way as the field of a note has it.
func (w Way) String() string {
	switch w {
	case Bought:
		return "bought"
	case Used:
		return "used"
	case LeftOver:
		return "left over"
	}
	return ""
}

// sized reports whether the row is about pieces of a size.
func (r *Row) sized() bool { return r.Size != quantity.Size{} }

// comesIn reports whether the row's amount adds to what is on hand.
func (r *Row) comesIn() bool {
	return r.Way == Bought || r.Way == LeftOver && r.Unpicking && !r.sized()
}

// counts reports whether the row's amount is what the maker found left.
func (r *Row) counts() bool {
	return r.Way == LeftOver && !r.Unpicking && !r.sized() && r.Amount.Kind != quantity.Nothing
}

// rows returns the ledger of each material, in an order that does not hang on that
// of a day's notes in the journal: by day, those without one last, then by note.
func rows(j *journal.Journal) map[journal.ID][]Row {
	out := make(map[journal.ID][]Row)
	for _, n := range j.Notes() {
		add := func(way Way, written []journal.Movement) {
			for i := range written {
				if m := j.Material(written[i].Material); m != nil {
					out[m.ID] = append(out[m.ID], row(n, way, i, &written[i]))
				}
			}
		}
		add(Bought, n.Bought)
		add(Used, n.Used)
		add(LeftOver, n.LeftOver)
	}
	for _, of := range out {
		slices.SortFunc(of, func(a, b Row) int {
			return cmp.Or(byDay(a.Day, b.Day), cmp.Compare(a.From.Record, b.From.Record),
				cmp.Compare(a.Way, b.Way), cmp.Compare(a.From.Entry, b.From.Entry))
		})
	}
	return out
}

func byDay(a, b edtf.Day) int {
	switch {
	case a == b:
		return 0
	case a == 0:
		return 1
	case b == 0:
		return -1
	}
	return cmp.Compare(a, b)
}

func row(n *journal.Note, way Way, entry int, m *journal.Movement) Row {
	r := Row{
		Way: way, From: fit.Reason{Record: n.ID, Field: way.String(), Entry: entry}, Day: n.Date,
		Amount: m.Amount, Size: m.Size, Grain: m.Grain, Lot: m.Lot, Supplier: m.From, Cost: m.Cost,
		Unpicking: n.Stage == "unpicking",
	}
	if n.Of != nil {
		r.Build = n.Of.ID
	}
	if m.Amount.Kind == quantity.ByPiece {
		r.Amount, r.Size = quantity.Amount{}, m.Amount.Size
	}
	if r.sized() {
		r.Pieces = max(m.Pieces, 1)
	}
	return r
}
