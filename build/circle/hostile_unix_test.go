//go:build unix

package circle_test

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"hussif/build/circle"
	"hussif/build/export"
)

// TestPipesAreNotWaitedFor: a file that never ends is not opened.
func TestPipesAreNotWaitedFor(t *testing.T) {
	dir := hand(t, evilLog(), map[string][]byte{"pictures/other": nil})
	pipe := func(name string) {
		if err := syscall.Mkfifo(filepath.Join(dir, name), 0o600); err != nil {
			t.Skip(err)
		}
	}
	pipe("pictures/0123456789ab-60.jpg")
	if _, made, found := makeCircle(t, open(t, dir)); made.Photos != 0 || len(found) != 1 {
		t.Errorf("%d photos, found %v", made.Photos, found)
	}
	if err := os.Remove(filepath.Join(dir, export.Path)); err != nil {
		t.Fatal(err)
	}
	pipe(export.Path)
	if _, _, _, err := circle.Open(dir); err == nil {
		t.Error("a pipe is taken for a log")
	}
}
