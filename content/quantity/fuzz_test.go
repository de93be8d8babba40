package quantity_test

import (
	"testing"
	"time"

	. "hussif/content/quantity"
)

// finest shows lengths to steps so small that little is lost.
var finest = []Format{{Unit: Inches, Fraction: 64}, {Unit: Centimetres}, {Unit: Metres}, {Unit: Yards, Fraction: 64}}

// slack is the most that one of the finest formats loses: half of 1/64 yd.
const slack = Yard / 128

// edge is where rounding may lead beyond what a parser reads.
const edge = 1_000_000*Metre - Yard

// seed gives a fuzz target every form alone and joined with the next.
func seed(f *testing.F, forms ...string) {
	for i, form := range forms {
		f.Add(form, 1)
		f.Add(form, 0)
		next := forms[(i+1)%len(forms)]
		f.Add(form+next, 1)
		f.Add(form+" "+next, 5)
		f.Add(form+" to "+next, 1)
		f.Add(form+"-"+next, 1)
	}
}

var lengthForms = []string{
	"37 1/2 in", `37½"`, "37 ½ in", "5/8in", "95,3 cm", "952mm", "2 1/4 yd", "1 ft 3 in", `3' 2"`, "3’2”", "1 m 20 cm", "37-1/2 in", "-1/4 in", "−1/4 in",
	"+1/2 in", "1\u20442 inches", "⅓ yd", "1\u00a0nail", "2 English ells", "1/3 in", "1,200 mm", "1.250,5", "1/0", "99999999999999999999", "\xff", "",
}

// readsBack fails unless the text, which showed a length, is read as nearly that.
func readsBack(t *testing.T, text string, unit Unit, want Length) {
	t.Helper()
	got, err := ParseLength(text, unit)
	if err != nil || max(got-want, want-got) > slack {
		t.Errorf("%d nm is shown as %q, which is read as %d, %v", want, text, got, err)
	}
}

func FuzzParseLength(f *testing.F) {
	seed(f, lengthForms...)
	f.Fuzz(func(t *testing.T, text string, bare int) {
		l, err := ParseLength(text, Unit(bare))
		if err != nil {
			sound(t, text, err, with(ParseLength, Unit(bare)))
			return
		}
		if max(l, -l) > edge {
			return
		}
		for _, f := range finest {
			readsBack(t, f.Length(l), NoUnit, l)
			readsBack(t, f.Signed(l), NoUnit, l)
			readsBack(t, f.Other(l), NoUnit, l)
			readsBack(t, f.Bare(l), f.Unit, l)
		}
	})
}

func FuzzParseUnit(f *testing.F) {
	seed(f, "in", `"`, "''", "English ell", "yd.", "centimetres")
	f.Fuzz(func(t *testing.T, text string, _ int) {
		unit, ok := ParseUnit(text)
		if ok != (unit != NoUnit) {
			t.Errorf("%q is %v, %v", text, unit, ok)
		}
		if again, _ := ParseUnit(unit.String()); again != unit {
			t.Errorf("%q is %v, which is read as %v", text, unit, again)
		}
	})
}

func FuzzParseEstimate(f *testing.F) {
	seed(f, append(lengthForms, "about 12 in", "ca. 12 in", "~12", "unknown", "not measured", "aboot 1 in")...)
	f.Fuzz(func(t *testing.T, text string, bare int) {
		e, err := ParseEstimate(text, Unit(bare))
		if err != nil {
			sound(t, text, err, with(ParseEstimate, Unit(bare)))
			return
		}
		if !e.Known() && e.Length != 0 {
			t.Errorf("%q is %+v", text, e)
		}
		if max(e.Length, -e.Length) > edge {
			return
		}
		for _, f := range finest {
			again, err := ParseEstimate(f.Estimate(e), NoUnit)
			if err != nil || again.State != e.State || max(again.Length-e.Length, e.Length-again.Length) > slack {
				t.Errorf("%+v is shown as %q, which is read as %+v, %v", e, f.Estimate(e), again, err)
			}
		}
	})
}

func FuzzParseRange(f *testing.F) {
	seed(f, append(lengthForms, "0 to 1 in", "0–1 in", "1 - 2 in", "1-1/2-2-1/2 in", "2 to 1", "-1-1/2 in", "1 -2 in")...)
	f.Fuzz(func(t *testing.T, text string, bare int) {
		r, err := ParseRange(text, Unit(bare))
		if err != nil {
			sound(t, text, err, with(ParseRange, Unit(bare)))
			return
		}
		if r.Least > r.Most {
			t.Fatalf("%q is %+v", text, r)
		}
		if r.Least < -edge || r.Most > edge {
			return
		}
		for _, f := range finest {
			again, err := ParseRange(f.Range(r), NoUnit)
			if err != nil || max(again.Least-r.Least, r.Least-again.Least) > 2*slack || max(again.Most-r.Most, r.Most-again.Most) > 2*slack {
				t.Errorf("%+v is shown as %q, which is read as %+v, %v", r, f.Range(r), again, err)
			}
		}
	})
}

func FuzzParseSize(f *testing.F) {
	seed(f, append(lengthForms, "9 in x 31 in", "9 x 31 in", "9×31", "9 by 31 cm", "0 x 1 in")...)
	f.Fuzz(func(t *testing.T, text string, bare int) {
		size, err := ParseSize(text, Unit(bare))
		if err != nil {
			sound(t, text, err, with(ParseSize, Unit(bare)))
			return
		}
		checkSize(t, size, func(f Format) (Size, error) { return ParseSize(f.Size(size), NoUnit) })
	})
}

func checkSize(t *testing.T, size Size, again func(Format) (Size, error)) {
	t.Helper()
	if size.Width <= 0 || size.Length <= 0 {
		t.Fatalf("a piece of %+v", size)
	}
	// What rounds to nothing is shown as nothing, and that is no piece.
	if min(size.Width, size.Length) <= slack || max(size.Width, size.Length) > edge {
		return
	}
	for _, f := range finest {
		got, err := again(f)
		if err != nil || max(got.Width-size.Width, size.Width-got.Width) > slack || max(got.Length-size.Length, size.Length-got.Length) > slack {
			t.Errorf("%+v is shown as %q, which is read as %+v, %v", size, f.Size(size), got, err)
		}
	}
}

func FuzzParseAmount(f *testing.F) {
	seed(f, append(lengthForms, "12", "3 skeins", "1/2 skein", "24 hooks", "2 boxes", "9 x 31 in", "3 yrd", "50 g", "5 hook-and-eyes", "2 canvas", "3 bodies", "2 boxe", "2 hook-s", "2 tutus")...)
	f.Fuzz(func(t *testing.T, text string, bare int) {
		a, err := ParseAmount(text, Unit(bare))
		if err != nil {
			sound(t, text, err, with(ParseAmount, Unit(bare)))
			return
		}
		if a.Kind == ByPiece {
			checkSize(t, a.Size, func(f Format) (Size, error) {
				again, err := ParseAmount(f.Amount(a), NoUnit)
				return again.Size, err
			})
			return
		}
		if a.Length > edge {
			return
		}
		for _, f := range finest {
			again, err := ParseAmount(f.Amount(a), NoUnit)
			difference := max(again.Length-a.Length, a.Length-again.Length)
			again.Length = a.Length
			if err != nil || again != a || difference > slack {
				t.Errorf("%+v is shown as %q, which is read as %+v, %v", a, f.Amount(a), again, err)
			}
		}
		if rest, err := a.Sub(a); err != nil {
			t.Errorf("%+v less itself = %+v, %v", a, rest, err)
		}
	})
}

func FuzzParseEdges(f *testing.F) {
	seed(f, append(lengthForms, "3/8 in each edge", "3/4 in each seam", "1 1/2 in all round", "1 per edge", "1 in each egde")...)
	f.Fuzz(func(t *testing.T, text string, bare int) {
		e, err := ParseEdges(text, Unit(bare))
		if err != nil {
			sound(t, text, err, with(ParseEdges, Unit(bare)))
			return
		}
		if max(e.By, -e.By) > edge {
			return
		}
		for _, f := range finest {
			again, err := ParseEdges(f.Edges(e), NoUnit)
			if err != nil || again.Of != e.Of || max(again.By-e.By, e.By-again.By) > slack {
				t.Errorf("%+v is shown as %q, which is read as %+v, %v", e, f.Edges(e), again, err)
			}
		}
	})
}

func FuzzParseMoney(f *testing.F) {
	currencies := []string{"", "EUR", "JPY", "CAD", "?"}
	seed(f, "80 EUR", "EUR 80", "€12.50", "£3", "12,50 EUR", "$5", "5 kr", "-5 EUR", "1.234 KWD", "1,200 JPY", "Fr. 5", "1/2 EUR", "99999999999999999999", "\xff")
	f.Fuzz(func(t *testing.T, text string, bare int) {
		currency := currencies[uint(bare)%uint(len(currencies))]
		m, err := ParseMoney(text, currency)
		if err != nil {
			sound(t, text, err, with(ParseMoney, currency))
			return
		}
		if again, err := ParseMoney(m.String(), ""); err != nil || again != m {
			t.Errorf("%+v is shown as %q, which is read as %+v, %v", m, m, again, err)
		}
	})
}

func FuzzParseDuration(f *testing.F) {
	seed(f, "3h 20m", "3.5 h", "3 h", "20 min", "3:20", "3", "1/7 h", "-1 h", "2 days", "NaN", "99999999999999999999 h", "\xff")
	f.Fuzz(func(t *testing.T, text string, _ int) {
		d, err := ParseDuration(text)
		if err != nil {
			sound(t, text, err, ParseDuration)
			return
		}
		if d < 0 || d > 87600*time.Hour {
			t.Fatalf("%q is %v", text, d)
		}
		again, err := ParseDuration(FormatDuration(d))
		if err != nil || (again-d).Abs() > 30*time.Second {
			t.Errorf("%v is shown as %q, which is read as %v, %v", d, FormatDuration(d), again, err)
		}
	})
}
