package agenda

import (
	"slices"
	"strings"

	"hussif/build/effort"
	"hussif/build/fit"
	"hussif/build/stock"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/near"
)

// A Hold is one thing that holds a build up. Only the fields of its Why are set.
type Hold struct {
	Why      Why
	Lack     stock.Lack         // of MaterialShort
	Points   []measure.Point    // of MeasureMissing, to be taken over Over
	Over     measure.Foundation // of MeasureMissing
	Row      *fit.Row           // of DoesNotFit
	Question string             // of DecisionOpen
	From     fit.Reason         // of DecisionOpen
	Work     effort.Work        // of TimeShort
}

// A Why is what kind of thing holds a build up.
type Why int

// What can hold a build up.
const (
	TimeShort      Why = iota + 1 // late or tight for its occasion, or that is over
	NoWearer                      // measures are wanted and nobody is named whose they are
	MeasureMissing                // the wearer's
	DoesNotFit                    // of a garment waiting for repair
	MaterialShort                 // or whether it is cannot be told
	DecisionOpen
)

// holds returns what holds a build up, in the order of Why.
func holds(j *journal.Journal, b *journal.Build, w effort.Work, lacks []stock.Lack) []Hold {
	var out []Hold
	switch w.Outlook.Verdict {
	case effort.Late, effort.Tight, effort.Passed:
		out = append(out, Hold{Why: TimeShort, Work: w})
	}
	out = append(out, fitHolds(fit.Of(j, b, w.Day), w.State)...)
	for _, l := range lacks {
		out = append(out, Hold{Why: MaterialShort, Lack: l})
	}
	return append(out, questions(j, b, w)...)
}

// fitHolds returns the measures that are missing, and those at which a garment to be
// repaired is short.
func fitHolds(t fit.Table, state journal.State) []Hold {
	missing := Hold{Why: MeasureMissing, Over: t.Foundation}
	var short []Hold
	wanted := false
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Wanted == nil || !r.Wanted.Named {
			continue
		}
		wanted = true
		if !r.Body.Read.Known() {
			missing.Points = append(missing.Points, r.Point)
		}
		if state == journal.StateRepair && r.Verdict == fit.Short {
			short = append(short, Hold{Why: DoesNotFit, Row: r})
		}
	}
	switch {
	case t.Wearer == "" && wanted:
		return []Hold{{Why: NoWearer}}
	case t.Wearer != "" && len(missing.Points) > 0:
		return append([]Hold{missing}, short...)
	}
	return short
}

// questions returns the questions of a build's notes that nothing answers.
func questions(j *journal.Journal, b *journal.Build, w effort.Work) []Hold {
	type place struct {
		note   *journal.Note
		anchor string
	}
	answered := make(map[string]bool)
	turned := make(map[place]bool)
	for _, n := range b.Notes {
		for i := range n.Decided {
			if n.Decided[i].Chose != "" {
				answered[near.Folded(n.Decided[i].Question)] = true
			}
		}
		for i := range n.TurnedOut {
			ref := n.TurnedOut[i].Decision
			if r, ok := j.Find(ref.To, journal.KindNote); ok {
				anchor, _ := journal.Anchor(r, ref.Anchor)
				turned[place{r.(*journal.Note), anchor}] = true
			}
		}
	}
	var out []Hold
	asked := make(map[string]bool)
	for _, n := range b.Notes {
		for i := range n.Decided {
			question := n.Decided[i].Question
			key := near.Folded(question)
			if !strings.HasSuffix(key, "?") || n.Date > w.Day || answered[key] || asked[key] || turned[place{n, n.Decided[i].Anchor}] {
				continue
			}
			asked[key] = true
			out = append(out, Hold{Why: DecisionOpen, Question: question, From: fit.Reason{Record: n.ID, Field: "decided", Entry: i}})
		}
	}
	return out
}

// Held returns what holds a build up for one reason.
func (t Task) Held(why Why) []Hold {
	return slices.DeleteFunc(slices.Clone(t.Holds), func(h Hold) bool { return h.Why != why })
}
