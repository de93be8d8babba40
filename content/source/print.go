package source

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"hussif/content/fold"
)

// A Palette colours the parts of a printed finding. The zero Palette leaves them
// plain.
type Palette struct {
	Error, Warning, Hint, Place, Margin func(string) string
}

func (p Palette) level(l Level) func(string) string {
	return [...]func(string) string{p.Error, p.Warning, p.Hint}[l]
}

func paint(with func(string) string, s string) string {
	if with == nil {
		return s
	}
	return with(s)
}

// Print writes findings for a person to read, each with the line it is about and
// a caret under the very words:
//
//	people/wren.md:7:5: error: no measure is called "wast girth" [unknown measure]
//	  7 |     wast girth: 29 in
//	    |     ^^^^^^^^^^
//	    | did you mean "waist girth"?
//
// Nothing that a file or its name holds can steer the terminal.
func Print(w io.Writer, findings []Finding, p Palette) error { return PrintWithin(w, findings, p, 0) }

// PrintWithin is [Print] for a terminal of some width, in columns: words are broken
// into lines and less is shown of a long line. 0 is any width.
func PrintWithin(w io.Writer, findings []Finding, p Palette, width int) error {
	var b bytes.Buffer
	lines := func(text string) {
		for _, line := range fold.Lines(text, width, "    ") {
			b.WriteString(line + "\n")
		}
	}
	for _, f := range findings {
		place := ""
		if !f.Span.IsZero() {
			place = paint(p.Place, oneLine(f.Span.String())) + ": "
		}
		lines(fmt.Sprintf("%s%s: %s [%s]", place, paint(p.level(f.Level), f.Level.String()), oneLine(f.Text), f.Rule))
		printSnippet(&b, f, p, width)
		for _, r := range f.Related {
			lines(fmt.Sprintf("  %s: %s", paint(p.Place, oneLine(r.Span.String())), oneLine(r.Text)))
		}
	}
	_, err := w.Write(b.Bytes())
	return err
}

// String returns the place as path:line:column, which editors and terminals turn
// into a link.
func (s Span) String() string {
	line, column := s.Position()
	return fmt.Sprintf("%s:%d:%d", s.name(), line, column)
}

// Advice returns what the maker could do about a finding in a sentence, or "".
func (f Finding) Advice() string {
	var quoted []string
	for _, s := range f.Instead {
		quoted = append(quoted, `"`+s+`"`)
	}
	switch {
	case len(quoted) == 0:
		return f.Help
	case len(quoted) == 1:
		return "did you mean " + quoted[0] + "?"
	}
	last := len(quoted) - 1
	return "did you mean " + strings.Join(quoted[:last], ", ") + " or " + quoted[last] + "?"
}
