package measure

import "strings"

// A Side tells on which of a pair of parts a measure was read.
type Side int

// The plain name of a paired measure stands for both sides.
const (
	Both Side = iota
	Left
	Right
)

func (s Side) String() string {
	switch s {
	case Left:
		return "left"
	case Right:
		return "right"
	}
	return "both"
}

// A Point is one place to hold the tape: a measure, and for paired parts the
// side. It can be compared and used as a map key.
type Point struct {
	Measure string // canonical name
	Side    Side   // Both for measures that are not paired
}

// String names the point as a maker would, "upper arm girth" or "left upper arm
// girth". [Catalogue.Find] reads it back.
func (p Point) String() string {
	if p.Side == Both {
		return p.Measure
	}
	return p.Side.String() + " " + p.Measure
}

// sideOf reads the one word a side is written as.
func sideOf(word string) (Side, bool) {
	switch strings.ToLower(word) {
	case "left", "l":
		return Left, true
	case "right", "r":
		return Right, true
	}
	return Both, false
}
