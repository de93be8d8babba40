package fit

import (
	"cmp"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Series is how a body measured over one foundation, from session to session.
type Series struct {
	Over     measure.Foundation
	Sessions []Session // oldest first
	Rows     []SeriesRow
}

// A SeriesRow is one measure in all sessions of a series.
type SeriesRow struct {
	Point measure.Point
	Steps []Step // one a session
}

// A Step is a value with what has changed since the known one before it.
type Step struct {
	Value  quantity.Estimate // NotMeasured where the session does not have it
	Since  edtf.Day          // of the value before; 0 where there is none
	By     quantity.Length   // Value less the value before
	Error  quantity.Length   // of the two readings
	Larger bool              // whether the change is larger than that error
}

// BodyChange returns how a person's body has changed, for each foundation it was
// measured over; the one with the newest session first. The error of a change is
// the root sum of squares of its two readings' (JCGM 100:2008, 5.1.2). Where a
// series has a measure on one side, it has a row for each side.
func BodyChange(j *journal.Journal, p *journal.Person) []Series {
	var all []Series
	for _, s := range Sessions(j, p) {
		i := slices.IndexFunc(all, func(known Series) bool { return known.Over.Same(s.Over) })
		if i < 0 {
			i = len(all)
			all = append(all, Series{Over: s.Over})
		}
		all[i].Sessions = append(all[i].Sessions, s)
	}
	c := newComputation(Input{Errors: j.Settings.Errors, Catalogue: j.Settings.Catalogue})
	for i := range all {
		all[i].Rows = c.rows(all[i].Sessions)
	}
	slices.SortStableFunc(all, func(a, b Series) int { return cmp.Compare(newest(b), newest(a)) })
	return all
}

func newest(s Series) edtf.Day { return s.Sessions[len(s.Sessions)-1].Day }

func (c *computation) rows(sessions []Session) []SeriesRow {
	var names []string
	sided := make(apart)
	for _, s := range sessions {
		sided.noteAll(s.Readings)
		for _, r := range s.Readings {
			if !slices.Contains(names, r.Point.Measure) {
				names = append(names, r.Point.Measure)
			}
		}
	}
	var rows []SeriesRow
	for _, name := range names {
		for _, p := range sides(name, sided[name]) {
			rows = append(rows, SeriesRow{p, c.steps(sessions, p)})
		}
	}
	return rows
}

func (c *computation) steps(sessions []Session, p measure.Point) []Step {
	class := c.Errors.Body(c.class(p))
	var before quantity.Estimate
	var since edtf.Day
	var steps []Step
	for _, s := range sessions {
		v, ok := find(s.Readings, p)
		if !ok {
			v.State = quantity.NotMeasured
		}
		step := Step{Value: v}
		if v.Known() {
			if since != 0 {
				step.Since, step.By = since, v.Length-before.Length
				step.Error = measure.RootSumSquares(reading(class, before), reading(class, v))
				step.Larger = max(step.By, -step.By) > step.Error
			}
			before, since = v, s.Day
		}
		steps = append(steps, step)
	}
	return steps
}
