package demo_test

import (
	"io/fs"
	"path"
	"slices"
	"testing"

	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
)

func open(t *testing.T) *journal.Journal {
	t.Helper()
	j, findings, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range findings {
		if f.Level == source.Error {
			line, column := f.Span.Position()
			t.Errorf("%s:%d:%d: %s", f.Span.File.Name, line, column, f.Text)
		}
	}
	return j
}

func TestJournalHasNoErrors(t *testing.T) { open(t) }

func TestNeighboursHaveNoErrors(t *testing.T) {
	for _, name := range demo.Neighbours {
		_, findings, err := journal.Open(demo.Neighbour(name))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range findings {
			t.Errorf("%s: %s: %s", name, f.Span, f.Text)
		}
	}
}

// The story that other tests and the demo's readers rely on.
func TestJournalTellsItsStory(t *testing.T) {
	j := open(t)
	count := make(map[journal.Kind]int)
	states := make(map[journal.State]int)
	var remade, reworked int
	for _, r := range j.Records() {
		count[r.Head().Kind]++
		b, ok := r.(*journal.Build)
		if !ok {
			continue
		}
		states[b.State]++
		if j.Build(b.Remakes) != nil {
			remade++
		}
		if j.Build(b.Reworks) != nil {
			reworked++
		}
		if len(b.Notes) == 0 {
			t.Errorf("%s has no notes", b.ID)
		}
	}
	if n := count[journal.KindBuild]; n != 5 {
		t.Errorf("%d builds, want 5", n)
	}
	for kind, least := range map[journal.Kind]int{
		journal.KindPerson: 3, journal.KindNote: 30, journal.KindPattern: 5, journal.KindReference: 12,
		journal.KindMaterial: 8, journal.KindTechnique: 6, journal.KindOccasion: 3,
	} {
		if count[kind] < least {
			t.Errorf("%d of kind %s, want %d or more", count[kind], kind, least)
		}
	}
	if remade != 1 || reworked != 1 {
		t.Errorf("%d builds remade and %d reworked, want one of each", remade, reworked)
	}
	for _, s := range []journal.State{journal.StateUnderWay, journal.StateRepair, journal.StateApart, journal.StateFinished} {
		if states[s] == 0 {
			t.Errorf("no build is %s", s)
		}
	}
}

// Every photo lies where its record says, and no picture lies about unused.
func TestPicturesAreUsed(t *testing.T) {
	files := demo.Journal()
	var used []string
	for _, r := range open(t).Records() {
		for _, p := range photosOf(r) {
			name := path.Join(path.Dir(r.Head().File.Name), p.File.Text)
			if _, err := fs.Stat(files, name); err != nil {
				t.Error(err)
			}
			used = append(used, name)
		}
	}
	err := fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		switch path.Ext(name) {
		case ".md", ".yaml":
		case ".jpg", ".png":
			if !slices.Contains(used, name) {
				t.Errorf("%s is shown by no record", name)
			}
		default:
			t.Errorf("%s is no part of a journal", name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func photosOf(r journal.Record) []journal.Photo {
	switch r := r.(type) {
	case *journal.Build:
		return r.Photos
	case *journal.Note:
		return r.Photos
	case *journal.Pattern:
		return r.Photos
	case *journal.Reference:
		return r.Photos
	case *journal.Material:
		return r.Photos
	case *journal.Technique:
		return r.Photos
	case *journal.Occasion:
		return r.Photos
	}
	return nil
}
