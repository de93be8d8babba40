package quantity

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"hussif/content/near"
)

// A scanner walks once through the text of a quantity.
type scanner struct {
	text string
	at   int // always on the first byte of a character, or at the end
}

// peek returns the next character and its size, which is 0 at the end.
func (s *scanner) peek() (rune, int) {
	if s.at < len(s.text) && s.text[s.at] < utf8.RuneSelf {
		return rune(s.text[s.at]), 1
	}
	return utf8.DecodeRuneInString(s.text[s.at:])
}

// skipSpace moves past spaces of any width and reports whether there were any.
func (s *scanner) skipSpace() bool {
	start := s.at
	for {
		r, size := s.peek()
		if size == 0 || !unicode.IsSpace(r) {
			return s.at > start
		}
		s.at += size
	}
}

// done reports whether only spaces are left.
func (s *scanner) done() bool {
	s.skipSpace()
	return s.at == len(s.text)
}

// word moves past letters and returns them.
func (s *scanner) word() string {
	start := s.at
	for {
		r, size := s.peek()
		if size == 0 || !unicode.IsLetter(r) {
			return s.text[start:s.at]
		}
		s.at += size
	}
}

// nextWord returns the letters that come next without moving.
func (s *scanner) nextWord() string {
	ahead := *s
	return ahead.word()
}

// take moves past one of the words, in capitals or not, and reports whether it
// did.
func (s *scanner) take(words ...string) bool {
	next := s.nextWord()
	for _, word := range words {
		if strings.EqualFold(next, word) {
			s.at += len(next)
			return true
		}
	}
	return false
}

// fail makes an error about the text at a byte.
func (s *scanner) fail(at int, reason string, instead ...string) *Error {
	return &Error{Text: s.text, Offset: at, Reason: reason, Instead: instead}
}

// with returns the text with the bytes from start to end replaced.
func (s *scanner) with(start, end int, replacement string) string {
	return s.text[:start] + replacement + s.text[end:]
}

// leftOver says why what comes next cannot be read: a word that is no unit of
// length, with the units nearest to it, or something else altogether.
func (s *scanner) leftOver() *Error {
	s.skipSpace()
	word := s.nextWord()
	if word == "" {
		return s.fail(s.at, "cannot make sense of "+quote(s.text[s.at:]))
	}
	end := s.at + len(word)
	likely := unitsNear(word)
	if likely == nil && end == len(s.text) {
		likely = []string{Inches.String(), Centimetres.String()}
	}
	var instead []string
	for _, unit := range likely {
		instead = append(instead, s.with(s.at, end, unit))
	}
	return s.fail(s.at, fmt.Sprintf("no unit of length is called %s", quote(word)), instead...)
}

// unitsNear returns the spellings of units that a misspelt word may stand for,
// nil where there are none.
func unitsNear(word string) []string {
	if strings.EqualFold(word, "ell") || strings.EqualFold(word, "ells") {
		return []string{"English " + word, "Flemish " + word}
	}
	var known []string
	for _, spelling := range spellings {
		known = append(known, spelling.text)
	}
	return near.Of(word, known)
}
