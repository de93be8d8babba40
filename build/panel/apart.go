package panel

import (
	"math"
	"slices"

	"hussif/content/quantity"
)

// touching is how deep two outlines may run into one another by rounding alone:
// ten nanometres, a thousandth part of the finest fibre.
const touching = 10 * quantity.Nanometre

// apart returns how far along X an outline must begin after another so that the
// two do not overlap, were the hollows in their sides filled.
func apart(a, b []Point) quantity.Length {
	furthest := math.Inf(-1)
	for _, s := range slabs(a, b) {
		right, left := s.across(a), s.across(b)
		if len(right) == 0 || len(left) == 0 {
			continue
		}
		last, first := right[len(right)-1], left[0]
		furthest = max(furthest, last.above-first.above, last.below-first.below)
	}
	if math.IsInf(furthest, -1) {
		return 0
	}
	// What is a whole number but for the arithmetic's last digit stays one.
	const digit = 1e-3
	return max(0, quantity.Length(math.Ceil(furthest-digit)))
}

// overlap reports whether two outlines run into one another by more than
// [touching].
func overlap(a, b []Point) bool {
	from, to, fromB, toB := least(a), most(a), least(b), most(b)
	if from.X >= toB.X || from.Y >= toB.Y || fromB.X >= to.X || fromB.Y >= to.Y {
		return false
	}
	for _, s := range slabs(a, b) {
		as, bs := s.across(a), s.across(b)
		for i := 0; i+1 < len(as); i += 2 {
			for j := 0; j+1 < len(bs); j += 2 {
				if shared(as[i], as[i+1], bs[j], bs[j+1]) > float64(touching) {
					return true
				}
			}
		}
	}
	return false
}

// A slab is a band of cloth between two heights with no corner in between.
type slab struct{ above, below quantity.Length }

// A crosser is an edge in a slab: its X at the slab's two heights.
type crosser struct{ above, below float64 }

// slabs cuts the heights that both outlines have at their corners.
func slabs(a, b []Point) []slab {
	var heights []quantity.Length
	for _, p := range a {
		heights = append(heights, p.Y)
	}
	for _, p := range b {
		heights = append(heights, p.Y)
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	var found []slab
	for i := 1; i < len(heights); i++ {
		found = append(found, slab{heights[i-1], heights[i]})
	}
	return found
}

// across returns the edges of an outline in a slab, from left to right; two and
// two of them have cloth between them.
func (s slab) across(outline []Point) []crosser {
	var found []crosser
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		if q.Y < p.Y {
			p, q = q, p
		}
		if p.Y <= s.above && q.Y >= s.below {
			found = append(found, crosser{xAt(p, q, s.above), xAt(p, q, s.below)})
		}
	}
	slices.SortFunc(found, func(a, b crosser) int {
		switch d := (a.above + a.below) - (b.above + b.below); {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return 0
	})
	return found
}

// xAt returns where the line from p down to q is at a height.
func xAt(p, q Point, y quantity.Length) float64 {
	switch y {
	case p.Y:
		return float64(p.X)
	case q.Y:
		return float64(q.X)
	}
	return float64(p.X) + float64(q.X-p.X)*(float64(y-p.Y)/float64(q.Y-p.Y))
}

// shared returns the greatest width that two strips of a slab, each between two
// edges, have in common at any height. It lies at an end of the slab or where
// two of the edges cross.
func shared(a, b, c, d crosser) float64 {
	heights := []float64{0, 1}
	for _, pair := range [][2]crosser{{a, c}, {b, d}, {a, d}, {c, b}} {
		above, below := pair[0].above-pair[1].above, pair[0].below-pair[1].below
		if (above < 0) != (below < 0) {
			heights = append(heights, above/(above-below))
		}
	}
	most := math.Inf(-1)
	for _, h := range heights {
		at := func(e crosser) float64 { return e.above + h*(e.below-e.above) }
		most = max(most, min(at(b), at(d))-max(at(a), at(c)))
	}
	return most
}
