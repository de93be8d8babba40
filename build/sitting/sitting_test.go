package sitting

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"testing/fstest"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

const record = `
-- journal.yaml --
ease:
  jacket: {elbow: 1 in}
-- people/ada.md --
---
measured:
  - {date: 2024-05-01, over: [shift, stays], hip girth: 39 in, waist: 29 in}
  - {date: 2025-01-10, over: [], 'bust': 37 in, wrist girth: 6 1/4 in}
  - {date: 2026-01-10, over: [stays, shift], waist: 28 1/2 in, left upper arm girth: 11 in, right upper arm girth: not measured, by: mim}
  - {date: 2027-01-10, over: [shift, stays], neck: 13 in}
---
-- builds/cloak/build.md --
---
for: ada
over: [shift]
fit: {shoulder length: 0 in}
seams: [{name: neck, crosses: neck girth}]
---
-- builds/jacket/build.md --
---
title: The jacket
for: ada
garment: jacket
over: [shift, stays]
fit: {waist: 0 in, upper arm girth: 1 in}
seams: [{name: side, crosses: [bust girth, waist]}]
---
-- builds/gone/build.md --
---
for: ada
over: [shift, stays]
state: gone
fit: {ankle girth: 1 in}
---
-- builds/hers/build.md --
---
fit: {knee girth: 1 in}
---
`

func open(t *testing.T) *journal.Journal {
	t.Helper()
	files := fstest.MapFS{}
	for _, f := range txtar.Parse([]byte(record)).Files {
		files[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	j, found, err := journal.Open(files)
	if err != nil || len(found) > 0 {
		t.Fatal(err, found)
	}
	return j
}

var day = edtf.DayOf(2026, 11, 25)

func TestItems(t *testing.T) {
	j := open(t)
	var got []string
	for _, i := range New(j, j.People()[0], measure.Foundation{"shift", "stays"}, day).Items() {
		text := i.Name
		if i.Before.Value.Length != 0 {
			text += " " + quantity.Format{}.Estimate(i.Before.Value) + " " + i.Before.Day.String()
			if i.Before.Others {
				text += " over " + i.Over.String()
			}
			if i.By != "" {
				text += " by " + i.By
			}
		}
		for _, title := range i.For {
			text += ", for " + title
		}
		got = append(got, text)
	}
	want := []string{
		"waist 28 1/2 in 2026-01-10 by mim, for The jacket",
		"left upper arm girth 11 in 2026-01-10 by mim",
		"right upper arm girth",
		"hip girth 39 in 2024-05-01",
		"elbow girth, for The jacket",
		"bust 37 in 2025-01-10 over nothing, for The jacket",
		"shoulder length, for Cloak",
		"neck, for Cloak",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A side is what both were where nobody told them apart.
func TestItemOfASide(t *testing.T) {
	j := open(t)
	i := New(j, j.People()[0], measure.Foundation{}, day).Item(measure.Point{Measure: "wrist girth", Side: measure.Left})
	if i.Before.Value.Length != 25*quantity.Inch/4 || i.Before.Others || i.Measure.Class != measure.SmallGirth || i.Name != "left wrist girth" {
		t.Errorf("got %+v", i)
	}
}

func TestLast(t *testing.T) {
	j := open(t)
	if s, ok := Last(j, j.People()[0], day); !ok || s.By != "mim" {
		t.Errorf("got %+v", s)
	}
	if _, ok := Last(j, j.People()[0], edtf.DayOf(2020, 1, 1)); ok {
		t.Error("a session before the first")
	}
}

func TestLayers(t *testing.T) {
	if diff := cmp.Diff([]string{"shift", "stays"}, Layers(open(t))); diff != "" {
		t.Error(diff)
	}
}
