package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestWriteNewTakesNoPlace(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "notes", "a.md")
	if err := writeNew(name, []byte("new")); err != nil {
		t.Fatal(err)
	}
	if err := writeNew(name, []byte("newer")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("over a file: %v", err)
	}
	checkHolds(t, name, "new")
	link := filepath.Join(dir, "link.md")
	if err := os.Symlink(filepath.Join(dir, "elsewhere.md"), link); err != nil {
		t.Skip(err)
	}
	if err := writeNew(link, []byte("new")); !errors.Is(err, fs.ErrExist) {
		t.Errorf("over a link that leads nowhere: %v", err)
	}
	if _, err := os.Lstat(filepath.Join(dir, "elsewhere.md")); err == nil {
		t.Error("something was written through a link")
	}
}

// What a killed run left is taken away by a later one, but nothing younger and nothing
// of another name.
func TestWriteNewSweeps(t *testing.T) {
	dir := t.TempDir()
	for _, left := range []struct {
		name string
		age  time.Duration
		gone bool
	}{{unfinished + "OLD", 2 * resting, true}, {unfinished + "YOUNG", 0, false}, {".hers", 2 * resting, false}} {
		name := filepath.Join(dir, left.name)
		if err := os.WriteFile(name, nil, 0o666); err != nil {
			t.Fatal(err)
		}
		day := time.Now().Add(-left.age)
		if err := os.Chtimes(name, day, day); err != nil {
			t.Fatal(err)
		}
		if err := writeNew(filepath.Join(dir, left.name+".md"), nil); err != nil {
			t.Fatal(err)
		}
		if _, err := os.Lstat(name); (err != nil) != left.gone {
			t.Errorf("%s after %s: %v", left.name, left.age, err)
		}
	}
}
