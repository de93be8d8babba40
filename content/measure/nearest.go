package measure

import (
	"slices"
	"strings"

	"hussif/content/near"
)

// Nearest returns what a name that [Catalogue.Find] does not know may be a slip
// of the pen for: at most three names or aliases, best first, each of another
// measure, and each one that Find does know. A side in the name is kept where
// the measure has sides, and left out where it has none.
func (c Catalogue) Nearest(name string) []string {
	words, side := withoutSide(wordsOf(name))
	forms, of := c.forms()
	var found []string
	var measures []int
	for _, form := range near.Of(strings.Join(words, " "), forms) {
		m := of[form]
		if slices.Contains(measures, m) {
			continue
		}
		measures = append(measures, m)
		if side != Both && c.measures[m].Paired {
			form = side.String() + " " + form
		}
		found = append(found, form)
	}
	return found
}

// forms returns every name and alias, and the measure each one means.
func (c Catalogue) forms() ([]string, map[string]int) {
	var forms []string
	of := make(map[string]int, len(c.means))
	for i, m := range c.measures {
		for _, form := range append([]string{m.Name}, m.Aliases...) {
			forms = append(forms, form)
			of[form] = i
		}
	}
	return forms, of
}

func wordsOf(name string) []string {
	return strings.FieldsFunc(name, func(r rune) bool { return !inWord(r) })
}

// withoutSide takes a side off the front or the back of a name of several words.
func withoutSide(words []string) ([]string, Side) {
	if len(words) < 2 {
		return words, Both
	}
	if side, ok := sideOf(words[0]); ok {
		return words[1:], side
	}
	if side, ok := sideOf(words[len(words)-1]); ok {
		return words[:len(words)-1], side
	}
	return words, Both
}
