package wayin

import (
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/quantity"
)

// Reach is how far a catching seam is opened to either side of a crossing
// (common practice: a hand's breadth in all, so that the edges can be turned
// back and the old stitches made fast).
const Reach = 2 * quantity.Inch

// No garment has a seam as long, or as many of one; what is written beyond that is
// a slip, and keeping to it keeps sums exact.
const (
	longest = 1000 * quantity.Metre
	most    = 1000
)

// A Garment knows what catches each of its seams. It never changes once made, and
// may be shared.
type Garment struct {
	build  *journal.Build
	seams  []seam // as in the build
	order  []int  // of opening, were all to be opened
	faults []Fault
}

type seam struct {
	length          quantity.Length // of all its count; see known
	known           bool
	paired          bool // as many on the left as on the right
	opening, sewing Rate // the zero Rate where not known
	caught          []catch
}

// A catch is a seam sewn later across another.
type catch struct {
	by    int
	whole bool            // all along
	short quantity.Length // of it is opened at the ends of the whole seam
	said  journal.Word
}

// Read makes a Garment of the seams and pieces of a build.
func Read(b *journal.Build, rates Rates) *Garment {
	g := &Garment{build: b, seams: make([]seam, len(b.Seams))}
	for i := range b.Seams {
		s := &b.Seams[i]
		kind := stitch(s.Sewn)
		g.seams[i] = seam{
			length:  length(s),
			known:   length(s) > 0,
			paired:  count(s)%2 == 0,
			opening: rates.Opening[kind],
			sewing:  rates.Sewing[kind],
		}
		for _, c := range s.CaughtBy {
			g.catch(i, c)
		}
	}
	g.putInOrder()
	g.findCircles()
	g.findPieces()
	return g
}

func (g *Garment) catch(i int, c journal.Caught) {
	by, ok := g.find(c.Seam.Text)
	if !ok {
		g.faults = append(g.faults, Fault{Kind: UnknownSeam, Word: c.Seam})
		return
	}
	caught := &g.seams[i].caught
	for k := range *caught {
		if (*caught)[k].by == by {
			(*caught)[k].whole = (*caught)[k].whole || c.At != journal.ExtentEnds
			return
		}
	}
	// Each of a set of seams meets the one over it once: a centre back that ends where
	// a left and a right waist seam meet has one crossing, and two sides have two.
	short := 2 * Reach * quantity.Length(count(&g.build.Seams[i]))
	*caught = append(*caught, catch{by, c.At != journal.ExtentEnds, short, c.Seam})
}

// Faults returns what is wrong with the seams and pieces of the build.
func (g *Garment) Faults() []Fault { return g.faults }

func (g *Garment) find(name string) (int, bool) {
	for i := range g.build.Seams {
		if name != "" && near.Folded(g.build.Seams[i].Name.Text) == near.Folded(name) {
			return i, true
		}
	}
	return 0, false
}

func (g *Garment) name(i int) string { return g.build.Seams[i].Name.Text }

func count(s *journal.Seam) int { return min(max(s.Count, 1), most) }

// length returns the length of all of a seam's count, 0 where it is not known.
func length(s *journal.Seam) quantity.Length {
	if s.Length > longest {
		return 0
	}
	return max(s.Length, 0) * quantity.Length(count(s))
}
