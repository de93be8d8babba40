package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"strings"
	"text/tabwriter"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"

	"hussif/content/source"
)

// A voice says everything that a command has to say. What was asked for goes to
// standard output, how it is going to standard error. Colour and progress bars
// are for terminals only, and NO_COLOR turns colour off (no-color.org).
type voice struct {
	Streams
	colour bool // of standard output
	lively bool // whether standard error is a terminal
}

func newVoice(s Streams) *voice {
	plain := os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb"
	return &voice{Streams: s, colour: isTerminal(s.Out) && !plain, lively: isTerminal(s.Err)}
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// sayf prints a line on standard output.
func (v *voice) sayf(format string, args ...any) { fmt.Fprintf(v.Out, format+"\n", args...) }

// fault says why a command could not be carried out, in one line.
func (v *voice) fault(err error) { fmt.Fprintf(v.Err, "hussif: %v\n", err) }

// json prints a value for other programs.
func (v *voice) json(value any) error {
	e := json.NewEncoder(v.Out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(value)
}

// findings prints findings for a person.
func (v *voice) findings(list []source.Finding) error { return source.Print(v.Out, list, v.palette()) }

func (v *voice) palette() source.Palette {
	if !v.colour {
		return source.Palette{}
	}
	ink := func(code string) func(string) string {
		return func(s string) string { return "\x1b[" + code + "m" + s + "\x1b[0m" }
	}
	return source.Palette{Error: ink("1;31"), Warning: ink("1;33"), Hint: ink("36"), Place: ink("1"), Margin: ink("2")}
}

// bold makes words stand out on a terminal.
func (v *voice) bold(s string) string {
	if !v.colour {
		return s
	}
	return "\x1b[1m" + s + "\x1b[0m"
}

// columns prints rows of cells under each other. It keeps colour out of the cells,
// whose widths it measures.
func (v *voice) columns(rows [][]string) {
	w := tabwriter.NewWriter(v.Out, 0, 0, 2, ' ', 0)
	for _, row := range rows {
		fmt.Fprintln(w, strings.TrimRight(strings.Join(row, "\t"), "\t"))
	}
	w.Flush()
}

// progress returns what to call as work goes on: a bar on a terminal, nothing
// elsewhere.
func (v *voice) progress(what string) func(done, total int) {
	if !v.lively {
		return nil
	}
	var bar *progressbar.ProgressBar
	return func(done, total int) {
		if bar == nil {
			bar = progressbar.NewOptions(total, progressbar.OptionSetWriter(v.Err),
				progressbar.OptionSetDescription(what), progressbar.OptionShowCount(), progressbar.OptionClearOnFinish())
		}
		_ = bar.Set(done) // a bar that cannot be drawn is no reason to stop
	}
}

// tally counts findings in words: "2 errors, 1 warning".
func tally(list []source.Finding) string { return cmp.Or(source.Tally(list), "nothing amiss") }

// number puts a count before a word, with the plural where it needs one.
func number(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
