package across

import (
	"slices"

	"hussif/build/fit"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A difference is how a garment came to differ at one measure from the pattern
// that it was cut from.
type difference struct {
	changed quantity.Length
	altered quantity.Length
	from    []fit.Reason
}

// difference is not ok where an alteration did nobody knows how much.
func (g *garment) difference(p measure.Point) (d difference, ok bool) {
	for _, n := range g.build.Notes {
		if n.Date == 0 || n.Date > g.finish {
			continue
		}
		by, said := sum(n.PatternChanged, p)
		if said {
			d.changed += by
			d.from = append(d.from, fit.Reason{Record: n.ID, Field: "pattern changed"})
		}
		if n.Stage == "mock-up" {
			continue
		}
		sewn, rows, sure := g.sewn(n, p)
		switch {
		case !sure && !said:
			return difference{}, false
		case sure && len(rows) > 0:
			d.altered += sewn - by
			d.from = append(d.from, rows...)
		}
	}
	for _, c := range g.book.Checks {
		if c.Day <= g.finish && len(c.Rows) > 0 && !c.Held() && covers(c.Point, p) && !g.mockUp(c.From.Record) {
			d.altered += c.Off
			d.from = append(d.from, c.From)
		}
	}
	return d, true
}

// sewn returns what the ledger's rows of one note did at a point.
func (g *garment) sewn(n *journal.Note, p measure.Point) (by quantity.Length, rows []fit.Reason, sure bool) {
	sure = true
	for _, e := range g.book.Entries {
		if e.From.Record != n.ID {
			continue
		}
		touched := false
		for _, f := range e.Effects {
			if covers(f.Point, p) {
				by += f.By
				touched = true
			}
		}
		if touched {
			rows = append(rows, e.From)
		}
		sure = sure && !slices.ContainsFunc(e.Unsure, func(u measure.Point) bool { return covers(u, p) })
	}
	return by, rows, sure
}

func (g *garment) mockUp(note journal.ID) bool {
	return slices.ContainsFunc(g.build.Notes, func(n *journal.Note) bool { return n.ID == note && n.Stage == "mock-up" })
}

func sum(changes journal.Changes, p measure.Point) (by quantity.Length, said bool) {
	for _, c := range changes {
		if covers(c.Point, p) {
			by += c.By
			said = true
		}
	}
	return by, said
}
