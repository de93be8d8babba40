package fit

import (
	"fmt"
	"slices"

	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A sewing knows the seams of a garment, and so what an alteration does.
type sewing struct {
	seams     []journal.Seam
	catalogue measure.Catalogue
}

// largestStep is more than any one alteration of a seam, and keeps products
// exact.
const largestStep = 100 * quantity.Metre

// An outcome is what an alteration does, as far as that can be told.
type outcome struct {
	effects []Effect
	unsure  []measure.Point // altered, but by how much cannot be told
	why     string          // it cannot be told, of some measure or of all
}

func (o *outcome) add(p measure.Point, by quantity.Length) {
	for i := range o.effects {
		if o.effects[i].Point == p {
			o.effects[i].By += by
			return
		}
	}
	o.effects = append(o.effects, Effect{p, by})
}

// fail keeps the first reason.
func (o *outcome) fail(why string, points ...measure.Point) {
	if o.why == "" {
		o.why = why
	}
	o.unsure = append(o.unsure, points...)
}

// outcome returns what an alteration does to each measure. See [Ledger].
func (s sewing) outcome(a *journal.Altered) outcome {
	var o outcome
	for _, c := range a.Changes {
		o.add(c.Point, c.By)
	}
	if len(a.Changes) > 0 {
		return o
	}
	letIn := a.Panel != "" || len(a.Widths) > 0
	if letIn {
		s.letIn(a, &o)
	}
	if moved(a) || !letIn && (a.Seam.Text != "" || len(a.At) > 0) {
		s.reSew(a, &o)
	}
	if o.effects == nil && o.why == "" {
		o.why = "it does not say by how much, or at which measures"
	}
	return o
}

// letIn adds panels: the finished width of one, as often as one reading of the
// measure crosses any.
func (s sewing) letIn(a *journal.Altered, o *outcome) {
	if len(a.Widths) == 0 {
		o.fail("it does not give the finished width of the panel")
	}
	for _, w := range a.Widths {
		oneSide := w.Point.Side != measure.Both && !slices.ContainsFunc(a.Widths, func(other journal.Change) bool {
			return other.Point.Measure == w.Point.Measure && other.Point.Side != w.Point.Side
		})
		n, ok := s.perReading(max(a.Count, 1), w.Point, oneSide)
		switch {
		case !ok:
			o.fail(fmt.Sprintf("%d panels cannot be shared between two sides: name the sides", a.Count), w.Point)
		case tooLarge(w.By):
			o.fail("no panel is as wide as that", w.Point)
		default:
			o.add(w.Point, quantity.Length(n)*w.By)
		}
	}
}

// A step is what an alteration takes from each seam's allowance.
type step struct {
	by quantity.Length
	of quantity.Whole
}

// reSew adds what re-sewn seams give at each level.
func (s sewing) reSew(a *journal.Altered, o *outcome) {
	seam := s.seam(a.Seam.Text)
	levels := levelsOf(a, seam)
	if len(levels) == 0 {
		switch {
		case seam != nil:
			o.fail(fmt.Sprintf("the seam %q crosses no measure, and the row names none", seam.Name.Text))
		case a.Seam.Text != "":
			o.fail(fmt.Sprintf("this build has no seam %q, and the row names no measure", a.Seam.Text))
		default:
			o.fail("it names neither a seam nor a measure")
		}
	}
	for _, l := range levels {
		st, ok := stepAt(a, l)
		if !ok {
			o.fail("it does not say by how much", l.Point)
			continue
		}
		if tooLarge(st.by) {
			o.fail("no allowance is as wide as that", l.Point)
			continue
		}
		if st.of == quantity.AllRound {
			o.add(l.Point, st.by)
			continue
		}
		n, why := s.times(a, seam, l.Point)
		if why != "" {
			o.fail(why, l.Point)
			continue
		}
		if st.of == quantity.EachEdge {
			n *= 2
		}
		o.add(l.Point, quantity.Length(n)*st.by)
	}
}
