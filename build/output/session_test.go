package output

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"hussif/build/keep"
	"hussif/content/source"
)

func TestSession(t *testing.T) {
	ctx := context.Background()
	dir := filepath.Join(t.TempDir(), "site")
	mustWrite(t, dir, site(tree{"index.html": "one", "a/b.html": "two", "c.html": "three"}))
	s, err := Hold(ctx, dir)
	if err != nil {
		t.Fatal(err)
	}
	put := func(want Report, files ...File) {
		t.Helper()
		if got, err := s.Put(ctx, files); err != nil || got != want {
			t.Fatalf("%+v, %v", got, err)
		}
	}
	read := func(name string) string {
		t.Helper()
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	put(Report{Written: 1, Kept: 1}, File{Path: "a/b.html", Content: page("two, again")}, File{Path: "c.html", Content: page("three")})
	if got := read("a/b.html"); got != "two, again" {
		t.Errorf("it holds %q", got)
	}
	before, err := os.Stat(filepath.Join(dir, "a/b.html"))
	if err != nil {
		t.Fatal(err)
	}
	put(Report{Kept: 1}, File{Path: "a/b.html", Content: page("two, again")})
	if after, err := os.Stat(filepath.Join(dir, "a/b.html")); err != nil || !after.ModTime().Equal(before.ModTime()) {
		t.Error("the same was written again")
	}
	if _, err := s.Put(ctx, []File{{Path: "c.html", Content: page("x")}, {Path: "new.html", Content: page("new")}}); !errors.Is(err, ErrOther) || read("c.html") != "three" {
		t.Errorf("a new page: %v", err)
	}
	if _, err := os.Stat(filepath.Join(dir, partsName)); err == nil {
		t.Error("parts are left")
	}

	// Killed here, the next run puts it right; ended, the next run has nothing to do.
	if _, ok := Current(dir, site(tree{}).Recipe); ok {
		t.Error("a folder that was changed since is current")
	}
	recipe := keep.NewRecipe("site", 1, "now")
	if err := s.Close(ctx, recipe); err != nil {
		t.Fatal(err)
	}
	if report, ok := Current(dir, recipe); !ok || report.Kept != 3 {
		t.Errorf("after the end: %+v, %t", report, ok)
	}
}

// A session gives way to whoever else writes to the folder.
func TestSessionGivesWay(t *testing.T) {
	ctx := context.Background()
	dir := filepath.Join(t.TempDir(), "site")
	if _, err := Hold(ctx, dir); err == nil {
		t.Error("a folder that is not there was held")
	}
	mustWrite(t, dir, site(tree{"index.html": "one"}))
	s, err := Hold(ctx, dir)
	if err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, site(tree{"index.html": "another"}))
	if _, err := s.Put(ctx, []File{{Path: "index.html", Content: page("mine")}}); !errors.Is(err, ErrOther) {
		t.Errorf("somebody else wrote: %v", err)
	}
	mark, err := os.ReadFile(filepath.Join(dir, source.SiteMark))
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Close(ctx, keep.Recipe{}); err != nil {
		t.Fatal(err)
	}
	if after, _ := os.ReadFile(filepath.Join(dir, source.SiteMark)); string(after) != string(mark) {
		t.Error("the other's mark was replaced")
	}

	// What was changed by hand meanwhile is found by the next whole run.
	if s, err = Hold(ctx, dir); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(filepath.Join(dir, "index.html")); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Put(ctx, []File{{Path: "index.html", Content: page("mine")}}); !errors.Is(err, ErrOther) {
		t.Errorf("it was removed: %v", err)
	}
}
