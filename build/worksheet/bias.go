package worksheet

import (
	"math"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// A biasCut is strips cut at 45 degrees from a rectangle, the first cut from a
// corner of its shorter side.
type biasCut struct {
	wide, long float64 // of the rectangle, in nanometres, the shorter side first
	width      float64 // of a strip
	strips     []float64
	cuts       [][2]draw.Point // in millimetres, on the rectangle
}

// mostStrips is more than anyone will join.
const mostStrips = 2000

// cutBias cuts a rectangle into strips. A strip's length is that of the parallelogram
// in it whose ends lie along one of the two grains, so that neighbours can be joined:
// what is cut on the slant at one corner and square to that at the next is trimmed.
func cutBias(piece quantity.Size, width quantity.Length) biasCut {
	a, b := float64(min(piece.Width, piece.Length)), float64(max(piece.Width, piece.Length))
	c := biasCut{wide: a, long: b, width: float64(width)}
	apart := c.width * math.Sqrt2 // of two cuts along a side
	// A cut is the line x + y = at.
	for at := a - math.Floor(a/apart)*apart; at+apart <= a+b+1; at += apart {
		if length := c.usable(at, at+apart); length > 0 && len(c.strips) < mostStrips {
			c.strips = append(c.strips, length)
		}
	}
	for at := a - math.Floor(a/apart)*apart; at < a+b && len(c.cuts) < mostStrips; at += apart {
		from, to := math.Max(0, at-b), math.Min(a, at)
		point := func(x float64) draw.Point { return draw.Point{X: x / 1e6, Y: (at - x) / 1e6} }
		c.cuts = append(c.cuts, [2]draw.Point{point(from), point(to)})
	}
	return c
}

// usable returns the length of the longest parallelogram between two cuts, with both
// ends along the length of the rectangle or both along its width.
func (c biasCut) usable(from, to float64) float64 {
	alongLength := math.Min(c.wide, from) - math.Max(0, to-c.long)
	alongWidth := math.Min(c.long, from) - math.Max(0, to-c.wide)
	return math.Sqrt2 * math.Max(alongLength, alongWidth)
}

// joined returns how many strips are worth joining, and how long they are together.
// A join on the grain takes its allowance off both ends, which along the strip is
// the root of two as much; a strip no longer than that adds nothing.
func (c biasCut) joined(allowance, shortest quantity.Length) (n int, length float64) {
	cost := 2 * math.Sqrt2 * float64(allowance)
	for _, strip := range c.strips {
		if strip > cost && strip >= float64(shortest) {
			n++
			length += strip
		}
	}
	return n, length - float64(max(n-1, 0))*cost
}

// tube returns how many turns a rectangle sewn to a tube gives, and how long the
// strip cut round and round is. Both seams lie on the grain and take their allowance
// off both sides.
func tube(piece quantity.Size, width, allowance quantity.Length) (turns int, length float64) {
	a, b := float64(min(piece.Width, piece.Length)-2*allowance), float64(max(piece.Width, piece.Length)-2*allowance)
	if a <= 0 || b <= 0 {
		return 0, 0
	}
	const digit = 1e-9 // what is a whole number but for the arithmetic's last digit
	turns = int(b/(math.Sqrt2*float64(width)) + digit)
	return turns, float64(turns) * a * math.Sqrt2
}

// tubeSquare returns the side of the smallest square that gives a tube so long, and
// its turns.
func tubeSquare(length, width, allowance quantity.Length) (side float64, turns int) {
	side = math.Inf(1)
	for n := 1; n <= mostStrips; n++ {
		forTurns := float64(n) * math.Sqrt2 * float64(width)
		forLength := float64(length) / (float64(n) * math.Sqrt2)
		if s := math.Max(forTurns, forLength) + 2*float64(allowance); s < side {
			side, turns = s, n
		}
		if forTurns > forLength {
			break
		}
	}
	return side, turns
}
