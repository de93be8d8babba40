package audience

import (
	"slices"
	"strings"
	"testing"

	"hussif/content/journal"
)

// What counts is the narrowest of a page's own setting and of all that holds it.
func TestTheNarrowestCounts(t *testing.T) {
	const pages = `
-- journal.yaml --
share: JOURNAL
-- people/ada.md --
---
share: PERSON
---
-- builds/gown/build.md --
---
for: ada
share: BUILD
---
-- builds/gown/2026-03-01.md --
---
share: NOTE
---
-- builds/gown/of-a-skirt/2026-03-02.md --
---
build: skirt
---
-- builds/skirt/build.md --
A skirt.
`
	const note, moved = "builds/gown/2026-03-01.md", "builds/gown/of-a-skirt/2026-03-02.md"
	for _, c := range []struct {
		journal, person, build, note string
		circle, public               bool // may see the note
	}{
		{"", "", "", "", false, false},
		{"self", "public", "public", "public", false, false},
		{"circle", "", "", "", true, false},
		{"circle", "public", "public", "public", true, false},
		{"public", "", "", "", true, true},
		{"public", "circle", "", "", true, false},
		{"public", "self", "public", "public", false, false},
		{"public", "", "circle", "", true, false},
		{"public", "", "self", "", false, false},
		{"public", "", "", "circle", true, false},
		{"public", "public", "circle", "self", false, false},
	} {
		text := strings.NewReplacer("JOURNAL", c.journal, "PERSON", c.person, "BUILD", c.build, "NOTE", c.note).Replace(pages)
		f := archive(t, text)
		for who, want := range map[journal.Audience]bool{journal.Circle: c.circle, journal.Public: c.public} {
			texts := f.share(t, who).Folder.Texts
			if got := texts[note] != nil; got != want {
				t.Errorf("%+v: the %s sees the note: %t", c, who, got)
			}
			// The path of a note that belongs elsewhere names the build in whose folder it lies.
			if texts["builds/gown/build.md"] == nil && texts[moved] != nil {
				t.Errorf("%+v: the %s sees a note in the folder of a build that it does not see", c, who)
			}
		}
	}
}

// What a page says of sharing may be among what could not be read of it.
func TestAPageWithFaultsIsForItsMakerAlone(t *testing.T) {
	f := archive(t, "-- journal.yaml --\nshare: public\n-- techniques/piping.md --\n---\nshare: slef\n---\nPiped.\n-- techniques/boning.md --\nBoned.\n")
	j, errors := f.open(t)
	if len(errors) != 1 {
		t.Fatalf("%d errors, want 1", len(errors))
	}
	s, err := For(j, journal.Public, today)
	if err != nil || s.Folder.Texts["techniques/piping.md"] != nil || s.Folder.Texts["techniques/boning.md"] == nil {
		t.Errorf("the page is seen: %v, %v", s, err)
	}
}

// Two bodies, one site: a wearer of other measures whose garments are larger by as
// much fits them alike. Who sees only how garments fit, be it by how much, cannot tell
// the two apart, whatever she reckons.
func TestTwoBodiesLookAlike(t *testing.T) {
	const pages = `
-- journal.yaml --
share: public
ease: {jacket: {hip girth: 1 in}}
-- people/ada.md --
---
shows fit: SHOWS
measured:
  - {date: 2026-01-10, over: [stays], bust girth: 3B in, waist: 2B in, hip girth: 3B in}
  - {date: 2026-06-10, over: [stays], bust girth: 3B 1/2 in, waist: 2B 1/4 in}
---
-- builds/jacket/build.md --
---
for: ada
garment: jacket
over: [stays]
pattern: draft
fit: {bust girth: 1 to 2 in, waist: 1/2 in}
seams: [{name: side, count: 2, now: 5/8 in, keep: 1/4 in, length: 2B in, crosses: {waist: {at: 1B in}}}]
---
-- builds/jacket/2026-03-01-basted.md --
---
measured: {bust girth: 3B 1/4 in, waist: 2B in, hip girth: 3B in}
---
-- builds/jacket/2026-04-01-let-out.md --
---
altered: [{seam: side, was: 5/8 in, now: 3/8 in}]
measured: {waist: 2B 1/2 in}
pattern changed: {waist: 1/2 in}
spent: 1B EUR
---
-- patterns/draft.md --
---
size: 1B
---
`
	of := func(digit, shows string) files {
		text := strings.ReplaceAll(strings.ReplaceAll(pages, "SHOWS", shows), "B in", digit+" in")
		return archive(t, strings.NewReplacer("3B", "3"+digit, "2B", "2"+digit, "1B", "1"+digit).Replace(text))
	}
	for _, shows := range []string{"nothing", "words", "deltas"} {
		one, other := of("2", shows), of("7", shows)
		for _, who := range []journal.Audience{journal.Circle, journal.Public} {
			a, b := one.share(t, who), other.share(t, who)
			if a.print() != b.print() {
				t.Errorf("%s, %s: the two can be told apart:\n%s\n%s", who, shows, a.print(), b.print())
			}
			text := a.print()
			for words, want := range map[string]bool{
				"natural waist girth: ample": shows != "nothing", "ample by ": shows == "deltas", "bust girth: short": shows != "nothing", "short by ": shows == "deltas",
			} {
				if strings.Contains(text, words) != want {
					t.Errorf("%s: %q is there: %t\n%s", shows, words, !want, text)
				}
			}
		}
	}
}

func TestPicturesAreSeenWhereEveryPageAgrees(t *testing.T) {
	for _, c := range []struct {
		build, note    string // what is said of the picture
		circle, public bool
	}{
		{"", "", true, false},
		{"face: no", "", true, true},
		{"face: no", "share: circle", true, false},
		{"face: yes", "", false, false},
		{"face: yes", "face: no", false, false},
		{"face: yes, share: circle", "", true, false},
		{"face: yes, blur: 10% 10% 20% 20%", "", true, true},
		{"share: self, blur: 10% 10% 20% 20%", "", false, false},
		{"share: public", "share: self", false, false},
		{"share: public", "face: yes", false, false},
	} {
		f := archive(t, "-- journal.yaml --\nshare: public\n-- builds/gown/a.png --\n-- builds/gown/build.md --\n---\nphotos: [{file: a.png, alt: a, "+c.build+
			"}]\n---\n-- builds/gown/2026-03-01.md --\n---\nphotos: [{file: a.png, alt: a, "+c.note+"}]\n---\n![a](a.png)\n")
		for who, want := range map[journal.Audience]bool{journal.Circle: c.circle, journal.Public: c.public} {
			s := f.share(t, who)
			listed := slices.ContainsFunc(s.Folder.Entries, isPicture)
			named := strings.Contains(string(s.Folder.Texts["builds/gown/2026-03-01.md"]), "a.png")
			if listed != want || named != want {
				t.Errorf("%s, %q and %q: it is there %t and named %t", who, c.build, c.note, listed, named)
			}
			if strings.Contains(c.build, "blur") && want && len(s.Blur["builds/gown/a.png"]) != 1 {
				t.Errorf("%s, %q: not blurred", who, c.build)
			}
		}
	}
}
