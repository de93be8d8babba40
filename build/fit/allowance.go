package fit

import (
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// Times returns how often the seams of one entry, all of its count, cross one
// reading of a measure, as [Ledger] counts them; or why that cannot be told.
func Times(c measure.Catalogue, seam *journal.Seam, p measure.Point) (n int, why string) {
	return sewing{catalogue: c}.times(&journal.Altered{}, seam, p)
}

// Allowance returns what is left on each edge of a seam at a measure when a day is
// over: the allowance of the crossing, else of the seam, and no more than it was
// trimmed to, as the ledger's rows have changed it since. Where the two sides of
// the body differ it is the narrower for the plain name. It reports false where
// the seam does not cross the measure, where no allowance is given, and where the
// last row of the ledger does not say how wide it became.
func Allowance(b *journal.Build, c measure.Catalogue, seam *journal.Seam, p measure.Point, day edtf.Day) (quantity.Length, bool) {
	s := sewing{b.Seams, c}
	if p.Side != measure.Both {
		return s.allowance(b.Notes, seam, p, day)
	}
	p.Side = measure.Left
	left, leftKnown := s.allowance(b.Notes, seam, p, day)
	p.Side = measure.Right
	right, rightKnown := s.allowance(b.Notes, seam, p, day)
	return min(left, right), leftKnown && rightKnown
}

func (s sewing) allowance(notes []*journal.Note, seam *journal.Seam, p measure.Point, day edtf.Day) (quantity.Length, bool) {
	width, known := asSewn(seam, p)
	for _, n := range notes {
		if n.Date == 0 || n.Date > day {
			continue
		}
		for i := range n.Altered {
			a := &n.Altered[i]
			if folded(a.Seam.Text) != folded(seam.Name.Text) || !moved(a) && (a.Panel != "" || len(a.Widths) > 0) {
				continue // a panel let in leaves the edges of its seam as they were
			}
			for _, l := range levelsOf(a, seam) {
				if covers(l.Point, p) {
					width, known = s.narrowed(a, l, seam, width, known)
				}
			}
		}
	}
	return max(width, 0), known
}

// asSewn returns the allowance that a seam's own entry gives at a point.
func asSewn(seam *journal.Seam, p measure.Point) (width quantity.Length, known bool) {
	var crossing *journal.Crossing
	for i := range seam.Crosses {
		c := &seam.Crosses[i]
		if c.Point == p || crossing == nil && covers(c.Point, p) {
			crossing = c
		}
	}
	if crossing == nil {
		return 0, false
	}
	width, known = given(crossing.Now, crossing.Has("now"), seam.Now, seam.Has("now"))
	if trimmed := seam.TrimmedTo; (seam.Has("trimmed to") || trimmed != 0) && (!known || trimmed < width) {
		return trimmed, true
	}
	return width, known
}

// narrowed returns an allowance as a row of the ledger leaves it.
func (s sewing) narrowed(a *journal.Altered, l journal.Level, seam *journal.Seam, width quantity.Length, known bool) (quantity.Length, bool) {
	if a.LetOut == (quantity.Edges{}) && a.TakenIn == (quantity.Edges{}) {
		return given(l.Now, l.Has("now"), a.Now, a.Has("now"))
	}
	st, ok := stepAt(a, l)
	switch st.of {
	case quantity.EachSeam:
		st.by /= 2
	case quantity.AllRound:
		n, why := s.times(a, seam, l.Point)
		if why != "" {
			return 0, false
		}
		st.by /= quantity.Length(2 * n)
	}
	return width - st.by, known && ok && !tooLarge(st.by)
}
