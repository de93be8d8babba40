package across

import (
	"slices"

	"hussif/content/quantity"
)

// figure returns the median of at least one value, which for an even number lies
// halfway between the middle two, and the spread.
func figure(values []quantity.Length) Figure {
	sorted := slices.Sorted(slices.Values(values))
	n := len(sorted)
	low, high := sorted[(n-1)/2], sorted[n/2]
	return Figure{Median: low + (high-low)/2, Spread: sorted[n-1] - sorted[0]}
}
