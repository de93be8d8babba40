package quantity_test

import (
	"math"
	"testing"

	. "hussif/content/quantity"
)

var (
	eighths     = Format{Unit: Inches}
	sixteenths  = Format{Unit: Inches, Fraction: 16}
	centimetres = Format{Unit: Centimetres}
	millimetres = Format{Unit: Millimetres}
)

func TestFormatLength(t *testing.T) {
	for _, tt := range []struct {
		f    Format
		l    Length
		want string
	}{
		{eighths, 37*Inch + half, "37 1/2 in"}, {eighths, 5 * eighth, "5/8 in"}, {eighths, 0, "0 in"}, {eighths, Inch, "1 in"}, {eighths, -quarter, "−1/4 in"},
		{Format{}, 5 * eighth, "5/8 in"}, {Format{Unit: Inches, Fraction: 7}, 5 * eighth, "5/8 in"}, {Format{Unit: Nails, Fraction: -1}, 5 * eighth, "5/8 in"},
		{sixteenths, 3 * Inch / 16, "3/16 in"}, {Format{Unit: Inches, Fraction: 2}, 3 * quarter, "1 in"},
		{centimetres, 953 * Millimetre, "95.3 cm"}, {centimetres, 95 * Centimetre, "95 cm"}, {centimetres, Inch, "2.5 cm"},
		{millimetres, 952 * Millimetre, "952 mm"}, {millimetres, Inch, "25 mm"},
		{Format{Unit: Metres}, 1057 * Millimetre, "1.057 m"}, {Format{Unit: Metres}, 1007 * Millimetre, "1.007 m"}, {Format{Unit: Metres}, 1200 * Millimetre, "1.2 m"},
		{Format{Unit: Yards}, 81 * Inch, "2 1/4 yd"}, {Format{Unit: Feet}, 18 * Inch, "1 1/2 ft"},
		// The nearest step, halves away from zero.
		{eighths, Inch / 16, "1/8 in"}, {eighths, Inch/16 - 1, "0 in"}, {eighths, -Inch / 16, "−1/8 in"}, {eighths, -Inch/16 + 1, "0 in"}, {eighths, Inch - 1, "1 in"},
		{millimetres, Millimetre / 2, "1 mm"}, {millimetres, -Millimetre / 2, "−1 mm"}, {millimetres, Millimetre/2 - 1, "0 mm"},
		{centimetres, 9999 * Millimetre / 100, "10 cm"},
		{millimetres, math.MinInt64, "−9223372036855 mm"}, {millimetres, math.MaxInt64, "9223372036855 mm"},
	} {
		if got := tt.f.Length(tt.l); got != tt.want {
			t.Errorf("%+v: %d nm is shown as %q, want %q", tt.f, tt.l, got, tt.want)
		}
	}
}

func TestFormatOthers(t *testing.T) {
	for _, tt := range []struct{ got, want string }{
		{eighths.Signed(3 * quarter), "+3/4 in"}, {eighths.Signed(-quarter), "−1/4 in"}, {eighths.Signed(0), "0 in"}, {eighths.Signed(1), "0 in"}, {millimetres.Signed(-Millimetre), "−1 mm"},
		{eighths.Bare(37*Inch + half), "37 1/2"}, {centimetres.Bare(-953 * Millimetre), "−95.3"},
		{eighths.Other(Inch), "2.5 cm"}, {centimetres.Other(Inch), "1 in"}, {millimetres.Other(Inch), "1 in"}, {Format{Unit: Yards}.Other(Yard), "91.4 cm"},
		{eighths.Range(Range{0, Inch}), "0 to 1 in"}, {eighths.Range(Range{Inch, Inch}), "1 in"}, {eighths.Range(Range{Inch, Inch + 1}), "1 in"}, {eighths.Range(Range{-Inch, half}), "−1 to 1/2 in"},
		{eighths.Estimate(Estimate{12 * Inch, Exact}), "12 in"}, {eighths.Estimate(Estimate{12 * Inch, About}), "about 12 in"},
		{eighths.Estimate(Estimate{State: Unknown}), "unknown"}, {eighths.Estimate(Estimate{State: NotMeasured}), "not measured"},
		{eighths.Size(Size{9 * Inch, 31 * Inch}), "9 × 31 in"}, {centimetres.Size(Size{9 * Inch, 31 * Inch}), "22.9 × 78.7 cm"},
		{eighths.Edges(Edges{3 * eighth, EachEdge}), "3/8 in each edge"}, {eighths.Edges(Edges{Inch, AllRound}), "1 in all round"}, {eighths.Edges(Edges{Inch, 0}), "1 in"},
		{eighths.Amount(length(81 * Inch)), "2 1/4 yd"}, {eighths.Amount(length(67 * Inch)), "1 yd 31 in"}, {eighths.Amount(length(-67 * Inch)), "−1 yd 31 in"},
		{eighths.Amount(length(72*Inch + 1)), "2 yd"}, {eighths.Amount(length(72*Inch - 1)), "2 yd"}, {eighths.Amount(length(31*Inch + half)), "31 1/2 in"}, {Format{Unit: Yards}.Amount(length(9 * Inch)), "9 in"},
		{centimetres.Amount(length(2057 * Millimetre)), "2.057 m"}, {millimetres.Amount(length(2 * Metre)), "2 m"}, {centimetres.Amount(length(57 * Centimetre)), "57 cm"}, {centimetres.Amount(length(-2 * Metre)), "−2 m"},
		{eighths.Amount(piece(9*Inch, 31*Inch)), "9 × 31 in"}, {eighths.Amount(Amount{}), "nothing"},
		{eighths.Amount(count(12, 1, "")), "12"}, {eighths.Amount(count(3, 1, "skein")), "3 skeins"}, {eighths.Amount(count(1, 2, "skein")), "1/2 skein"}, {eighths.Amount(count(3, 2, "skein")), "1 1/2 skeins"},
		{eighths.Amount(count(1, 1, "box")), "1 box"}, {eighths.Amount(count(0, 1, "box")), "0 boxes"}, {eighths.Amount(count(-3, 2, "body")), "−1 1/2 bodies"}, {eighths.Amount(count(50, 1, "g")), "50 g"},
		{eighths.Amount(count(2, 1, "gross")), "2 gross"}, {eighths.Amount(count(2, 1, "compass")), "2 compass"}, {eighths.Amount(count(2, 1, "key")), "2 keys"}, {Fraction{}.String(), "0"}, {Whole(0).String() + Whole(-1).String() + Whole(9).String(), ""},
	} {
		if tt.got != tt.want {
			t.Errorf("shown as %q, want %q", tt.got, tt.want)
		}
	}
}

// Every step of the finest formats is read back exactly as it was shown.
func TestFormatRoundTrip(t *testing.T) {
	for f, step := range map[Format]Length{
		{Unit: Inches, Fraction: 64}: Inch / 64, {Unit: Feet, Fraction: 64}: Foot / 64, {Unit: Yards, Fraction: 64}: Yard / 64,
		centimetres: Millimetre, millimetres: Millimetre, {Unit: Metres}: Millimetre,
	} {
		for n := range Length(2000) {
			l := (n - 1000) * step
			for _, text := range []string{f.Length(l), f.Signed(l)} {
				if got, err := ParseLength(text, NoUnit); err != nil || got != l {
					t.Fatalf("%d nm is shown as %q, which is read as %d, %v", l, text, got, err)
				}
			}
			if got, err := ParseLength(f.Bare(l), f.Unit); err != nil || got != l {
				t.Fatalf("%d nm is shown as %q, which is read as %d, %v", l, f.Bare(l), got, err)
			}
		}
	}
}

func BenchmarkFormatLength(b *testing.B) {
	for _, f := range []Format{eighths, centimetres} {
		b.Run(f.Unit.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				f.Length(37*Inch + half)
			}
		})
	}
}

func TestFinerShowsWhatIsMarkedOnAnEdge(t *testing.T) {
	edge := 5 * Inch / 16
	for _, test := range []struct {
		format Format
		want   string
	}{
		{Format{}, "5/16 in"},
		{Format{Unit: Inches, Fraction: 64}, "5/16 in"},
		{Format{Unit: Centimetres}, "8 mm"},
		{Format{Unit: Millimetres}, "8 mm"},
	} {
		finer := test.format.Finer()
		if got := finer.Length(edge); got != test.want {
			t.Errorf("%v shows %q, want %q", test.format, got, test.want)
		}
		if step := finer.Step(); finer.Length(step) == finer.Length(0) || finer.Length(step) == finer.Length(step/3) || finer.Length(step+step/3) != finer.Length(step) {
			t.Errorf("%v has a step of %d", test.format, step)
		}
	}
}
