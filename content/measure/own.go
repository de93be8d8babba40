package measure

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// A Fault is one thing wrong with what a journal says about its measures.
type Fault struct {
	Name    string   // the measure, alias or short form it is about, as written
	Text    string   // what is wrong, in the maker's words
	Instead []string // what could stand there, best first
}

// With returns a catalogue that also knows a journal's own measures, and in
// which each of its short forms stands for the measure it is given: "waist" for
// "waist girth", say. What a journal says wins over an alias of the catalogue,
// but never over the name of a measure, which must mean the same in every
// journal. What cannot be taken in is left out and told as a fault; own
// measures come first, in their order, then the short forms by alphabet. A
// measure without a source is from "this journal".
func (c Catalogue) With(own []Measure, shorts map[string]string) (Catalogue, []Fault) {
	next := Catalogue{measures: c.All(), means: maps.Clone(c.means)}
	if next.means == nil {
		next.means = make(map[string]meaning)
	}
	var faults []Fault
	first := len(next.measures)
	for _, m := range own {
		faults = append(faults, next.add(m.clone())...)
	}
	// Aliases come after all names: a name given further down must win over an
	// alias given further up.
	for i := first; i < len(next.measures); i++ {
		aliases := next.measures[i].Aliases
		next.measures[i].Aliases = nil
		for _, alias := range aliases {
			faults = append(faults, next.shorten(alias, i)...)
		}
	}
	for _, short := range slices.Sorted(maps.Keys(shorts)) {
		faults = append(faults, next.stand(short, shorts[short])...)
	}
	return next, faults
}

// add takes in a measure of the journal's own; its aliases are not looked at.
func (c *Catalogue) add(m Measure) []Fault {
	key := keyOf(m.Name)
	if key == "" {
		return []Fault{{Name: m.Name, Text: "a measure of your own needs a name"}}
	}
	if !m.Class.valid() {
		f := Fault{Name: m.Name, Text: fmt.Sprintf("%q does not say what kind of measure it is, which sets how far a reading may be off", m.Name)}
		for _, class := range Classes() {
			f.Instead = append(f.Instead, class.String())
		}
		return []Fault{f}
	}
	if f, ok := sided(m.Name); ok {
		return []Fault{f}
	}
	if known, ok := c.means[key]; ok && known.fixed {
		return []Fault{{Name: m.Name, Text: fmt.Sprintf("%q is known already as %q; leave it out, or give this one a name of its own", m.Name, c.measures[known.measure].Name)}}
	}
	if m.Source == "" {
		m.Source = thisJournal
	}
	c.forget(key)
	c.means[key] = meaning{measure: len(c.measures), fixed: true}
	c.measures = append(c.measures, m)
	return nil
}

// sided refuses a name that begins or ends with a side, which could be taken
// for one side of another measure.
func sided(name string) (Fault, bool) {
	rest, side := fold(nil, name).withoutSide()
	if side == Both || len(rest) == 0 {
		return Fault{}, false
	}
	f := Fault{Name: name, Text: fmt.Sprintf("%q names a side; name the measure without it, and say the side where it is measured", name)}
	if words, side := withoutSide(wordsOf(name)); side != Both {
		f.Instead = []string{strings.Join(words, " ")}
	}
	return f, true
}

// stand makes a short form stand for the measure of that name.
func (c *Catalogue) stand(short, name string) []Fault {
	point, ok := c.Find(name)
	switch {
	case !ok:
		return []Fault{{Name: short, Text: fmt.Sprintf("%q is to stand for %q, but no measure is called that", short, name), Instead: c.Nearest(name)}}
	case point.Side != Both:
		return []Fault{{Name: short, Text: fmt.Sprintf("%q is to stand for %q, which is one side only; a short form stands for both", short, name), Instead: []string{point.Measure}}}
	}
	return c.shorten(short, c.means[keyOf(point.Measure)].measure)
}

// shorten makes an alias mean the measure at that place.
func (c *Catalogue) shorten(alias string, measure int) []Fault {
	key := keyOf(alias)
	if key == "" {
		return []Fault{{Name: alias, Text: fmt.Sprintf("a short form for %q needs a name", c.measures[measure].Name)}}
	}
	if f, ok := sided(alias); ok {
		return []Fault{f}
	}
	known, ok := c.means[key]
	if ok && known.measure == measure {
		c.means[key] = meaning{measure: measure, fixed: true}
		return nil
	}
	if ok && known.fixed {
		return []Fault{{Name: alias, Text: fmt.Sprintf("%q cannot be short for %q: it already means %q", alias, c.measures[measure].Name, c.measures[known.measure].Name)}}
	}
	c.forget(key)
	c.means[key] = meaning{measure: measure, fixed: true}
	c.measures[measure].Aliases = append(c.measures[measure].Aliases, alias)
	return nil
}

// forget takes an alias away from the measure that has it.
func (c *Catalogue) forget(key string) {
	known, ok := c.means[key]
	if !ok {
		return
	}
	m := &c.measures[known.measure]
	m.Aliases = slices.DeleteFunc(m.Aliases, func(alias string) bool { return keyOf(alias) == key })
}
