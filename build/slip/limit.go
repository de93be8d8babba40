package slip

import (
	"hussif/content/edtf"
	"hussif/content/measure"
	"hussif/content/quantity"
)

const (
	mm = quantity.Millimetre
	cm = quantity.Centimetre
)

// A scope is what is known of all measures of a class.
type scope struct {
	week        quantity.Length // how much it may change in a week
	least, most quantity.Length // of any body, from a newborn child's up
	low, high   quantity.Length // beyond which the other unit of length is likelier
}

// scopeOf returns the scope of a class. The bounds are ours: well beyond the
// smallest newborn and the largest adult in the medical record (from memory: a
// head of some 30 cm, a stature of 272 cm, a waist of some 300 cm), so that nobody
// is told that her body cannot be.
func scopeOf(c measure.Class) scope {
	switch c {
	case measure.SmallGirth:
		return scope{week: 10 * mm / 3, least: 4 * cm, most: 120 * cm, low: 8 * cm, high: 76 * cm}
	case measure.LargeGirth:
		return scope{week: 10 * mm, least: 10 * cm, most: 320 * cm, low: 42 * cm, high: 200 * cm}
	case measure.Height:
		return scope{week: 5 * mm, least: 1 * cm, most: 280 * cm, low: 1 * cm, high: 230 * cm}
	case measure.SegmentLength:
		return scope{week: 5 * mm, least: 1 * cm, most: 280 * cm, low: 1 * cm, high: 180 * cm}
	case measure.Head:
		return scope{week: 2 * mm, least: 20 * cm, most: 110 * cm, low: 28 * cm, high: 100 * cm}
	case measure.Hand:
		return scope{week: 2 * mm, least: 2 * cm, most: 50 * cm, low: 2 * cm, high: 40 * cm}
	case measure.Foot:
		return scope{week: 2 * mm, least: 2 * cm, most: 70 * cm, low: 2 * cm, high: 55 * cm}
	}
	return scope{week: 2 * mm, least: 2 * cm, most: 150 * cm, low: 2 * cm, high: 100 * cm}
}

// onCloth are measures that end at a hem and not at the body. They may be as long
// as a train is, and say nothing of the wearer.
var onCloth = map[string]bool{
	"hem girth": true, "front waist to hem": true, "side waist to hem": true, "back waist to hem": true,
	"back waist to train": true, "front underbust to hem": true, "back neck point to hem": true,
	"neck shoulder point to hem": true, "neckline length": true,
}

// longestHem is more than any train or skirt hem measures.
const longestHem = 6 * quantity.Metre

func (r Reading) scope() scope {
	s := scopeOf(r.Class)
	if onCloth[r.Point.Measure] {
		s.most, s.high = longestHem, longestHem
	}
	return s
}

// threefold returns three times the error of the new reading and the one before.
func (r Reading) threefold() quantity.Length {
	class := r.Errors.Body(r.Class)
	each := func(v quantity.Estimate) quantity.Length {
		if v.State == quantity.About {
			return 2 * class
		}
		return class
	}
	return 3 * measure.RootSumSquares(each(r.Value), each(r.Before.Value))
}

// Limit returns how much the reading may differ from the one before and be taken as
// it is.
func (r Reading) Limit() quantity.Length {
	days := r.Day - r.Before.Day
	limit := r.threefold() + r.scope().week*quantity.Length(max(days, -days, edtf.Day(0)))/7
	limit = min(limit, max(r.threefold(), r.Before.Value.Length/3))
	if r.Before.Others {
		limit += r.Before.Value.Length / 3
	}
	return limit
}
