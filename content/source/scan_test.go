package source

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"testing/fstest"
	"time"

	"github.com/google/go-cmp/cmp"
)

func scanned(t *testing.T, fsys fs.FS) (paths, found []string) {
	t.Helper()
	entries, findings, err := Scan(fsys)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		paths = append(paths, e.Path)
	}
	for _, f := range findings {
		if f.Level != Warning || f.Help == "" {
			t.Errorf("%s is a finding of level %v with the advice %q", f.Span, f.Level, f.Help)
		}
		found = append(found, f.Span.String()+" "+f.Rule)
	}
	return paths, found
}

func TestScan(t *testing.T) {
	when := time.Date(2026, 3, 1, 12, 0, 0, 0, time.UTC)
	fsys := fstest.MapFS{
		"journal.yaml":                        {Data: []byte("unit: in"), ModTime: when},
		"people/wren.md":                      {},
		"builds/striped-jacket/build.md":      {},
		"builds/striped-jacket/photos/a.jpg":  {},
		"builds/striped-jacket/.a.md.swp":     {},
		".git/config":                         {},
		"_drafts/notes/2026-03-01.md":         {},
		"notes/_template.md":                  {},
		"notes/.hidden/2026-03-01.md":         {},
		"notes/with_underscore.md":            {},
		"out/site/index.html":                 {},
		"out/site/" + SiteMark:                {},
		"out/site/builds/striped-jacket.html": {},
		"out/letter.txt":                      {},
	}
	paths, found := scanned(t, fsys)
	want := []string{
		"builds/striped-jacket/build.md", "builds/striped-jacket/photos/a.jpg", "journal.yaml",
		"notes/with_underscore.md", "out/letter.txt", "people/wren.md",
	}
	if diff := cmp.Diff(want, paths); diff != "" {
		t.Error(diff)
	}
	if found != nil {
		t.Errorf("found %v", found)
	}
	entries, _, _ := Scan(fsys)
	if e := entries[2]; e.Size != 8 || !e.Modified.Equal(when) {
		t.Errorf("%s has %d bytes of %v", e.Path, e.Size, e.Modified)
	}
}

func TestScanFollowsNoLinks(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("making links needs a privilege there")
	}
	dir, outside := t.TempDir(), t.TempDir()
	write(t, filepath.Join(outside, "secret.md"))
	write(t, filepath.Join(dir, "notes", "2026-03-01.md"))
	link(t, filepath.Join(outside, "secret.md"), filepath.Join(dir, "notes", "2026-03-02.md"))
	link(t, outside, filepath.Join(dir, "people"))
	link(t, dir, filepath.Join(dir, "notes", "round"))
	link(t, filepath.Join(dir, "gone"), filepath.Join(dir, "notes", "nowhere.md"))
	link(t, outside, filepath.Join(dir, ".hidden"))
	paths, found := scanned(t, os.DirFS(dir))
	if diff := cmp.Diff([]string{"notes/2026-03-01.md"}, paths); diff != "" {
		t.Error(diff)
	}
	want := []string{
		"notes/2026-03-02.md:1:1 not a file", "notes/nowhere.md:1:1 not a file",
		"notes/round:1:1 not a file", "people:1:1 not a file",
	}
	if diff := cmp.Diff(want, found); diff != "" {
		t.Error(diff)
	}
}

// Packages of files cannot open names that are not UTF-8; the rest of the journal
// must be read all the same.
func TestScanLeavesOddNamesOut(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("file names are made of characters there")
	}
	dir := t.TempDir()
	write(t, filepath.Join(dir, "notes", "caf\xe9.md"))
	write(t, filepath.Join(dir, "notes", "\xe9t\xe9", "2026-03-01.md"))
	write(t, filepath.Join(dir, "notes", "2026-03-01.md"))
	paths, found := scanned(t, os.DirFS(dir))
	if diff := cmp.Diff([]string{"notes/2026-03-01.md"}, paths); diff != "" {
		t.Error(diff)
	}
	want := []string{"notes/caf\xe9.md:1:1 not plain text", "notes/\xe9t\xe9:1:1 not plain text"}
	if diff := cmp.Diff(want, found); diff != "" {
		t.Error(diff)
	}
}

func TestScanTellsOfTheDisk(t *testing.T) {
	if _, _, err := Scan(os.DirFS(filepath.Join(t.TempDir(), "gone"))); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}

func write(t *testing.T, name string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte("x"), 0o666); err != nil {
		t.Fatal(err)
	}
}

func link(t *testing.T, to, name string) {
	t.Helper()
	if err := os.Symlink(to, name); err != nil {
		t.Fatal(err)
	}
}
