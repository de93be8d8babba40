package audience

import (
	"strings"
	"testing"

	"hussif/content/journal"
)

const fitted = `
-- journal.yaml --
share: circle
-- people/ada.md --
---
shows fit: deltas
measured: [{date: 2026-01-10, over: [stays], bust girth: 36 in}]
---
-- builds/jacket/build.md --
---
for: ada
over: [stays]
fit: {bust girth: 1 to 2 in}
seams: [{name: side, count: 2, now: 1 in, keep: 1/4 in, crosses: [bust girth]}]
---
-- builds/jacket/2026-03-01-basted.md --
---
measured: {bust girth: 35 in}
---
-- builds/jacket/2026-04-01-let-out.md --
---
share: self
altered: [{seam: side, was: 1 in, now: 1/2 in}]
---
`

// TestHiddenWorkDoesNotCount: how a garment fits is told by what is seen, so that nobody
// can see from it that something was done in secret.
func TestHiddenWorkDoesNotCount(t *testing.T) {
	with := archive(t, fitted)
	told := with.share(t, journal.Circle).print()
	if !strings.Contains(told, "bust girth: short by 2 in") { // 35 in less 36 in, of 1 in at the least
		t.Errorf("told is\n%s", told)
	}
	without, _, _ := strings.Cut(fitted, "-- builds/jacket/2026-04-01")
	if other := archive(t, without).share(t, journal.Circle).print(); other != told {
		t.Errorf("with the note\n%s\nwithout\n%s", told, other)
	}
	// A field of a note that is seen may be hidden too.
	field := archive(t, strings.Replace(fitted, "share: self\n", "share fields: {altered: self}\n", 1))
	if !strings.Contains(field.share(t, journal.Circle).print(), "bust girth: short by 2 in") {
		t.Error("hidden fields count")
	}
	open := archive(t, strings.Replace(fitted, "share: self\n", "", 1))
	if !strings.Contains(open.share(t, journal.Circle).print(), "bust girth: fits") {
		t.Errorf("what is seen does not count:\n%s", open.share(t, journal.Circle).print())
	}
}

// TestHerOwnWordOnFit: how a wearer lets her garments' fit be shown counts also where
// she shows her measures.
func TestHerOwnWordOnFit(t *testing.T) {
	for _, c := range []struct{ shows, told string }{
		{"shows fit: nothing\nshows measures: circle", ""},
		{"shows fit: words\nshows measures: circle", "bust girth: short ("},
		{"shows fit: deltas\nshows measures: circle", "bust girth: short by 2 in ("},
		{"shows measures: circle", ""}, // the site works it out
	} {
		s := archive(t, strings.Replace(fitted, "shows fit: deltas", c.shows, 1)).share(t, journal.Circle)
		all := s.print()
		if c.told == "" && len(s.Fits) > 0 || !strings.Contains(all, c.told) {
			t.Errorf("%q: told is\n%s", c.shows, all)
		}
		note := string(s.Folder.Texts["builds/jacket/2026-03-01-basted.md"])
		if measured := strings.Contains(note, "35 in"); measured != !strings.Contains(c.shows, "shows fit") {
			t.Errorf("%q: the garment's measures are there: %t", c.shows, measured)
		}
		if !strings.Contains(string(s.Folder.Texts["people/ada.md"]), "36 in") {
			t.Errorf("%q: her own measures are not there", c.shows)
		}
	}
}

// TestPrivateElsewhere: where the word hides nothing, check says so.
func TestPrivateElsewhere(t *testing.T) {
	for words, doubted := range map[string]bool{
		"## Private: plans": true, "A line. Private: plans": true, "(Private: plans)": true, "`Private:` plans": true, `\Private: plans`: true,
		"Next time: Private: plans": true, "Private： plans": true, "Private - plans": true, "| a |\n|---|\n| Private: plans |": true,
		"Private: plans": false, "- Private: plans": false, "A private joke.": false, "In private, she sews.": false,
	} {
		f := archive(t, "-- journal.yaml --\nshare: circle\n-- notes/2026-01-01.md --\n"+words+"\n")
		full, _ := f.open(t)
		found := false
		for _, doubt := range f.share(t, journal.Circle).Doubts(full) {
			found = found || doubt.Rule == NotKept
		}
		if found != doubted {
			t.Errorf("%q is doubted: %t", words, found)
		}
	}
}
