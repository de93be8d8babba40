package fit

import (
	"slices"
	"strconv"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Book is all that was altered on a garment, and what the tape said after.
type Book struct {
	Entries []Entry // oldest first
	Checks  []Check // oldest first
}

// An Entry is one alteration with what it should have done.
type Entry struct {
	Day     edtf.Day
	From    Reason
	Row     *journal.Altered
	Effects []Effect
	Unsure  []measure.Point // altered, but by how much cannot be told
	Why     string          // what keeps its effect from being worked out, at some measures or at all; or ""
}

// A Check sets what a garment was expected to measure beside what it then did.
type Check struct {
	Day      edtf.Day
	From     Reason
	Point    measure.Point
	Expected quantity.Length // the value measured before, with the alterations since
	Measured quantity.Estimate
	Off      quantity.Length // Measured - Expected
	Error    quantity.Length // of the two readings
	Rows     []Reason        // the alterations since; none where the garment changed by itself
}

// Held reports whether the two agree within the error of measuring.
func (c Check) Held() bool { return -c.Error <= c.Off && c.Off <= c.Error }

// Ledger returns what was altered on a garment, with the effect of each row:
//
//   - a seam re-sewn adds n × 2 × (was - now) to each measure it crosses, at each
//     level its own;
//   - let out by so much on each edge, n × 2 × by; on each seam, n × by; all
//     round, by; taken in, the same with the sign turned;
//   - panels let in add n × the finished width of one at each measure;
//   - what a row says it changes is taken as it is, and nothing is worked out.
//
// n is how often the seams or panels cross one reading of the measure: their
// count for a measure of the trunk, or half of it for one of a paired part, which
// is read on one side, unless all of them are on one side; `times` overrides it.
// A single seam named for a paired part is the one that either side has.
//
// At each new value of a measure that was altered since the one before, the book
// has a check; and also where nothing was altered and the two values differ by
// more than the error of both (root sum of squares, JCGM 100:2008, 5.1.2). A
// mock-up is not compared with the garment.
func Ledger(j *journal.Journal, b *journal.Build) Book {
	c := newComputation(Input{Garment: events(j, b), Errors: j.Settings.Errors, Catalogue: j.Settings.Catalogue})
	return Book{Entries: entries(j, b), Checks: c.checks()}
}

func entries(j *journal.Journal, b *journal.Build) []Entry {
	sewing := sewing{b.Seams, j.Settings.Catalogue}
	var out []Entry
	for _, n := range b.Notes {
		for i := range n.Altered {
			row := &n.Altered[i]
			o := sewing.outcome(row)
			out = append(out, Entry{n.Date, Reason{n.ID, "altered", i}, row, o.effects, o.unsure, o.why})
		}
	}
	return out
}

func (c *computation) checks() []Check {
	var points []measure.Point
	sided := c.sided()
	for _, e := range c.garment {
		for _, r := range e.Measured {
			for _, p := range sides(r.Point.Measure, sided[r.Point.Measure]) {
				if !slices.Contains(points, p) {
					points = append(points, p)
				}
			}
		}
	}
	values := make([]GarmentValue, len(points))
	for i := range values {
		values[i].Measured.State = quantity.NotMeasured
	}
	var out []Check
	for _, e := range c.garment {
		for i, p := range points {
			before := values[i]
			values[i].take(e, p)
			v, ok := find(e.Measured, p)
			if !ok || !v.Known() || !before.Measured.Known() || before.MockUp != e.MockUp || len(before.Unsure) > 0 {
				continue // an alteration of unknown size promises nothing
			}
			if check := c.check(before, v, e, p); len(check.Rows) > 0 || !check.Held() {
				out = append(out, check)
			}
		}
	}
	return out
}

func (c *computation) check(before GarmentValue, v quantity.Estimate, e Event, p measure.Point) Check {
	class := c.Errors.Garment(c.class(p))
	return Check{
		Day: e.Day, From: e.From, Point: p, Expected: before.Length, Measured: v,
		Off: v.Length - before.Length, Rows: before.Since,
		Error: measure.RootSumSquares(reading(class, before.Measured), reading(class, v)),
	}
}

// Words says what was done: "sleeve seam let out: allowance 5/8 in to 1/4 in".
func (e Entry) Words(f quantity.Format) string {
	a := e.Row
	seam := a.Seam.Text
	if seam != "" {
		seam += " seam "
	}
	switch {
	case a.What != "":
		return a.What
	case a.LetOut != quantity.Edges{}:
		return seam + "let out " + f.Edges(a.LetOut)
	case a.TakenIn != quantity.Edges{}:
		return seam + "taken in " + f.Edges(a.TakenIn)
	case a.Panel != "" && a.Count > 1:
		return a.Panel + " let in, " + strconv.Itoa(a.Count) + " of them"
	case a.Panel != "":
		return a.Panel + " let in"
	case a.Was == 0 || a.Was == a.Now:
		return seam + "re-sewn"
	}
	done := "let out"
	if a.Was < a.Now {
		done = "taken in"
	}
	return seam + done + ": allowance " + f.Length(a.Was) + " to " + f.Length(a.Now)
}
