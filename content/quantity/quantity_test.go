package quantity_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"hussif/content/quantity"
)

// A trial is a text and what a parser should make of it.
type trial[T any] struct {
	text string
	want T
}

func accepts[T comparable](t *testing.T, parse func(string) (T, error), trials []trial[T]) {
	t.Helper()
	for _, tt := range trials {
		got, err := parse(tt.text)
		if err != nil {
			t.Errorf("%q: refused: %v", tt.text, err)
		} else if got != tt.want {
			t.Errorf("%q = %+v, want %+v", tt.text, got, tt.want)
		}
	}
}

// A refusal is a text, the rest of it from the byte where it goes wrong, a part
// of the reason, and the suggestions.
type refusal struct {
	text, from, reason string
	instead            []string
}

func refuses[T any](t *testing.T, parse func(string) (T, error), refusals []refusal) {
	t.Helper()
	for _, tt := range refusals {
		got, err := parse(tt.text)
		if err == nil {
			t.Errorf("%q = %+v, want it refused", tt.text, got)
			continue
		}
		e := sound(t, tt.text, err, parse)
		if e.Text[e.Offset:] != tt.from {
			t.Errorf("%q goes wrong at %q, want at %q", tt.text, e.Text[e.Offset:], tt.from)
		}
		if !strings.Contains(e.Reason, tt.reason) {
			t.Errorf("%q: reason %q does not say %q", tt.text, e.Reason, tt.reason)
		}
		if !slices.Equal(e.Instead, tt.instead) {
			t.Errorf("%q: instead %q, want %q", tt.text, e.Instead, tt.instead)
		}
	}
}

// sound checks what holds for every error of every parser.
func sound[T any](t *testing.T, text string, err error, parse func(string) (T, error)) *quantity.Error {
	t.Helper()
	var e *quantity.Error
	if !errors.As(err, &e) {
		t.Fatalf("%q: error of type %T", text, err)
	}
	switch {
	case e.Text != text:
		t.Errorf("%q: error is about %q", text, e.Text)
	case e.Offset < 0 || e.Offset > len(text):
		t.Fatalf("%q: offset %d is outside", text, e.Offset)
	case utf8.ValidString(text) && e.Offset < len(text) && !utf8.RuneStart(text[e.Offset]):
		t.Errorf("%q: offset %d is within a character", text, e.Offset)
	case e.Reason == "" || strings.HasSuffix(e.Reason, ".") || !utf8.ValidString(e.Error()):
		t.Errorf("%q: reason %q", text, e.Reason)
	}
	for _, instead := range e.Instead {
		if _, err := parse(instead); err != nil {
			t.Errorf("%q: suggestion %q is refused: %v", text, instead, err)
		}
	}
	return e
}

// inInches reads lengths in a journal whose numbers are inches.
func inInches[T any](parse func(string, quantity.Unit) (T, error)) func(string) (T, error) {
	return with(parse, quantity.Inches)
}

// spelt reads lengths that must say their unit.
func spelt[T any](parse func(string, quantity.Unit) (T, error)) func(string) (T, error) {
	return with(parse, quantity.NoUnit)
}

func with[T, U any](parse func(string, U) (T, error), bare U) func(string) (T, error) {
	return func(text string) (T, error) { return parse(text, bare) }
}
