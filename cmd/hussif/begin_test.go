package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"hussif/build/check"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

// TestStarterWithoutItsMarks takes the marks away from the starter's examples, as
// they invite one to do, and checks the journal that results.
func TestStarterWithoutItsMarks(t *testing.T) {
	dir := t.TempDir()
	if err := begin(newVoice(Streams{Out: t.Output(), Err: t.Output()}), dir, edtf.DayOf(2026, 11, 25)); err != nil {
		t.Fatal(err)
	}
	examples := regexp.MustCompile(`(?m)^#(  )`)
	for _, name := range []string{"people/wearer.md", "builds/first-build/build.md"} {
		name = filepath.Join(dir, name)
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !examples.Match(data) {
			t.Fatalf("%s has no examples", name)
		}
		if err := os.WriteFile(name, examples.ReplaceAll(data, []byte("$1")), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	files := os.DirFS(dir)
	j, read, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	if found := check.Run(j, files, read); len(found) > 0 {
		source.Print(t.Output(), found, source.Palette{})
		t.Error("the starter is not sound without its marks")
	}
	if len(j.People()[0].Measured) != 1 || len(j.Builds()[0].Seams) != 1 {
		t.Errorf("read %d sessions and %d seams, want one of each", len(j.People()[0].Measured), len(j.Builds()[0].Seams))
	}
}
