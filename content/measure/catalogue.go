package measure

import "slices"

// A Catalogue knows measures by their names and aliases. It never changes once
// made, and may be shared. The zero Catalogue knows none.
type Catalogue struct {
	measures []Measure
	means    map[string]meaning // by folded name or alias
}

type meaning struct {
	measure int
	fixed   bool // the measure's own name, or said by a journal
}

// Standard returns the catalogue of the measures in the standards and of those
// a maker of period garments takes besides.
func Standard() Catalogue {
	c := Catalogue{measures: standardMeasures()}
	c.means = make(map[string]meaning, 4*len(c.measures))
	for i, m := range c.measures {
		for _, alias := range m.Aliases {
			c.means[keyOf(alias)] = meaning{measure: i}
		}
	}
	for i, m := range c.measures {
		c.means[keyOf(m.Name)] = meaning{measure: i, fixed: true}
	}
	return c
}

// Find returns the point a maker means by a name or alias. Capitals, spacing,
// hyphens and the plural make no difference. Before or after the name of a
// paired measure a side may stand: "left bicep", "bicep, left", "bicep (L)".
func (c Catalogue) Find(name string) (Point, bool) {
	var buf [64]byte
	f := fold(buf[:0], name)
	if rest, side := f.withoutSide(); side != Both {
		if m, ok := c.means[string(rest)]; ok && c.measures[m.measure].Paired {
			return Point{Measure: c.measures[m.measure].Name, Side: side}, true
		}
	}
	m, ok := c.means[string(f.key)]
	if !ok {
		return Point{}, false
	}
	return Point{Measure: c.measures[m.measure].Name}, true
}

// withoutSide takes a side off the front or the back of a name.
func (f folded) withoutSide() ([]byte, Side) {
	if side, ok := sideOf(string(f.key[:f.first])); ok {
		return f.key[f.first:], side
	}
	if side, ok := sideOf(string(f.key[f.last:])); ok {
		return f.key[:f.last], side
	}
	return f.key, Both
}

// Measure returns the measure of that canonical name, as it stands in a [Point].
func (c Catalogue) Measure(name string) (Measure, bool) {
	var buf [64]byte
	m, ok := c.means[string(fold(buf[:0], name).key)]
	if !ok || c.measures[m.measure].Name != name {
		return Measure{}, false
	}
	return c.measures[m.measure].clone(), true
}

// All returns every measure, part of the body by part, a journal's own last.
func (c Catalogue) All() []Measure {
	all := slices.Clone(c.measures)
	for i := range all {
		all[i] = all[i].clone()
	}
	return all
}

func (m Measure) clone() Measure {
	m.Aliases = slices.Clone(m.Aliases)
	return m
}
