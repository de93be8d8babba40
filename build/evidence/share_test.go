package evidence

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// The interval of Wilson (1927). The first three are worked by his formula; the
// others are the rows of R. G. Newcombe, "Two-sided confidence intervals for the
// single proportion: comparison of seven methods", Statistics in Medicine 17
// (1998), table I, method 3 (from memory; the test below works them anew).
func TestWilsonInterval(t *testing.T) {
	for _, c := range []struct {
		shows, of       int
		low, high, fine float64
	}{
		{5, 6, 0.436, 0.970, 0.0005},
		{0, 3, 0, 0.561, 0.0005},
		{10, 10, 0.722, 1, 0.0005},
		{81, 263, 0.2553, 0.3662, 0.00005},
		{15, 148, 0.0624, 0.1605, 0.00005},
		{0, 20, 0, 0.1611, 0.00005},
		{1, 29, 0.0061, 0.1718, 0.00005},
	} {
		low, high, known := Share{c.shows, c.of}.Interval()
		if !known || math.Abs(low-c.low) > c.fine || math.Abs(high-c.high) > c.fine {
			t.Errorf("%d of %d: %.4f to %.4f, want %.4f to %.4f", c.shows, c.of, low, high, c.low, c.high)
		}
	}
	if _, _, known := (Share{}).Interval(); known {
		t.Error("a share of none has an interval")
	}
}

// The ends are the shares from which the one seen lies just 97.5 % of a normal
// distribution away: found here by halving, not by the formula.
func TestWilsonIntervalIsTheScoreTestTurnedRound(t *testing.T) {
	z := distuv.UnitNormal.Quantile(0.975)
	for of := 1; of <= 40; of++ {
		for shows := 0; shows <= of; shows++ {
			n, seen := float64(of), float64(shows)/float64(of)
			away := func(p float64) float64 { return math.Abs(seen-p) - z*math.Sqrt(p*(1-p)/n) }
			// between lies the end: close is not far enough from seen, far is.
			end := func(close, far float64) float64 {
				for range 60 {
					if middle := (close + far) / 2; away(middle) < 0 {
						close = middle
					} else {
						far = middle
					}
				}
				return far
			}
			wantLow, wantHigh := 0.0, 1.0
			if shows > 0 {
				wantLow = end(seen-1e-12, 0)
			}
			if shows < of {
				wantHigh = end(seen+1e-12, 1)
			}
			low, high, _ := Share{shows, of}.Interval()
			if math.Abs(low-wantLow) > 1e-9 || math.Abs(high-wantHigh) > 1e-9 {
				t.Errorf("%d of %d: %g to %g, want %g to %g", shows, of, low, high, wantLow, wantHigh)
			}
		}
	}
}

func TestShareWords(t *testing.T) {
	for _, c := range []struct {
		share Share
		want  string
	}{
		{Share{5, 6}, "5 of 6 (44-97 %)"},
		{Share{0, 3}, "0 of 3 (0-56 %)"},
		{Share{10, 10}, "10 of 10 (72-100 %)"},
		{Share{}, ""},
	} {
		if got := c.share.Words(); got != c.want {
			t.Errorf("%v: %q, want %q", c.share, got, c.want)
		}
	}
}
