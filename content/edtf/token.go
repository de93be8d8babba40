package edtf

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A token is one word, number or sign of a caption.
type token struct {
	kind tokenKind
	text string // lower case, without the dot of an abbreviation
	at   int    // byte offset in the caption
	end  int    // where its text ends there, a dot left out
}

type tokenKind int

const (
	endToken tokenKind = iota
	wordToken
	numberToken
	dashToken
	slashToken
	commaToken
	doubtToken // "?" or "(?)"
	otherToken
)

// tokens splits a caption up, ending with an endToken. Letters and digits part
// without a space between: "c1785" and "18th" are two tokens each.
func tokens(text string) []token {
	var list []token
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRuneInString(text[at:])
		rest := text[at:]
		t := token{kind: otherToken, text: rest[:size], at: at}
		switch {
		case unicode.IsSpace(r):
			at += size
			continue
		case strings.HasPrefix(rest, "(?)") || strings.HasPrefix(rest, "[?]"):
			size = len("(?)")
			t.kind = doubtToken
		case r == '?':
			t.kind = doubtToken
		case unicode.IsLetter(r):
			t.kind = wordToken
			word := leading(rest, unicode.IsLetter)
			t.text = strings.ToLower(word)
			size = len(word)
			t.end = at + size
			if strings.HasPrefix(rest[size:], ".") {
				size++
			}
		case isDigit(r):
			t.kind = numberToken
			t.text = leading(rest, isDigit)
			size = len(t.text)
		case strings.ContainsRune("-‐‑‒–—−", r):
			t.kind = dashToken
		case r == '/':
			t.kind = slashToken
		case r == ',':
			t.kind = commaToken
		case r == '&':
			t.kind, t.text = wordToken, "and"
		case strings.ContainsRune("'’", r) && len(list) > 0 && list[len(list)-1].kind == numberToken:
			// 1780's
			at += size
			continue
		}
		at += size
		if t.end == 0 {
			t.end = at
		}
		list = append(list, t)
	}
	return append(list, token{at: len(text), end: len(text)})
}

// leading returns the longest start of text made of such runes.
func leading(text string, such func(rune) bool) string {
	return text[:len(text)-len(strings.TrimLeftFunc(text, such))]
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }
