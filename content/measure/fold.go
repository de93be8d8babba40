package measure

import (
	"unicode"
	"unicode/utf8"
)

// A folded name is what is left when everything has been taken out in which two
// makers might write the same name differently.
type folded struct {
	key   []byte
	first int // where the first word ends in key
	last  int // where the last word begins in key
}

// fold appends to buf the letters and digits of name in lower case, each word
// in the singular and none apart, so that "Under-bust girths" and "underbust
// girth" come out alike. A circumference is a girth, and centre may be spelled
// center. Given a large enough buf it does not allocate.
func fold(buf []byte, name string) folded {
	f := folded{key: buf}
	word := len(buf)
	end := func() {
		if word == len(f.key) {
			return
		}
		f.key = singular(f.key, word)
		if f.first == 0 {
			f.first = len(f.key)
		}
		f.last, word = word, len(f.key)
	}
	for _, r := range name {
		if inWord(r) {
			f.key = utf8.AppendRune(f.key, unicode.ToLower(r))
		} else {
			end()
		}
	}
	end()
	return f
}

func inWord(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r)
}

// singular rewrites the word that begins at start and ends the key.
func singular(key []byte, start int) []byte {
	if n := len(key); n-start > 3 && key[n-1] == 's' && key[n-2] != 's' {
		key = key[:n-1]
	}
	switch string(key[start:]) {
	case "circumference":
		return append(key[:start], "girth"...)
	case "center":
		return append(key[:start], "centre"...)
	}
	return key
}

func keyOf(name string) string {
	return string(fold(nil, name).key)
}
