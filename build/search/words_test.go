package search

import (
	"slices"
	"strings"
	"testing"
	"unicode"
)

// The decompositions are those of the Unicode Character Database; that ß is looked
// for as ss, and ä as ae too, is how German dictionaries and letters without umlauts
// have it (DIN 5007-1 sorts ä as a, DIN 5007-2 as ae).
var written = map[string][]string{
	"":                              nil,
	"–, 37 1/2 in!":                 {"37", "1", "2", "in"},
	"The MAKER'S jacket":            {"the", "maker", "s", "jacket"},
	"Ärmel":                         {"armel", "aermel"},
	"A\u0308rmel":                   {"armel", "aermel"}, // the same, decomposed
	"Überrock, Röcke":               {"uberrock", "ueberrock", "rocke", "roecke"},
	"Maßband STRASSE GROẞ":          {"massband", "strasse", "gross"},
	"à la Française, robe anglaise": {"a", "la", "francaise", "robe", "anglaise"},
	"étamine cœur":                  {"etamine", "coeur"},
	"Łódź, Ærø, İzmir":              {"lodz", "aero", "izmir"},
	"37½ in":                        {"37½", "in"},
	"ΛΟΓΟΣ λόγος":                   {"λογοσ", "λογοσ"},
	"\u0301\u0301":                  nil, // marks on nothing
	"a\u0000b\xffc":                 {"a", "b", "c"},
}

func TestWords(t *testing.T) {
	for text, want := range written {
		if got := Words(text); !slices.Equal(got, want) {
			t.Errorf("%q has the words %q, want %q", text, got, want)
		}
	}
}

func TestFold(t *testing.T) {
	for text, want := range map[string]string{"Ärmel, kurz": "armel, kurz", "Öse": "ose", "plain": "plain", "": ""} {
		if got := Fold(text); got != want {
			t.Errorf("%q is looked for as %q, want %q", text, got, want)
		}
	}
}

func FuzzWords(f *testing.F) {
	for text := range written {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, word := range Words(text) {
			if word == "" || strings.ContainsFunc(word, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsMark(r) }) {
				t.Errorf("%q has the word %q", text, word)
			}
			if again := Words(word); !slices.Equal(again, []string{word}) {
				t.Errorf("the word %q of %q is looked for as %q", word, text, again)
			}
		}
	})
}
