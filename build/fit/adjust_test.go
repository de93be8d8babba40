package fit

import (
	"math/rand/v2"
	"testing"

	"hussif/content/measure"
	"hussif/content/quantity"
)

func TestAdjusted(t *testing.T) {
	lacing := Adjust{How: "lacing", At: "centre back", Size: quantity.Range{Least: 0, Most: 3 * inch}, MeasuredAt: inch, Points: []measure.Point{bust}}
	pins := Adjust{How: "pins", At: "front", Lap: true, Size: quantity.Range{Least: inch / 2, Most: 3 * inch / 2}, MeasuredAt: inch, Points: []measure.Point{bust}}
	ties := Adjust{How: "ties", At: "side", Size: quantity.Range{Least: 0, Most: inch}, Points: []measure.Point{bust}}
	for _, test := range []struct {
		name    string
		adjusts []Adjust
		garment quantity.Length // measured at a 1 in gap or lap
		words   string
		had     quantity.Length
	}{
		{"laced wider than it was measured", []Adjust{lacing}, 36 * inch, "fits: lace to a 1 1/2 in gap", inch / 2},
		{"laced as it was measured", []Adjust{lacing}, 36*inch + inch/2, "fits: lace to a 1 in gap", inch / 2},
		{"laced closed", []Adjust{lacing}, 37*inch + inch/2, "fits: lace closed", inch / 2},
		{"short of the middle, but within what is wanted", []Adjust{lacing}, 34*inch + inch/4, "fits: lace to a 3 in gap", inch / 4},
		{"short at its widest", []Adjust{lacing}, 33 * inch, "short by 1 in with a 3 in gap", -inch},
		{"ample when closed", []Adjust{lacing}, 40 * inch, "ample by 2 in with lacing closed", 3 * inch},
		{"too close at its widest", []Adjust{lacing}, 34*inch - inch/8, "too close to call (short by 1/8 in, error 7/16 in)", -inch / 8},
		{"lapped less", []Adjust{pins}, 36*inch + inch/4, "fits: pin with a 3/4 in lap", inch / 2},
		{"lapped more", []Adjust{pins}, 36*inch + 3*inch/4, "fits: pin with a 1 1/4 in lap", inch / 2},
		{"short at the least lap", []Adjust{pins}, 34*inch + inch/2, "short by 1 in with a 1/2 in lap", -inch},
		{"the first as far as it goes, then the next", []Adjust{lacing, pins}, 34*inch + inch/4, "fits: lace to a 3 in gap and pin with a 3/4 in lap", inch / 2},
		{"ties", []Adjust{ties}, 36 * inch, "fits: set the ties to a 1/2 in gap", inch / 2},
	} {
		t.Run(test.name, func(t *testing.T) {
			in := one(test.garment, 36*inch, quantity.Range{Least: 0, Most: inch})
			in.Adjusts = test.adjusts
			r := row(t, Compute(in), bust)
			if r.Words(inches) != test.words || r.Adjusted.Had != test.had {
				t.Errorf("got %q with %s of ease; want %q with %s", r.Words(inches), inches.Signed(r.Adjusted.Had), test.words, inches.Signed(test.had))
			}
			if laced := test.adjusts[0].Laced(); laced != (r.Caution() != "") {
				t.Errorf("caution %q", r.Caution())
			}
		})
	}
}

func TestNothingIsWornOutsideItsRange(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 5))
	some := func(most quantity.Length) quantity.Length { return quantity.Length(random.Int64N(int64(most))) }
	for range 1000 {
		in := one(30*inch+some(10*inch), 35*inch, quantity.Range{Least: -inch, Most: -inch + some(3*inch)})
		for range 1 + random.IntN(3) {
			least := some(2 * inch)
			in.Adjusts = append(in.Adjusts, Adjust{
				How: "lacing", Lap: random.IntN(2) == 0, Points: []measure.Point{bust},
				Size: quantity.Range{Least: least, Most: least + some(2*inch)}, MeasuredAt: some(4 * inch),
			})
		}
		r := row(t, Compute(in), bust)
		made := r.Garment.Length
		for _, s := range r.Adjusted.Settings {
			if s.Size < s.Adjust.Size.Least || s.Size > s.Adjust.Size.Most {
				t.Fatalf("set to %d of %v", s.Size, s.Adjust.Size)
			}
			if s.Adjust.Lap {
				made -= s.Size - s.Adjust.MeasuredAt
			} else {
				made += s.Size - s.Adjust.MeasuredAt
			}
		}
		if made-r.Body.Length != r.Adjusted.Had {
			t.Fatalf("worn like this it has %d, not %d", made-r.Body.Length, r.Adjusted.Had)
		}
		if wanted := r.Wanted.Ease; r.Verdict == Fits && (r.Adjusted.Had < wanted.Least || r.Adjusted.Had > wanted.Most) {
			t.Fatalf("called a fit with %d of %v", r.Adjusted.Had, wanted)
		}
		if had := r.Had; r.Delta < 0 && r.Adjusted.Had != had.Most || r.Delta > 0 && r.Adjusted.Had != had.Least {
			t.Fatalf("not at the nearest end: %d of %v", r.Adjusted.Had, had)
		}
	}
}

func TestAdjustsWithoutEaseNamed(t *testing.T) {
	in := one(36*inch, 36*inch, quantity.Range{})
	in.Wanted = nil
	in.Adjusts = []Adjust{{How: "lacing", Size: quantity.Range{Most: 2 * inch}, Points: []measure.Point{bust}}}
	r := row(t, Compute(in), bust)
	if r.Verdict != NoEase || r.Had != (quantity.Range{Least: 0, Most: 2 * inch}) || len(r.Adjusted.Settings) != 0 {
		t.Errorf("got %q, had %v", r.Words(inches), r.Had)
	}
}

// Whose figures are offered is tested in package measure; here, when none are.
func TestSuggestedEase(t *testing.T) {
	for _, test := range []struct {
		name    string
		garment string
		over    measure.Foundation
		point   measure.Point
		sources int
	}{
		{"a bodice: two sources that differ", "bodice", measure.Foundation{"shift"}, bust, 2},
		{"a bodice over stays", "bodice", measure.Foundation{"shift", "stays"}, bust, 0},
		{"a gown over a corset", "gown", measure.Foundation{"chemise", "spoon busk corset"}, waist, 0},
		{"a skirt over stays", "skirt", measure.Foundation{"shift", "stays"}, waist, 1},
		{"stays", "stays", measure.Foundation{"shift"}, measure.Point{Measure: "hip girth"}, 0},
	} {
		t.Run(test.name, func(t *testing.T) {
			in := one(0, 0, quantity.Range{})
			in.Kind, in.Foundation, in.Wanted = test.garment, test.over, nil
			in.Garment[0].Measured = []Reading{{test.point, exactly(40 * inch)}}
			in.Body[0].Over, in.Body[0].Readings = test.over, []Reading{{test.point, exactly(38 * inch)}}
			r := row(t, Compute(in), test.point)
			if r.Verdict != NoEase || len(r.Suggested) != test.sources {
				t.Errorf("%d suggestions with %q", len(r.Suggested), r.Words(inches))
			}
		})
	}
}
