package fit

import (
	"slices"
	"strings"

	"hussif/content/measure"
)

// suggest returns the wearing ease to offer where a build names none. Figures
// for bodices and dresses are of clothes worn over no stays and are not offered
// for one that is, whose usual ease is 0 at the waist (common practice); for
// stays themselves there are none.
func (c *computation) suggest(p measure.Point) []measure.Suggestion {
	if stiff(c.Kind) {
		return nil
	}
	found := measure.SuggestEase(c.Kind, p.Measure)
	if slices.ContainsFunc(c.Foundation, stiff) {
		found = slices.DeleteFunc(found, func(s measure.Suggestion) bool {
			return s.Garment == "bodice" || s.Garment == "dress"
		})
	}
	return found
}

// stiff reports whether a layer or garment is one that shapes the body.
func stiff(layer string) bool {
	for _, word := range strings.Fields(strings.ToLower(layer)) {
		switch word {
		case "stays", "corset", "corsets", "corselet", "bodies", "jumps":
			return true
		}
	}
	return false
}
