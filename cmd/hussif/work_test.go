//go:build unix

package main

import (
	"strings"
	"testing"
)

// At a terminal each missing figure is asked for until the others follow; what is
// wrong is said and asked again.
func TestWorkAsks(t *testing.T) {
	s := atTerminal(t, t.TempDir(), nil, "work", "knife-pleats", "--depth", "1 in")
	s.sees("finished (how wide the pleated edge is to be, without turnings; as in 34 in)? ")
	s.types("34 inn\r")
	s.sees(`no unit of length is called "inn"`)
	s.sees("did you mean 34 in")
	s.sees("finished (")
	s.types("34 in\r")
	s.sees("cloth (")
	s.types("\r")
	s.sees("pleats (")
	s.types("\r")
	s.sees("shown (")
	s.types("1 in\r")
	out := s.ends(exitDone)
	if !strings.Contains(out, "cloth") || !strings.Contains(out, "102 in") {
		t.Errorf("not worked out:\n%s", out)
	}
}

// What nothing can be done without is asked for again, and the end of input says
// what is missing.
func TestWorkNeedsWhatItNeeds(t *testing.T) {
	s := atTerminal(t, t.TempDir(), nil, "work", "spacing")
	s.sees("length (how long the edge is; as in 14 in)? ")
	s.types("\r")
	s.sees("nothing can be worked out without it")
	s.sees("length (")
	s.types("15 in\r")
	s.sees("may be left out: press Enter")
	s.sees("number (")
	s.types("\x04")
	s.sees("how many there are has to be known, or the largest gap")
	s.ends(exitFault)
}

func TestWorkStopsOnInterrupt(t *testing.T) {
	s := atTerminal(t, t.TempDir(), nil, "work", "gathers")
	s.sees("finished (")
	s.types("\x03")
	s.sees("interrupted")
	s.ends(exitFault)
}
