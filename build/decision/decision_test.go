package decision

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
)

const circle = `
-- people/wren.md --
-- people/ottilie.md --
Decided: she laces herself.
-- patterns/draft.md --
---
garment: Jacket
---
Decided: one piece sleeve.
-- patterns/petticoat.md --
-- techniques/piping.md --
Decided: cotton cord.
-- techniques/gauging.md --
-- references/plate.md --
-- materials/linen.md --
-- builds/jacket/build.md --
---
for: wren
garment: Jacket
pattern: draft
techniques: piping
---
Decided: no lining.
-- builds/jacket/2026-02-14-fitting.md --
---
techniques: gauging
decided:
  - {question: "Keep the cuffs?", chose: plain wrist, instead of: [cuffs, ruffle], because: no cloth, rests on: [plate, plate]}
  - pin the front
---
Decided: wool for the skirt. (garment: petticoat; pattern: petticoat; technique: piping; person: ottilie; material: linen; about: plate)

Private: hidden

- Private: a
  - Decided: hidden too
-- builds/jacket/2026-03-01-worn.md --
---
turned out:
  - {decision: jacket/2026-02-14-fitting#decided-1, how: kept, because: it is quiet}
  - {decision: jacket/2026-02-14-fitting#decided-pin-front, how: changed, because: pins tear}
  - {decision: draft#decided-one-piece-sleeve, how: regretted}
---
-- builds/jacket/2026-05-01-worn.md --
---
turned out:
  - {decision: jacket/2026-02-14-fitting#decided-keep-cuffs, how: regretted, because: it looks bare}
---
-- occasions/fair.md --
---
date: 2026-06-01
---
Decided: walk there.
`

func TestGather(t *testing.T) {
	const (
		jacket  = journal.ID("builds/jacket")
		fitting = journal.ID("builds/jacket/2026-02-14-fitting")
	)
	ids := func(all ...journal.ID) []journal.ID { return all }
	feb := edtf.DayOf(2026, 2, 14)
	want := []Decision{
		{Chose: "walk there.", From: "occasions/fair", Anchor: "decided-walk", Day: edtf.DayOf(2026, 6, 1)},
		{
			Question: "Keep the cuffs?", Chose: "plain wrist", InsteadOf: []string{"cuffs", "ruffle"}, Because: "no cloth",
			From: fitting, Anchor: "decided-keep-cuffs", Day: feb, Build: jacket, Garments: []string{"jacket"}, Wearers: ids("people/wren"),
			Patterns: ids("patterns/draft"), Techniques: ids("techniques/gauging"),
			Outcomes: []Outcome{
				{How: journal.Regretted, Because: "it looks bare", From: "builds/jacket/2026-05-01-worn", Day: edtf.DayOf(2026, 5, 1)},
				{How: journal.Kept, Because: "it is quiet", From: "builds/jacket/2026-03-01-worn", Day: edtf.DayOf(2026, 3, 1)},
			},
		},
		{
			Question: "pin the front", From: fitting, Anchor: "decided-pin-front", Day: feb, Build: jacket, Garments: []string{"jacket"},
			Wearers: ids("people/wren"), Patterns: ids("patterns/draft"), Techniques: ids("techniques/gauging"),
			Outcomes: []Outcome{{How: journal.Changed, Because: "pins tear", From: "builds/jacket/2026-03-01-worn", Day: edtf.DayOf(2026, 3, 1)}},
		},
		{
			Chose: "wool for the skirt.", From: fitting, Anchor: "decided-wool-skirt", Day: feb, Build: jacket, Garments: []string{"petticoat"},
			Wearers: ids("people/ottilie"), Patterns: ids("patterns/petticoat"), Techniques: ids("techniques/piping"),
			Others: ids("materials/linen", "references/plate"),
		},
		{
			Chose: "no lining.", From: jacket, Anchor: "decided-no-lining", Build: jacket, Garments: []string{"jacket"},
			Wearers: ids("people/wren"), Patterns: ids("patterns/draft"), Techniques: ids("techniques/piping"),
		},
		{
			Chose: "one piece sleeve.", From: "patterns/draft", Anchor: "decided-one-piece-sleeve", Garments: []string{"jacket"}, Patterns: ids("patterns/draft"),
			Outcomes: []Outcome{{How: journal.Regretted, From: "builds/jacket/2026-03-01-worn", Day: edtf.DayOf(2026, 3, 1)}},
		},
		{Chose: "she laces herself.", From: "people/ottilie", Anchor: "decided-laces-herself", Wearers: ids("people/ottilie")},
		{Chose: "cotton cord.", From: "techniques/piping", Anchor: "decided-cotton-cord", Techniques: ids("techniques/piping")},
	}
	got := Gather(journaltest.Open(t, circle)).All
	if len(got) != len(want) {
		t.Fatalf("%d decisions, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		if w.Question == "Keep the cuffs?" && len(got[i].RestsOn) != 2 {
			t.Errorf("rests on %v", got[i].RestsOn)
		}
		w.RestsOn = got[i].RestsOn // with its places
		if !reflect.DeepEqual(got[i], w) {
			t.Errorf("got  %+v\nwant %+v", got[i], w)
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
		{"garment", list.ByGarment(), "jacket () 4; petticoat () 1"},
		{"technique", list.ByTechnique(), "Gauging (techniques/gauging) 2; Piping (techniques/piping) 3"},
		{"outcome", list.ByOutcome(), "changed () 1; regretted () 2; not yet known () 5"},
	} {
		var said []string
		for _, g := range test.groups {
			said = append(said, fmt.Sprintf("%s (%s) %d", g.Name, g.ID, len(g.Decisions)))
		}
		if got := strings.Join(said, "; "); got != test.want {
			t.Errorf("by %s:\ngot  %s\nwant %s", test.name, got, test.want)
		}
	}
}

func TestFor(t *testing.T) {
	list := Gather(journaltest.Open(t, circle))
	for id, want := range map[journal.ID]int{
		"builds/jacket": 4, "builds/jacket/2026-02-14-fitting": 3, "patterns/draft": 4, "patterns/petticoat": 1,
		"techniques/piping": 3, "people/wren": 3, "people/ottilie": 2, "references/plate": 2, "materials/linen": 1,
		"occasions/fair": 1, "people/nobody": 0,
	} {
		if got := len(list.For(id)); got != want {
			t.Errorf("%d for %s, want %d", got, id, want)
		}
	}
}

func TestNothingToGather(t *testing.T) {
	list := Gather(journaltest.Open(t, "-- people/wren.md --\n"))
	if len(list.All) != 0 || list.ByGarment() != nil || list.ByOutcome() != nil || list.For("people/wren") != nil {
		t.Errorf("got %+v", list)
	}
}

// The anchors are those that the journal lets others link to.
func TestAnchorsAreTheJournals(t *testing.T) {
	j := journaltest.Open(t, circle)
	for _, d := range Gather(j).All {
		r, ok := j.Find(string(d.From))
		if !ok {
			t.Fatalf("no record %q", d.From)
		}
		if anchor, ok := journal.Anchor(r, d.Anchor); !ok || anchor != d.Anchor {
			t.Errorf("%s has no %q", d.From, d.Anchor)
		}
	}
}
