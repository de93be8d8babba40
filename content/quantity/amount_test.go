package quantity_test

import (
	"math"
	"strings"
	"testing"

	. "hussif/content/quantity"
)

func count(num, den int64, thing string) Amount {
	return Amount{Kind: ByCount, Number: Fraction{Num: num, Den: den}, Thing: thing}
}

func length(l Length) Amount { return Amount{Kind: ByLength, Length: l} }

func piece(width, length Length) Amount {
	return Amount{Kind: ByPiece, Size: Size{Width: width, Length: length}}
}

func TestParseAmount(t *testing.T) {
	accepts(t, inInches(ParseAmount), []trial[Amount]{
		{"2 1/4 yd", length(81 * Inch)}, {"1/3 yd", length(Foot)}, {"0 in", length(0)}, {"1 ft 3 in", length(15 * Inch)}, {"12 nails", length(27 * Inch)},
		{"9 in x 31 in", piece(9*Inch, 31*Inch)}, {"9 x 31", piece(9*Inch, 31*Inch)}, {"9 by 31 cm", piece(9*Centimetre, 31*Centimetre)},
		{"12", count(12, 1, "")}, {"0", count(0, 1, "")}, {"1/2", count(1, 2, "")},
		{"3 skeins", count(3, 1, "skein")}, {"1/2 skein", count(1, 2, "skein")}, {"½ skein", count(1, 2, "skein")}, {"2/4 skein", count(1, 2, "skein")}, {"1.5 skeins", count(3, 2, "skein")},
		{"24 hooks", count(24, 1, "hook")}, {"24 Hooks", count(24, 1, "hook")}, {"2 boxes", count(2, 1, "box")}, {"3 bunches", count(3, 1, "bunch")},
		{"2 compass", count(2, 1, "compass")}, {"2 gross", count(2, 1, "gross")}, {"3 dozen", count(3, 1, "dozen")}, {"50 g", count(50, 1, "g")}, {"2 lbs", count(2, 1, "lb")}, {"4 bodies", count(4, 1, "body")}, {"2 sashes", count(2, 1, "sash")}, {"2 ties", count(2, 1, "tie")}, {"2 caches", count(2, 1, "cache")}, {"3 tutus", count(3, 1, "tutu")},
		{"2 cards", count(2, 1, "card")}, {"2 letters", count(2, 1, "letter")}, {"100 pins", count(100, 1, "pin")}, {"5 hook-and-eyes", count(5, 1, "hook-and-eye")}, {"2 écheveaux", count(2, 1, "écheveaux")},
	})
	refuses(t, inInches(ParseAmount), []refusal{
		{"", "", "number is missing", nil},
		{"some", "some", "number is missing", nil},
		{"-3 skeins", "-3 skeins", "less than nothing", []string{"3 skeins"}},
		{"-3 yd", "-3 yd", "less than nothing", []string{"3 yd"}},
		{"3 yrads", "yrads", "too near to a unit", []string{"3 yards"}},
		{"3 yrd", "yrd", "too near to a unit", []string{"3 yard", "3 yd"}},
		{"3 ells", "ells", "too near to a unit", []string{"3 English ells", "3 Flemish ells"}},
		{"3 q", "q", "no unit", []string{"3 in", "3 cm"}},
		{"3 reels of thread", "of thread", "one word", []string{"3 reels"}},
		{"3 yd of linen", "of linen", "no unit", nil},
		{"9 x 0 in", "0 in", "longer than nothing", nil},
		{"1,000 pins", ",000 pins", "a thousand or a decimal", []string{"1000 pins", "1.000 pins"}},
		{"3 !", "!", "cannot make sense", nil},
		{"3 " + strings.Repeat("!", 99), strings.Repeat("!", 99), strings.Repeat("!", 40) + `…"`, nil},
	})
	refuses(t, spelt(ParseAmount), []refusal{{"9 x 31", "", "unit is missing", []string{"9 x 31 in", "9 x 31 cm"}}})
}

func TestAmountArithmetic(t *testing.T) {
	for _, tt := range []struct {
		a, b, sum, rest Amount
		compare         int
	}{
		{length(2 * Yard), length(Foot), length(84 * Inch), length(60 * Inch), 1},
		{length(Foot), length(2 * Yard), length(84 * Inch), length(-60 * Inch), -1},
		{length(Foot), length(12 * Inch), length(2 * Foot), length(0), 0},
		{count(1, 2, "skein"), count(1, 3, "skein"), count(5, 6, "skein"), count(1, 6, "skein"), 1},
		{count(12, 1, ""), count(24, 1, ""), count(36, 1, ""), count(-12, 1, ""), -1},
		{Amount{}, count(3, 1, "hook"), count(3, 1, "hook"), count(-3, 1, "hook"), -1},
		{length(Foot), Amount{}, length(Foot), length(Foot), 1},
		{Amount{}, Amount{}, Amount{}, Amount{}, 0},
	} {
		if got, err := tt.a.Add(tt.b); err != nil || got != tt.sum {
			t.Errorf("%v + %v = %v, %v; want %v", tt.a, tt.b, got, err, tt.sum)
		}
		if got, err := tt.a.Sub(tt.b); err != nil || got != tt.rest {
			t.Errorf("%v - %v = %v, %v; want %v", tt.a, tt.b, got, err, tt.rest)
		}
		if got, err := tt.a.Compare(tt.b); err != nil || got != tt.compare {
			t.Errorf("%v compared with %v = %d, %v; want %d", tt.a, tt.b, got, err, tt.compare)
		}
	}
}

func TestAmountsUnlike(t *testing.T) {
	for _, tt := range []struct {
		a, b Amount
		want string
	}{
		{length(Foot), count(3, 1, ""), "a length and a count are no like amounts"},
		{count(3, 1, "skein"), count(3, 1, "hook"), "3 skeins and 3 hooks are not the same things"},
		{count(12, 1, ""), count(3, 1, "hook"), "12 and 3 hooks are not the same things"},
		{piece(Inch, Foot), piece(Inch, Foot), "two pieces make no amount together: they are listed one by one"},
		{length(math.MaxInt64), length(1), "these amounts are too large to add"},
		{length(math.MinInt64), length(-1), "these amounts are too large to add"},
		{count(math.MaxInt64, 1, ""), count(1, 2, ""), "these amounts are too large to add"},
	} {
		if sum, err := tt.a.Add(tt.b); err == nil || err.Error() != tt.want {
			t.Errorf("%v + %v = %v, %v; want %q", tt.a, tt.b, sum, err, tt.want)
		}
	}
	if n, err := piece(Inch, Foot).Compare(piece(Inch, Foot)); n != 0 || err != nil {
		t.Errorf("equal pieces compare as %d, %v", n, err)
	}
	if n, err := piece(2*Inch, Foot).Compare(piece(Inch, 2*Foot)); err == nil {
		t.Errorf("pieces of different sizes compare as %d", n)
	}
	if n, err := length(Foot).Compare(count(1, 1, "")); err == nil {
		t.Errorf("unlike amounts compare as %d", n)
	}
	if rest, err := (Amount{}).Sub(piece(Inch, Foot)); err == nil {
		t.Errorf("a piece taken from nothing leaves %v", rest)
	}
}
