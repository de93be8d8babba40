package room

import (
	"cmp"
	"slices"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// Slope is how long a seam must run for each unit that its allowance changes, so
// that it lies flat (common practice: 1 in 8).
const Slope = 8

// A Blend is a stretch of seam on which its allowance changes faster than it can
// lie flat.
type Blend struct {
	Seam     string
	From, To measure.Point   // neighbours along the seam
	By       quantity.Length // by so much more is let out at one of them
	Over     quantity.Length // from the one to the other
}

// blends returns where a seam let out at some levels would not lie flat. Levels
// without a height are left out.
func blends(s *Seam, changed []Edge) []Blend {
	var out []Blend
	for _, side := range sidesOf(s) {
		var run []Level
		for _, l := range s.Levels {
			if l.Placed && (l.Point.Side == measure.Both || l.Point.Side == side) {
				run = append(run, l)
			}
		}
		slices.SortStableFunc(run, func(a, b Level) int { return cmp.Compare(a.At, b.At) })
		for i := 1; i < len(run); i++ {
			a, b := run[i-1], run[i]
			by := letOut(changed, a.Point) - letOut(changed, b.Point)
			if by = max(by, -by); Slope*by > b.At-a.At {
				blend := Blend{s.Name, a.Point, b.Point, by, b.At - a.At}
				if !slices.Contains(out, blend) {
					out = append(out, blend)
				}
			}
		}
	}
	return out
}

// sidesOf returns the sides of the body that a seam's levels tell apart.
func sidesOf(s *Seam) []measure.Side {
	if slices.ContainsFunc(s.Levels, func(l Level) bool { return l.Point.Side != measure.Both }) {
		return []measure.Side{measure.Left, measure.Right}
	}
	return []measure.Side{measure.Both}
}

func letOut(changed []Edge, p measure.Point) quantity.Length {
	for _, e := range changed {
		if e.Point == p {
			return e.By
		}
	}
	return 0
}

func byHeight(a, b Width) int { return cmp.Compare(a.At, b.At) }
