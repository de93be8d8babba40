package stock

import (
	"cmp"
	"slices"
	"strings"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// A Held is how much there is of a material, in lengths or in one kind of thing.
type Held struct {
	Bought quantity.Amount
	Back   quantity.Amount // come back out of garments taken apart
	Used   quantity.Amount
	Cut    quantity.Amount // what pieces that were taken stood for
	OnHand quantity.Amount // less than nothing where more was used than there was
	Known  bool            // whether any was bought or came back; else OnHand is nothing known
	AtMost bool            // whether OnHand may be less, see the package comment

	kind kind
}

// A kind tells amounts apart that do not add.
type kind struct {
	kind  quantity.Kind
	thing string
}

func kindOf(a quantity.Amount) kind { return kind{a.Kind, strings.ToLower(a.Thing)} }

// length is the kind of what is measured along the cloth.
var length = kindOf(quantity.Amount{Kind: quantity.ByLength})

// zero returns nothing of a kind, which has its words all the same: "0 reels".
func (k kind) zero() quantity.Amount {
	return quantity.Amount{Kind: k.kind, Thing: k.thing, Number: quantity.Fraction{Den: 1}}
}

func compareKinds(a, b kind) int {
	return cmp.Or(cmp.Compare(a.kind, b.kind), strings.Compare(a.thing, b.thing))
}

// negative reports whether an amount is less than nothing.
func negative(a quantity.Amount) bool { return a.Length < 0 || a.Number.Num < 0 }

// none reports whether an amount is nothing or less.
func none(a quantity.Amount) bool { return a.Length <= 0 && a.Number.Num <= 0 }

// A bookkeeper works through one material's ledger.
type bookkeeper struct {
	rows   []Row
	width  quantity.Length // of the cloth, 0 where not known
	lot    string          // that all of it is of, or ""
	pieces []Piece
	cuts   []cut
	faults []Fault
}

// A cut is what the taking of a piece does to the length on hand.
type cut struct {
	row    *Row
	lot    string
	length quantity.Length // 0 where it cannot be told
}

// kinds returns the kinds of amount in the ledger, lengths first.
func (b *bookkeeper) kinds() []kind {
	var out []kind
	for i := range b.rows {
		r := &b.rows[i]
		if k := kindOf(r.Amount); (r.Way == Used || r.comesIn()) && k.kind != quantity.Nothing && !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	slices.SortFunc(out, compareKinds)
	return out
}

// A scope is the part of a ledger that is summed; its zero value is all of it.
type scope struct {
	lot   string     // folded; all lots where ""
	build journal.ID // all where ""
	until edtf.Day   // 0 for all days
}

func (s scope) holds(lot string, r *Row) bool {
	return (s.lot == "" || s.lot == lot) && (s.build == "" || s.build == r.Build) &&
		(s.until == 0 || r.Day != 0 && r.Day <= s.until)
}

// held sums the rows of one kind.
func (b *bookkeeper) held(k kind, within scope) Held {
	h := Held{Bought: k.zero(), Back: k.zero(), Used: k.zero(), Cut: k.zero(), kind: k}
	for i := range b.rows {
		r := &b.rows[i]
		lot := b.lotOf(r.Lot)
		if within.lot != "" && lot == "" && r.Way == Used && kindOf(r.Amount) == k {
			h.AtMost = true
		}
		if kindOf(r.Amount) != k || !within.holds(lot, r) {
			continue
		}
		switch {
		case r.Way == Bought:
			h.Bought, h.Known = b.add(h.Bought, r), true
		case r.comesIn():
			h.Back, h.Known = b.add(h.Back, r), true
		case r.Way == Used:
			h.Used = b.add(h.Used, r)
		}
	}
	had, err := h.Bought.Add(h.Back)
	if err == nil {
		h.OnHand, err = had.Sub(h.Used)
	}
	if err != nil {
		b.fault(Fault{Why: TooLarge, Amount: h.Bought})
		h.OnHand, h.Known = k.zero(), false
	}
	if k == length {
		b.cutFrom(&h, within)
	}
	return h
}

// cutFrom takes from a length what its pieces were when they were taken. It never
// makes it less than nothing: a maker who counts the left-over piece as used has
// taken it already.
func (b *bookkeeper) cutFrom(h *Held, within scope) {
	had := max(h.OnHand.Length, 0)
	for _, c := range b.cuts {
		if within.lot != "" && c.lot == "" {
			h.AtMost = true
		}
		if !within.holds(c.lot, c.row) {
			continue
		}
		h.Cut.Length = min(h.Cut.Length+c.length, had)
		h.AtMost = h.AtMost || c.length == 0
	}
	h.OnHand.Length -= h.Cut.Length
	h.AtMost = h.AtMost && h.OnHand.Length > 0
}

// add adds a row to a sum; a number too large to hold leaves the sum as it was and
// is a fault.
func (b *bookkeeper) add(sum quantity.Amount, r *Row) quantity.Amount {
	total, err := sum.Add(r.Amount)
	if err != nil {
		b.fault(Fault{Why: TooLarge, From: r.From, Amount: r.Amount})
		return sum
	}
	return total
}

func (b *bookkeeper) fault(f Fault) {
	if !slices.Contains(b.faults, f) {
		b.faults = append(b.faults, f)
	}
}
