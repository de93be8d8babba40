//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const twoBuilds = `
-- journal.yaml --
-- builds/apron/build.md --
-- builds/apron/2026-11-01.md --
-- builds/jacket/build.md --
-- builds/jacket/2026-11-01-cut.md --
---
stage: cutting
---
`

// Of two builds worked on equally lately one is chosen, and the note opens in the
// editor at the same terminal.
func TestNoteAsksWhichBuild(t *testing.T) {
	dir := laid(t, twoBuilds)
	s := atTerminal(t, dir, []string{"VISUAL=tail -n 3"}, "note", "--on", "2026-11-25", "--open")
	s.sees("apron and jacket were worked on equally lately, on 2026-11-01")
	s.sees("2  jacket")
	s.sees("which? [1] ")
	s.types("3\r")
	s.sees("answer with a number from 1 to 2")
	s.types("jaket\r")
	s.sees("did you mean jacket?")
	s.types("2\r")
	s.sees("builds/jacket/2026-11-25-sewing.md")
	s.sees("---")
	s.ends(exitDone)
	if text := mustRead(t, filepath.Join(dir, "builds/jacket/2026-11-25-sewing.md")); !strings.Contains(text, "stage: sewing") {
		t.Errorf("got\n%s", text)
	}
}

func TestNoteNotChosen(t *testing.T) {
	dir := laid(t, twoBuilds)
	s := atTerminal(t, dir, nil, "note")
	s.sees("which?")
	s.types("\x03")
	s.sees("no note was begun")
	s.ends(exitFault)
	for _, build := range []string{"apron", "jacket"} {
		if entries, err := os.ReadDir(filepath.Join(dir, "builds", build)); err != nil || len(entries) != 2 {
			t.Errorf("%s: %v, %v", build, entries, err)
		}
	}
}
