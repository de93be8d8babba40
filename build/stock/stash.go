package stock

import (
	"slices"

	"hussif/content/journal"
	"hussif/content/quantity"
)

// A Stash is the ledger of every material of a journal.
type Stash struct {
	sheets []Sheet
	byID   map[journal.ID]int
}

// A Sheet is the ledger of one material and what follows from it.
type Sheet struct {
	Material journal.ID
	Rows     []Row   // oldest first
	OnHand   []Held  // lengths first, then each kind of thing by name
	Lots     []Lot   // those named, in order of their first row
	Pieces   []Piece // oldest first, those all taken included
	Builds   []Use   // in order of their first row
	Faults   []Fault
}

// Gather returns the stash that a journal tells of. Links to a material that is not
// there are left out; the checker reports them.
// It is worked out once for a journal.
func Gather(j *journal.Journal) Stash {
	return journal.Known(j, gathered{}, func() Stash { return gather(j.Traced(nil)) })
}

type gathered struct{} // the key of the stash

func gather(j *journal.Journal) Stash {
	s := Stash{byID: make(map[journal.ID]int, len(j.Materials()))}
	ledgers := rows(j)
	for _, m := range j.Materials() {
		s.byID[m.ID] = len(s.sheets)
		s.sheets = append(s.sheets, account(m, ledgers[m.ID]))
	}
	return s
}

// All returns the sheets of all materials, in the order of the journal.
func (s Stash) All() []Sheet { return s.sheets }

// Of returns the sheet of a material; false where there is no such material.
func (s Stash) Of(material journal.ID) (Sheet, bool) {
	i, ok := s.byID[material]
	if !ok {
		return Sheet{}, false
	}
	return s.sheets[i], true
}

func account(m *journal.Material, ledger []Row) Sheet {
	b := bookkeeper{rows: ledger, width: m.Width, lot: onlyLot(ledger)}
	b.handlePieces()
	s := Sheet{Material: m.ID, Rows: ledger, Pieces: b.pieces}
	for _, k := range b.kinds() {
		s.OnHand = append(s.OnHand, b.held(k, scope{}))
	}
	s.Lots = b.lots()
	s.Builds = b.uses()
	b.audit(s.OnHand, s.Lots)
	s.Faults = b.faults
	return s
}

// Left returns the pieces of which some are left.
func (s Sheet) Left() []Piece {
	return slices.DeleteFunc(slices.Clone(s.Pieces), func(p Piece) bool { return p.Left() == 0 })
}

// held returns what is on hand of the kind of an amount.
func (s Sheet) held(a quantity.Amount) (Held, bool) {
	for _, h := range s.OnHand {
		if h.kind == kindOf(a) {
			return h, true
		}
	}
	return Held{}, false
}

// any reports whether any length or thing is on hand.
func (s Sheet) any() bool {
	return slices.ContainsFunc(s.OnHand, func(h Held) bool { return h.Known && !none(h.OnHand) })
}
