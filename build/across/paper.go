package across

import (
	"slices"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A mark is a change to one measure of a pattern.
type mark struct {
	day     edtf.Day
	point   measure.Point
	by      quantity.Length
	reached bool         // the paper
	told    []journal.ID // builds whose notes tell of it; "" for the pattern's page
	from    []fit.Reason
}

// paper returns the changes that reached a pattern by the day, and those without a
// day.
func paper(p *journal.Pattern, builds []*journal.Build, day edtf.Day) (marks []mark, not []NotCounted) {
	tell := func(teller journal.ID, reached bool, on edtf.Day, changes journal.Changes, from fit.Reason) {
		for _, c := range changes {
			i := slices.IndexFunc(marks, func(m mark) bool {
				return m.day == on && m.point == c.Point && m.by == c.By && !slices.Contains(m.told, teller)
			})
			if i < 0 {
				i = len(marks)
				marks = append(marks, mark{day: on, point: c.Point, by: c.By})
			}
			m := &marks[i]
			m.reached = m.reached || reached
			m.told = append(m.told, teller)
			m.from = append(m.from, from)
		}
	}
	for _, b := range builds {
		for _, n := range b.Notes {
			if n.Date != 0 && n.Date <= day {
				tell(b.ID, n.OnPattern == journal.Yes, n.Date, n.PatternChanged, fit.Reason{Record: n.ID, Field: "pattern changed"})
			}
		}
	}
	for i := range p.Changed {
		a := &p.Changed[i]
		from := fit.Reason{Record: p.ID, Field: "changed", Entry: i}
		switch {
		case a.OnPattern == journal.No:
		case a.Date == 0 && len(a.Measures) > 0:
			not = append(not, NotCounted{From: from, Points: points(a.Measures), Why: Undated})
		case a.Date != 0 && a.Date <= day:
			tell("", true, a.Date, a.Measures, from)
		}
	}
	return slices.DeleteFunc(marks, func(m mark) bool { return !m.reached }), not
}

// since returns what reached the pattern that a garment was not cut from.
func (g *garment) since(marks []mark, p measure.Point) (by quantity.Length, from []fit.Reason) {
	for _, m := range marks {
		if covers(m.point, p) && (slices.Contains(m.told, g.build.ID) || m.day > g.cut) {
			by += m.by
			from = append(from, m.from...)
		}
	}
	return by, from
}

// drawn returns all that reached the pattern at a point.
func drawn(marks []mark, p measure.Point) quantity.Length {
	var by quantity.Length
	for _, m := range marks {
		if covers(m.point, p) {
			by += m.by
		}
	}
	return by
}

func points(changes journal.Changes) []measure.Point {
	var out []measure.Point
	for _, c := range changes {
		out = append(out, c.Point)
	}
	return out
}
