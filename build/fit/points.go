package fit

import (
	"slices"

	"hussif/content/measure"
)

// points returns the measures that are wanted, then those that were taken of the
// garment, with a row for each side where anything names one.
func (c *computation) points() []measure.Point {
	var names []string
	add := func(p measure.Point) {
		if !slices.Contains(names, p.Measure) {
			names = append(names, p.Measure)
		}
	}
	for _, w := range c.Wanted {
		add(w.Point)
	}
	for _, e := range c.garment {
		for _, r := range e.Measured {
			add(r.Point)
		}
	}
	sided := c.sided()
	var points []measure.Point
	for _, name := range names {
		points = append(points, sides(name, sided[name])...)
	}
	return points
}

// sides returns the points of a measure that are looked at.
func sides(name string, each bool) []measure.Point {
	if !each {
		return []measure.Point{{Measure: name}}
	}
	return []measure.Point{{Measure: name, Side: measure.Left}, {Measure: name, Side: measure.Right}}
}

// apart is the measures of which anything names one side.
type apart map[string]bool

func (a apart) note(p measure.Point) {
	if p.Side != measure.Both {
		a[p.Measure] = true
	}
}

func (a apart) noteAll(readings []Reading) {
	for _, r := range readings {
		a.note(r.Point)
	}
}

// sided returns the measures of which anything names one side.
func (c *computation) sided() apart {
	found := make(apart)
	for _, e := range c.garment {
		found.noteAll(e.Measured)
		for _, f := range e.Effects {
			found.note(f.Point)
		}
		for _, p := range e.Unsure {
			found.note(p)
		}
	}
	for _, s := range c.body {
		found.noteAll(s.Readings)
	}
	for _, w := range c.Wanted {
		found.note(w.Point)
	}
	for _, a := range c.Adjusts {
		for _, p := range a.Points {
			found.note(p)
		}
	}
	return found
}
