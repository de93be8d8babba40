package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/term"

	"hussif/content/near"
)

// A question may be left without an answer.
var (
	errInterrupted = errors.New("interrupted") // by Ctrl-C
	errStopped     = errors.New("stopped")     // by the asker's word for it
)

// An asker puts questions, one at a time, and reads a line for each answer. Where
// nobody types, answers are read from a file or a pipe just the same, and are
// printed so that what comes out reads like a conversation. There is no colour and
// no moving about in it.
//
// Each question returns io.EOF at the end of input, errInterrupted on Ctrl-C, and
// errStopped where the answer is the word stop names.
type asker struct {
	ctx   context.Context
	in    *bufio.Reader
	out   io.Writer
	typed bool   // whether somebody types
	stop  string // "" for no such word
}

func newAsker(ctx context.Context, s Streams) *asker {
	return &asker{ctx: ctx, in: bufio.NewReader(s.In), out: s.Out, typed: isTyped(s.In)}
}

// isTyped reports whether what is read comes from a terminal.
func isTyped(r io.Reader) bool {
	f, ok := r.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// sayf prints a line between questions.
func (a *asker) sayf(format string, args ...any) { fmt.Fprintf(a.out, format+"\n", args...) }

// line puts a question and returns the answer without the blanks round it, and
// without what cannot be seen: a key that sends a sequence, say.
func (a *asker) line(question string) (string, error) {
	fmt.Fprint(a.out, question+" ")
	type reply struct {
		text string
		err  error
	}
	replies := make(chan reply, 1)
	// A read cannot be called off, so it is left behind when the question is. Only
	// one is ever under way: nothing is read that nobody asked for.
	go func() {
		text, err := a.in.ReadString('\n')
		replies <- reply{text, err}
	}()
	select {
	case <-a.ctx.Done():
		fmt.Fprintln(a.out)
		return "", errInterrupted
	case r := <-replies:
		text := seen(r.text)
		if r.err != nil && (text == "" || !errors.Is(r.err, io.EOF)) {
			fmt.Fprintln(a.out)
			return "", r.err
		}
		if !a.typed {
			fmt.Fprintln(a.out, text)
		}
		if a.stop != "" && strings.EqualFold(text, a.stop) {
			return "", errStopped
		}
		return text, nil
	}
}

// pressed finds what a terminal sends for a key that writes nothing, such as an arrow
// (ECMA-48, 5.4, and the SS3 sequences of ECMA-35).
var pressed = regexp.MustCompile("\x1b(\\[[0-?]*[ -/]*[@-~]|O.)")

// seen returns a line without what cannot be seen in it, nor the blanks round it.
func seen(line string) string {
	line = pressed.ReplaceAllString(strings.ToValidUTF8(line, ""), "")
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case r == '\t':
			return ' '
		case unicode.IsControl(r):
			return -1
		}
		return r
	}, line))
}

// text puts a question to which an empty answer means what stands in brackets.
func (a *asker) text(question, otherwise string) (string, error) {
	if otherwise != "" {
		question += " [" + otherwise + "]"
	}
	answer, err := a.line(question)
	if err == nil && answer == "" {
		answer = otherwise
	}
	return answer, err
}

// yes puts a question until it is answered with yes or no; an empty answer is the
// one with the capital.
func (a *asker) yes(question string, otherwise bool) (bool, error) {
	which := " [y/N]"
	if otherwise {
		which = " [Y/n]"
	}
	for {
		answer, err := a.line(question + which)
		if err != nil {
			return false, err
		}
		switch strings.ToLower(answer) {
		case "":
			return otherwise, nil
		case "y", "yes":
			return true, nil
		case "n", "no":
			return false, nil
		}
		a.sayf("  answer y or n")
	}
}

// choice lists some names and has one of them chosen, by its number or its name. An
// empty answer means the first.
func (a *asker) choice(question string, names []string) (string, error) {
	for i, name := range names {
		a.sayf("  %d  %s", i+1, name)
	}
	for {
		answer, err := a.text(question, "1")
		if err != nil {
			return "", err
		}
		if n, err := strconv.Atoi(answer); err == nil && 0 < n && n <= len(names) {
			return names[n-1], nil
		}
		for _, name := range names {
			if strings.EqualFold(name, answer) {
				return name, nil
			}
		}
		if instead := near.Of(answer, names); len(instead) > 0 {
			a.sayf("  did you mean %s?", strings.Join(instead, " or "))
		} else {
			a.sayf("  answer with a number from 1 to %d", len(names))
		}
	}
}
