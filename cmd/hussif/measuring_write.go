package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"hussif/build/sitting"
	"hussif/build/slip"
	"hussif/content/amend"
	"hussif/content/front"
	"hussif/content/measure"
)

// given takes the measures that were named at the prompt, and asks nothing that has
// an answer already.
func (m *measuring) given() error {
	m.day = m.order.day
	last, measured := sitting.Last(m.w.journal, m.person, m.day)
	over := append([]string{}, last.Over...)
	switch {
	case m.order.overGiven:
		over = layers(m.order.over)
	case !measured:
		return fmt.Errorf("%s was not measured before; say what is worn under the tape with --over, as in --over shift,stays or --over nothing", m.person.Title)
	}
	if layer, instead := m.stranger(over); layer != "" {
		fmt.Fprintf(m.say.Err, "hussif: %q is worn nowhere else in the journal; did you mean %s?\n", layer, strings.Join(instead, " or "))
	}
	m.kept = kept{Day: m.day.String(), Over: over, By: m.order.by}
	m.list = sitting.New(m.w.journal, m.person, measure.Foundation(over), m.day)
	var doubts, changes []string
	for _, text := range m.order.readings {
		name, value, ok := strings.Cut(text, "=")
		if !ok {
			return fmt.Errorf("%q is no measure with its value; write it as in \"waist=29 in\"", text)
		}
		p, err := m.point(strings.TrimSpace(name))
		if err != nil {
			return err
		}
		item := m.list.Item(p)
		r, value, err := m.reading(item, strings.TrimSpace(value))
		if err != nil {
			return fmt.Errorf("%s: %w", p, err)
		}
		if _, twice := m.value(p); twice {
			return fmt.Errorf("%s is given twice; keep one of the two", p)
		}
		if d, doubtful := slip.Look(r); doubtful {
			doubts = append(doubts, p.String()+": "+d.Words(m.w.journal.Settings.Format))
		}
		if said := m.changed(r); said != "" {
			changes = append(changes, p.String()+": "+said)
		}
		m.items = append(m.items, item)
		m.set(item, value)
	}
	if err := m.doubted(doubts); err != nil {
		return m.ended(err)
	}
	if err := m.write(); err != nil {
		return err
	}
	for _, c := range changes {
		m.say.sayf("  %s", c)
	}
	return nil
}

// doubted has somebody who can be asked say that values are right; whoever cannot
// says so with a flag.
func (m *measuring) doubted(doubts []string) error {
	if len(doubts) == 0 || m.order.sure {
		return nil
	}
	if !m.ask.typed {
		return fmt.Errorf("%s (if that is right, say so with --sure)", strings.Join(doubts, "; "))
	}
	for _, d := range doubts {
		m.ask.sayf("%s", d)
	}
	if sure, err := m.ask.yes("sure?", false); err != nil {
		return err
	} else if !sure {
		return errors.New("nothing was written")
	}
	return nil
}

// entry returns the session as it is to be written, its measures in the order in
// which they were asked for.
func (m *measuring) entry() front.Node {
	fields := []front.Field{
		{Key: "date", Value: amend.Text(m.day.String())},
		{Key: "over", Value: amend.List(m.kept.Over...)},
	}
	if m.kept.By != "" {
		fields = append(fields, front.Field{Key: "by", Value: amend.Text(m.kept.By)})
	}
	for _, item := range m.items {
		if a, ok := m.value(item.Point); ok {
			fields = append(fields, front.Field{Key: a.Name, Value: amend.Text(a.Value)})
		}
	}
	return amend.Group(fields...)
}

const measuredField = "measured"

func (m *measuring) file() string {
	return filepath.Join(m.w.dir, filepath.FromSlash(m.person.File.Name))
}

// writable reports why the page cannot take a session, if so: better before twenty
// questions than after.
func (m *measuring) writable() error {
	data, err := os.ReadFile(m.file())
	if err != nil {
		return err
	}
	_, err = amend.Append(m.person.File.Name, data, measuredField, amend.Group(front.Field{Key: "date", Value: amend.Text(m.day.String())}))
	return err
}

// finish shows the session and has it written.
func (m *measuring) finish() error {
	if len(m.kept.Answers) == 0 {
		m.ask.sayf("nothing was measured, so nothing is written")
		return nil
	}
	m.ask.sayf("")
	m.paste()
	if yes, err := m.ask.yes("add this to "+m.person.File.Name+"?", true); err != nil {
		return err
	} else if !yes {
		return errStopped
	}
	if err := m.write(); err != nil {
		if m.state != "" {
			m.ask.sayf("The answers are kept too; `hussif measure %s` offers them again.", m.person.ID.Name())
		}
		return err
	}
	if m.state == "" {
		return nil
	}
	return forget(m.state)
}

// write adds the session to the page as it is now on disk. Where that cannot be
// done the session is printed to be pasted by hand.
func (m *measuring) write() error {
	data, err := os.ReadFile(m.file())
	if err != nil {
		return m.toPaste(err)
	}
	text, err := amend.Append(m.person.File.Name, data, measuredField, m.entry())
	if err != nil {
		return m.toPaste(err)
	}
	if err := rewrite(m.file(), data, text); err != nil {
		return m.toPaste(err)
	}
	m.say.sayf("%s: %s of %s over %s", m.person.File.Name, number(len(m.kept.Answers), "measure"), m.day, measure.Foundation(m.kept.Over))
	return nil
}

func (m *measuring) toPaste(err error) error {
	m.say.sayf("This could not be written; add it to %s by hand:", m.person.File.Name)
	m.paste()
	return fmt.Errorf("%s stays as it was: %w", m.person.File.Name, err)
}

// paste prints the session as it is to be written.
func (m *measuring) paste() {
	m.say.sayf("%s", strings.TrimSuffix(amend.YAML(measuredField, m.entry()), "\n"))
}
