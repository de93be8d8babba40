package main

import (
	"bytes"
	"context"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func asking(t *testing.T, answers string) (*asker, *bytes.Buffer) {
	t.Helper()
	var out bytes.Buffer
	return newAsker(t.Context(), Streams{In: strings.NewReader(answers), Out: &out, Err: t.Output()}), &out
}

func TestAsk(t *testing.T) {
	a, out := asking(t, "  plain\t words\x07\x1b[A \r\n\nmaybe\nYes\n\nn\n4\nstaiys\nSTAYS\n\nlast without an end")
	var got []any
	note := func(v any, err error) {
		if err != nil {
			t.Fatal(err)
		}
		got = append(got, v)
	}
	note(a.line("one?"))
	note(a.text("two?", "the usual"))
	note(a.yes("three?", false))
	note(a.yes("four?", true))
	note(a.yes("five?", true))
	note(a.choice("six?", []string{"shift", "stays"}))
	note(a.choice("seven?", []string{"shift", "stays"}))
	note(a.line("eight?"))
	want := []any{"plain  words", "the usual", true, true, false, "stays", "shift", "last without an end"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	for _, said := range []string{"two? [the usual] ", "  answer y or n\n", "three? [y/N] ", "  2  stays\n", "answer with a number from 1 to 2", "did you mean stays?"} {
		if !strings.Contains(out.String(), said) {
			t.Errorf("never said: %q", said)
		}
	}
	if _, err := a.yes("nine?", true); !errors.Is(err, io.EOF) {
		t.Errorf("at the end: %v", err)
	}
}

func TestAskStops(t *testing.T) {
	a, _ := asking(t, "stop\nStop\n")
	if text, err := a.line("one?"); text != "stop" || err != nil {
		t.Errorf("where no word stops: %q, %v", text, err)
	}
	a.stop = "stop"
	if _, err := a.yes("two?", true); !errors.Is(err, errStopped) {
		t.Errorf("got %v", err)
	}
}

// A question nobody answers ends with the context, and reads nothing more.
func TestAskInterrupted(t *testing.T) {
	silent, hand := io.Pipe()
	defer hand.Close()
	ctx, stop := context.WithCancel(t.Context())
	a := newAsker(ctx, Streams{In: silent, Out: io.Discard})
	stop()
	if _, err := a.line("one?"); !errors.Is(err, errInterrupted) {
		t.Errorf("got %v", err)
	}
}

func TestStem(t *testing.T) {
	for words, want := range map[string]string{
		"First fitting": "first-fitting", "  The tailor's — 2nd try!  ": "the-tailors-2nd-try", "Größe 38½": "größe-38", "../../etc": "etc", "…": "",
		strings.Repeat("seam ", 30):    strings.Repeat("seam-", 11) + "seam",
		strings.Repeat("x", 70) + " y": strings.Repeat("x", 60),
	} {
		if got := stem(words); got != want {
			t.Errorf("%q: got %q, want %q", words, got, want)
		}
	}
}

// What is worn can be written again as it was understood, and holds no empty layer.
func FuzzLayers(f *testing.F) {
	for _, seed := range []string{"", "nothing", "shift, stays and two petticoats", ",,a and  b ,and", " and and and "} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		once := layers(text)
		for _, layer := range once {
			if strings.TrimSpace(layer) == "" || strings.Contains(layer, ",") {
				t.Errorf("%q has the layer %q", text, layer)
			}
		}
		if diff := cmp.Diff(once, layers(strings.Join(once, ", "))); diff != "" {
			t.Errorf("%q: %s", text, diff)
		}
	})
}

// A stem is a name that every disk takes, and its own stem.
func FuzzStem(f *testing.F) {
	for _, seed := range []string{"First fitting", "../..", "it’s", strings.Repeat("ö ", 99), "a\x00b", "İ"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, words string) {
		got := stem(words)
		if strings.ContainsAny(got, "/\\:*?\"<>|. \x00\n") || strings.HasPrefix(got, "-") || len([]rune(got)) > longestStem {
			t.Errorf("%q makes %q", words, got)
		}
		if again := stem(got); again != got {
			t.Errorf("%q makes %q and that %q", words, got, again)
		}
	})
}
