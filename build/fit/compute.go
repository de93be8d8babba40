package fit

import (
	"cmp"
	"slices"
	"strings"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// Compute compares what a garment measures with what its wearer measures over
// the same foundation, on one day. The formula is in the package comment.
func Compute(in Input) Table {
	c := newComputation(in)
	t := Table{Build: in.Build, Wearer: in.Wearer, Day: in.Day, Foundation: in.Foundation}
	for _, p := range c.points() {
		t.Rows = append(t.Rows, c.row(p))
	}
	t.Wear = wear(t.Rows)
	t.Missed = missed(t.Rows)
	return t
}

// A computation is an Input put in order.
type computation struct {
	Input
	key     string    // of the foundation
	garment []Event   // by day
	body    []session // by day, those of one day over the foundation itself last
}

// A session is a Session with the key of its foundation.
type session struct {
	Session
	key string
}

func newComputation(in Input) computation {
	c := computation{
		Input: in, key: in.Foundation.Key(), garment: in.Garment, body: make([]session, 0, len(in.Body)),
	}
	byDay := func(a, b Event) int { return cmp.Compare(a.Day, b.Day) }
	if !slices.IsSortedFunc(in.Garment, byDay) { // as they nearly always come
		c.garment = slices.Clone(in.Garment)
		slices.SortStableFunc(c.garment, byDay)
	}
	keys := make(map[string]string) // by what was written, for few layers are written many times
	for _, s := range in.Body {
		written := strings.Join(s.Over, "\n")
		key, ok := keys[written]
		if !ok {
			key = s.Over.Key()
			keys[written] = key
		}
		c.body = append(c.body, session{s, key})
	}
	rank := func(s session) int {
		if s.key == c.key {
			return 1
		}
		return 0
	}
	slices.SortStableFunc(c.body, func(a, b session) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(rank(a), rank(b)))
	})
	return c
}

func (c *computation) row(p measure.Point) Row {
	r := Row{Point: p, Over: c.Foundation, Wanted: c.wanted(p), Garment: c.garmentValue(p), Body: c.bodyValue(p)}
	if r.Verdict = c.missing(r); r.Verdict != 0 {
		return r
	}
	r.Error = measure.RootSumSquares(r.Garment.Error, r.Body.Error)
	if r.Body.Offset != nil {
		r.Error = measure.RootSumSquares(r.Garment.Error, r.Body.Error, r.Body.Offset.Error)
	}
	had := r.Garment.Length - r.Body.Length
	r.Had = quantity.Range{Least: had, Most: had}
	adjusts := c.adjusts(p)
	if len(adjusts) > 0 {
		least, most := reach(adjusts)
		r.Had = quantity.Range{Least: had + least, Most: had + most}
		r.Adjusted = &Adjusted{Garment: quantity.Range{Least: r.Garment.Length + least, Most: r.Garment.Length + most}}
	}
	if r.Wanted == nil || !r.Wanted.Named {
		r.Verdict = NoEase
		if r.Wanted != nil && r.Wanted.Unread {
			r.Verdict = UnreadEase
		}
		r.Suggested = c.suggest(p)
		return r
	}
	r.judge()
	if r.Adjusted != nil {
		r.Adjusted.wear(adjusts, had, middle(r.Wanted.Ease))
	}
	return r
}

// judge sets delta and verdict from the ease there is and the ease wanted.
func (r *Row) judge() {
	wanted := r.Wanted.Ease
	switch {
	case r.Had.Most < wanted.Least:
		r.Delta = r.Had.Most - wanted.Least
	case r.Had.Least > wanted.Most:
		r.Delta = r.Had.Least - wanted.Most
	}
	switch {
	case r.Delta == 0:
		r.Verdict = Fits
	case -r.Error <= r.Delta && r.Delta <= r.Error:
		r.Verdict = TooClose
	case r.Delta < 0:
		r.Verdict = Short
	default:
		r.Verdict = Ample
		r.Accepted = r.Wanted.AcceptAmple
	}
}

// missing returns what keeps a row from being compared, or 0.
func (c *computation) missing(r Row) Verdict {
	switch {
	case c.Wearer == "":
		return NoWearer
	case r.Garment.Measured.State == quantity.Unknown:
		return UnknownGarment
	case !r.Garment.Measured.Known() && r.Garment.Later != 0:
		return GarmentLater
	case !r.Garment.Measured.Known():
		return NoGarment
	case len(r.Garment.Unsure) > 0:
		return UnsureGarment
	case r.Body.Read.State == quantity.Unknown:
		return UnknownBody
	case r.Body.Read.Known():
		return 0
	case r.Body.Later != 0:
		return BodyLater
	case len(r.Body.Apart) > 0:
		return NoBodyOver
	}
	return NoBody
}

// wanted returns what is wanted at a point, of its own side before of both.
func (c *computation) wanted(p measure.Point) *Wanted {
	var found *Wanted
	for i, w := range c.Wanted {
		switch {
		case w.Point == p:
			return &c.Wanted[i]
		case found == nil && covers(w.Point, p):
			found = &c.Wanted[i]
		}
	}
	return found
}

func (c *computation) class(p measure.Point) measure.Class {
	m, _ := c.Catalogue.Measure(p.Measure)
	return m.Class
}

// reading returns the error of one reading: twice that of its class where it is
// only about right.
func reading(class quantity.Length, v quantity.Estimate) quantity.Length {
	if v.State == quantity.About {
		return 2 * class
	}
	return class
}

// missed gathers what keeps rows from a verdict, in the order of the rows.
func missed(rows []Row) []Missing {
	var out []Missing
	for _, r := range rows {
		if r.Verdict.Judged() {
			continue
		}
		i := slices.IndexFunc(out, func(m Missing) bool { return m.Why == r.Verdict })
		if i < 0 {
			i = len(out)
			out = append(out, Missing{Why: r.Verdict, Over: r.Over})
		}
		out[i].Points = append(out[i].Points, r.Point)
	}
	return out
}
