package wayin

import (
	"fmt"
	"strings"

	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// Words says how far a seam is opened and how much that is: "whole, 16 in each,
// 32 in in all", "at the crossing with side, 4 in", "left side only, whole, 17 in".
func (s Step) Words(f quantity.Format) string {
	var said []string
	if s.Side != measure.Both {
		said = append(said, s.Side.String()+" side only")
	}
	if s.Whole {
		said = append(said, "whole")
	} else {
		said = append(said, "where it crosses "+strings.Join(s.Across, " and "))
	}
	switch n := s.Count(); {
	case !s.Known:
		said = append(said, "length not noted")
	case s.Whole && n > 1:
		said = append(said, f.Length(s.Length/quantity.Length(n))+" each", f.Length(s.Length)+" in all")
	default:
		said = append(said, f.Length(s.Length))
	}
	if s.Seam.Piped == journal.Yes {
		said = append(said, "piped")
	}
	return strings.Join(said, ", ")
}

// Words says how much there is to open and how long it takes: "94 in to open, 2 h
// 36 min to open and 7 h 21 min to sew again".
func (l Load) Words(f quantity.Format) string {
	words := f.Length(l.Length) + " to open"
	switch {
	case l.Unknown > 0 && l.Length == 0:
		words = seams(l.Unknown) + " of unknown length to open"
	case l.Unknown > 0:
		words += ", and " + seams(l.Unknown) + " of unknown length"
	}
	if took := l.TimeWords(); took != "" {
		words += ", " + took
	}
	return words
}

// TimeWords says how long opening and sewing again take; empty where neither is
// known.
func (l Load) TimeWords() string {
	var said []string
	if l.Opening.Known {
		said = append(said, quantity.FormatDuration(l.Opening.For)+" to open")
	}
	if l.Sewing.Known {
		said = append(said, quantity.FormatDuration(l.Sewing.For)+" to sew again")
	}
	return strings.Join(said, " and ")
}

func seams(n int) string {
	if n == 1 {
		return "1 seam"
	}
	return fmt.Sprintf("%d seams", n)
}
