package stock

import (
	"cmp"
	"slices"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/quantity"
)

// A Piece is a piece of a known size, or several equal ones, that was left over or
// bought.
type Piece struct {
	Size  quantity.Size
	Grain string
	Count int // at first
	Lot   string
	From  fit.Reason
	Day   edtf.Day
	Build journal.ID // whose work left it over; empty where none
	Apart bool       // in no length: out of a garment, or bought by its size
	Taken []Taken

	length quantity.Length // of the cloth that each stands for; 0 where not known
}

// A Taken is a use of some of the pieces.
type Taken struct {
	Count int
	Build journal.ID
	From  fit.Reason
	Day   edtf.Day
}

// Left returns how many of the pieces are left.
func (p Piece) Left() int {
	left := p.Count
	for _, t := range p.Taken {
		left -= t.Count
	}
	return left
}

// handlePieces follows every piece from where it was left over to where it was used.
// On one day, notes that use no pieces come first, so that what they leave over is
// there for the others.
func (b *bookkeeper) handlePieces() {
	var notes []pieceNote
	for i := range b.rows {
		r := &b.rows[i]
		if len(notes) == 0 || notes[len(notes)-1].rows[0].From.Record != r.From.Record {
			notes = append(notes, pieceNote{})
		}
		n := &notes[len(notes)-1]
		n.rows = append(n.rows, r)
		n.takes = n.takes || r.Way == Used && r.sized()
	}
	slices.SortStableFunc(notes, func(a, c pieceNote) int {
		return cmp.Or(byDay(a.rows[0].Day, c.rows[0].Day), cmp.Compare(rank(a.takes), rank(c.takes)))
	})
	for _, n := range notes {
		b.handle(n)
	}
}

// A pieceNote is the rows of one note.
type pieceNote struct {
	rows  []*Row
	takes bool
}

func rank(last bool) int {
	if last {
		return 1
	}
	return 0
}

// handle takes a note's pieces out and then lays in what it leaves over, which is no
// part of a length where nothing but such pieces was used.
func (b *bookkeeper) handle(n pieceNote) {
	apart := n.takes
	for _, r := range n.rows {
		if r.Way != Used {
			continue
		}
		if !r.sized() || !b.take(r) {
			apart = false
		}
	}
	for _, r := range n.rows {
		if r.Way == Used || !r.sized() {
			continue
		}
		p := Piece{
			Size: r.Size, Grain: r.Grain, Count: r.Pieces, Lot: r.Lot, From: r.From, Day: r.Day, Build: r.Build,
			Apart: r.Unpicking || apart, length: b.lengthOf(r.Size),
		}
		whole := r.Amount.Kind == quantity.ByLength
		if r.Way == Bought {
			p.Apart = !whole
		}
		if whole && r.Pieces == 1 {
			p.length = r.Amount.Length
		}
		b.pieces = append(b.pieces, p)
	}
}

// take finds the pieces that a use took. It reports whether all of them were in no
// length.
func (b *bookkeeper) take(r *Row) (apart bool) {
	apart = true
	wanted := r.Pieces
	for _, p := range b.candidates(r) {
		n := min(wanted, p.Left())
		if n == 0 {
			continue
		}
		p.Taken = append(p.Taken, Taken{n, r.Build, r.From, r.Day})
		wanted -= n
		if !p.Apart {
			apart = false
			b.shorten(r, b.lotOf(cmp.Or(r.Lot, p.Lot)), p.length, n)
		}
	}
	if wanted == 0 {
		return apart
	}
	b.fault(Fault{Why: NoSuchPiece, From: r.From, Size: r.Size, Pieces: wanted})
	b.shorten(r, b.lotOf(r.Lot), b.lengthOf(r.Size), wanted)
	return false
}

// shorten notes what the use of so many pieces took off the length on hand. One that
// says its length too is in the sums already.
func (b *bookkeeper) shorten(r *Row, lot string, each quantity.Length, count int) {
	const most = 1 << 60 // beyond any cloth, and held in a sum
	if r.Amount.Kind == quantity.Nothing {
		n := quantity.Length(count)
		b.cuts = append(b.cuts, cut{r, lot, min(each, most/n) * n})
	}
}

// candidates returns the pieces that a use by size may have taken, the likeliest
// first.
func (b *bookkeeper) candidates(r *Row) []*Piece {
	var out []*Piece
	for i := range b.pieces {
		p := &b.pieces[i]
		if sameSize(p.Size, r.Size) && agree(p.Lot, r.Lot) && agree(p.Grain, r.Grain) && p.From.Record != r.From.Record {
			out = append(out, p)
		}
	}
	unlike := func(p *Piece) int { return rank(p.Size != r.Size) + rank(near.Folded(p.Lot) != near.Folded(r.Lot)) }
	slices.SortStableFunc(out, func(a, c *Piece) int { return cmp.Compare(unlike(a), unlike(c)) })
	return out
}

// agree reports whether two words are the same or one was not written.
func agree(a, b string) bool {
	a, b = near.Folded(a), near.Folded(b)
	return a == "" || b == "" || a == b
}

// sameSize reports whether two pieces are the same, either way round.
func sameSize(a, b quantity.Size) bool {
	return a == b || a.Width == b.Length && a.Length == b.Width
}

// lengthOf returns the length of cloth that a piece is, where one of its sides is the
// whole width of the cloth, and 0 else.
func (b *bookkeeper) lengthOf(s quantity.Size) quantity.Length {
	switch b.width {
	case 0:
		return 0
	case s.Length:
		return s.Width
	case s.Width:
		return s.Length
	}
	return 0
}
