package across

import (
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// Pattern returns what a pattern measures on a day by all that was made of it, for
// whomever, and what to change on it for a wearer. The wearer may be nil, for whom
// nothing can be told.
func Pattern(j *journal.Journal, p *journal.Pattern, wearer *journal.Person, day edtf.Day) Sheet {
	builds := j.BuildsFrom(p)
	w := begin(j, builds, wearer, day)
	w.Pattern = p.ID
	marks, undated := paper(p, builds, day)
	w.NotCounted = append(w.NotCounted, undated...)
	named := func(point measure.Point) {
		w.sided[point.Measure] = w.sided[point.Measure] || point.Side != measure.Both
	}
	for _, m := range marks {
		named(m.point)
	}
	for _, b := range builds {
		for _, n := range b.Notes {
			for _, c := range n.PatternChanged {
				named(c.Point)
			}
		}
	}
	w.fill()
	for i := range w.Rows {
		w.correct(&w.Rows[i], marks)
	}
	return w.Sheet
}

// Garment returns how the garments of one kind came out for a wearer by a day. What
// is of a pattern is left out, for they may have had several.
func Garment(j *journal.Journal, kind string, wearer *journal.Person, day edtf.Day) Sheet {
	var builds []*journal.Build
	if wearer != nil {
		builds = slices.DeleteFunc(j.BuildsFor(wearer), func(b *journal.Build) bool { return !strings.EqualFold(b.Garment, kind) })
	}
	w := begin(j, builds, wearer, day)
	w.Kind = kind
	w.fill()
	return w.Sheet
}

// A work is a sheet in the making.
type work struct {
	Sheet
	journal *journal.Journal
	counted []garment
	newest  []*journal.Build // begun by the day; the one that the next is reckoned by first
	sided   map[string]bool  // measures of which anything names one side
	next    fit.Input        // of the next build
	table   fit.Table        // of the next build
}

func begin(j *journal.Journal, builds []*journal.Build, wearer *journal.Person, day edtf.Day) *work {
	w := &work{Sheet: Sheet{Day: day}, journal: j, sided: make(map[string]bool)}
	if wearer != nil {
		w.Wearer = wearer.ID
	}
	w.counted, w.NotCounted = count(j, builds, day)
	w.newest = newest(j, builds, wearer, day)
	if len(w.newest) == 0 {
		return w
	}
	w.Like, w.Over = w.newest[0].ID, w.newest[0].Foundation()
	w.next = fit.InputFor(j, w.newest[0], wearer, day)
	w.next.Wanted = w.wanted()
	return w
}

// wanted returns the eases that are named, by the newest build that names each.
func (w *work) wanted() []fit.Wanted {
	var out []fit.Wanted
	for _, b := range w.newest {
		earlier := len(out)
		for _, want := range fit.InputFor(w.journal, b, nil, w.Day).Wanted {
			taken := slices.ContainsFunc(out[:earlier], func(o fit.Wanted) bool { return o.Point.Measure == want.Point.Measure })
			if want.Named && !taken {
				out = append(out, want)
			}
		}
	}
	return out
}

// fill makes the rows, each with its builds.
func (w *work) fill() {
	if len(w.newest) == 0 {
		return
	}
	var names []string
	for _, g := range w.counted {
		for _, r := range g.table.Rows {
			w.sided[r.Point.Measure] = w.sided[r.Point.Measure] || r.Point.Side != measure.Both
			if taped(r) && !slices.Contains(names, r.Point.Measure) {
				names = append(names, r.Point.Measure)
			}
		}
	}
	// What the next build measures is not known yet. Nothing stands for it, so that
	// there is a row for each measure, with the body and the reach of adjustments.
	nothing := fit.Event{Day: w.Day}
	for _, name := range names {
		sides := []measure.Side{measure.Both}
		if w.sided[name] {
			sides = []measure.Side{measure.Left, measure.Right}
		}
		for _, side := range sides {
			nothing.Measured = append(nothing.Measured, fit.Reading{Point: measure.Point{Measure: name, Side: side}})
		}
	}
	w.next.Garment = []fit.Event{nothing}
	w.table = fit.Compute(w.next)
	for _, next := range w.table.Rows {
		r := Row{Point: next.Point, Over: next.Over, Body: next.Body, Wanted: next.Wanted}
		for i := range w.counted {
			w.addBuild(&r, &w.counted[i])
		}
		r.Off, r.OffError, r.Judged = off(r.Builds)
		w.Rows = append(w.Rows, r)
	}
}

// addBuild adds a garment to a row where it was taped.
func (w *work) addBuild(r *Row, g *garment) {
	then, ok := g.at(r.Point)
	switch {
	case !ok:
	case then.Garment.MockUp:
		w.leaveOut(g.build, r.Point, MockUpOnly)
	case len(then.Garment.Unsure) > 0:
		w.leaveOut(g.build, r.Point, UnsureChange)
	default:
		r.Builds = append(r.Builds, BuildRow{Build: g.build.ID, Day: g.finish, Then: then})
	}
}

func (w *work) leaveOut(b *journal.Build, p measure.Point, why Why) {
	i := slices.IndexFunc(w.NotCounted, func(n NotCounted) bool { return n.Build == b.ID && n.Why == why })
	if i < 0 {
		i = len(w.NotCounted)
		w.NotCounted = append(w.NotCounted, NotCounted{From: fit.Reason{Record: b.ID}, Build: b.ID, Why: why})
	}
	w.NotCounted[i].Points = append(w.NotCounted[i].Points, p)
}

// off returns how far the builds that could be judged were off.
func off(builds []BuildRow) (f Figure, largest quantity.Length, judged int) {
	var deltas []quantity.Length
	for _, b := range builds {
		if b.Then.Verdict.Judged() {
			deltas = append(deltas, b.Then.Delta)
			largest = max(largest, b.Then.Error)
		}
	}
	if len(deltas) > 0 {
		f = figure(deltas)
	}
	return f, largest, len(deltas)
}
