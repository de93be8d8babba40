package slip

import (
	"strings"
	"testing"

	"hussif/content/edtf"
	"hussif/content/measure"
	"hussif/content/quantity"
)

var newYear = edtf.DayOf(2026, 1, 1)

func parse(t *testing.T, text string) quantity.Estimate {
	t.Helper()
	v, err := quantity.ParseEstimate(text, quantity.Inches)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// reading makes a reading so many weeks after one on New Year's Day.
func reading(t *testing.T, point, text, before string, weeks int) Reading {
	t.Helper()
	p, ok := measure.Standard().Find(point)
	if !ok {
		t.Fatalf("no measure is called %q", point)
	}
	m, _ := measure.Standard().Measure(p.Measure)
	r := Reading{Point: p, Class: m.Class, Value: parse(t, text), Unit: UnitOf(text, quantity.Inches), Day: newYear + edtf.Day(7*weeks)}
	if before != "" {
		r.Before = Before{Value: parse(t, before), Day: newYear}
	}
	return r
}

func TestLook(t *testing.T) {
	for _, c := range []struct {
		point, text, before string
		weeks               int
		want                Kind
		instead             string
	}{
		{"bust girth", "36 in", "35 3/4 in", 10, 0, ""},
		{"bust girth", "about 36 in", "unknown", 10, 0, ""},
		{"bust girth", "not measured", "35 in", 10, 0, ""},
		{"waist girth", "41 in", "29 in", 4, Change, ""},
		{"waist girth", "41 in", "29 in", 52, Change, ""}, // a third of 29 in is less
		{"waist girth", "33 in", "29 in", 4, Change, ""},
		{"waist girth", "33 in", "29 in", 8, 0, ""}, // 1 cm a week and 3 times the error
		{"waist girth", "25 in", "29 in", 8, 0, ""},
		{"waist girth", "92 in", "36 in", 52, OtherUnit, "92 cm"},
		{"waist girth", "36 cm", "36 in", 52, OtherUnit, "36 in"},
		{"waist girth", "920 mm", "92 in", 0, OtherUnit, "92 in"},
		{"waist girth", "92 in", "36 in", 520, OtherUnit, "92 cm"},
		{"wrist girth", "16 in", "6 1/4 in", 5, OtherUnit, "16 cm"},
		{"waist girth", "63 1/2 in", "36 in", 5, Swapped, "36 1/2 in"},
		{"waist girth", "43 in", "34 in", 300, Swapped, "34 in"},
		{"waist girth", "87 cm", "78 cm", 4, Swapped, "78 cm"},
		{"waist girth", "117 cm", "108 cm", 30, 0, ""},
		{"bust girth", "365 in", "36 1/2 in", 5, Mark, "36 1/2 in"},
		{"bust girth", "9.2 cm", "92 cm", 5, Mark, "92 cm"},
		{"bust girth", "18 in", "36 1/2 in", 5, Half, "36 in"},
		{"shoulder length", "5 in", "9 in", 5, Change, ""},
		{"bust girth", "36 in", "", 0, 0, ""},
		{"bust girth", "92 in", "", 0, OtherUnit, "92 cm"},
		{"bust girth", "36 cm", "", 0, OtherUnit, "36 in"},
		{"stature", "170 in", "", 0, Outside, ""},
		{"stature", "94 in", "", 0, OtherUnit, "94 cm"},
		{"bust girth", "0 in", "", 0, Outside, ""},
		{"bust girth", "-3 in", "30 in", 0, Outside, ""},
		{"hem", "150 in", "", 0, 0, ""},
		{"hem", "300 in", "", 0, Outside, ""},
	} {
		r := reading(t, c.point, c.text, c.before, c.weeks)
		d, ok := Look(r)
		if ok != (c.want != 0) || d.Kind != c.want {
			t.Errorf("%s %s, %q before, %d weeks: got %d, want %d", c.point, c.text, c.before, c.weeks, d.Kind, c.want)
			continue
		}
		if c.instead == "" {
			if d.Instead != 0 {
				t.Errorf("%s %s: %d nm instead", c.point, c.text, d.Instead)
			}
		} else if want := parse(t, c.instead).Length; max(want-d.Instead, d.Instead-want) > 100 {
			t.Errorf("%s %s: %d nm instead, want %d", c.point, c.text, d.Instead, want)
		}
	}
}

// Largest errors of ISO 20685 for a large girth, 9 mm, as [measure.Errors] has them:
// the square root of 2 × 9² is 12.73 mm, three times that 38.18 mm (JCGM 100:2008,
// 5.1.2).
func TestLimit(t *testing.T) {
	for _, c := range []struct {
		weeks  int
		before string
		others bool
		want   quantity.Length // to the nearest tenth of a millimetre
	}{
		{0, "90 cm", false, 38_2 * mm / 10},
		{10, "90 cm", false, 138_2 * mm / 10},
		{-10, "90 cm", false, 138_2 * mm / 10},
		{520, "90 cm", false, 300 * mm},
		{520, "90 cm", true, 600 * mm},
		{520, "9 cm", false, 38_2 * mm / 10},
		{0, "about 90 cm", false, 60_4 * mm / 10}, // 9 mm and 18 mm
	} {
		r := reading(t, "bust girth", "90 cm", c.before, c.weeks)
		r.Before.Others = c.others
		if got := r.Limit(); max(got-c.want, c.want-got) > mm/10 {
			t.Errorf("%+v: %d nm", c, got)
		}
	}
}

// The smallest and largest of any body that the medical record tells of lie well
// within the bounds of their class (figures from memory).
func TestNobodyIsOutside(t *testing.T) {
	for _, c := range []struct{ point, value string }{
		{"stature", "272 cm"}, {"stature", "47 cm"}, {"waist girth", "302 cm"}, {"chest girth", "33 cm"}, {"head girth", "33 cm"},
		{"foot length", "47 cm"}, {"foot length", "7.5 cm"}, {"hand length", "32 cm"}, {"hand length", "6 cm"}, {"wrist girth", "8 cm"},
		{"thigh girth", "14 cm"}, {"ankle height", "3 cm"}, {"shoulder length", "4 cm"}, {"back neck point to ground", "235 cm"},
	} {
		if d, ok := Look(reading(t, c.point, c.value, "", 0)); ok && d.Kind == Outside {
			t.Errorf("%s %s: %s", c.point, c.value, d.Words(quantity.Format{Unit: quantity.Centimetres}))
		}
	}
}

// What a doubt says speaks of the figure, and never of the body.
func TestWords(t *testing.T) {
	inches := quantity.Format{Unit: quantity.Inches, Fraction: 8}
	for _, c := range []struct{ point, text, before, want string }{
		{"waist girth", "41 in", "29 in", "12 in more than on 2026-01-01 (more than 3 1/8 in is asked after)"},
		{"waist girth", "92 in", "36 in", "56 in more than on 2026-01-01 (more than 3 1/8 in is asked after); did you mean 92 cm?"},
		{"waist girth", "36 cm", "36 in", "21 13/16 in less than on 2026-01-01 (more than 3 1/8 in is asked after); did you mean 36 in?"},
		{"waist girth", "92 in", "", "92 in is a good deal for this measure; did you mean 92 cm?"},
		{"waist girth", "63 in", "36 in", "27 in more than on 2026-01-01; with its digits the other way round it is 36 in"},
		{"waist girth", "365 in", "36 1/2 in", "328 1/2 in more than on 2026-01-01 (more than 3 1/8 in is asked after); did you mean 36 1/2 in, with the decimal mark elsewhere?"},
		{"waist girth", "18 in", "36 in", "18 in less than on 2026-01-01 (more than 3 1/8 in is asked after); is it half of the girth, which would be 36 in?"},
		{"waist girth", "1 in", "", "1 in is no length to be read there (3 7/8 to 126 in): look at the figure and its unit"},
	} {
		d, _ := Look(reading(t, c.point, c.text, c.before, 4))
		if got := d.Words(inches); got != c.want {
			t.Errorf("%s %s: got\n%s, want\n%s", c.point, c.text, got, c.want)
		}
		for _, word := range []string{"fat", "thin", "big", "body", "weight", "too "} {
			if strings.Contains(d.Words(inches), word) {
				t.Errorf("%q speaks of the body", d.Words(inches))
			}
		}
	}
}

func TestUnitOf(t *testing.T) {
	for text, want := range map[string]quantity.Unit{
		"36 in": quantity.Inches, `36"`: quantity.Inches, "36½″": quantity.Inches, "92cm": quantity.Centimetres, "920 mm.": quantity.Millimetres,
		"1 ft 3 in": quantity.Inches, "36 1/2": quantity.Yards, "about 36": quantity.Yards, "": quantity.Yards, "approximately": quantity.Yards,
	} {
		if got := UnitOf(text, quantity.Yards); got != want {
			t.Errorf("%q: got %s, want %s", text, got, want)
		}
	}
}

func FuzzLook(f *testing.F) {
	f.Add(int64(36)*int64(quantity.Inch), int64(63)*int64(quantity.Inch), 10, uint8(2), uint8(1))
	f.Add(int64(-1), int64(0), -1, uint8(0), uint8(5))
	f.Fuzz(func(t *testing.T, before, now int64, days int, class, unit uint8) {
		const most = 1_000_000_000_000_000 // as much as is ever read
		if before > most || before < -most || now > most || now < -most || days > 1e6 || days < -1e6 {
			t.Skip()
		}
		r := Reading{
			Class: measure.Class(class % 12), Unit: quantity.Unit(unit % 11), Value: quantity.Estimate{Length: quantity.Length(now)},
			Day: newYear + edtf.Day(days), Before: Before{Value: quantity.Estimate{Length: quantity.Length(before)}, Day: newYear},
		}
		if r.Limit() < 0 {
			t.Errorf("the limit is %d", r.Limit())
		}
		if d, ok := Look(r); ok && d.Words(quantity.Format{}) == "" {
			t.Error("a doubt without words")
		}
		r.Value = r.Before.Value
		if d, ok := Look(r); ok && d.Kind != Outside {
			t.Errorf("the same value again is doubted: %s", d.Words(quantity.Format{}))
		}
	})
}
