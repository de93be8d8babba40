package worksheet_test

import (
	"math"
	"strings"
	"testing"

	"hussif/build/worksheet"
	"hussif/content/quantity"
)

var (
	inches      = quantity.Format{Unit: quantity.Inches, Fraction: 8}
	centimetres = quantity.Format{Unit: quantity.Centimetres}
)

// entries reads "name: value; name: value".
func entries(text string) []worksheet.Entry {
	var all []worksheet.Entry
	for _, line := range strings.Split(text, ";") {
		if name, value, ok := strings.Cut(line, ":"); ok {
			e := worksheet.Entry{Name: strings.TrimSpace(name)}
			for _, item := range strings.Split(value, ",") {
				e.Items = append(e.Items, worksheet.Item{Text: strings.TrimSpace(item)})
			}
			all = append(all, e)
		}
	}
	return all
}

// work works a sheet out and fails where it has faults.
func work(t testing.TB, name, given string, f quantity.Format) *worksheet.Paper {
	t.Helper()
	p := try(t, name, given, f)
	for _, fault := range p.Faults {
		t.Fatalf("%s with %s: %s", name, given, fault.Text)
	}
	return p
}

func try(t testing.TB, name, given string, f quantity.Format) *worksheet.Paper {
	t.Helper()
	s, instead := worksheet.Find(name)
	if s == nil {
		t.Fatalf("no sheet is called %q; perhaps %v", name, instead)
	}
	return worksheet.Work(s, entries(given), f)
}

func answer(t testing.TB, p *worksheet.Paper, name string) worksheet.Answer {
	t.Helper()
	for _, a := range p.Answers {
		if a.Name == name {
			return a
		}
	}
	t.Fatalf("%s answers nothing about %q: %+v", p.Title, name, p.Answers)
	return worksheet.Answer{}
}

// figure returns an answer as a number: a length in inches or in centimetres.
func figure(t testing.TB, p *worksheet.Paper, name string, f quantity.Format) float64 {
	t.Helper()
	switch a := answer(t, p, name); a.Kind {
	case worksheet.ACount:
		return float64(a.Count)
	case worksheet.ANumber:
		return a.Number
	default:
		return float64(a.Length) / float64(f.Unit.Length())
	}
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// block reads the lines of a block that has no faults.
func block(text string) []worksheet.Entry {
	var all []worksheet.Entry
	for _, line := range strings.Split(text, "\n") {
		name, value, _ := strings.Cut(line, ": ")
		sheet := worksheet.Input{Name: name, Into: new(worksheet.Length)}
		if strings.ContainsAny(value, "[{") {
			sheet.Into = new(worksheet.Lengths)
		}
		all = append(all, sheet.Typed(value))
	}
	return all
}
