package output

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func siteFor(whom string, files ...string) Site {
	s := Site{For: whom}
	for _, name := range files {
		s.Files = append(s.Files, File{Path: name, Content: func(w io.Writer) error {
			_, err := io.WriteString(w, "this is "+name)
			return err
		}})
	}
	return s
}

func written(t *testing.T, dir string, s Site) {
	t.Helper()
	if _, err := Write(context.Background(), dir, s); err != nil {
		t.Fatal(err)
	}
}

// A folder stays with those it was made for.
func TestASiteIsNotPutInThePlaceOfOneForOthers(t *testing.T) {
	for _, first := range []string{"", "circle", "public"} {
		for _, then := range []string{"", "circle", "public"} {
			dir := filepath.Join(t.TempDir(), "site")
			written(t, dir, siteFor(first, "index.html", "old.html"))
			before, _ := os.ReadFile(filepath.Join(dir, ".hussif-site.json"))
			_, err := Write(context.Background(), dir, siteFor(then, "index.html", "new.html"))
			var others *Others
			if errors.As(err, &others) != (first != then) {
				t.Errorf("%q then %q: %v", first, then, err)
			}
			if first == then {
				continue
			}
			after, _ := os.ReadFile(filepath.Join(dir, ".hussif-site.json"))
			if _, err := os.Stat(filepath.Join(dir, "new.html")); err == nil || !bytes.Equal(before, after) {
				t.Errorf("%q then %q: the folder was changed", first, then)
			}
		}
	}
}

// A run that was broken off leaves a mark that says whom the site is for.
func TestABrokenRunStillSaysWhomTheSiteIsFor(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "site")
	written(t, dir, siteFor("circle", "index.html"))
	s := siteFor("circle", "index.html", "new.html")
	ctx, stop := context.WithCancel(context.Background())
	s.Files[1].Content = func(io.Writer) error { stop(); return context.Canceled }
	_, _ = Write(ctx, dir, s)
	var others *Others
	if _, err := Write(context.Background(), dir, siteFor("", "index.html")); !errors.As(err, &others) || others.For != "circle" {
		t.Errorf("got %v", err)
	}
}

func TestPackHoldsTheSiteAndNothingElse(t *testing.T) {
	top := t.TempDir()
	dir, name := filepath.Join(top, "site-circle"), filepath.Join(top, "site-circle.zip")
	written(t, dir, siteFor("circle", "index.html", "builds/gown.html"))
	if err := os.WriteFile(filepath.Join(dir, ".private"), []byte("secret"), 0o600); err != nil {
		t.Fatal(err)
	}
	var packs [][]byte
	for range 2 {
		if err := Pack(dir, name); err != nil {
			t.Fatal(err)
		}
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		packs = append(packs, data)
	}
	if !bytes.Equal(packs[0], packs[1]) {
		t.Error("packed twice it is not the same")
	}
	r, err := zip.NewReader(bytes.NewReader(packs[0]), int64(len(packs[0])))
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range r.File {
		names = append(names, f.Name)
		if !f.Modified.IsZero() && f.Modified.Year() > 1980 {
			t.Errorf("%s tells the time %s", f.Name, f.Modified)
		}
		from, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, _ := io.ReadAll(from)
		if want := "this is " + strings.TrimPrefix(f.Name, "site-circle/"); string(text) != want {
			t.Errorf("%s holds %q", f.Name, text)
		}
	}
	if got := strings.Join(names, " "); got != "site-circle/builds/gown.html site-circle/index.html" {
		t.Errorf("it holds %s", got)
	}
	left, _ := os.ReadDir(top)
	if len(left) != 2 {
		t.Errorf("%d things lie beside the site, want 1", len(left)-1)
	}
}

func TestPackLeavesOtherFilesAlone(t *testing.T) {
	top := t.TempDir()
	own, theirs := filepath.Join(top, "own"), filepath.Join(top, "theirs")
	written(t, own, siteFor("", "index.html"))
	written(t, theirs, siteFor("circle", "index.html"))
	name := filepath.Join(top, "a.zip")
	if err := Pack(theirs, name); err != nil {
		t.Fatal(err)
	}
	before, _ := os.ReadFile(name)
	if err := Pack(own, name); err == nil || !strings.Contains(err.Error(), "for circle") {
		t.Errorf("the maker's own was packed over theirs: %v", err)
	}
	if after, _ := os.ReadFile(name); !bytes.Equal(before, after) {
		t.Error("the file has changed")
	}
	letter := filepath.Join(top, "letter.zip")
	if err := os.WriteFile(letter, []byte("Dear niece"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Pack(own, letter); err == nil || !strings.Contains(err.Error(), "no site was packed") {
		t.Errorf("a letter was replaced: %v", err)
	}
	if err := Pack(top, filepath.Join(top, "b.zip")); err == nil || !strings.Contains(err.Error(), "holds no site") {
		t.Errorf("what is no site was packed: %v", err)
	}
}
