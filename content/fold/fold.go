// Package fold fits words to the width of a terminal: how many columns a text
// takes, and where its lines are to be broken.
//
// Widths are those of whole characters as a reader sees them: a wide letter takes
// two columns (Unicode Standard Annex #11), a combining mark none, and a character
// of several code points (Annex #29) is never parted. Lines are broken at blanks,
// but not within a figure such as "28 1/4 in", and between wide letters where Annex
// #14 allows it. Any other word stays whole however long it is: names, paths and
// commands are there to be copied. The annexes are followed by
// github.com/rivo/uniseg.
package fold

import (
	"regexp"
	"strings"

	"github.com/rivo/uniseg"
)

// colour matches what sets the colour of a terminal's text and takes no column.
var colour = regexp.MustCompile("\x1b\\[[0-9;]*m")

// Width returns how many columns a text takes in a terminal. Escape sequences for
// colour take none.
func Width(text string) int {
	if strings.ContainsRune(text, '\x1b') {
		text = colour.ReplaceAllString(text, "")
	}
	return uniseg.StringWidth(text)
}

// Lines breaks a line into lines of at most width columns, as far as words allow
// it. Blanks at its start are
// kept, and the lines after the first begin with hang. Blanks where a line is
// broken are dropped. No line is broken where width is 0 or less.
func Lines(line string, width int, hang string) []string {
	if width <= 0 || Width(line) <= width {
		return []string{line}
	}
	text := strings.TrimLeft(line, " ")
	indent := line[:len(line)-len(text)]
	hang = hang[:min(len(hang), width/2)]
	indent = indent[:min(len(indent), width/2)]
	var out []string
	now, used := indent, len(indent)
	fresh, gap := true, ""
	for _, part := range parts(text) {
		if blank := strings.Trim(part, " ") == ""; blank {
			gap += part
			continue
		}
		w := Width(part)
		if !fresh && used+len(gap)+w > width {
			out = append(out, now)
			now, used, gap = hang, len(hang), ""
		}
		now, used = now+gap+part, used+len(gap)+w
		fresh, gap = false, ""
	}
	return append(out, now)
}

// parts cuts a text into blanks and what stands between them, and that where it
// may be broken. A figure stays in one part with its fraction and unit.
func parts(text string) []string {
	var out []string
	for text != "" {
		n := strings.IndexByte(text, ' ')
		if n == 0 {
			n = len(text) - len(strings.TrimLeft(text, " "))
			out, text = append(out, text[:n]), text[n:]
			continue
		}
		if n < 0 {
			n = len(text)
		}
		if f := strings.TrimRight(figure.FindString(text), " "); len(f) > n {
			n = len(f)
		}
		out, text = append(out, word(text[:n])...), text[n:]
	}
	return out
}

// figure matches a number with its fraction and unit, and what clings to them.
var figure = regexp.MustCompile(`^[^ \pL]*[0-9½¼¾⅛⅜⅝⅞]( [0-9]+/[0-9]+)?( (in|ft|yd|mm|cm|m|h|min|%))?([^ \pL][^ ]*)?( |$)`)

// Longest returns how wide the widest part of a text is that stays on one line.
func Longest(text string) int {
	longest := 0
	for _, part := range parts(text) {
		if strings.Trim(part, " ") != "" {
			longest = max(longest, Width(part))
		}
	}
	return longest
}

// word cuts a word where it may be broken.
func word(text string) []string {
	if !wide(text) {
		return []string{text}
	}
	var out []string
	for state := -1; text != ""; {
		var piece string
		piece, text, _, state = uniseg.FirstLineSegmentInString(text, state)
		out = append(out, piece)
	}
	return out
}

// wide reports whether a text has wide letters, between which no blanks stand.
func wide(text string) bool {
	for state := -1; text != ""; {
		var w int
		_, text, w, state = uniseg.FirstGraphemeClusterInString(text, state)
		if w > 1 {
			return true
		}
	}
	return false
}

// Cut returns as much of a text as takes width columns, with an ellipsis where
// that is not all.
func Cut(text string, width int) string {
	if Width(text) <= width {
		return text
	}
	n, used := 0, 0
	for rest, state := text, -1; rest != ""; {
		var cluster string
		var w int
		cluster, rest, w, state = uniseg.FirstGraphemeClusterInString(rest, state)
		if used += w; used > width-1 {
			break
		}
		n += len(cluster)
	}
	return text[:n] + "…"
}

// Hang returns blanks for the lines after the first of a line that may be an item
// of a list or have a second column: below its words where it is one, and else a
// little further in than its own start.
func Hang(line string) string {
	line = colour.ReplaceAllString(line, "")
	if m := item.FindString(line); m != "" {
		return strings.Repeat(" ", Width(m))
	}
	return strings.Repeat(" ", len(line)-len(strings.TrimLeft(line, " "))+2)
}

var item = regexp.MustCompile(`^ *(- |\[ \] (\d+\. )?|\d+\. |[^ ]+( [^ ]+)*  +)`)

// Paragraphs fits a text whose paragraphs may be broken into lines already. Lines
// that begin with a blank, such as examples, are not joined with others.
func Paragraphs(text string, width int) []string {
	var out []string
	open := ""
	end := func() {
		if open != "" {
			out = append(out, Lines(open, width, "")...)
		}
		open = ""
	}
	for line := range strings.SplitSeq(text, "\n") {
		switch {
		case line == "":
			end()
			out = append(out, "")
		case line[0] == ' ':
			end()
			out = append(out, Lines(line, width, Hang(line))...)
		case open == "":
			open = line
		default:
			open += " " + line
		}
	}
	end()
	return out
}
