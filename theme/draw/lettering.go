package draw

import (
	"slices"
	"strings"
)

// wide estimates, on the large side, how wide words are at a size of lettering
// whatever the reader's fonts.
func wide(words string, size float64) float64 {
	sum := 0.0
	for _, r := range words {
		switch r {
		case 'i', 'l', 'j', 't', '.', ',', ':', ';', '\'', '|', '!', ' ', '(', ')', '/':
			sum += 0.36
		case 'm', 'w', 'M', 'W':
			sum += 0.92
		default:
			if 'A' <= r && r <= 'Z' || r > 0x2E80 {
				sum += 0.74
			} else {
				sum += 0.58
			}
		}
	}
	return sum * size
}

// wrapped breaks words into lines no wider than given, where spaces let it.
func wrapped(words string, size, most float64) []string {
	var lines []string
	for word := range strings.FieldsSeq(words) {
		if last := len(lines) - 1; last >= 0 && wide(lines[last]+" "+word, size) <= most {
			lines[last] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

// clamped moves the middle of words so that they stay on the drawing.
func clamped(x float64, words string, size float64) float64 {
	half := wide(words, size)/2 + 2
	if 2*half >= page {
		return page / 2
	}
	return min(max(x, half), page-half)
}

// spread moves labels, each at a height and so high, as little as keeps them
// apart and between two bounds. It keeps their order of heights.
func spread(at, high []float64, top, foot float64) []float64 {
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case at[a] < at[b]:
			return -1
		case at[a] > at[b]:
			return 1
		}
		return 0
	})
	moved := make([]float64, len(at))
	floor := top
	for _, i := range order {
		moved[i] = max(at[i], floor+high[i]/2)
		floor = moved[i] + high[i]/2
	}
	ceiling := foot
	for _, i := range slices.Backward(order) {
		moved[i] = min(moved[i], ceiling-high[i]/2)
		ceiling = moved[i] - high[i]/2
	}
	return moved
}
