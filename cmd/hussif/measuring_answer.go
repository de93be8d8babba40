package main

import (
	"slices"
	"strings"

	"hussif/build/sitting"
	"hussif/build/slip"
	"hussif/content/measure"
	"hussif/content/quantity"
)

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
