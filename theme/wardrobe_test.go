package theme

import (
	"slices"
	"testing"
)

func TestWardrobeByAnswer(t *testing.T) {
	var titles, garments, made []string
	for _, group := range wardrobe().Groups() {
		titles = append(titles, group.Title)
		for _, garment := range group.Garments {
			garments = append(garments, garment.Today.Build.Text)
			if garment.Made != nil {
				made = append(made, garment.Made.Build.Text+" "+garment.Made.Day)
			}
		}
	}
	for _, test := range []struct {
		what      string
		got, want []string
	}{
		{"groups", titles, []string{"Can be worn", "Can be worn, and is ample", "Too close to call: try it on", "Wants room first", "Not known"}},
		{"garments", garments, []string{"Blue petticoat", "Shift", "First jacket", "Striped linen jacket", "Promenade skirt"}},
		{"days of making", made, []string{"Shift 5 November 2023", "First jacket 2 March 2024", "Striped linen jacket 1 February 2026"}},
	} {
		if !slices.Equal(test.got, test.want) {
			t.Errorf("the %s are %q, want %q", test.what, test.got, test.want)
		}
	}
	if alone := wardrobe().Alone(); len(alone) != 1 || alone[0].Build.Text != "Old cap" {
		t.Errorf("without an answer for today are %v, want the old cap", alone)
	}
}

func TestWardrobeLosesNoGarment(t *testing.T) {
	w := Wardrobe{Own: []Answer{{Build: link("", "one")}, {Build: link("", "two"), Verdict: Verdict{Mark: "odd"}}, {Build: link("", "three"), Verdict: Verdict{Mark: "unknown"}}}}
	groups := w.Groups()
	if len(groups) != 1 || groups[0].Anchor != "unknown" || len(groups[0].Garments) != 3 {
		t.Errorf("the groups are %v, want all three where nothing is known", groups)
	}
	if groups := (Wardrobe{}).Groups(); groups != nil {
		t.Errorf("nobody's garments are %v", groups)
	}
}

// A garment that fits but is taken apart is no answer to "what can I wear".
func TestWardrobeThatWaits(t *testing.T) {
	groups := (Wardrobe{Own: []Answer{{Build: link("", "stays"), Verdict: Verdict{Mark: "fits"}, Waits: true}}}).Groups()
	if len(groups) != 1 || groups[0].Title != "Not ready to wear" {
		t.Errorf("the groups are %v, want the stays among what is not ready", groups)
	}
}
