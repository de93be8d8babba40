package main

import (
	"fmt"
	"strings"

	"hussif/build/sitting"
	"hussif/content/edtf"
	"hussif/content/measure"
)

// resume offers to go on where somebody stopped.
func (m *measuring) resume() (bool, error) {
	if m.state == "" {
		return false, nil
	}
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
	m.kept, m.day = *k, day
	on, err := m.ask.yes("go on with it? (no begins anew, without these)", true)
	if err == nil && !on {
		m.kept = kept{}
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
