//go:build unix

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const oneWearer = `
-- journal.yaml --
unit: in
-- people/ada.md --
---
measured:
  - {date: 2026-01-10, over: [shift, stays], waist girth: 29 in, hip girth: 39 in, wrist girth: 6 in}
---
`

// Somebody mistypes, goes back, breaks off with Ctrl-C and goes on.
func TestMeasureAtATerminal(t *testing.T) {
	dir := laid(t, oneWearer)
	page := filepath.Join(dir, "people", "ada.md")
	before := mustRead(t, page)

	s := atTerminal(t, dir, nil, "measure", "ada", "--on", "2026-11-25", "--by", "mim")
	s.sees("over what, from the skin out? [shift, stays] ")
	s.types("?\r")
	s.sees("name the layers under the tape")
	s.types("shft, stays\r")
	s.sees("did you mean shift?")
	s.types("\r")
	s.sees("over what")
	s.types("\r")
	s.sees("1 of 3: waist girth")
	s.sees("29 in on 2026-01-10")
	s.sees("waist girth? ")
	s.types("27\x7f9 1/2\r") // a key for what was mistyped, as terminals send it
	s.sees("1/2 in more than on 2026-01-10, within the error of measuring")
	s.sees("hip girth? ")
	s.types("93\r")
	s.sees("with its digits the other way round it is 39 in")
	s.sees("sure? [y/N] ")
	s.types("\r")
	s.sees("hip girth? ")
	s.types("93\r")
	s.sees("sure? [y/N] ")
	s.types("39\r") // the right figure is a no as well
	s.sees("as on 2026-01-10")
	s.sees("wrist girth? ")
	s.types("\x1b[A\x03") // an arrow key, then Ctrl-C
	s.sees("stopped; 2 measures are kept")
	s.ends(exitFault)
	if after := mustRead(t, page); after != before {
		t.Errorf("the page was touched:\n%s", after)
	}
	kept, err := filepath.Glob(filepath.Join(dir, ".local/state/hussif/measuring/*"))
	if err != nil || len(kept) != 1 {
		t.Fatalf("kept: %v %v", kept, err)
	}
	if info, err := os.Stat(kept[0]); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("others may read what is kept: %v %v", info.Mode(), err)
	}

	s = atTerminal(t, dir, nil, "measure", "ada")
	s.sees("broken off after 2 measures")
	s.types("\r")
	s.sees("3 of 3: wrist girth")
	s.types("back\r")
	s.sees("hip girth? [39 in] ")
	s.types("39 1/4\r")
	s.sees("wrist girth? ")
	s.types("\r")
	s.sees("another measure")
	s.types("\r")
	s.sees("add this to people/ada.md? [Y/n] ")
	s.types("\r")
	shown := s.ends(exitDone)
	if strings.Contains(shown, "\x1b[") {
		t.Errorf("the cursor is moved about: %q", shown)
	}
	want := strings.Replace(before, "6 in}\n", "6 in}\n  - {date: 2026-11-25, over: [shift, stays], by: mim, waist girth: 29 1/2 in, hip girth: 39 1/4 in}\n", 1)
	if after := mustRead(t, page); after != want {
		t.Errorf("got\n%s", after)
	}
	if _, err := os.Stat(kept[0]); err == nil {
		t.Error("a finished sitting is still kept")
	}
}

// Ctrl-D at an empty line ends the input and not the work; a window that is closed
// loses nothing either.
func TestMeasureLeft(t *testing.T) {
	dir := laid(t, oneWearer)
	s := atTerminal(t, dir, nil, "measure", "ada", "--on", "2026-11-25")
	s.sees("over what")
	s.types("\r")
	s.sees("who measures")
	s.types("\r")
	s.sees("waist girth? ")
	s.types("29\r")
	s.sees("hip girth? ")
	s.types("\x04")
	s.sees("stopped; 1 measure is kept")
	s.ends(exitDone)

	s = atTerminal(t, dir, nil, "measure", "ada")
	s.sees("go on with it?")
	s.types("y\r")
	s.sees("hip girth? ")
	s.types("38 1/2\r")
	s.sees("wrist girth? ")
	if err := s.cmd.Process.Kill(); err != nil {
		t.Fatal(err)
	}
	s.ends(-1)

	s = atTerminal(t, dir, nil, "measure", "ada")
	s.sees("broken off after 2 measures")
	s.types("\x03")
	s.sees("stopped; 2 measures are kept")
	s.ends(exitFault)
	s = atTerminal(t, dir, nil, "measure", "ada")
	s.sees("broken off after 2 measures")
	s.types("stop\r")
	s.ends(exitDone)
}

// A doubt about values that were named is asked after where somebody can answer.
func TestMeasureDoubtsWhatIsNamed(t *testing.T) {
	dir := laid(t, oneWearer)
	before := mustRead(t, filepath.Join(dir, "people", "ada.md"))
	s := atTerminal(t, dir, nil, "measure", "ada", "waist girth=74 in")
	s.sees("did you mean 74 cm?")
	s.types("\r")
	s.sees("nothing was written")
	s.ends(exitFault)
	if mustRead(t, filepath.Join(dir, "people", "ada.md")) != before {
		t.Error("it was written all the same")
	}
	s = atTerminal(t, dir, nil, "measure", "ada", "waist girth=74 in")
	s.types("yes\r")
	s.sees("1 measure of")
	s.ends(exitDone)
}
