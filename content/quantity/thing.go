package quantity

import (
	"fmt"
	"slices"
	"strings"
)

// things are the words for what is counted whose plural is not made by an s, or
// that lie so near to a unit of length that they would pass for a slip of the
// pen.
var things = [...]struct{ one, many string }{
	{"g", "g"}, {"kg", "kg"}, {"mg", "mg"}, {"oz", "oz"}, {"lb", "lb"}, {"l", "l"}, {"dl", "dl"}, {"cl", "cl"}, {"ml", "ml"},
	{"dozen", "dozen"}, {"gross", "gross"},
	{"batch", "batches"}, {"body", "bodies"}, {"box", "boxes"}, {"brush", "brushes"}, {"bunch", "bunches"}, {"canvas", "canvases"},
	{"dress", "dresses"}, {"glass", "glasses"}, {"patch", "patches"}, {"sash", "sashes"}, {"swatch", "swatches"},
	{"bell", "bells"}, {"card", "cards"}, {"end", "ends"}, {"fin", "fins"}, {"pin", "pins"}, {"tail", "tails"}, {"tin", "tins"}, {"yarn", "yarns"},
}

// thing reads the word for what is counted, up to the end of the text, and
// returns it in the singular; "" where there is none.
func (s *scanner) thing() (string, *Error) {
	if s.done() {
		return "", nil
	}
	start := s.at
	word := s.hyphenated()
	end := s.at
	if word == "" {
		return "", s.leftOver()
	}
	if !s.done() {
		return "", s.fail(s.at, "one word is enough for what is counted", s.with(end, len(s.text), ""))
	}
	one := singular(asciiLower(word))
	if slices.ContainsFunc(things[:], func(t struct{ one, many string }) bool { return t.one == one }) {
		return one, nil
	}
	s.at = start
	if len(one) <= 2 {
		return "", s.leftOver()
	}
	if unitsNear(one) != nil {
		e := s.leftOver()
		e.Reason = fmt.Sprintf("%s is too near to a unit of length to be counted", quote(word))
		return "", e
	}
	return one, nil
}

// hyphenated moves past words joined by hyphens and returns them.
func (s *scanner) hyphenated() string {
	start := s.at
	for s.word() != "" {
		ahead := *s
		if !strings.HasPrefix(s.text[s.at:], "-") {
			break
		}
		ahead.at++
		if ahead.nextWord() == "" {
			break
		}
		s.at++
	}
	return s.text[start:s.at]
}

// singular undoes plural for every word that comes from it. A listed word that
// lacks its last s ("boxe") is taken for the listed one, since adding an s to it
// could not be told apart.
func singular(word string) string {
	for _, t := range things {
		if word == t.one || word == t.many || word+"s" == t.one || word+"s" == t.many {
			return t.one
		}
	}
	if keepsS(word) {
		return word
	}
	return strings.TrimSuffix(word, "s")
}

func plural(word string) string {
	for _, t := range things {
		if word == t.one {
			return t.many
		}
	}
	if keepsS(word) {
		return word
	}
	return word + "s"
}

// keepsS reports whether a word ends in an s that is not that of a plural.
func keepsS(word string) bool {
	return word == "s" || strings.HasSuffix(word, "ss") || strings.HasSuffix(word, "-s")
}

// asciiLower leaves other letters alone: some change their length, and a word
// should come back as it was written.
func asciiLower(word string) string {
	return strings.Map(func(r rune) rune {
		if 'A' <= r && r <= 'Z' {
			return r + 'a' - 'A'
		}
		return r
	}, word)
}
