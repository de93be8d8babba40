package measure

import (
	"testing"

	"hussif/content/quantity"
)

const mm = quantity.Millimetre

// Largest allowable errors of ISO 20685, as reported in "Anthropometry, Apparel
// Sizing and Design", chapter 2.
func TestErrorOnTheBody(t *testing.T) {
	limits := map[Class]quantity.Length{
		SmallGirth: 4 * mm, LargeGirth: 9 * mm, Height: 4 * mm, Breadth: 4 * mm, SegmentLength: 5 * mm,
		BodyDepth: 5 * mm, Head: 2 * mm, Hand: 1 * mm, Foot: 2 * mm,
	}
	for _, class := range Classes() {
		if got := Errors(nil).Body(class); got != limits[class] {
			t.Errorf("%s: %d nm, want %d", class, got, limits[class])
		}
	}
	if got := Errors(nil).Body(Class(0)); got != 9*mm {
		t.Errorf("of no class: %d nm, want the largest", got)
	}
	if got := (Errors{Hand: 3 * mm}).Body(Hand); got != 3*mm {
		t.Errorf("as the journal sets it: %d nm, want 3 mm", got)
	}
}

// 3 mm a reading laid flat is common practice; a girth is twice its flat half.
func TestErrorOnTheGarment(t *testing.T) {
	for class, want := range map[Class]quantity.Length{
		SmallGirth: 6 * mm, LargeGirth: 6 * mm, Head: 6 * mm, Height: 3 * mm, Breadth: 3 * mm, SegmentLength: 3 * mm,
	} {
		if got := Errors(nil).Garment(class); got != want {
			t.Errorf("%s: %d nm, want %d", class, got, want)
		}
	}
	own := Errors{LargeGirth: 20 * mm, LaidFlat: 2 * mm}
	if got := own.Garment(LargeGirth); got != 4*mm {
		t.Errorf("as the journal sets it: %d nm, want 4 mm", got)
	}
}

// JCGM 100:2008, 5.1.2. The square root of 9^2 + 6^2 = 117 is 10.816653826... by
// hand; 3, 4 and 5 are the right triangle.
func TestRootSumSquares(t *testing.T) {
	for _, c := range []struct {
		errors []quantity.Length
		want   quantity.Length
	}{
		{[]quantity.Length{9 * mm, 6 * mm}, 10_816_654},
		{[]quantity.Length{3 * mm, 4 * mm}, 5 * mm},
		{[]quantity.Length{2 * mm, 3 * mm, 6 * mm}, 7 * mm},
		{[]quantity.Length{4 * mm}, 4 * mm},
		{nil, 0},
	} {
		if got := RootSumSquares(c.errors...); got != c.want {
			t.Errorf("RootSumSquares(%d) = %d, want %d", c.errors, got, c.want)
		}
	}
}

func TestParseClass(t *testing.T) {
	for _, class := range append(Classes(), LaidFlat) {
		if got, ok := ParseClass(class.String()); !ok || got != class {
			t.Errorf("ParseClass(%q) = %v, %v", class, got, ok)
		}
	}
	if got, ok := ParseClass("Large-Girths"); !ok || got != LargeGirth {
		t.Errorf("ParseClass(Large-Girths) = %v, %v", got, ok)
	}
	for _, name := range []string{"", "no class", "girth"} {
		if got, ok := ParseClass(name); ok {
			t.Errorf("ParseClass(%q) = %v, want nothing", name, got)
		}
	}
}
