package evidence

import (
	"fmt"
	"math"
)

// A Share is how many of some objects show a feature.
type Share struct{ Shows, Of int }

// Words writes the share with its 95 % interval, as "5 of 6 (44-97 %)", and nothing
// where it is one of none.
func (s Share) Words() string {
	low, high, known := s.Interval()
	if !known {
		return ""
	}
	return fmt.Sprintf("%d of %d (%.0f-%.0f %%)", s.Shows, s.Of, 100*low, 100*high)
}

// Interval returns the ends of the share's 95 % interval as parts of 1, by the
// formula of the package comment. It is not known for a share of none.
func (s Share) Interval() (low, high float64, known bool) {
	if s.Of <= 0 {
		return 0, 0, false
	}
	const z = 1.959963984540054 // of which 2.5 % of a normal distribution lie above
	n := float64(s.Of)
	p := float64(s.Shows) / n
	middle := p + z*z/(2*n)
	half := z * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	whole := 1 + z*z/n
	low, high = (middle-half)/whole, (middle+half)/whole
	// Of none and of all one end is exact, and rounding must not leave 0 to 1.
	if s.Shows == 0 {
		low = 0
	}
	if s.Shows == s.Of {
		high = 1
	}
	return low, high, true
}
