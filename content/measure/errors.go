package measure

import (
	"math"

	"hussif/content/quantity"
)

// Errors holds what a journal says of the errors of its own measuring: for a
// [Class], how far one reading of the body may be off, and for [LaidFlat], how
// far one reading of a garment laid flat may be off. What is not in it is as
// below; the nil Errors is the default throughout. The caller keeps lengths
// below zero out of it.
type Errors map[Class]quantity.Length

// Body returns how far a reading of the body may be off. The default is the
// largest error ISO 20685 allows for the class, as reported in "Anthropometry,
// Apparel Sizing and Design", chapter 2: small girths 4 mm, large girths 9 mm,
// heights and breadths 4 mm, segment lengths and body depths 5 mm, head 2 mm,
// hand 1 mm, foot 2 mm. The standard sets these limits for the mean of a group
// measured by a trained hand, not for one reading; a page that rests on the
// default must say so, and two sessions of one day tell a maker her own. A
// Class outside [Classes] gets the largest of them, 9 mm.
func (e Errors) Body(c Class) quantity.Length {
	if set, ok := e[c]; ok {
		return set
	}
	switch c {
	case SmallGirth, Height, Breadth:
		return 4 * quantity.Millimetre
	case SegmentLength, BodyDepth:
		return 5 * quantity.Millimetre
	case Head, Foot:
		return 2 * quantity.Millimetre
	case Hand:
		return 1 * quantity.Millimetre
	}
	return 9 * quantity.Millimetre
}

// Garment returns how far a measure of a garment may be off. One reading laid
// flat may be 3 mm off (common practice) or what the journal sets for
// [LaidFlat]. A girth is read as one flat half and doubled, and its error with
// it. The classes head, hand and foot hold girths and lengths alike and are
// taken for girths, so that the error is never made too small.
func (e Errors) Garment(c Class) quantity.Length {
	reading, ok := e[LaidFlat]
	if !ok {
		reading = 3 * quantity.Millimetre
	}
	switch c {
	case Height, Breadth, SegmentLength, BodyDepth:
		return reading
	}
	return 2 * reading
}

// RootSumSquares combines the errors of readings that have nothing to do with
// each other: the square root of the sum of their squares (JCGM 100:2008,
// 5.1.2), to the nearest nanometre.
func RootSumSquares(errors ...quantity.Length) quantity.Length {
	var sum float64
	for _, e := range errors {
		sum += float64(e) * float64(e)
	}
	return quantity.Length(math.Round(math.Sqrt(sum)))
}
