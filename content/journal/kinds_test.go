package journal

import (
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"hussif/content/edtf"
)

func TestDateAndTitleFromTheName(t *testing.T) {
	for _, c := range []struct{ name, front, day, title string }{
		{"2026-03-01-first-fitting.md", "", "2026-03-01", "First fitting"},
		{"2026-03-01.md", "", "2026-03-01", "2026-03-01"},
		{"2026-03-01_sewn_up.md", "", "2026-03-01", "Sewn up"},
		{"2026-03-01 sewn.md", "", "2026-03-01", "Sewn"},
		{"2026-03-01-épaulette.md", "", "2026-03-01", "Épaulette"},
		{"first-fitting.md", "date: 2026-03-02", "2026-03-02", "First fitting"},
		{"2026-03-01-first-fitting.md", "date: 2026-03-02\ntitle: Second", "2026-03-02", "Second"},
		{"2026-03-01.MD", "", "2026-03-01", "2026-03-01"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := sound(t, "-- notes/"+c.name+" --\n---\n"+c.front+"\n---\n")
			if n := j.Notes()[0]; n.Date.String() != c.day || n.Title != c.title {
				t.Errorf("got %s, %q", n.Date, n.Title)
			}
		})
	}
}

func TestNoteWithoutADate(t *testing.T) {
	for _, name := range []string{"first-fitting.md", "2026-03-32.md", "2026-03-012.md", "2026-3-1.md"} {
		_, findings := open(t, "-- notes/"+name+" --\nIt binds.\n")
		want := "notes/" + name + ":1:1: error: a note needs a date [needed field] " +
			"add `date: ...` to the front matter, or begin the file's name with it, as in 2026-03-01-" + name
		if diff := cmp.Diff([]string{want}, lines(findings)); diff != "" {
			t.Error(diff)
		}
	}
	// One fault is told once: this note has a date, if a bad one.
	_, findings := open(t, "-- notes/fitting.md --\n---\ndate: yesterday\n---\n")
	if len(findings) != 1 || findings[0].Rule != NotADay {
		t.Errorf("found %v", lines(findings))
	}
}

func TestKinds(t *testing.T) {
	j := sound(t, `
-- people/wren.md --
-- builds/grey-jacket/build.md --
-- builds/grey-jacket/2026-03-01.md --
-- builds/grey-jacket/fittings/2026-03-02.md --
-- builds/cap.md --
-- notes/2026/2026-03-03.md --
-- patterns/draft.md --
-- references/plate.md --
-- materials/linen.md --
-- techniques/piping.md --
-- occasions/fair.md --
---
date: 2026-06-01
---
-- ottilie.md --
---
kind: Person
---
-- notes/how-to-pipe.md --
---
kind: technique
---
-- README.md --
-- builds/grey-jacket/photos/2026-03-01.txt --
`)
	want := map[ID]Kind{
		"people/wren": KindPerson, "builds/grey-jacket": KindBuild, "builds/grey-jacket/2026-03-01": KindNote,
		"builds/grey-jacket/fittings/2026-03-02": KindNote, "builds/cap": KindBuild, "notes/2026/2026-03-03": KindNote,
		"patterns/draft": KindPattern, "references/plate": KindReference, "materials/linen": KindMaterial,
		"techniques/piping": KindTechnique, "occasions/fair": KindOccasion, "ottilie": KindPerson, "notes/how-to-pipe": KindTechnique,
	}
	got := make(map[ID]Kind)
	for _, r := range j.Records() {
		got[r.Head().ID] = r.Head().Kind
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	jacket := record[*Build](t, j, "builds/grey-jacket")
	if len(jacket.Notes) != 2 || jacket.Notes[0].Of != jacket || jacket.Notes[1].ID != "builds/grey-jacket/fittings/2026-03-02" {
		t.Errorf("its notes are %v", jacket.Notes)
	}
	if !j.Holds("README.md") {
		t.Error("a file that is no page is forgotten")
	}
}

func TestUnknownKind(t *testing.T) {
	j, findings := open(t, `
-- notes/2026-03-01.md --
---
kind: nite
---
See [[2026-03-02]].
-- notes/2026-03-02.md --
---
kind: letter
---
-- ideas.md --
---
kind: techniqe
---
-- notes/2026-03-03.md --
See [[ideas]] and [[2026-03-01]].
-- letters/aunt.md --
Dear aunt.
`)
	want := []string{
		"ideas.md:2:7: error: a journal has no pages of the kind \"techniqe\" [unknown kind] did you mean \"technique\"?",
		"letters/aunt.md:1:1: hint: this file lies in none of the journal's folders and is left out [unknown kind] move it, or say what it is with `kind: ...`",
		"notes/2026-03-01.md:2:7: error: a journal has no pages of the kind \"nite\" [unknown kind] did you mean \"note\"?",
		"notes/2026-03-02.md:2:7: error: a journal has no pages of the kind \"letter\" [unknown kind] one of: build, note, person, pattern, reference, material, technique, occasion",
		"notes/2026-03-03.md:1:7: error: no page is called \"ideas\" [broken link] a page is called after its file, or its build's folder",
	}
	if diff := cmp.Diff(want, lines(findings)); diff != "" {
		t.Error(diff)
	}
	if len(j.Notes()) != 3 {
		t.Errorf("%d notes", len(j.Notes()))
	}
}

func TestNotesOfABuild(t *testing.T) {
	j := sound(t, `
-- builds/grey-jacket/build.md --
-- builds/cap/build.md --
-- builds/grey-jacket/2026-03-03.md --
-- builds/grey-jacket/2026-03-02-b.md --
-- builds/grey-jacket/2026-03-02-a.md --
-- builds/grey-jacket/2026-03-04.md --
---
build: cap
---
-- notes/2026-03-01.md --
---
build: Grey-Jacket
---
-- notes/2026-03-05.md --
-- builds/nobody/2026-03-06.md --
`)
	var got []string
	for _, n := range record[*Build](t, j, "builds/grey-jacket").Notes {
		got = append(got, string(n.ID))
	}
	want := []string{"notes/2026-03-01", "builds/grey-jacket/2026-03-02-a", "builds/grey-jacket/2026-03-02-b", "builds/grey-jacket/2026-03-03"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if len(record[*Build](t, j, "builds/cap").Notes) != 1 {
		t.Error("the note that names another build is not with it")
	}
	for _, id := range []ID{"notes/2026-03-05", "builds/nobody/2026-03-06"} {
		if record[*Note](t, j, id).Of != nil {
			t.Errorf("%s belongs to a build", id)
		}
	}
	for i := 1; i < len(j.Notes()); i++ {
		if j.Notes()[i].Date < j.Notes()[i-1].Date {
			t.Error("notes are not oldest first")
		}
	}
}

// Makers create files before they fill them.
func TestEmptyFiles(t *testing.T) {
	for name, want := range map[string]string{
		"people/wren.md": "Wren", "builds/grey-jacket/build.md": "Grey jacket", "builds/grey-jacket/2026-03-01.md": "2026-03-01",
		"patterns/draft.md": "Draft", "references/plate.md": "Plate", "materials/linen.md": "Linen", "techniques/piping.md": "Piping",
	} {
		for _, text := range []string{"", "\n", "---\n---\n", "---\ntitle:\n---\n", "---\n# nothing yet\n---"} {
			j, findings, err := Open(fstest.MapFS{name: {Data: []byte(text)}})
			if err != nil || len(findings) > 0 || len(j.Records()) != 1 {
				t.Errorf("%s holding %q: %v, %v", name, text, err, lines(findings))
				continue
			}
			if got := j.Records()[0].Head(); got.Title != want || j.Faulty(j.Records()[0]) {
				t.Errorf("%s holding %q has the title %q", name, text, got.Title)
			}
		}
	}
	_, findings := open(t, "-- occasions/fair.md --\n")
	if diff := cmp.Diff([]string{"occasions/fair.md:1:1: error: an occasion needs \"date\" [needed field] add `date: ...`"}, lines(findings)); diff != "" {
		t.Error(diff)
	}
	j, findings := open(t, "-- journal.yaml --\n")
	if len(findings) > 0 || len(j.Records()) != 0 {
		t.Errorf("an empty settings file: %v", lines(findings))
	}
}

// What has yet to be filled in is no fault, wherever it stands.
func TestEmptyValues(t *testing.T) {
	j := sound(t, `
-- journal.yaml --
title:
short names: {waist: , bust: bust girth}
errors: {large girth: }
ease: {jacket: , gown: {waist: }}
measures:
  -
-- builds/cap/build.md --
---
for:
fit: {waist: }
seams:
  -
  - {name: side, count: , crosses: {waist: }}
  - name: back
    crosses:
      - waist
      -
---
-- builds/cap/2026-03-01.md --
---
date:
hours:
measured: {bust girth: , waist: 30 in}
altered: [{seam: side, at: , was: , now: }]
pattern changed: {waist: }
photos:
  -
moves: {reach: }
---
`)
	cap := record[*Build](t, j, "builds/cap")
	if len(cap.Seams) != 2 || len(cap.Seams[1].Crosses) != 1 || len(cap.Fit) != 1 {
		t.Errorf("got %+v", cap)
	}
	if n := j.Notes()[0]; n.Date != edtf.DayOf(2026, 3, 1) || len(n.Measured) != 1 || n.PatternChanged != nil {
		t.Errorf("got %+v", n)
	}
	if at := cap.Seams[1].Crosses[0].Where.Span; at.Text() != "waist" {
		t.Errorf("a crossing in a list is at %s", at)
	}
}
