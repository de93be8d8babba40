package theme

import "strings"

// figures prints text with each common fraction marked, so that the style can
// set "37 1/2 in" with a built fraction on one line, and the text stays as typed, but
// for a blank that does not break, when it is copied or read aloud. Dates such as 1780/1789 and 3/4/26 are no fractions.
func (p *printer) figures(text string) {
	done := 0
	for at := strings.IndexByte(text, '/'); at >= 0 && at < len(text); at++ {
		if text[at] != '/' {
			continue
		}
		from, to := around(text, at)
		if !isFraction(text, from, at, to) {
			continue
		}
		p.text(joined(text[done:from]))
		p.WriteString(`<span class="fraction">`)
		p.WriteString(text[from:to])
		p.WriteString(`</span>`)
		done = to
		at = to - 1
	}
	p.text(text[done:])
}

// joined keeps a whole number on one line with the fraction that follows it.
func joined(before string) string {
	if n := len(before); n >= 2 && before[n-1] == ' ' && isDigit(before[n-2]) {
		return before[:n-1] + "\u00a0"
	}
	return before
}

// around returns where the digits on both sides of the slash begin and end.
func around(text string, slash int) (from, to int) {
	for from = slash; from > 0 && isDigit(text[from-1]); from-- {
	}
	for to = slash + 1; to < len(text) && isDigit(text[to]); to++ {
	}
	return from, to
}

// minus is the sign of lengths below nothing, U+2212.
const minus = "\u2212"

// isFraction says whether text[from:to] is a number of halves, thirds, quarters
// ... sixty-fourths below one that stands by itself.
func isFraction(text string, from, slash, to int) bool {
	above, below := text[from:slash], text[slash+1:to]
	switch below {
	case "2", "3", "4", "5", "6", "8", "10", "12", "16", "32", "64":
	default:
		return false
	}
	if above == "" || above[0] == '0' || len(above) > len(below) || len(above) == len(below) && above >= below {
		return false
	}
	alone := from == 0 || strings.HasSuffix(text[:from], minus) || !joins(text[from-1])
	return alone && (to == len(text) || !joins(text[to]))
}

// joins says whether a character next to digits makes them part of something
// longer: a decimal, a date, a name.
func joins(c byte) bool {
	return isDigit(c) || c == '/' || c == '.' || c == '_' || 'A' <= c && c <= 'Z' || 'a' <= c && c <= 'z' || c >= 0x80
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }
