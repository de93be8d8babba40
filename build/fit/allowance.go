package fit

import (
	"cmp"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/near"
	"hussif/content/quantity"
)

// Times returns how often the seams of one entry, all of its count, cross one
// reading of a measure, as [Ledger] counts them; or why that cannot be told.
func Times(c measure.Catalogue, seam *journal.Seam, p measure.Point) (n int, why string) {
	return sewing{catalogue: c}.times(&journal.Altered{}, seam, p)
}

// Allowance returns what is left on each edge of a seam at a measure when a day is
// over. What the build's page gives, at the crossing or else for the seam and no
// more than it was trimmed to, is as it was when the page was last written: rows of
// the ledger that say by how much the seam was let out or taken in are counted in
// it, and those after the day are undone. A row that says how wide the allowance was
// and is now goes before the page, and rows after it are counted from there. Where
// the two sides of the body differ it is the narrower for the plain name. It reports
// false where the seam does not cross the measure, and where all that cannot tell.
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

// A width is how wide an allowance is, if that can be told.
type width struct {
	by    quantity.Length
	known bool
}

func (s sewing) allowance(notes []*journal.Note, seam *journal.Seam, p measure.Point, day edtf.Day) (quantity.Length, bool) {
	now, told := onPage(seam, p), false // told by a row of the ledger
	undo := width{known: true}          // of rows after the day
	for _, c := range s.changes(notes, seam, p) {
		switch {
		case c.day <= day && c.now.known:
			now, told = width{trimmed(seam, c.now.by), true}, true
		case c.day <= day && told:
			now = width{now.by - c.step.by, now.known && c.step.known}
		case c.day <= day || told:
		case c.was.known:
			return max(c.was.by+undo.by, 0), undo.known
		case c.now.known:
			return 0, false // what the page gives is of after the row, or of before
		default:
			undo = width{undo.by + c.step.by, undo.known && c.step.known}
		}
	}
	if !told {
		now = width{now.by + undo.by, now.known && undo.known}
	}
	return max(now.by, 0), now.known
}

// A change is what one row of the ledger did to an allowance.
type change struct {
	day      edtf.Day
	step     width // taken from each edge
	was, now width
}

// changes returns what was done to a seam at a point, oldest first.
func (s sewing) changes(notes []*journal.Note, seam *journal.Seam, p measure.Point) []change {
	var out []change
	for _, n := range notes {
		if n.Date == 0 {
			continue
		}
		for i := range n.Altered {
			a := &n.Altered[i]
			if near.Folded(a.Seam.Text) != near.Folded(seam.Name.Text) || !moved(a) && (a.Panel != "" || len(a.Widths) > 0) {
				continue // a panel let in leaves the edges of its seam as they were
			}
			for _, l := range levelsOf(a, seam) {
				if covers(l.Point, p) {
					out = append(out, s.change(a, l, seam, n.Date))
				}
			}
		}
	}
	slices.SortStableFunc(out, func(a, b change) int { return cmp.Compare(a.day, b.day) })
	return out
}

func (s sewing) change(a *journal.Altered, l journal.Level, seam *journal.Seam, day edtf.Day) change {
	c := change{day: day}
	c.was.by, c.was.known = given(l.Was, l.Has("was"), a.Was, a.Has("was"))
	c.now.by, c.now.known = given(l.Now, l.Has("now"), a.Now, a.Has("now"))
	st, ok := stepAt(a, l)
	switch st.of {
	case quantity.EachSeam:
		st.by /= 2
	case quantity.AllRound:
		n, why := s.times(a, seam, l.Point)
		if ok = why == ""; ok {
			st.by /= quantity.Length(2 * n)
		}
	}
	c.step = width{st.by, ok && !tooLarge(st.by)}
	return c
}

// onPage returns the allowance that a seam's own entry gives at a point.
func onPage(seam *journal.Seam, p measure.Point) width {
	var crossing *journal.Crossing
	for i := range seam.Crosses {
		c := &seam.Crosses[i]
		if c.Point == p || crossing == nil && covers(c.Point, p) {
			crossing = c
		}
	}
	if crossing == nil || crossing.Unread("now") || seam.Unread("now") && !crossing.Has("now") || seam.Unread("trimmed to") {
		return width{}
	}
	now, known := given(crossing.Now, crossing.Has("now"), seam.Now, seam.Has("now"))
	if !known && isTrimmed(seam) {
		return width{seam.TrimmedTo, true}
	}
	return width{trimmed(seam, now), known}
}

func isTrimmed(seam *journal.Seam) bool { return seam.Has("trimmed to") || seam.TrimmedTo != 0 }

// trimmed returns an allowance that is no more than its seam was trimmed to.
func trimmed(seam *journal.Seam, by quantity.Length) quantity.Length {
	if isTrimmed(seam) {
		return min(by, seam.TrimmedTo)
	}
	return by
}
