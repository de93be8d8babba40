package measure

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Foundation is what was worn under the tape, or is worn under a garment: the
// layers in dressing order, from the skin out, as the maker wrote them. "Two
// petticoats" is the same as "petticoat" twice. The empty Foundation is the
// unclothed body.
type Foundation []string

// Same reports whether two foundations are the same layers, each as many times,
// in whatever order. Layers are told apart by name alone: a shift and a chemise
// are two.
func (f Foundation) Same(other Foundation) bool {
	return maps.Equal(f.counts(), other.counts())
}

// Key returns a text that is the same for two foundations exactly when
// [Foundation.Same] holds, for use as a map key; it is empty for the unclothed
// body, and not meant to be read.
func (f Foundation) Key() string {
	counts := f.counts()
	var b strings.Builder
	for _, layer := range slices.Sorted(maps.Keys(counts)) {
		b.WriteString(strconv.Itoa(counts[layer]) + " " + layer + "\n")
	}
	return b.String()
}

// String names the layers in dressing order, those worn several times once and
// with their number: "shift, stays and two petticoats". The unclothed body is
// "nothing".
func (f Foundation) String() string {
	counts := f.counts()
	var said []string
	for _, written := range f {
		layer, _ := parseLayer(written)
		key := keyOf(layer)
		switch n := counts[key]; n {
		case 0:
			continue // said before
		case 1:
			said = append(said, layer)
		default:
			said = append(said, numberWord(n)+" "+plural(layer))
		}
		delete(counts, key)
	}
	switch n := len(said); n {
	case 0:
		return "nothing"
	case 1:
		return said[0]
	default:
		return strings.Join(said[:n-1], ", ") + " and " + said[n-1]
	}
}

// counts tells how often each layer is worn, by its folded name.
func (f Foundation) counts() map[string]int {
	counts := make(map[string]int, len(f))
	for _, written := range f {
		layer, n := parseLayer(written)
		if key := keyOf(layer); key != "" && key != "nothing" && key != "unclothed" {
			counts[key] += n
		}
	}
	return counts
}

// numberWords are the numbers up to a dozen, each at its own index.
func numberWords() []string {
	return []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
}

func numberWord(n int) string {
	if words := numberWords(); n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// parseLayer splits what a maker wrote for a layer into its name and how many
// are worn: "two petticoats", "2 petticoats", "a pair of stays". A number above
// a dozen counts nothing but is part of the name, as a year is.
func parseLayer(written string) (layer string, n int) {
	words := strings.Fields(written)
	n = 1
	if len(words) > 1 {
		switch first := strings.ToLower(words[0]); first {
		case "a", "an", "the":
			words = words[1:]
		default:
			if number, ok := parseNumber(first); ok {
				words, n = words[1:], number
			}
		}
	}
	if len(words) > 2 && strings.EqualFold(words[1], "of") && keyOf(words[0]) == "pair" {
		words = words[2:]
	}
	return strings.Join(words, " "), n
}

// parseNumber reads a number from one to twelve, in words or figures.
func parseNumber(word string) (int, bool) {
	if n := slices.Index(numberWords(), word); n > 0 {
		return n, true
	}
	n, err := strconv.Atoi(word)
	return n, err == nil && 0 < n && n < len(numberWords())
}

// plural names several of a layer. A name that ends in s is already one that
// stands for several, or for a pair, such as stays.
func plural(layer string) string {
	last, _ := utf8.DecodeLastRuneInString(layer)
	switch {
	case !unicode.IsLetter(last), strings.HasSuffix(layer, "s") && !strings.HasSuffix(layer, "ss"):
		return layer
	case strings.HasSuffix(layer, "ss"), strings.HasSuffix(layer, "sh"), strings.HasSuffix(layer, "ch"):
		return layer + "es"
	}
	return layer + "s"
}
