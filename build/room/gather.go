package room

import (
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/near"
	"hussif/content/quantity"
)

// For returns the plan for a garment whose fit is known, with what its seams have
// left on the day of that. The rates are those of the whole journal.
func For(j *journal.Journal, b *journal.Build, table fit.Table, rates wayin.Rates) Plan {
	return Solve(InputFor(j, b, table, rates))
}

// InputFor gathers what a journal says of the closings and seams of a garment on
// the day of a table of its fit, and what is short by that table. A difference
// that is too close to call is no need.
func InputFor(j *journal.Journal, b *journal.Build, table fit.Table, rates wayin.Rates) Input {
	in := Input{Garment: wayin.Read(b, rates), Step: j.Settings.Format.Finer().Step()}
	for _, r := range table.Rows {
		if r.Verdict == fit.Short {
			in.Needs = append(in.Needs, Need{r.Point, -r.Delta, r.Error})
		}
	}
	for i := range b.Closures {
		in.Closures = append(in.Closures, closure(b, &b.Closures[i]))
	}
	g := gatherer{j, b, table, in.Needs}
	for i := range b.Seams {
		s := &b.Seams[i]
		in.Seams = append(in.Seams, Seam{
			Name: s.Name.Text, Entry: i, Count: max(s.Count, 1), Piped: s.Piped == journal.Yes, Levels: g.levels(s),
		})
	}
	return in
}

// adjustedAlready is why a closing gives nothing that is listed among the
// adjustments too.
const adjustedAlready = "its range is among the adjustments, and in the fit already"

func closure(b *journal.Build, c *journal.Closure) Closure {
	out := Closure{Name: c.Name.Text, Overlap: c.Overlap, Keep: max(c.Keep, 0)}
	if !c.Has("keep") && c.Keep == 0 || c.Unread("keep") {
		out.Keep = Lap
	}
	for _, p := range c.Crosses {
		out.Crosses = append(out.Crosses, p.Point)
		if isAdjusted(b, c, p.Point) {
			out.InFit = append(out.InFit, p.Point)
		}
	}
	switch {
	case len(out.Crosses) == 0:
		out.Why = "which measures it crosses is not noted"
	case len(out.InFit) == len(out.Crosses):
		out.Why = adjustedAlready
	case strings.Contains(strings.ToLower(c.How), "lac"):
		out.Why = "a lacing gives what its gap does, which goes under `adjusts`"
	case !c.Has("overlap") && c.Overlap == 0 || c.Unread("overlap"):
		out.Why = "its overlap is not noted"
	}
	return out
}

// isAdjusted reports whether a closing is listed as an adjustment of a measure too,
// by the same place or the same kind.
func isAdjusted(b *journal.Build, c *journal.Closure, p measure.Point) bool {
	same := func(a, b string) bool { return near.Folded(a) != "" && near.Folded(a) == near.Folded(b) }
	return slices.ContainsFunc(b.Adjusts, func(a journal.Adjust) bool {
		return (same(a.At, c.At) || same(a.At, c.Name.Text) || same(a.How, c.How)) &&
			slices.ContainsFunc(a.Changes, func(changed journal.PointRef) bool { return changed.Point.Measure == p.Measure })
	})
}

// A gatherer gathers the levels of a garment's seams.
type gatherer struct {
	journal *journal.Journal
	build   *journal.Build
	table   fit.Table
	needs   []Need
}

// levels returns a seam at each measure that it crosses, each side by itself where
// the needs tell them apart.
func (g gatherer) levels(s *journal.Seam) []Level {
	var levels []Level
	add := func(p measure.Point) {
		if slices.ContainsFunc(levels, func(l Level) bool { return l.Point == p }) {
			return
		}
		if l, ok := g.level(s, p); ok {
			levels = append(levels, l)
		}
	}
	for _, c := range s.Crosses {
		plain, sided := g.needed(c.Point.Measure)
		switch {
		case sided && c.Point.Side == measure.Both:
			add(measure.Point{Measure: c.Point.Measure, Side: measure.Left})
			add(measure.Point{Measure: c.Point.Measure, Side: measure.Right})
		case plain:
			add(measure.Point{Measure: c.Point.Measure})
		default:
			add(c.Point)
		}
	}
	return levels
}

// needed reports whether a measure is short by its plain name, and whether on any
// one side.
func (g gatherer) needed(name string) (plain, sided bool) {
	for _, n := range g.needs {
		if n.Point.Measure == name {
			plain = plain || n.Point.Side == measure.Both
			sided = sided || n.Point.Side != measure.Both
		}
	}
	return plain, sided
}

// level returns a seam at one point; false where it crosses it on one side only.
func (g gatherer) level(s *journal.Seam, p measure.Point) (Level, bool) {
	sides := crossings(s, p)
	if len(sides) == 0 {
		return Level{}, false
	}
	l := Level{Point: p}
	ownKeep := true
	for i, c := range sides {
		keep, own := Kept(g.journal.Settings, s, c)
		l.Keep = max(l.Keep, keep)
		ownKeep = ownKeep && own
		if i == 0 {
			l.At, l.Placed = c.At, c.Has("at") || c.At != 0
		}
	}
	n, why := fit.Times(g.journal.Settings.Catalogue, s, p)
	if why == "" && n > most {
		why = "no garment has as many seams as that"
	}
	if why != "" {
		l.Why = why
		return l, true
	}
	l.Edges = 2 * n
	var known bool
	l.Now, known = fit.Allowance(g.build, g.journal.Settings.Catalogue, s, p, g.table.Day)
	switch {
	case !known:
		l.Now = 0
		l.Why = "its allowance there is not known"
	case l.Now > widest:
		l.Why = "no allowance is as wide as that"
	case s.Clipped == journal.Yes && !ownKeep:
		l.Why = "it is clipped"
	}
	return l, true
}

// What is written beyond these is a slip, and keeping to them keeps sums exact.
const (
	most   = 1000 // crossings of one reading
	widest = 10 * quantity.Metre
)

// crossings returns the crossing that speaks for a point, or for a plain name
// those of both sides where only these are given.
func crossings(s *journal.Seam, p measure.Point) []*journal.Crossing {
	var left, right *journal.Crossing
	for i := range s.Crosses {
		c := &s.Crosses[i]
		switch {
		case c.Point == p:
			return []*journal.Crossing{c}
		case c.Point.Measure != p.Measure:
		case c.Point.Side == measure.Both:
			left, right = c, nil
		case p.Side != measure.Both:
		case c.Point.Side == measure.Left:
			left = c
		default:
			right = c
		}
	}
	switch {
	case left != nil && right != nil:
		return []*journal.Crossing{left, right}
	case left != nil && (p.Side != measure.Both || left.Point.Side == measure.Both):
		return []*journal.Crossing{left}
	}
	return nil
}

// Kept returns the least allowance that must stay on each edge of a seam where it
// crosses a measure: as the crossing says, else the seam, else the journal, else
// [Keep]; and whether the crossing says so itself.
func Kept(settings *journal.Settings, s *journal.Seam, c *journal.Crossing) (keep quantity.Length, own bool) {
	switch {
	case (c.Has("keep") || c.Keep != 0) && !c.Unread("keep"):
		return max(c.Keep, 0), true
	case (s.Has("keep") || s.Keep != 0) && !s.Unread("keep"):
		return max(s.Keep, 0), false
	case (settings.Has("keep") || settings.Keep != 0) && !settings.Unread("keep"):
		return max(settings.Keep, 0), false
	}
	return Keep, false
}
