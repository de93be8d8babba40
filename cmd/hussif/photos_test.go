//go:build unix

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hussif/build/photo/phototest"
)

const oneBuild = `
-- journal/journal.yaml --
title: Ada sews
-- journal/builds/cap/build.md --
A cap.
`

// Somebody reads the plan, thinks better of it, breaks off, and then agrees.
func TestPhotosAtATerminal(t *testing.T) {
	dir := laid(t, oneBuild)
	for n, name := range []string{"a.jpg", "b.jpg"} {
		if err := writeNew(filepath.Join(dir, "DCIM", name), phototest.JPEG(n, "2026:03:01 18:22:03", "")); err != nil {
			t.Fatal(err)
		}
	}
	copied := filepath.Join(dir, "journal/builds/cap/photos/2026-03-01-a.jpg")
	for _, refused := range []struct{ keys, answer string }{
		{"what?\rn\r", "nothing was copied, as you said"},
		{"\x03", "nothing was copied"}, // Ctrl-C
		{"\x04", "nothing was copied"}, // the end of input
	} {
		s := atTerminal(t, dir, nil, "photos", "DCIM", "-j", "journal")
		s.sees("DCIM: 2 pictures for 1 note, 1 of them new")
		s.sees("Copy them? [Y/n] ")
		s.types(refused.keys)
		s.sees(refused.answer)
		s.ends(exitFault)
		if _, err := os.Stat(copied); err == nil {
			t.Fatalf("after %q pictures were copied", refused.keys)
		}
	}
	s := atTerminal(t, dir, []string{"NO_COLOR=1"}, "photos", "DCIM", "-j", "journal")
	s.sees("looking at the files") // a progress bar
	s.sees("Copy them? [Y/n] ")
	s.types("\r")
	s.sees("copying")
	s.sees("2 pictures copied into 1 note.")
	s.ends(exitDone)
	note := mustRead(t, filepath.Join(dir, "journal/builds/cap/2026-03-01-photos.md"))
	if strings.Count(note, "  - file: photos/2026-03-01-") != 2 {
		t.Errorf("the note:\n%s", note)
	}
	// Where there is nothing to do nothing is asked.
	s = atTerminal(t, dir, nil, "photos", "DCIM", "-j", "journal")
	s.sees("nothing new; 2 in the journal already")
	s.ends(exitDone)
}

// Somebody breaks off while HEIC pictures are developed, and goes on later.
func TestPhotosInterrupted(t *testing.T) {
	dir := laid(t, oneBuild)
	heic, err := os.ReadFile("../../build/develop/testdata/phone.heic")
	if err != nil {
		t.Fatal(err)
	}
	const pictures = 40 // so many take a while
	for n := range pictures {
		// What lies behind a picture's end makes other content of it.
		name := filepath.Join(dir, "DCIM", fmt.Sprintf("%02d.heic", n))
		if err := writeNew(name, append(heic[:len(heic):len(heic)], 0, 0, 0, 9, 'f', 'r', 'e', 'e', byte(n))); err != nil {
			t.Fatal(err)
		}
	}
	s := atTerminal(t, dir, nil, "photos", "DCIM", "-j", "journal")
	s.sees("Copy them? [Y/n] ")
	s.types("y\r")
	s.sees("copying")
	s.types("\x03")
	s.sees("the same command goes on from")
	s.ends(exitFault)
	s = atTerminal(t, dir, nil, "photos", "DCIM", "-j", "journal", "--yes")
	s.ends(exitDone)
	copied, err := filepath.Glob(filepath.Join(dir, "journal/builds/cap/photos/*"))
	if err != nil || len(copied) != pictures {
		t.Errorf("%d pictures, %v: %v", len(copied), err, copied)
	}
	note := mustRead(t, filepath.Join(dir, "journal/builds/cap/2026-03-01-photos.md"))
	for _, p := range copied {
		if strings.Count(note, filepath.Base(p)) != 1 {
			t.Errorf("%s is not once in the note:\n%s", p, note)
		}
	}
}
