package main

import (
	"runtime/debug"
	"testing"

	"hussif/content/journal"
)

func TestCollectLess(t *testing.T) {
	t.Setenv("GOGC", "")
	t.Setenv("GOMEMLIMIT", "")
	folder := &journal.Folder{Texts: map[string][]byte{"notes/a.md": make([]byte, 1<<20)}}
	before := debug.SetMemoryLimit(-1)
	restore := collectLess(folder)
	if got, want := debug.SetMemoryLimit(-1), int64(64<<20+15<<20); got != want {
		t.Errorf("the limit is %d, want %d", got, want)
	}
	restore()
	if got := debug.SetMemoryLimit(-1); got != before {
		t.Errorf("the limit stays at %d, was %d", got, before)
	}
	t.Setenv("GOMEMLIMIT", "1GiB")
	defer collectLess(folder)()
	if got := debug.SetMemoryLimit(-1); got != before {
		t.Errorf("the user's limit is %d now, was %d", got, before)
	}
}
