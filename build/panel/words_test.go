package panel

import (
	"testing"

	"hussif/content/quantity"
)

func TestLackWords(t *testing.T) {
	const inch = quantity.Inch
	for want, l := range map[string]Lack{
		"1 in more length would do, or 12 in more width": {Wider: 12 * inch, Longer: inch},
		"1 in more width would do, or 12 in more length": {Wider: inch, Longer: 12 * inch},
		"3 in more width would do":                       {Wider: 3 * inch},
		"3 in more length would do":                      {Longer: 3 * inch},
		"2 × 1 in more, across and along, would do":      {Both: quantity.Size{Width: 2 * inch, Length: inch}},
	} {
		if got := l.Words(quantity.Format{}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
