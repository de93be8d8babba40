package main

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

func TestRewrite(t *testing.T) {
	name := filepath.Join(t.TempDir(), "ada.md")
	if err := os.WriteFile(name, []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	if err := rewrite(name, []byte("old"), []byte("new")); err != nil {
		t.Fatal(err)
	}
	if got := mustRead(t, name); got != "new" {
		t.Errorf("holds %q", got)
	}
	if info, err := os.Stat(name); err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o640 {
		t.Errorf("the mode is %v, %v", info.Mode(), err)
	}
	if err := rewrite(name, []byte("old"), []byte("newer")); !errors.Is(err, errChanged) {
		t.Errorf("of a file changed meanwhile: %v", err)
	}
	checkHolds(t, name, "new")
}

func TestRewriteRefuses(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "ada.md")
	if err := os.WriteFile(name, []byte("old"), 0o444); err != nil {
		t.Fatal(err)
	}
	if err := rewrite(name, []byte("old"), []byte("new")); err == nil || !strings.Contains(err.Error(), "may only be read") {
		t.Errorf("of a file that may only be read: %v", err)
	}
	checkHolds(t, name, "old")
	if err := rewrite(filepath.Join(dir, "nobody.md"), nil, []byte("new")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("of no file: %v", err)
	}
	if err := rewrite(dir, nil, []byte("new")); err == nil || !strings.Contains(err.Error(), "is no file") {
		t.Errorf("of a folder: %v", err)
	}
	if err := os.Chmod(name, 0o644); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link.md")
	if err := os.Symlink(name, link); err != nil {
		t.Skip(err)
	}
	if err := rewrite(link, []byte("old"), []byte("new")); err == nil || !strings.Contains(err.Error(), "is a link") {
		t.Errorf("of a link: %v", err)
	}
	if got := mustRead(t, link); got != "old" {
		t.Errorf("holds %q", got)
	}
}

// checkHolds checks what a file holds, and that nothing was left beside it.
func checkHolds(t *testing.T, name, want string) {
	t.Helper()
	if got := mustRead(t, name); got != want {
		t.Errorf("holds %q, want %q", got, want)
	}
	entries, err := os.ReadDir(filepath.Dir(name))
	if err != nil || len(entries) != 1 {
		t.Errorf("beside it lie %v, %v", entries, err)
	}
}

func mustRead(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
