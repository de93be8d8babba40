package wardrobe

import (
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/content/measure"
)

// ToDo says what to measure or to write down for a surer answer; it is empty where
// all that was asked is known.
func (g Garment) ToDo() string {
	var said []string
	for _, m := range g.missing() {
		said = append(said, m.Words())
	}
	if said == nil && len(g.Table.Rows) == 0 {
		return "measure the garment, and name the ease wanted"
	}
	return strings.Join(said, "; ")
}

// missing returns what is missing at the measures asked for, what asks for the same
// to be done together.
func (g Garment) missing() []fit.Missing {
	var todo []fit.Missing
	for _, m := range g.Table.Missed {
		points := m.Points
		if g.Asked > 0 {
			points = slices.DeleteFunc(slices.Clone(points), func(p measure.Point) bool { return !g.asks(p) })
		}
		if len(points) == 0 {
			continue
		}
		m.Why, m.Points = action(m.Why), points
		if i := slices.IndexFunc(todo, func(t fit.Missing) bool { return t.Why == m.Why }); i >= 0 {
			todo[i].Points = append(slices.Clip(todo[i].Points), m.Points...)
		} else {
			todo = append(todo, m)
		}
	}
	return todo
}

// asks reports whether an ease is wanted at a point.
func (g Garment) asks(p measure.Point) bool {
	return slices.ContainsFunc(g.Table.Rows, func(r fit.Row) bool { return r.Point == p && asked(&r) })
}

func asked(r *fit.Row) bool { return r.Wanted != nil && r.Wanted.Named }

// action returns one verdict for all those that ask for the same to be done.
func action(v fit.Verdict) fit.Verdict {
	switch v {
	case fit.GarmentLater, fit.UnknownGarment:
		return fit.NoGarment
	case fit.NoBodyOver, fit.BodyLater, fit.UnknownBody:
		return fit.NoBody
	}
	return v
}
