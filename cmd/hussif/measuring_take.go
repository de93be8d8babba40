package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"hussif/build/sitting"
	"hussif/build/slip"
	"hussif/content/measure"
)

// prepare lists what to ask, those that were answered already at their places.
func (m *measuring) prepare() {
	m.list = sitting.New(m.w.journal, m.person, measure.Foundation(m.kept.Over), m.day)
	m.items = m.list.Items()
	for _, a := range m.kept.Answers {
		p, ok := m.w.journal.Settings.Catalogue.Find(a.Measure)
		if ok && !slices.ContainsFunc(m.items, func(i sitting.Item) bool { return i.Point == p }) {
			m.items = append(m.items, m.list.Item(p))
		}
	}
}

// What an answer asks for.
type wish int

const (
	onward wish = iota
	backward
	enough
)

// take asks for every measure on the list, and then for others by name.
func (m *measuring) take() error {
	i := 0
	for i < len(m.items) && m.settled(m.items[i].Point) {
		i++
	}
	for {
		if i == len(m.items) {
			wish, err := m.another()
			switch {
			case err != nil || wish == enough:
				return err
			case wish == backward:
				i = max(0, i-1)
			}
			if i == len(m.items) {
				continue
			}
		}
		wish, err := m.one(i)
		switch {
		case err != nil || wish == enough:
			return err
		case wish == onward:
			i++
		case i > 0:
			i--
		default:
			m.ask.sayf("  this is the first")
		}
	}
}

// settled reports whether a measure was answered or left out.
func (m *measuring) settled(p measure.Point) bool {
	_, ok := m.value(p)
	return ok || slices.Contains(m.kept.LeftOut, p.String())
}

func (m *measuring) value(p measure.Point) (answer, bool) {
	i := slices.IndexFunc(m.kept.Answers, func(a answer) bool { return a.Measure == p.String() })
	if i < 0 {
		return answer{}, false
	}
	return m.kept.Answers[i], true
}

// another asks for a measure that is not on the list and puts it there.
func (m *measuring) another() (wish, error) {
	for {
		name, err := m.ask.line("another measure, by its name? (empty ends the measuring)")
		if err != nil {
			return enough, err
		}
		switch strings.ToLower(name) {
		case "", "done":
			return enough, nil
		case "back":
			return backward, nil
		case "?":
			m.ask.sayf("  name it as in bust girth, wrist, nape to waist or left bicep")
			continue
		}
		p, err := m.point(name)
		if err != nil {
			m.ask.sayf("  %v", err)
			continue
		}
		m.kept.LeftOut = slices.DeleteFunc(m.kept.LeftOut, func(s string) bool { return s == p.String() })
		m.items = slices.DeleteFunc(m.items, func(i sitting.Item) bool { return i.Point == p })
		m.items = append(m.items, m.list.Item(p))
		if wish, err := m.one(len(m.items) - 1); err != nil || wish == enough {
			return enough, err
		}
	}
}

// point finds the measure that a name stands for.
func (m *measuring) point(name string) (measure.Point, error) {
	catalogue := m.w.journal.Settings.Catalogue
	if p, ok := catalogue.Find(name); ok {
		return p, nil
	}
	text := fmt.Sprintf("no measure is called %q", name)
	if instead := catalogue.Nearest(name); len(instead) > 0 {
		text += "; did you mean " + strings.Join(instead, " or ") + "?"
	}
	return measure.Point{}, errors.New(text)
}

// one asks for one measure.
func (m *measuring) one(i int) (wish, error) {
	item := m.items[i]
	m.ask.sayf("")
	m.ask.sayf("%d of %d: %s", i+1, len(m.items), item.Point)
	m.hint(item)
	given, answered := m.value(item.Point)
	question := item.Name + "?"
	if answered {
		question += " [" + given.Value + "]"
	}
	other := "" // typed where "sure?" was asked
	for {
		text, err := other, error(nil)
		if other = ""; text == "" {
			text, err = m.ask.line(question)
		}
		if err != nil {
			return enough, err
		}
		switch strings.ToLower(text) {
		case "":
			if !answered {
				m.leaveOut(item.Point)
			}
			m.keep()
			return onward, nil
		case "-", "none":
			m.leaveOut(item.Point)
			m.keep()
			return onward, nil
		case "back":
			return backward, nil
		case "done":
			return enough, nil
		case "?":
			m.hint(item)
			continue
		}
		r, value, err := m.reading(item, text)
		if err != nil {
			m.ask.sayf("  %v", err)
			continue
		}
		if d, doubtful := slip.Look(r); doubtful && !m.order.sure {
			var sure bool
			if sure, other, err = m.sure(d); err != nil {
				return enough, err
			} else if !sure {
				continue
			}
		} else if said := m.changed(r); said != "" {
			m.ask.sayf("  %s", said)
		}
		m.set(item, value)
		m.keep()
		return onward, nil
	}
}

// sure asks whether a doubtful value is right. Whoever answers with another value
// has said no, and need not say it twice.
func (m *measuring) sure(d slip.Doubt) (sure bool, other string, err error) {
	m.ask.sayf("  %s", d.Words(m.w.journal.Settings.Format))
	text, err := m.ask.line("  sure? [y/N]")
	switch strings.ToLower(text) {
	case "y", "yes":
		return true, "", err
	case "", "n", "no":
		return false, "", err
	}
	return false, text, err
}
