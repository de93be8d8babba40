package measure

import "slices"

// A Class groups the measures that are read about equally well. The zero Class
// is none of them.
type Class int

// The classes of body measures told apart by ISO 20685 for its limits of error.
const (
	SmallGirth    Class = iota + 1 // neck, arm, wrist, knee, ankle
	LargeGirth                     // bust, waist, hip, thigh
	Height                         // from the ground up
	Breadth                        // across the body
	SegmentLength                  // along a part of the body
	BodyDepth                      // from front to back
	Head
	Hand
	Foot

	// LaidFlat is no class of measure: it is the name under which [Errors]
	// keeps the error of one reading of a garment laid flat.
	LaidFlat
)

func (c Class) String() string {
	switch c {
	case SmallGirth:
		return "small girth"
	case LargeGirth:
		return "large girth"
	case Height:
		return "height"
	case Breadth:
		return "breadth"
	case SegmentLength:
		return "segment length"
	case BodyDepth:
		return "body depth"
	case Head:
		return "head"
	case Hand:
		return "hand"
	case Foot:
		return "foot"
	case LaidFlat:
		return "laid flat"
	}
	return "no class"
}

// Classes returns the classes a measure can be of.
func Classes() []Class {
	return []Class{SmallGirth, LargeGirth, Height, Breadth, SegmentLength, BodyDepth, Head, Hand, Foot}
}

// ParseClass reads a class as a maker writes it, in capitals or not, singular
// or plural. It reads "laid flat" too.
func ParseClass(name string) (Class, bool) {
	key := keyOf(name)
	for _, c := range append(Classes(), LaidFlat) {
		if keyOf(c.String()) == key {
			return c, true
		}
	}
	return 0, false
}

func (c Class) valid() bool {
	return slices.Contains(Classes(), c)
}
