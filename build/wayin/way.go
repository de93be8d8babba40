package wayin

import (
	"slices"
	"strings"

	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Way is the way in to some seams of a garment and out again.
type Way struct {
	Out           []Step   // in the order of opening
	Back          []Step   // in the order of sewing again
	Load                   // how much that is
	LengthUnknown []string // seams whose length is not known, in the order of opening
	Loose         []Loose  // what comes off; see what is Missing there before cutting a stitch
	Faults        []Fault  // of the garment, and seams asked for that it does not have
}

// A Step is one seam to open or to sew again.
type Step struct {
	Seam   *journal.Seam
	Asked  bool         // not only in the way of one that was asked for
	Whole  bool         // or only at the crossings
	Side   measure.Side // opened on that side of the body only; Both where on either
	Across []string     // the seams it is opened across, where not whole
	Length quantity.Length
	Known  bool // whether Length is
}

// Count returns how many of the seam's set are opened.
func (s Step) Count() int {
	if s.Side != measure.Both {
		return count(s.Seam) / 2
	}
	return count(s.Seam)
}

// Find returns the way in to some seams of a build.
func Find(b *journal.Build, rates Rates, seams ...string) Way { return Read(b, rates).Way(seams...) }

// Way returns the way in to all of some seams. A seam that is asked for and not
// listed is among the faults.
func (g *Garment) Way(seams ...string) Way {
	var targets []Target
	var unknown []Fault
	for _, name := range seams {
		if i, ok := g.find(name); ok {
			targets = append(targets, Target{Entry: i})
		} else {
			unknown = append(unknown, Fault{Kind: UnknownSeam, Word: journal.Word{Text: name}})
		}
	}
	w := g.WayTo(targets...)
	w.Faults = append(w.Faults, unknown...)
	return w
}

// WayTo returns the way in to some seams, of a pair perhaps on one side only. What
// comes loose is told as if both sides were opened, for the pieces of a pair have
// one name.
func (g *Garment) WayTo(targets ...Target) Way {
	w := Way{Faults: slices.Clone(g.faults)}
	state := g.open(nil, targets)
	w.Load = g.load(state)
	for _, i := range g.order {
		if state[i].how == shut {
			continue
		}
		step := g.step(state, i)
		step.Asked = slices.ContainsFunc(targets, func(t Target) bool { return t.Entry == i })
		if !step.Known {
			w.LengthUnknown = append(w.LengthUnknown, g.name(i))
		}
		w.Out = append(w.Out, step)
	}
	w.Back = slices.Clone(w.Out)
	slices.Reverse(w.Back)
	w.Loose = g.loose(state)
	return w
}

// Circular reports whether seams that are opened are said to catch each other in a
// circle, so that no order of opening can be right.
func (w Way) Circular() bool {
	return slices.ContainsFunc(w.Faults, func(f Fault) bool {
		return f.Kind == Circle && slices.ContainsFunc(w.Out, func(s Step) bool { return s.Seam.Name.Text == f.Round[0] })
	})
}

func (g *Garment) step(state []opened, i int) Step {
	step := Step{Seam: &g.build.Seams[i], Whole: state[i].how == whole, Side: state[i].sides.side()}
	step.Length, step.Known = g.length(state, i)
	if step.Whole {
		return step
	}
	for k := range g.seams {
		if state[k].how != shut && g.catches(i, k) {
			step.Across = append(step.Across, g.name(k))
		}
	}
	return step
}

// catches reports whether a seam catches another.
func (g *Garment) catches(by, i int) bool {
	return slices.ContainsFunc(g.seams[i].caught, func(c catch) bool { return c.by == by })
}

// putInOrder sorts the seams so that each comes after all that catch it, and by
// name where that leaves a choice. Of seams that catch each other in a circle, the
// first by name goes first.
func (g *Garment) putInOrder() {
	left := g.byName()
	for len(left) > 0 {
		next := slices.IndexFunc(left, func(i int) bool {
			return !slices.ContainsFunc(left, func(by int) bool { return g.catches(by, i) })
		})
		next = max(next, 0)
		g.order = append(g.order, left[next])
		left = slices.Delete(left, next, next+1)
	}
}

func (g *Garment) byName() []int {
	seams := make([]int, len(g.seams))
	for i := range seams {
		seams[i] = i
	}
	slices.SortStableFunc(seams, func(a, b int) int { return strings.Compare(g.name(a), g.name(b)) })
	return seams
}
