package source

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"

	"hussif/content/fold"
)

// maxSnippet is how much of a line is shown, in columns of a terminal, and
// maxRunes in characters: any number of them may stand in no column at all.
const (
	maxSnippet = 100
	maxRunes   = 4 * maxSnippet
)

// leastSnippet is shown on the narrowest of terminals.
const leastSnippet = 20

func printSnippet(b *bytes.Buffer, f Finding, p Palette, width int) {
	margin := "   "
	if s := f.Span; !s.IsZero() {
		line, _ := s.Position()
		text := s.File.lineText(line)
		from := min(s.Start-s.File.LineStart(line), len(text))
		to := max(min(s.End-s.File.LineStart(line), len(text)), from)
		number := fmt.Sprint(line)
		margin = strings.Repeat(" ", len(number)+2)
		most := maxSnippet
		if width > 0 {
			most = max(min(width-len(margin)-len(" | ……"), maxSnippet), leastSnippet)
		}
		shown, lead, under := snippet(text, from, to, most)
		if shown != "" {
			fmt.Fprintf(b, "%s %s\n", paint(p.Margin, "  "+number+" |"), shown)
			fmt.Fprintf(b, "%s %s%s\n", paint(p.Margin, margin+" |"), lead,
				paint(p.level(f.Level), strings.Repeat("^", under)))
		}
	}
	if advice := f.Advice(); advice != "" {
		for _, line := range fold.Lines(oneLine(advice), max(width-len(margin)-len(" | "), 0), "") {
			fmt.Fprintf(b, "%s %s\n", paint(p.Margin, margin+" |"), line)
		}
	}
}

// snippet returns the part of a line that is worth showing, of most columns, the
// blanks that reach from its start to the byte from, and the width of the bytes
// from..to, at least 1.
func snippet(line []byte, from, to, most int) (shown, lead string, under int) {
	start := 0
	if forward(line, most) < len(line) {
		start = backward(line[:from], most/2)
	}
	end := start + forward(line[start:], most)
	var s strings.Builder
	if start > 0 {
		s.WriteString("…")
		lead = " "
	}
	s.WriteString(Printable(string(line[start:end])))
	if end < len(line) {
		s.WriteString("…")
	}
	return s.String(), lead + blanks(line[start:from]), max(1, columns(line[from:max(min(to, end), from)]))
}

// backward returns where the last columns of a line begin.
func backward(line []byte, most int) int {
	at, used := len(line), 0
	for n := 0; at > 0 && n < maxRunes; n++ {
		r, size := utf8.DecodeLastRune(line[:at])
		if used += runeColumns(r); used > most {
			break
		}
		at -= size
	}
	return at
}

// forward returns where the first columns of a line end.
func forward(line []byte, most int) int {
	at, used := 0, 0
	for n := 0; at < len(line) && n < 2*maxRunes; n++ {
		r, size := utf8.DecodeRune(line[at:])
		if used += runeColumns(r); used > most {
			break
		}
		at += size
	}
	return at
}

// blanks returns white space as wide as b. Tabs stay tabs, so that the caret
// stands right however wide the terminal draws them.
func blanks(b []byte) string {
	var s strings.Builder
	for _, r := range string(b) {
		if r == '\t' {
			s.WriteByte('\t')
			continue
		}
		s.WriteString(strings.Repeat(" ", runeColumns(r)))
	}
	return s.String()
}

func columns(b []byte) int {
	n := 0
	for _, r := range string(b) {
		n += runeColumns(r)
	}
	return n
}

// runeColumns returns how wide a character is as [printable] shows it.
func runeColumns(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// Printable keeps control characters, bytes that are no UTF-8 and marks that turn
// the direction of the text from reaching the terminal.
func Printable(text string) string {
	return strings.Map(func(r rune) rune {
		if r != '\t' && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) {
			return unicode.ReplacementChar
		}
		return r
	}, text)
}

// oneLine makes words printable that a finding quotes.
func oneLine(s string) string { return strings.ReplaceAll(Printable(s), "\t", " ") }
