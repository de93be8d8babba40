package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"hussif/build/sitting"
	"hussif/build/slip"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A measuring is one person being measured.
type measuring struct {
	say    *voice
	ask    *asker
	w      *workroom
	order  measureOrder
	person *journal.Person
	state  string // the file in which it is kept
	kept   kept
	day    edtf.Day
	list   *sitting.Sitting
	items  []sitting.Item
}

// asked has everything asked for and written.
func (m *measuring) asked() error {
	resumed, err := m.resume()
	if err != nil {
		return err
	}
	if !resumed {
		if err := m.begin(); err != nil {
			return err
		}
	}
	m.prepare()
	if err := m.writable(); err != nil {
		m.ask.sayf("mind: what you measure cannot be put into %s now, and will be printed for you to paste: %v", m.person.File.Name, err)
	}
	m.ask.sayf("An empty answer leaves a measure out, ? says again where the tape lies, back goes back by one, done")
	m.ask.sayf("ends the measuring, stop breaks off until another day.")
	if err := m.take(); err != nil {
		return err
	}
	return m.finish()
}

// resume offers to go on where somebody stopped.
func (m *measuring) resume() (bool, error) {
	k := loadKept(m.state)
	if k == nil || len(k.Answers) == 0 {
		return false, nil
	}
	day, err := edtf.ParseDay(k.Day)
	if err != nil {
		return false, nil
	}
	m.ask.sayf("The measuring of %s on %s over %s was broken off after %s:", m.person.Title, day, measure.Foundation(k.Over), number(len(k.Answers), "measure"))
	for _, a := range k.Answers {
		m.ask.sayf("  %s: %s", a.Name, a.Value)
	}
	on, err := m.ask.yes("go on with it? (no begins anew, without these)", true)
	if on {
		m.kept, m.day = *k, day
	}
	return on, err
}

// begin asks for the day, what is worn, and who measures.
func (m *measuring) begin() error {
	m.ask.sayf("Measuring %s.", m.person.Title)
	var err error
	if m.day, err = m.askDay(); err != nil {
		return err
	}
	last, measured := sitting.Last(m.w.journal, m.person, m.day)
	over, err := m.askOver(last.Over, measured)
	if err != nil {
		return err
	}
	by := m.order.by
	if !m.order.byGiven {
		question := "who measures? (may be left empty)"
		if last.By != "" {
			question = "who measures? (may be left empty; " + last.By + " the last time)"
		}
		if by, err = m.ask.line(question); err != nil {
			return err
		}
	}
	m.kept = kept{Version: keptVersion, Journal: absolute(m.w.dir), Person: m.person.ID, Day: m.day.String(), Over: over, By: by}
	return nil
}

func (m *measuring) askDay() (edtf.Day, error) {
	if m.order.dayGiven {
		return m.order.day, nil
	}
	for {
		text, err := m.ask.line("on which day? [" + m.order.day.String() + "]")
		if err != nil || text == "" {
			return m.order.day, err
		}
		day, err := edtf.ParseDay(text)
		if err == nil && day > m.order.day {
			err = fmt.Errorf("%s is yet to come", day)
		}
		if err == nil {
			return day, nil
		}
		m.ask.sayf("  %v", err)
	}
}

func (m *measuring) askOver(last measure.Foundation, known bool) ([]string, error) {
	if m.order.overGiven {
		return layers(m.order.over), nil
	}
	question := "over what, from the skin out?"
	switch {
	case known && len(last) > 0:
		question += " [" + strings.Join(last, ", ") + "]"
	case known:
		question += " [nothing]"
	}
	for {
		text, err := m.ask.line(question)
		switch {
		case err != nil:
			return nil, err
		case text == "" && known:
			return append([]string{}, last...), nil
		case text == "" || text == "?":
			m.ask.sayf("  name the layers under the tape with commas between, as in shift, stays; or say nothing for the unclothed body")
			continue
		}
		over := layers(text)
		layer, instead := m.stranger(over)
		if layer == "" {
			return over, nil
		}
		m.ask.sayf("  %q is worn nowhere else in the journal; did you mean %s?", layer, strings.Join(instead, " or "))
		if sure, err := m.ask.yes("  is it right as it is?", false); err != nil || sure {
			return over, err
		}
	}
}

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
		_, err = m.one(len(m.items) - 1)
		if err != nil {
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
	for {
		text, err := m.ask.line(question)
		if err != nil {
			return enough, err
		}
		switch strings.ToLower(text) {
		case "":
			if !answered {
				m.leaveOut(item.Point)
			}
			return onward, m.keep()
		case "-", "none":
			m.leaveOut(item.Point)
			return onward, m.keep()
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
			m.ask.sayf("  %s", d.Words(m.w.journal.Settings.Format))
			if sure, err := m.ask.yes("  sure?", false); err != nil {
				return enough, err
			} else if !sure {
				continue
			}
		} else if said := m.changed(r); said != "" {
			m.ask.sayf("  %s", said)
		}
		m.set(item, value)
		return onward, m.keep()
	}
}

// hint says where the tape lies, and what it said before.
func (m *measuring) hint(item sitting.Item) {
	if item.Measure.Taken != "" {
		m.ask.sayf("  %s", item.Measure.Taken)
	}
	if b := item.Before; b.Value.Length != 0 {
		text := m.w.journal.Settings.Format.Estimate(b.Value) + " on " + b.Day.String()
		if b.Others {
			text += " over " + item.Over.String()
		}
		if item.By != "" {
			text += ", by " + item.By
		}
		m.ask.sayf("  %s", text)
	}
	if len(item.For) > 0 {
		m.ask.sayf("  for %s", strings.Join(item.For, ", "))
	}
}

// reading reads an answer. The value is as it was typed, with the unit that a bare
// number has, so that it goes on meaning the same.
func (m *measuring) reading(item sitting.Item, text string) (r slip.Reading, value string, err error) {
	bare := m.w.journal.Settings.Unit
	v, err := quantity.ParseEstimate(text, bare)
	if err != nil {
		return slip.Reading{}, "", err
	}
	value = text
	if _, err := quantity.ParseEstimate(text, quantity.NoUnit); err != nil {
		if again, err := quantity.ParseEstimate(text+" "+bare.String(), quantity.NoUnit); err == nil && again == v {
			value = text + " " + bare.String()
		}
	}
	return slip.Reading{
		Point: item.Point, Class: item.Measure.Class, Value: v, Unit: slip.UnitOf(text, bare), Day: m.day,
		Before: item.Before, Errors: m.w.journal.Settings.Errors,
	}, value, nil
}

// changed says how a value differs from the one before; nothing where there is none.
func (m *measuring) changed(r slip.Reading) string {
	if !r.Value.Known() || r.Before.Value.Length == 0 {
		return ""
	}
	text := r.Compared(m.w.journal.Settings.Format)
	if r.Value.Length != r.Before.Value.Length && !r.Before.Others && r.Within() {
		text += ", within the error of measuring"
	}
	return text
}

func (m *measuring) set(item sitting.Item, value string) {
	m.leaveOut(item.Point)
	m.kept.LeftOut = slices.DeleteFunc(m.kept.LeftOut, func(s string) bool { return s == item.Point.String() })
	m.kept.Answers = append(m.kept.Answers, answer{Measure: item.Point.String(), Name: item.Name, Value: value})
}

func (m *measuring) leaveOut(p measure.Point) {
	m.kept.Answers = slices.DeleteFunc(m.kept.Answers, func(a answer) bool { return a.Measure == p.String() })
	if !slices.Contains(m.kept.LeftOut, p.String()) {
		m.kept.LeftOut = append(m.kept.LeftOut, p.String())
	}
}

// keep keeps what was answered so far: whoever closes the window loses nothing.
func (m *measuring) keep() error {
	if len(m.kept.Answers) == 0 {
		return forget(m.state)
	}
	return m.kept.save(m.state)
}

// ended says how a sitting ended that was broken off.
func (m *measuring) ended(err error) error {
	stopped := errors.Is(err, errStopped) || errors.Is(err, io.EOF) && m.ask.typed
	if !stopped && !errors.Is(err, io.EOF) && !errors.Is(err, errInterrupted) {
		return err
	}
	text := "stopped; nothing was measured"
	if n := len(m.kept.Answers); n > 0 {
		text = fmt.Sprintf("stopped; %s kept, and `hussif measure %s` goes on with it", number(n, "measure")+isOrAre(n), m.person.ID.Name())
	}
	if !stopped {
		return errors.New(text)
	}
	m.ask.sayf("%s", text)
	return nil
}

func isOrAre(n int) string {
	if n == 1 {
		return " is"
	}
	return " are"
}
