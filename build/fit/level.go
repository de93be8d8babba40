package fit

import (
	"fmt"
	"slices"

	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/near"
	"hussif/content/quantity"
)

// levelsOf returns the measures at which a seam was re-sewn: those the row names,
// on one side where either row or seam says so, else all that the seam crosses.
func levelsOf(a *journal.Altered, seam *journal.Seam) []journal.Level {
	var levels []journal.Level
	if len(a.At) == 0 && seam != nil {
		for _, c := range seam.Crosses {
			levels = append(levels, journal.Level{Point: c.Point})
		}
	}
	for _, l := range a.At {
		split := false
		if seam != nil && l.Point.Side == measure.Both {
			for _, c := range seam.Crosses {
				if c.Point.Measure == l.Point.Measure && c.Point.Side != measure.Both {
					side := l
					side.Point = c.Point
					levels = append(levels, side)
					split = true
				}
			}
		}
		if !split {
			levels = append(levels, l)
		}
	}
	return levels
}

// stepAt returns what a row does at one level. A let-out or taking-in of the row
// goes before its allowances.
func stepAt(a *journal.Altered, l journal.Level) (step, bool) {
	switch {
	case a.LetOut != quantity.Edges{}:
		return step{a.LetOut.By, a.LetOut.Of}, a.LetOut.Of != 0
	case a.TakenIn != quantity.Edges{}:
		return step{-a.TakenIn.By, a.TakenIn.Of}, a.TakenIn.Of != 0
	}
	was, hasWas := given(l.Was, l.Has("was"), a.Was, a.Has("was"))
	now, hasNow := given(l.Now, l.Has("now"), a.Now, a.Has("now"))
	return step{was - now, quantity.EachEdge}, hasWas && hasNow
}

// given returns the allowance of a level, or that of its row. Nothing is a length
// only where it was written.
func given(level quantity.Length, levelHas bool, row quantity.Length, rowHas bool) (quantity.Length, bool) {
	if levelHas || level != 0 {
		return level, true
	}
	return row, rowHas || row != 0
}

// moved reports whether a row says how far a seam was moved.
func moved(a *journal.Altered) bool {
	return a.LetOut != quantity.Edges{} || a.TakenIn != quantity.Edges{} || a.Was != 0 || a.Now != 0 ||
		slices.ContainsFunc(a.At, func(l journal.Level) bool { return l.Was != 0 || l.Now != 0 })
}

// times returns how often the row's seams cross one reading of a measure.
func (s sewing) times(a *journal.Altered, seam *journal.Seam, p measure.Point) (n int, why string) {
	if a.Times > 0 {
		return a.Times, ""
	}
	switch {
	case seam == nil && a.Seam.Text != "":
		return 0, fmt.Sprintf("this build has no seam %q", a.Seam.Text)
	case seam == nil:
		return 0, "it names no seam, and does not say how many there are"
	}
	here, elsewhere := 0, 0 // crossings on the side of p, and not
	for _, c := range seam.Crosses {
		if c.Point.Measure != p.Measure {
			continue
		}
		if c.Times > 0 && covers(c.Point, p) {
			return c.Times, ""
		}
		if c.Point.Side == p.Side {
			here++
		} else {
			elsewhere++
		}
	}
	count := max(seam.Count, 1)
	n, ok := s.perReading(count, p, p.Side != measure.Both && here > 0 && elsewhere == 0)
	if !ok {
		return 0, fmt.Sprintf("%d seams cannot be shared between two sides: say how often they cross one reading with `times`", count)
	}
	return n, ""
}

// perReading returns how many of a set of equal seams or panels one reading of a
// measure crosses: all of them on the trunk or where the whole set is on one
// side, half of them on a paired part. One alone, named for a paired part, is
// the one that either side has.
func (s sewing) perReading(count int, p measure.Point, oneSide bool) (int, bool) {
	m, _ := s.catalogue.Measure(p.Measure)
	if !m.Paired || oneSide || count == 1 {
		return count, true
	}
	return count / 2, count%2 == 0
}

func tooLarge(l quantity.Length) bool { return l > largestStep || l < -largestStep }

// seam returns the seam of that name, or nil.
func (s sewing) seam(name string) *journal.Seam {
	for i := range s.seams {
		if name != "" && near.Folded(s.seams[i].Name.Text) == near.Folded(name) {
			return &s.seams[i]
		}
	}
	return nil
}
