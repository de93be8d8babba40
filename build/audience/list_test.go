package audience

import (
	"strings"
	"testing"

	"hussif/content/journal"
)

// A measure or money in words is for the maker to see to, unless it may be known.
func TestMeasuresInWordsAreTold(t *testing.T) {
	for words, want := range map[string]string{
		"The waist is 28 3/4 in today.":               "a measure",
		"Her bust girth came to 92,5 cm.":             "a measure",
		"Wrist 6\" round.":                            "a measure",
		"Eight and a quarter inches at the wrist.":    "a measure",
		"Her waist is twenty-eight inches.":           "a measure",
		"Two inches off at the waist, twice.":         "",
		"Let the waist out by 1/2 in.":                "",
		"Took 2 1/4 in off at the waist.":             "",
		"The skirt is 30 in long.":                    "",
		"The cord cost 12 EUR.":                       "money",
		"It was £4 a yard.":                           "money",
		"Two pounds of tow, 5 pounds of flour.":       "money",
		"Private: the waist is 28 3/4 in":             "",
		"Cut on 2026-03-01 with 14 pins in the bust.": "",
	} {
		for allowed, says := range map[bool]string{false: "", true: "---\nshows measures: public\nshows money: public\n---\n"} {
			f := archive(t, party).with("people/ada.md", says).with("builds/grey-jacket/2026-03-01-fitting.md", "One.\n\n"+words+"\n")
			s := f.share(t, journal.Circle)
			j, _ := f.open(t)
			var got []string
			for _, d := range s.Doubts(j) {
				if line, _ := d.Span.Position(); d.Rule != InWords || line != 3 || d.Span.Text() != strings.TrimSpace(words) {
					t.Errorf("%q: %s: %s", words, d.Span, d.Text)
				}
				got = append(got, d.Text)
			}
			expected := want != "" && !allowed
			if (len(got) == 1) != expected || expected && !strings.Contains(got[0], want) {
				t.Errorf("%q, allowed %t: found %q", words, allowed, got)
			}
		}
	}
}

func TestHiddenNamesAreTold(t *testing.T) {
	for words, want := range map[string]string{
		"As on the secret gown of last year.": "Secret gown",
		"See secret-gown for that.":           "secret-gown",
		"Bea held the tape.":                  "Bea",
		"The beadwork is a secret.":           "",
		"Not-so-secret-gown.":                 "",
	} {
		f := archive(t, party).with("builds/grey-jacket/2026-03-01-fitting.md", "One.\n\n"+words+"\n")
		j, _ := f.open(t)
		doubts := f.share(t, journal.Circle).Doubts(j)
		if len(doubts) != min(1, len(want)) || want != "" && (doubts[0].Rule != NamedYet || !strings.Contains(strings.ToLower(doubts[0].Text), strings.ToLower(want))) {
			t.Errorf("%q: %v", words, doubts)
		}
	}
}

func TestWhatIsSeenIsCounted(t *testing.T) {
	f := every(t)
	f.replace("people/wren.md", "shows money: self", "shows money: circle\nshows measures: circle")
	s := f.share(t, journal.Circle)
	pages := s.Pages()
	j, _ := f.open(t)
	if got, want := Summary(s.Who, pages, len(j.Records())), "the circle sees 11 of 11 pages, 6 photos, 6 measures and 4 amounts of money"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	f.replace("people/wren.md", "shows money: circle\nshows measures: circle", "share: circle")
	s = f.share(t, journal.Public)
	if got, want := Summary(s.Who, s.Pages(), len(j.Records())), "the public sees 8 of 11 pages, 4 photos, no measures and no amounts of money"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
