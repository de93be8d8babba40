package journal

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/content/source"
)

func settingsOf(t testing.TB, text string) (*Settings, []string) {
	t.Helper()
	f, findings := source.Load(SettingsFile, []byte(text))
	if len(findings) > 0 {
		t.Fatal(findings[0].Text)
	}
	s, findings := ParseSettings(f)
	return s, lines(findings)
}

func TestSettings(t *testing.T) {
	s := everyField(t).Settings
	if s.Title != "The Harbour Needles" || s.Unit != quantity.Centimetres || s.Currency != "EUR" || s.Circa != 4 ||
		s.Keep != 6*quantity.Millimetre || s.Share != Circle {
		t.Errorf("got %+v", s)
	}
	if s.Format != (quantity.Format{Unit: quantity.Centimetres, Fraction: 16}) || s.Customs.Circa != 4 {
		t.Errorf("shown as %+v, read by %+v", s.Format, s.Customs)
	}
	if p, ok := s.Catalogue.Find("stomacher"); !ok || p.Measure != "over stomacher" {
		t.Errorf("stomacher is %v", p)
	}
	if p, ok := s.Catalogue.Find("waist"); !ok || p != waist {
		t.Errorf("waist is %v", p)
	}
	if m, ok := s.Catalogue.Measure("cuff depth"); !ok || m.Class != measure.SegmentLength {
		t.Errorf("cuff depth is %+v", m)
	}
	if m, _ := s.Catalogue.Measure("over stomacher"); m.Class != measure.LargeGirth || m.Paired || m.Taken == "" {
		t.Errorf("over stomacher is %+v", m)
	}
	// Ease stands above the measures in the file, and is in the journal's unit.
	want := GarmentEase{"jacket": {
		{Point: bust, Ease: quantity.Range{Most: 2 * cm}},
		{Point: waist, Ease: quantity.Range{Least: cm, Most: cm}, Accepts: AcceptsAmple},
	}}
	if diff := cmp.Diff(want, s.Ease, values); diff != "" {
		t.Error(diff)
	}
	errors := measure.Errors{measure.LargeGirth: 8 * quantity.Millimetre, measure.LaidFlat: 3 * quantity.Millimetre}
	if diff := cmp.Diff(errors, s.Errors); diff != "" {
		t.Error(diff)
	}
}

// A journal without a settings file is kept in inches and shows nothing to others.
func TestNoSettings(t *testing.T) {
	empty, findings := settingsOf(t, "")
	if findings != nil {
		t.Error(findings)
	}
	without, _ := ParseSettings(nil)
	for _, s := range []*Settings{empty, without} {
		if s.Unit != quantity.Inches || s.Format != (quantity.Format{Unit: quantity.Inches, Fraction: 8}) || s.Share != Self {
			t.Errorf("got %+v", s)
		}
		if _, ok := s.Catalogue.Find("bust girth"); !ok {
			t.Error("the standard's measures are missing")
		}
	}
}

func TestUnitOfBareNumbers(t *testing.T) {
	for unit, want := range map[string]quantity.Length{
		"in": 30 * quantity.Inch, "inches": 30 * quantity.Inch, "cm": 30 * cm, "mm": 30 * quantity.Millimetre,
	} {
		j := sound(t, "-- journal.yaml --\nunit: "+unit+"\n-- notes/2026-03-01.md --\n---\nmeasured: {bust: 30}\n---\n")
		if got := j.Notes()[0].Measured[0].Value.Length; got != want {
			t.Errorf("30 in a journal kept in %s is %d nm", unit, got)
		}
	}
}

func TestSettingsFaults(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"an unknown field", "uint: in", []string{`journal.yaml:1:1: error: no field of the journal's settings is called "uint" [unknown field] did you mean "unit"?`}},
		{"a unit for cloth", "unit: yd", []string{`journal.yaml:1:7: error: a journal cannot be kept in "yd" [not one of these] did you mean "in", "cm" or "mm"?`}},
		{"no currency", "currency: gold", []string{`journal.yaml:1:11: error: "gold" is no currency [not money] did you mean "EUR", "GBP" or "USD"?`}},
		{"years", "circa: some years", []string{`journal.yaml:1:8: error: "some" is not a whole number from 1 up [not a count]`}},
		{"a class", "errors: {large grith: 9 mm}", []string{`journal.yaml:1:10: error: "large grith" is no class of measure [not one of these] did you mean "large girth"?`}},
		{"an error below nothing", "errors: {large girth: -9 mm}", []string{`journal.yaml:1:23: error: an error of measuring cannot be less than nothing [not a length]`}},
		{"a class of one's own measure", "measures: [{name: cuff depth, class: depth of cuff}]", []string{
			`journal.yaml:1:38: error: "depth of cuff" is no class of measure [not one of these] one of: small girth, large girth, height, breadth, segment length, body depth, head, hand, foot`}},
		{"a measure that exists", "measures:\n  - {name: bust girth, class: large girth}", []string{
			`journal.yaml:2:12: error: "bust girth" is known already as "bust girth"; leave it out, or give this one a name of its own [measure of one's own]`}},
		{"a short name for nothing", "short names:\n  waist: wast girth", []string{
			`journal.yaml:2:3: error: "waist" is to stand for "wast girth", but no measure is called that [measure of one's own] did you mean "waist girth"?`}},
		{"ease at an unknown measure", "ease: {jacket: {wast: 1 in}}", []string{
			`journal.yaml:1:17: error: no measure is called "wast" [unknown measure] did you mean "waist"?`}},
		{"words where fields should be", "inches", []string{"journal.yaml:1:1: error: a single value stands where the journal's settings should [wrong shape] write it as `title: ...`"}},
		{"a list of short names", "short names: [waist]", []string{"journal.yaml:1:14: error: a list stands where a group of fields should [wrong shape] write `waist: waist girth` and so on, a line each"}},
		{"no YAML", "unit: in\n\ttitle: x", []string{"journal.yaml:2:1: error: the fields cannot be read from about here: found a tab character that violates indentation [not YAML] indent with blanks, not tabs, and put a value that begins with @, % or ` in quotes"}},
		{"all at once", "unit: in\nunit: cm\nshare: everyone\ncirca: 0", []string{
			`journal.yaml:2:1: error: "unit" is given twice [given twice] keep one of the two`,
			`journal.yaml:3:8: error: "everyone" is not an audience [not one of these] one of: self, circle, public`,
			`journal.yaml:4:8: error: "0" is not a whole number from 1 up [not a count]`,
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, got := settingsOf(t, c.text)
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
			if s.Unit == quantity.NoUnit {
				t.Error("there is no unit to go on with")
			}
		})
	}
}
