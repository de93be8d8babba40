package search

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// Words returns the words of a text as they are looked for, in order. A word that is
// written in two ways stands there in both.
func Words(text string) []string {
	var words []string
	for _, word := range runs(text) {
		words = append(words, spellings(word)...)
	}
	return words
}

// runs returns the words of a text as they are written.
func runs(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsNumber(r) && !unicode.IsMark(r)
	})
}

// Fold returns a text as it is looked for: without the differences of case, of
// marks on letters, and of letters that are two in one.
func Fold(text string) string {
	if isPlain(text) {
		return strings.ToLower(text)
	}
	return folded(norm.NFD.String(text))
}

func folded(decomposed string) string {
	var b strings.Builder
	for _, r := range decomposed {
		r = unicode.ToLower(r)
		if unicode.IsMark(r) {
			continue
		}
		if other, ok := letters[r]; ok {
			b.WriteString(other)
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

func isPlain(text string) bool {
	for i := range len(text) {
		if text[i] >= 0x80 {
			return false
		}
	}
	return true
}

// letters are those that no mark can be taken from.
var letters = map[rune]string{
	'ß': "ss", 'æ': "ae", 'œ': "oe", 'ø': "o", 'đ': "d", 'ð': "d", 'ł': "l", 'þ': "th", 'ı': "i", 'ς': "σ",
}

// umlauts are the German ways to write them without a mark.
var umlauts = strings.NewReplacer("a\u0308", "ae", "o\u0308", "oe", "u\u0308", "ue", "A\u0308", "ae", "O\u0308", "oe", "U\u0308", "ue")

// spellings returns a word as it is looked for: in one way, or with an umlaut in two,
// or in none where it is nothing but marks.
func spellings(word string) []string {
	if isPlain(word) {
		return []string{strings.ToLower(word)}
	}
	decomposed := norm.NFD.String(word)
	bare, written := folded(decomposed), folded(umlauts.Replace(decomposed))
	switch {
	case bare == "":
		return nil
	case bare == written:
		return []string{bare}
	}
	return []string{bare, written}
}
