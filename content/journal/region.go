package journal

import (
	"fmt"
	"strconv"
	"strings"

	"hussif/content/front"
)

// A Region is a part of a picture, in hundredths of its width and height as it is
// shown upright.
type Region struct {
	Left, Top, Width, Height float64
}

// String returns the region as it is written.
func (r Region) String() string {
	return fmt.Sprintf("%g%% %g%% %g%% %g%%", r.Left, r.Top, r.Width, r.Height)
}

func readRegion(d *front.Decoder, n front.Node) (Region, bool) {
	s, ok := text(d, n)
	if !ok {
		return Region{}, false
	}
	refuse := func(why string) (Region, bool) {
		return Region{}, d.Refuse(n.Span, NotARegion, why)
	}
	var at [4]float64
	parts := strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" \t,;", r) })
	if len(parts) != len(at) {
		return refuse(fmt.Sprintf("%q is no region of a picture: how far from the left and from the top, how wide and how high, as in 40%% 5%% 20%% 25%%", s))
	}
	for i, part := range parts {
		v, err := strconv.ParseFloat(strings.TrimSuffix(part, "%"), 64)
		if err != nil || !(v >= 0 && v <= 100) {
			return refuse(fmt.Sprintf("%q is not between 0%% and 100%%", part))
		}
		at[i] = v
	}
	r := Region{at[0], at[1], at[2], at[3]}
	switch {
	case r.Width == 0 || r.Height == 0:
		return refuse("this region has no width or no height, so nothing would be blurred")
	case r.Left >= 100 || r.Top >= 100:
		return refuse("this region lies outside the picture")
	}
	return r, true
}
