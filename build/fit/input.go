package fit

import (
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Reason is where in the journal a fact is from.
type Reason struct {
	Record journal.ID
	Field  string
	Entry  int // which entry of a field that is a list, from 0
}

// Input is all that [Compute] looks at.
type Input struct {
	Build      journal.ID
	Wearer     journal.ID // empty where nobody is named
	Day        edtf.Day
	Foundation measure.Foundation // what the garment is worn over
	Garment    []Event
	Body       []Session
	Wanted     []Wanted
	Adjusts    []Adjust
	Errors     measure.Errors
	Catalogue  measure.Catalogue
	Kind       string // of garment, by which ease is suggested
}

// A Reading is one measure with its value.
type Reading struct {
	Point measure.Point
	Value quantity.Estimate
}

// An Event is something that befell a garment: it was measured, or altered.
// Events of one day stand in the order in which they happened.
type Event struct {
	Day      edtf.Day
	From     Reason
	MockUp   bool // of the mock-up, not the garment itself
	Measured []Reading
	Effects  []Effect
	Unsure   []measure.Point // altered, but by how much cannot be told
}

// An Effect is what an alteration adds to a measure; less than nothing makes it
// smaller.
type Effect struct {
	Point measure.Point
	By    quantity.Length
}

// A Session is one measuring of the body.
type Session struct {
	Day      edtf.Day
	From     Reason
	Over     measure.Foundation
	By       string
	Alone    bool // taken by the wearer herself
	Readings []Reading
}

// Wanted is the ease wanted at one measure.
type Wanted struct {
	Point       measure.Point
	From        Reason
	Named       bool // whether an ease is named, and could be read
	Unread      bool // whether one is that could not
	Ease        quantity.Range
	AcceptAmple bool
}

// An Adjust gives the garment a range of sizes at some measures: the gap of a
// lacing, or the lap of one edge over the other, that may be worn between Least
// and Most. A wider gap makes it larger, a wider lap smaller.
type Adjust struct {
	How        string // lacing, pins ...
	At         string // centre back, front ...
	From       Reason
	Lap        bool
	Size       quantity.Range
	MeasuredAt quantity.Length // gap or lap at which the garment was measured
	Points     []measure.Point
}

// covers reports whether what is said of one point holds for another: the plain
// name of a paired measure stands for both sides.
func covers(said, asked measure.Point) bool {
	return said.Measure == asked.Measure && (said.Side == measure.Both || said.Side == asked.Side)
}

// find returns the reading for a point, one of its own side before one of both.
func find(readings []Reading, p measure.Point) (quantity.Estimate, bool) {
	var found quantity.Estimate
	ok := false
	for _, r := range readings {
		switch {
		case r.Point == p:
			return r.Value, true
		case covers(r.Point, p):
			found, ok = r.Value, true
		}
	}
	return found, ok
}
