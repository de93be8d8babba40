package wardrobe

import (
	"slices"

	"hussif/build/fit"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// A Garment is a build with the answer whether one person can wear it on a day.
type Garment struct {
	Build     journal.ID
	State     journal.State // where the build stands on that day
	Table     fit.Table     // names the person and the day
	Answer    Answer
	Gravest   *fit.Row   // in Table: the one most short, or else most ample; nil where none is either
	Others    int        // measures of the same kind as Gravest, beside it
	Wear      []fit.Wear // how to wear what can be adjusted, where the garment can be worn
	Asked     int        // measures at which an ease is wanted
	Judged    int        // of those, where the fit could be told
	Estimated int        // of those, by a body measure carried over from other layers
	MockUp    int        // of those, by what was taped of its mock-up
}

// Answer is whether a garment can be worn.
type Answer int

// Answers, the best first.
const (
	CanWear        Answer = iota + 1
	CanWearAmple          // larger than wanted somewhere
	NeedsAdjusting        // fits, but not closed as it was measured
	TooClose              // to call: perhaps short
	Short
	Unknown // no measure could be judged
)

// Ready reports whether a garment is in a state to be worn.
func (g Garment) Ready() bool { return g.State == journal.StateFinished }

// judge answers by the rows of the table.
func (g *Garment) judge() {
	var short, near, ample []*fit.Row
	for i := range g.Table.Rows {
		r := &g.Table.Rows[i]
		if !asked(r) {
			continue
		}
		g.Asked++
		if !r.Verdict.Judged() {
			continue
		}
		g.Judged++
		if r.Body.Estimated() {
			g.Estimated++
		}
		if r.Garment.MockUp {
			g.MockUp++
		}
		switch {
		case r.Verdict == fit.Short:
			short = append(short, r)
		case r.Verdict == fit.TooClose && r.Delta < 0:
			near = append(near, r)
		case r.Delta > 0 && !r.Accepted:
			ample = append(ample, r)
		}
	}
	switch {
	case g.Judged == 0:
		g.Answer = Unknown
		return
	case len(short) > 0:
		g.Answer = Short
		g.rest(short)
		return
	case len(near) > 0:
		g.Answer = TooClose
		g.rest(near)
		return
	}
	g.rest(ample)
	g.Wear = g.Table.Wear
	switch {
	case slices.ContainsFunc(g.Wear, func(w fit.Wear) bool { return !w.AsMeasured() }):
		g.Answer = NeedsAdjusting
	case len(ample) > 0:
		g.Answer = CanWearAmple
	default:
		g.Answer = CanWear
	}
}

// rest finds the gravest of the rows that an answer rests on; of equals, the first.
func (g *Garment) rest(rows []*fit.Row) {
	for _, r := range rows {
		if g.Gravest == nil || off(r) > off(g.Gravest) {
			g.Gravest = r
		}
	}
	g.Others = max(len(rows)-1, 0)
}

func off(r *fit.Row) quantity.Length { return max(r.Delta, -r.Delta) }
