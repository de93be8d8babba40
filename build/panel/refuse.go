package panel

import (
	"errors"
	"fmt"

	"hussif/content/quantity"
)

// What a panel may be. Closer levels cannot be told apart with a tape, and
// within these limits no figure is further out than a nanometre.
const (
	closest      = quantity.Millimetre
	largest      = 20 * quantity.Metre
	widest       = quantity.Metre        // of an allowance
	longestCloth = 1000 * quantity.Metre // of a piece
	mostLevels   = 40
	mostPieces   = 200
)

// An Error says what is wrong with one thing that was asked for.
type Error struct {
	Field  string // "levels", "at", "width", "sides", "top", "foot", "pieces", "piece width", "piece length"
	Level  int    // which level, from 1; 0 where it is none of them
	Reason string // in the maker's words
}

// Error returns the reason with the field it is about.
func (e *Error) Error() string {
	if e.Level > 0 {
		return fmt.Sprintf("%s of level %d: %s", e.Field, e.Level, e.Reason)
	}
	return e.Field + ": " + e.Reason
}

// refuse returns all that is wrong with a panel, joined, each an [*Error].
func refuse(levels []Level, allow Allowance) error {
	var faults []error
	add := func(field string, level int, reason string) {
		faults = append(faults, &Error{field, level, reason})
	}
	switch {
	case len(levels) < 2:
		add("levels", 0, "a panel needs a width at two levels or more")
	case len(levels) > mostLevels:
		add("levels", 0, fmt.Sprintf("a panel has at most %d levels", mostLevels))
	}
	open := false
	for i, l := range levels {
		if reason := wrongAt(levels, i); reason != "" {
			add("at", i+1, reason)
		}
		if reason := wrongWidth(levels, i); reason != "" {
			add("width", i+1, reason)
		}
		open = open || l.Width != 0
	}
	if len(levels) > 1 && !open {
		add("levels", 0, "a panel is wider than nothing at one level at least")
	}
	for _, a := range []struct {
		field string
		by    quantity.Length
	}{{"sides", allow.Sides}, {"top", allow.Top}, {"foot", allow.Foot}} {
		if a.by < 0 || a.by > widest {
			add(a.field, 0, "a seam allowance lies between nothing and 1 m")
		}
	}
	return errors.Join(faults...)
}

func wrongAt(levels []Level, i int) string {
	at := levels[i].At
	switch {
	case at < -largest || at > largest:
		return "no seam is longer than 20 m"
	case i > 0 && at <= levels[i-1].At:
		return "each level lies further along the seam than the one before"
	case i > 0 && at-levels[i-1].At < closest:
		return "levels lie 1 mm apart or more"
	}
	return ""
}

func wrongWidth(levels []Level, i int) string {
	width := levels[i].Width
	switch {
	case width < 0:
		return "a width is not less than nothing"
	case width > largest:
		return "no panel is wider than 20 m"
	case width == 0 && i > 0 && i < len(levels)-1 && len(levels) > 2:
		return "only the first and the last level may come to a point"
	}
	return ""
}
