package lesson

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
)

const circle = `
-- people/wren.md --
-- people/ottilie.md --
---
next time: measure her over the new stays
---
-- patterns/short-jacket.md --
---
title: Short jacket, draft
next time: {do: true the shoulder, garment: Riding  Jacket}
---
-- patterns/petticoat.md --
-- techniques/piping.md --
-- techniques/gauging.md --
-- materials/striped-linen.md --
-- references/sea-green-jacket.md --
-- builds/striped-jacket/build.md --
---
for: wren
garment: Jacket
pattern: short-jacket
techniques: [piping]
next time: ask for the cuffs sooner
---
-- builds/striped-jacket/2026-02-14-fitting.md --
---
next time:
  - cut the sleeve wider
  - {do: wash the linen twice, material: striped-linen, person: ottilie, garment: gown, technique: piping, pattern: petticoat}
  - {do: look at the back seam, about: [sea-green-jacket, piping]}
---
Next time: pin the other way. (technique: piping; garment: stays)

Next time: say nothing of this.

Private: she would rather not.

Private:

- Next time: lace her looser.
-- builds/striped-jacket/2026-03-01-finished.md --
---
techniques: [piping]
next time: [begin with the collar, {do: count the pleats, technique: gauging}]
---
-- notes/2026-02-14-market.md --
---
next time: bring pins
---
-- occasions/market-day.md --
---
date: 2026-02-20
next time: {do: bring the shade, about: striped-jacket}
---
`

func TestGather(t *testing.T) {
	const (
		fitting = "builds/striped-jacket/2026-02-14-fitting"
		jacket  = "builds/striped-jacket"
	)
	var (
		jackets = []string{"jacket"}
		wren    = []journal.ID{"people/wren"}
		piping  = []journal.ID{"techniques/piping"}
		short   = []journal.ID{"patterns/short-jacket"}
	)
	want := []Lesson{
		{Text: "begin with the collar", From: "builds/striped-jacket/2026-03-01-finished", Anchor: "next-begin-collar", Build: jacket,
			Patterns: short, Techniques: piping, People: wren, Garments: jackets},
		{Text: "count the pleats", From: "builds/striped-jacket/2026-03-01-finished", Anchor: "next-count-pleats", Build: jacket,
			Patterns: short, Techniques: []journal.ID{"techniques/gauging"}, People: wren, Garments: jackets},
		{Text: "bring the shade", From: "occasions/market-day", Anchor: "next-bring-shade", Garments: jackets, Others: []journal.ID{jacket}},
		{Text: "cut the sleeve wider", From: fitting, Anchor: "next-cut-sleeve-wider", Build: jacket, Patterns: short, People: wren, Garments: jackets},
		{Text: "wash the linen twice", From: fitting, Anchor: "next-wash-linen-twice", Build: jacket, Patterns: []journal.ID{"patterns/petticoat"},
			Techniques: piping, Materials: []journal.ID{"materials/striped-linen"}, People: []journal.ID{"people/ottilie"}, Garments: []string{"gown"}},
		{Text: "look at the back seam", From: fitting, Anchor: "next-look-back-seam", Build: jacket, Patterns: short, Techniques: piping, People: wren,
			Garments: jackets, Others: []journal.ID{"references/sea-green-jacket"}},
		{Text: "pin the other way.", From: fitting, Anchor: "next-pin-other-way", Build: jacket, Patterns: short, Techniques: piping, People: wren, Garments: []string{"stays"}},
		{Text: "say nothing of this.", From: fitting, Anchor: "next-say-nothing", Build: jacket, Patterns: short, People: wren, Garments: jackets},
		{Text: "bring pins", From: "notes/2026-02-14-market", Anchor: "next-bring-pins"},
		{Text: "ask for the cuffs sooner", From: jacket, Anchor: "next-ask-cuffs-sooner", Build: jacket, Patterns: short, Techniques: piping, People: wren, Garments: jackets},
		{Text: "true the shoulder", From: "patterns/short-jacket", Anchor: "next-true-shoulder", Patterns: short, Garments: []string{"riding jacket"}},
		{Text: "measure her over the new stays", From: "people/ottilie", Anchor: "next-measure-over-new-stays", People: []journal.ID{"people/ottilie"}},
	}
	j := journaltest.Open(t, circle)
	got := Gather(j).All
	if len(got) != len(want) {
		t.Fatalf("%d lessons, want %d: %+v", len(got), len(want), got)
	}
	days := []string{"2026-03-01", "2026-03-01", "2026-02-20", "2026-02-14", "2026-02-14", "2026-02-14", "2026-02-14", "2026-02-14", "2026-02-14", "", "", ""}
	for i, w := range want {
		if day := days[i]; (got[i].Day == 0) != (day == "") || day != "" && got[i].Day.String() != day {
			t.Errorf("%q is of %s, want %s", got[i].Text, got[i].Day, day)
		}
		w.Day = got[i].Day
		if !reflect.DeepEqual(got[i], w) {
			t.Errorf("got  %+v\nwant %+v", got[i], w)
		}
	}
}

// Every anchor is one that the journal lets others link to.
func TestAnchorsAreTheJournals(t *testing.T) {
	j := journaltest.Open(t, circle)
	for _, l := range Gather(j).All {
		r, ok := j.Find(string(l.From))
		if !ok {
			t.Fatalf("no record %q", l.From)
		}
		if !slices.Contains(journal.Anchors(r), l.Anchor) {
			t.Errorf("%s has no %q", l.From, l.Anchor)
		}
	}
}

func TestGroups(t *testing.T) {
	list := Gather(journaltest.Open(t, circle))
	for _, test := range []struct {
		name   string
		groups []Group
		want   string
	}{
		{"pattern", list.ByPattern(), "Petticoat (patterns/petticoat) 1; Short jacket, draft (patterns/short-jacket) 8"},
		{"technique", list.ByTechnique(), "Gauging (techniques/gauging) 1; Piping (techniques/piping) 5"},
		{"material", list.ByMaterial(), "Striped linen (materials/striped-linen) 1"},
		{"person", list.ByPerson(), "Ottilie (people/ottilie) 2; Wren (people/wren) 7"},
		{"garment", list.ByGarment(), "gown () 1; jacket () 7; riding jacket () 1; stays () 1"},
	} {
		var said []string
		for _, g := range test.groups {
			said = append(said, fmt.Sprintf("%s (%s) %d", g.Name, g.ID, len(g.Lessons)))
			for i := range g.Lessons[1:] {
				if newestFirst(&g.Lessons[i], &g.Lessons[i+1]) > 0 {
					t.Errorf("%s is not newest first", g.Name)
				}
			}
		}
		if got := strings.Join(said, "; "); got != test.want {
			t.Errorf("by %s:\ngot  %s\nwant %s", test.name, got, test.want)
		}
	}
}

func TestForAndFrom(t *testing.T) {
	list := Gather(journaltest.Open(t, circle))
	for _, test := range []struct {
		id        journal.ID
		for_, own int
	}{
		{"builds/striped-jacket", 9, 1}, // its own, those of its notes, and the occasion's about it
		{"builds/striped-jacket/2026-02-14-fitting", 5, 5},
		{"references/sea-green-jacket", 1, 0},
		{"patterns/short-jacket", 8, 1},
		{"materials/striped-linen", 1, 0},
		{"occasions/market-day", 1, 1},
		{"people/nobody", 0, 0},
	} {
		if got := len(list.For(test.id)); got != test.for_ {
			t.Errorf("%d for %s, want %d", got, test.id, test.for_)
		}
		if got := len(list.From(test.id)); got != test.own {
			t.Errorf("%d from %s, want %d", got, test.id, test.own)
		}
	}
}

func TestNothingToGather(t *testing.T) {
	list := Gather(journaltest.Open(t, "-- people/wren.md --\n"))
	if len(list.All) != 0 || list.ByPattern() != nil || list.For("people/wren") != nil {
		t.Errorf("got %+v", list)
	}
}
