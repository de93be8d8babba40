package prose

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestGist(t *testing.T) {
	for _, c := range []struct{ name, words, want string }{
		{"small words left out", "Cut the sleeve an inch wider.", "cut-sleeve-inch-wider"},
		{"six words", "pin, baste, press, trim, clip, grade and turn", "pin-baste-press-trim-clip-grade"},
		{"forty letters", "understitching handkerchief buttonholes everywhere", "understitching-handkerchief-buttonholes"},
		{"what turns it round stays", "do not cut before it is dry", "not-cut-before-dry"},
		{"only small words", "as it was", "as-it-was"},
		{"a fraction", "3/4 in more at the waist", "3-4-more-waist"},
		{"other scripts", "Ärmel weiter schneiden: рукав 袖", "ärmel-weiter-schneiden-рукав-袖"},
		{"no blanks", strings.Repeat("袖", 50), strings.Repeat("袖", 40)},
		{"punctuation", `"Don't" (really) press!`, "dont-press"},
		{"a tie", "true [[short-jacket#sleeve]] first", "true-short-jacket-first"},
		{"a tie with words", "true [[short-jacket|the draft]] first", "true-draft-first"},
		{"no tie", "a [[b]", "b"},
		{"nothing", " ?! ", ""},
	} {
		if got := gist(c.words); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestNoteAnchors(t *testing.T) {
	var a Anchors
	for _, c := range []struct{ hand, words, want string }{
		{"next", "cut the sleeve wider", "next-cut-sleeve-wider"},
		{"next", "Cut sleeve, wider!", "next-cut-sleeve-wider-2"},
		{"next", "cut the sleeve wider 2", "next-cut-sleeve-wider-2-2"},
		{"decided", "cut the sleeve wider", "decided-cut-sleeve-wider"},
		{"next", "2", "next-note-2"},
		{"next", "", "next-note"},
		{"next", "?", "next-note-3"},
		{"decided", "", "decided-note"},
		{"heading", "Next: cut the sleeve wider", "heading-next-cut-the-sleeve-wider"},
		{"heading", "Decided 1", "heading-decided-1"},
		{"heading", "Next", "next"},
		{"heading", "Next", "heading-next-2"},
	} {
		hand := map[string]func(string) string{"next": a.Next, "decided": a.Decided, "heading": a.heading}[c.hand]
		if got := hand(c.words); got != c.want {
			t.Errorf("%s %q: %q, want %q", c.hand, c.words, got, c.want)
		}
	}
}

// A note keeps its anchor whatever is written before it, after it or in another
// order, as long as the others begin otherwise.
func TestAnchorsStay(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	first := []string{"cut", "baste", "press", "unpick", "measure", "ärmel", "袖", "3/4", "no", "the"}
	then := []string{"the sleeve", "an inch", "on the bias", "before lining", "twice", "over stays", "2", "at the waist"}
	var notes []string
	for _, a := range first {
		for _, b := range then {
			notes = append(notes, a+" "+b)
		}
	}
	alone := func(words string) string { var a Anchors; return a.Next(words) }
	for range 200 {
		chosen := make([]string, 2+random.IntN(8))
		for i, at := range random.Perm(len(notes))[:len(chosen)] {
			chosen[i] = notes[at]
		}
		var body strings.Builder
		for i, words := range chosen {
			fmt.Fprintf(&body, "## Next: %s\n\n- Private: %s\n- Next time: %s\n\n", words, words, words)
			if i%3 == 0 {
				fmt.Fprintf(&body, "Decided: %s\n\n", words)
			}
		}
		for _, r := range readBody(t, body.String()).Remarks {
			if r.Kind == NextTime && r.Anchor != alone(r.Text) {
				t.Fatalf("%q is at %q among others and at %q alone", r.Text, r.Anchor, alone(r.Text))
			}
		}
	}
}

func FuzzGist(f *testing.F) {
	for _, seed := range []string{"Cut the sleeve wider", "2", "", "袖 in ½", "İ ǅ é́", "the of", "next-1", "\u0301a", strings.Repeat("a ", 900)} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, words string) {
		if !utf8.ValidString(words) {
			t.Skip("is refused when the file is loaded")
		}
		got := gist(words)
		if slug(got) != got {
			t.Errorf("%q makes %q, which a link would read as %q", words, got, slug(got))
		}
		if utf8.RuneCountInString(got) > gistLetters {
			t.Errorf("%q makes %q, which is too long", words, got)
		}
		var a Anchors
		handed := []string{a.Next(words), a.Next(words), a.Decided(words), a.heading(words), a.heading("next " + words)}
		for i, anchor := range handed {
			if slices.Contains(handed[:i], anchor) {
				t.Errorf("%q is handed out twice for %q", anchor, words)
			}
			if rest, ok := strings.CutPrefix(anchor, nextPrefix); ok && (rest == "" || strings.Trim(rest, "0123456789") == "") {
				t.Errorf("%q makes %q, which is a place in a count", words, anchor)
			}
		}
	})
}
