package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"os"

	"hussif/content/source"
)

// A voice says everything that a command has to say. What was asked for goes to
// standard output, how it is going to standard error. On a terminal lines are
// broken between words to fit its width; elsewhere every line is whole. Progress
// bars are for terminals only.
type voice struct {
	Streams
	colour bool // of standard output
	lively bool // whether standard error is a terminal that takes a line back
	width  int  // of the terminal that standard output is, or 0
}

func newVoice(s Streams) *voice {
	return &voice{
		Streams: s, colour: inColour(s.Out), width: columnsOf(s.Out),
		lively: isTerminal(s.Err) && os.Getenv("TERM") != "dumb",
	}
}

// sayf prints a line on standard output.
func (v *voice) sayf(format string, args ...any) {
	v.raw(fitted(fmt.Sprintf(format, args...), v.width))
}

// raw prints a line on standard output without breaking it.
func (v *voice) raw(line string) { fmt.Fprintln(v.Out, safe(line)) }

// asidef prints a line on standard error.
func (v *voice) asidef(format string, args ...any) {
	fmt.Fprintln(v.Err, safe(fitted(fmt.Sprintf(format, args...), columnsOf(v.Err))))
}

// fault says why a command could not be carried out.
func (v *voice) fault(err error) { v.asidef("hussif: %v", err) }

// json prints a value for other programs.
func (v *voice) json(value any) error {
	e := json.NewEncoder(v.Out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(value)
}

// findings prints findings for a person who asked for them.
func (v *voice) findings(list []source.Finding) error {
	return source.PrintWithin(v.Out, list, palette(v.colour), v.width)
}

// complain prints findings for a person who asked for something else, that they
// forbid.
func (v *voice) complain(list []source.Finding) error {
	return source.PrintWithin(v.Err, list, palette(inColour(v.Err)), columnsOf(v.Err))
}

func palette(colour bool) source.Palette {
	if !colour {
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

// tally counts findings in words: "2 errors, 1 warning".
func tally(list []source.Finding) string { return cmp.Or(source.Tally(list), "nothing amiss") }

// number puts a count before a word, with the plural where it needs one.
func number(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
