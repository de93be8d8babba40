package across

import (
	"cmp"
	"math"
	"slices"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// correct works out what the pattern measures at a row and what to change there.
func (w *work) correct(r *Row, marks []mark) {
	var builds []BuildRow
	var values []quantity.Length
	var reading quantity.Length
	for _, b := range r.Builds {
		g := w.garment(b.Build)
		d, ok := g.difference(r.Point)
		if !ok {
			w.leaveOut(g.build, r.Point, UnsureChange)
			continue
		}
		since, from := g.since(marks, r.Point)
		b.Changed, b.Altered, b.Since, b.Closed = d.changed, d.altered, since, w.closedAlike(g, r.Point)
		b.Pattern = b.Then.Garment.Length - b.Changed - b.Altered + b.Since + b.Closed
		for _, reason := range append(d.from, from...) {
			if !slices.Contains(b.Reasons, reason) {
				b.Reasons = append(b.Reasons, reason)
			}
		}
		builds = append(builds, b)
		values = append(values, b.Pattern)
		reading = max(reading, b.Then.Garment.Error)
	}
	r.Builds = builds
	next := w.nextRow(r.Point)
	switch {
	case len(builds) == 0:
		r.Verdict, r.Lacks = Untold, fit.NoGarment
		return
	case !next.Verdict.Judged():
		r.Verdict, r.Lacks = Untold, next.Verdict
	}
	r.Pattern, r.Drawn = figure(values), drawn(marks, r.Point)
	if r.Verdict == Untold {
		return
	}
	r.Change = next.Body.Length + middle(next.Wanted.Ease) - r.Pattern.Median
	if next.Adjusted != nil {
		r.Change -= middle(next.Adjusted.Garment)
	}
	r.Error = measure.RootSumSquares(reading, r.Pattern.Spread/2, next.Body.Error)
	if next.Body.Offset != nil {
		r.Error = measure.RootSumSquares(r.Error, next.Body.Offset.Error)
	}
	r.Edges = w.edges(r.Point)
	if r.Edges > 0 {
		r.PerEdge = quantity.Length(math.Round(float64(r.Change) / float64(r.Edges)))
	}
	switch {
	case -r.Error <= r.Change && r.Change <= r.Error:
		r.Verdict = Leave
	case r.Change > 0:
		r.Verdict = Add
	default:
		r.Verdict = TakeOff
	}
}

func (w *work) garment(id journal.ID) *garment {
	i := slices.IndexFunc(w.counted, func(g garment) bool { return g.build.ID == id })
	return &w.counted[i]
}

func (w *work) nextRow(p measure.Point) fit.Row {
	i := slices.IndexFunc(w.table.Rows, func(r fit.Row) bool { return r.Point == p })
	return w.table.Rows[i]
}

// closedAlike returns what a garment would measure more if it had been closed under
// the tape as the build is that the next one is reckoned by.
func (w *work) closedAlike(g *garment, p measure.Point) quantity.Length {
	was, adjusted := closed(g.adjusts, p)
	now, adjusts := closed(w.next.Adjusts, p)
	if !adjusted || !adjusts {
		return 0
	}
	return now - was
}

// edges returns how many seam edges share a change at a measure, by the newest
// build that notes any across it.
func (w *work) edges(p measure.Point) int {
	for _, b := range w.newest {
		n := 0
		for i := range b.Seams {
			n += 2 * crossed(w.next.Catalogue, &b.Seams[i], p)
		}
		if n > 0 {
			return n
		}
	}
	return 0
}

// crossed returns how often a seam, or a set of equal ones, crosses one reading of
// a measure; 0 where it does not, or nobody can tell.
func crossed(c measure.Catalogue, seam *journal.Seam, p measure.Point) int {
	if !slices.ContainsFunc(seam.Crosses, func(at journal.Crossing) bool { return covers(at.Point, p) }) {
		return 0
	}
	n, _ := fit.Times(c, seam, p)
	return n
}

func middle(r quantity.Range) quantity.Length { return r.Least + (r.Most-r.Least)/2 }

// newest returns the builds begun by a day, newest first, with the newest one for
// the wearer before all others.
func newest(j *journal.Journal, builds []*journal.Build, wearer *journal.Person, day edtf.Day) []*journal.Build {
	type started struct {
		build *journal.Build
		on    edtf.Day
	}
	var all []started
	for _, b := range builds {
		if on := begun(b, day); on <= day {
			all = append(all, started{b, on})
		}
	}
	slices.SortFunc(all, func(a, b started) int {
		return cmp.Or(cmp.Compare(b.on, a.on), cmp.Compare(a.build.ID, b.build.ID))
	})
	var out []*journal.Build
	for _, s := range all {
		out = append(out, s.build)
	}
	mine := slices.IndexFunc(out, func(b *journal.Build) bool { return wearer != nil && j.Person(b.For) == wearer })
	if mine > 0 {
		b := out[mine]
		out = slices.Insert(slices.Delete(out, mine, mine+1), 0, b)
	}
	return out
}

// begun returns the day of a build's first note. One that is planned and has none
// is still to come, and so newer than all others.
func begun(b *journal.Build, today edtf.Day) edtf.Day {
	for _, n := range b.Notes {
		if n.Date != 0 {
			return n.Date
		}
	}
	if b.Finished == 0 && (b.State == journal.StatePlanned || b.State == "") {
		return today
	}
	return b.Finished
}
