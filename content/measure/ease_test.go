package measure

import (
	"testing"

	"hussif/content/quantity"

	"github.com/google/go-cmp/cmp"
)

// The figures are those of R. Robinson, Costume construction text, ch. 16, and
// of New Mexico State University, Guide C-228, table 1.
func TestSuggestEase(t *testing.T) {
	inches := func(least, most float64) quantity.Range {
		return quantity.Range{Least: quantity.Length(least * float64(quantity.Inch)), Most: quantity.Length(most * float64(quantity.Inch))}
	}
	for _, c := range []struct {
		garment, measure string
		want             []quantity.Range
	}{
		{"bodice", "bust girth", []quantity.Range{inches(1.5, 2), inches(3, 4)}},
		{"Evening gown", "bust girth", []quantity.Range{inches(1.5, 2), inches(3, 4)}},
		{"dress", "waist girth", []quantity.Range{inches(0.75, 1)}},
		{"dress", "natural waist girth", []quantity.Range{inches(0.75, 1)}},
		{"walking skirt", "natural waist girth", []quantity.Range{inches(0.5, 0.75)}},
		{"trousers", "waist girth", []quantity.Range{inches(0.5, 0.75)}},
		{"skirt", "hip girth", []quantity.Range{inches(2, 2.75)}},
		{"trousers", "thigh girth", []quantity.Range{inches(1, 1)}},
		{"cloak", "bust girth", nil},
		{"bodice", "wrist girth", nil},
		{"", "bust girth", nil},
	} {
		var got []quantity.Range
		for _, s := range SuggestEase(c.garment, c.measure) {
			got = append(got, s.Ease)
			if s.Measure != c.measure || s.Source == "" || s.AtLeast != (c.measure == "thigh girth") {
				t.Errorf("%s, %s: %+v", c.garment, c.measure, s)
			}
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s, %s (-want +got):\n%s", c.garment, c.measure, diff)
		}
	}
}

// Guide C-228, table 1: a bust of 36 in makes a pattern of 39 to 40 in.
func TestSuggestedEaseGivesThePublishedTotal(t *testing.T) {
	found := SuggestEase("bodice", "bust girth")
	ease := found[len(found)-1].Ease
	if least, most := 36*quantity.Inch+ease.Least, 36*quantity.Inch+ease.Most; least != 39*quantity.Inch || most != 40*quantity.Inch {
		t.Errorf("pattern of %d to %d nm, want 39 to 40 in", least, most)
	}
}

func TestEverySuggestionIsForAKnownMeasure(t *testing.T) {
	for _, s := range suggestions() {
		if _, ok := Standard().Measure(s.Measure); !ok {
			t.Errorf("no measure is called %q", s.Measure)
		}
	}
}
