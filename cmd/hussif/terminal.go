package main

import (
	"io"
	"os"
	"regexp"
	"strings"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"

	"hussif/content/fold"
	"hussif/content/source"
)

// narrowest and widest are the widths of terminals that lines are fitted to.
const (
	narrowest = 40
	widest    = 200
	prose     = 100 // columns of a line of words, longer than which none is read with ease
)

// isTerminal reports whether somebody reads what is written.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// columnsOf returns the width of the terminal that is written to, or 0 where it is
// none, so that no line is broken in a file or for another program.
func columnsOf(w io.Writer) int {
	if !isTerminal(w) {
		return 0
	}
	width, _, err := term.GetSize(int(w.(*os.File).Fd()))
	if err != nil || width <= 0 {
		return 80 // as wide as terminals are by old custom
	}
	return min(max(width, narrowest), widest)
}

// inColour reports whether what is written may have colour. NO_COLOR
// (no-color.org) turns it off, CLICOLOR=0 too; CLICOLOR_FORCE turns it on where
// nobody sees a terminal (bixense.com/clicolors).
func inColour(w io.Writer) bool {
	force := os.Getenv("CLICOLOR_FORCE")
	switch {
	case os.Getenv("NO_COLOR") != "":
		return false
	case force != "" && force != "0":
		return true
	case os.Getenv("CLICOLOR") == "0" || os.Getenv("TERM") == "dumb":
		return false
	}
	return isTerminal(w)
}

// fitted breaks lines for a width, or leaves them as they are for 0. The lines
// after the first are set in.
func fitted(text string, width int) string {
	if width == 0 {
		return text
	}
	var out []string
	for line := range strings.SplitSeq(text, "\n") {
		out = append(out, fold.Lines(line, min(width, prose), fold.Hang(line))...)
	}
	return strings.Join(out, "\n")
}

// ours matches the ends of lines and the bold letters of our own.
var ours = regexp.MustCompile("\n|\x1b\\[[01]m")

// safe makes text printable in which makers' words stand, so that none of them can
// steer the terminal: a title in quotes may hold any character.
func safe(text string) string {
	var b strings.Builder
	at := 0
	for _, m := range ours.FindAllStringIndex(text, -1) {
		b.WriteString(source.Printable(text[at:m[0]]) + text[m[0]:m[1]])
		at = m[1]
	}
	return b.String() + source.Printable(text[at:])
}

// progress returns what to call as work goes on: a bar on a terminal that can take
// a line back, nothing elsewhere.
func (v *voice) progress(what string) func(done, total int) {
	if !v.lively {
		return nil
	}
	// Beside the bar stand its name, a share and a count, and times where there is
	// room for them.
	room := columnsOf(v.Err) - fold.Width(what) - len(" 100% || (1000/1000) ")
	timed := room > 40
	if timed {
		room -= len("[10m0s:10m0s]")
	}
	var bar *progressbar.ProgressBar
	return func(done, total int) {
		if bar == nil {
			bar = progressbar.NewOptions(total, progressbar.OptionSetWriter(v.Err), progressbar.OptionSetWidth(max(room, 1)),
				progressbar.OptionSetPredictTime(timed), progressbar.OptionSetElapsedTime(timed),
				progressbar.OptionSetDescription(what), progressbar.OptionShowCount(), progressbar.OptionClearOnFinish())
		}
		_ = bar.Set(done) // a bar that cannot be drawn is no reason to stop
	}
}
