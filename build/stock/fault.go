package stock

import (
	"slices"

	"hussif/build/fit"
	"hussif/content/near"
	"hussif/content/quantity"
)

// A Fault is something in a ledger that cannot be so, or cannot be counted.
type Fault struct {
	Why    Why
	From   fit.Reason      // the row that shows it; zero for a TooLarge of the whole ledger
	Amount quantity.Amount // used too much; found left; or too large to add
	Book   quantity.Amount // of CountDiffers: what the ledger makes it; of UnlikeKinds: what it was bought by
	Size   quantity.Size   // of NoSuchPiece
	Pieces int
	Lot    string // as written, where the fault is of one lot
}

// A Why is what kind of fault it is.
type Why int

// The faults.
const (
	MoreThanBought Why = iota + 1 // more used than was ever bought and came back
	BeforeBought                  // used on a day before there was so much
	NeverBought                   // used, and nothing of the material was ever bought
	UnlikeKinds                   // used in another kind than it was bought
	UnknownLot                    // used of a lot of which nothing was bought
	NoSuchPiece                   // used by a size of which no piece was left; a hint, for cloth can be cut to any size
	CountDiffers                  // an amount found left is not what the ledger makes it
	NoAmount                      // bought or used, and neither amount nor size is written
	TooLarge                      // a number too large to add
)

// audit looks for faults in the sums. One cause makes one fault.
func (b *bookkeeper) audit(onHand []Held, lots []Lot) {
	bought := slices.ContainsFunc(b.rows, func(r Row) bool { return r.Way == Bought || r.comesIn() || r.Way == LeftOver && r.Unpicking })
	for _, h := range onHand {
		switch {
		case !bought:
			b.fault(Fault{Why: NeverBought, From: b.firstUse(h.kind, "").From, Amount: h.Used})
		case !h.Known:
			if by := b.boughtBy(onHand); by != nil {
				b.fault(Fault{Why: UnlikeKinds, From: b.firstUse(h.kind, "").From, Amount: h.Used, Book: *by})
			}
		case negative(h.OnHand):
			b.tooMuch(h, scope{}, "")
		default:
			b.tooEarly(h)
		}
	}
	for _, l := range lots {
		for _, h := range l.OnHand {
			switch {
			case !h.Known && bought && slices.ContainsFunc(onHand, func(all Held) bool { return all.kind == h.kind && all.Known }):
				b.fault(Fault{Why: UnknownLot, From: b.firstUse(h.kind, l.key).From, Amount: h.Used, Lot: l.Name})
			case h.Known && negative(h.OnHand):
				b.tooMuch(h, scope{lot: l.key}, l.Name)
			}
		}
	}
	for i := range b.rows {
		switch r := &b.rows[i]; {
		case r.counts():
			b.compare(r, lots)
		case r.Amount.Kind == quantity.Nothing && !r.sized() && r.Way != LeftOver:
			b.fault(Fault{Why: NoAmount, From: r.From, Lot: r.Lot})
		}
	}
}

// boughtBy returns an amount of a kind that was bought; nil where none was.
func (b *bookkeeper) boughtBy(onHand []Held) *quantity.Amount {
	for i := range onHand {
		if onHand[i].Known {
			return &onHand[i].Bought
		}
	}
	for _, p := range b.pieces {
		if p.Apart {
			return &quantity.Amount{Kind: quantity.ByPiece, Size: p.Size}
		}
	}
	return nil
}

func (b *bookkeeper) firstUse(k kind, lot string) *Row {
	for i := range b.rows {
		if r := &b.rows[i]; r.Way == Used && kindOf(r.Amount) == k && (lot == "" || b.lotOf(r.Lot) == lot) {
			return r
		}
	}
	return &Row{}
}

// tooMuch reports the first use that goes beyond all there ever was.
func (b *bookkeeper) tooMuch(h Held, within scope, lot string) {
	over, _ := h.kind.zero().Sub(h.OnHand)
	left, _ := h.Bought.Add(h.Back)
	for i := range b.rows {
		r := &b.rows[i]
		if r.Way != Used || kindOf(r.Amount) != h.kind || !within.holds(b.lotOf(r.Lot), r) {
			continue
		}
		if left, _ = left.Sub(r.Amount); negative(left) {
			b.fault(Fault{Why: MoreThanBought, From: r.From, Amount: over, Lot: lot})
			return
		}
	}
}

// tooEarly reports the first day at whose end more was used than there was, though
// more was bought later. Rows without a date may be of any day, so that with one
// nothing can be said.
func (b *bookkeeper) tooEarly(h Held) {
	left := h.kind.zero()
	for i := 0; i < len(b.rows); {
		day := b.rows[i].Day
		if day == 0 {
			return
		}
		var use *Row
		for ; i < len(b.rows) && b.rows[i].Day == day; i++ {
			r := &b.rows[i]
			switch {
			case kindOf(r.Amount) != h.kind:
			case r.comesIn():
				left, _ = left.Add(r.Amount)
			case r.Way == Used:
				left, _ = left.Sub(r.Amount)
				use = r
			}
		}
		if use != nil && negative(left) && !b.undated(h.kind) {
			over, _ := h.kind.zero().Sub(left)
			b.fault(Fault{Why: BeforeBought, From: use.From, Amount: over})
			return
		}
	}
}

func (b *bookkeeper) undated(k kind) bool {
	return slices.ContainsFunc(b.rows, func(r Row) bool { return r.Day == 0 && kindOf(r.Amount) == k })
}

// compare holds what the maker found left against the ledger at the end of that day.
// Where she names no lot, she may mean the rest of all, of one lot, or of what was
// bought for the build.
func (b *bookkeeper) compare(r *Row, lots []Lot) {
	k := kindOf(r.Amount)
	scopes := []scope{{lot: b.lotOf(r.Lot), until: r.Day}}
	if near.Folded(r.Lot) == "" {
		scopes = append(scopes, scope{build: r.Build, until: r.Day})
		for _, l := range lots {
			scopes = append(scopes, scope{lot: l.key, until: r.Day})
		}
	}
	if r.Day == 0 || b.undated(k) {
		return
	}
	var book Held
	for i, s := range scopes {
		h := b.held(k, s)
		if i == 0 {
			book = h
		}
		if c, err := h.OnHand.Compare(r.Amount); h.Known && (h.AtMost || err == nil && c == 0) {
			return
		}
	}
	if book.Known {
		b.fault(Fault{Why: CountDiffers, From: r.From, Amount: r.Amount, Book: book.OnHand, Lot: r.Lot})
	}
}
