package quantity

import (
	"fmt"
	"slices"
)

// A reading is one length as far as it says itself what it is: a number alone
// is open until its unit is known from elsewhere.
type reading struct {
	start, digits, end int // its bytes; digits is after the sign
	negative           bool
	open               bool
	number             Fraction // when open
	unit               Unit     // otherwise, the last unit it names
	parts              int      // how many numbers with a unit it is the sum of
	size               Length   // and their sum, without the sign
}

// reading reads a number, or a length of one or more parts such as "1 ft 3 in".
// A word that is no unit is left for the caller.
func (s *scanner) reading() (reading, *Error) {
	s.skipSpace()
	r := reading{start: s.at}
	r.negative, _ = s.sign()
	r.digits = s.at
	if !s.atNumber() {
		return r, s.fail(s.at, "a number is missing, such as 37 1/2")
	}
	for s.atNumber() {
		start := s.at
		number, e := s.number()
		if e != nil {
			return r, e
		}
		end := s.at
		s.skipSpace()
		unit := s.unit()
		if unit == NoUnit {
			if r.parts > 0 {
				return r, s.unitMissing(end, partOf(r.unit))
			}
			s.at = end
			r.number, r.open, r.end = number, true, end
			return r, nil
		}
		if r.parts > 0 && unit.Length() >= r.unit.Length() {
			return r, s.fail(start, fmt.Sprintf("the units of one length go from large to small, but %s follows %s", unit, r.unit))
		}
		part, e := s.exact(number, unit, start, s.at)
		if e != nil {
			return r, e
		}
		r.unit, r.size, r.end = unit, r.size+part, s.at
		if r.size > longest {
			return r, s.tooLong(r.digits)
		}
		r.parts++
		s.skipSpace()
	}
	s.at = r.end
	return r, nil
}

// close gives an open reading its unit.
func (s *scanner) close(r reading, unit Unit) (Length, *Error) {
	if r.open {
		if unit == NoUnit {
			return 0, s.unitMissing(r.end, Inches, Centimetres)
		}
		size, e := s.exact(r.number, unit, r.digits, r.end)
		if e != nil {
			return 0, e
		}
		r.size = size
	}
	if r.negative {
		return -r.size, nil
	}
	return r.size, nil
}

// closeBoth gives two readings their units where one unit may stand once, after
// the second: "9 x 31 in".
func (s *scanner) closeBoth(first, second reading, bare Unit) (a, b Length, e *Error) {
	unit := bare
	switch {
	case first.open && !second.open && second.parts == 1:
		unit = second.unit
	case first.open && second.open && bare == NoUnit:
		return 0, 0, s.unitMissing(second.end, Inches, Centimetres)
	case first.open && !second.open:
		return 0, 0, s.unitMissing(first.end, Inches, Centimetres)
	case second.open && !first.open && first.unit != bare:
		return 0, 0, s.unitMissing(second.end, first.unit)
	}
	if a, e = s.close(first, unit); e != nil {
		return 0, 0, e
	}
	b, e = s.close(second, unit)
	return a, b, e
}

// exact returns how long a number of a unit is; start and end are its bytes.
func (s *scanner) exact(number Fraction, unit Unit, start, end int) (Length, *Error) {
	nm, exact, held := number.times(int64(unit.Length()))
	length := Length(nm)
	if !held || length > longest {
		return 0, s.tooLong(start)
	}
	if exact {
		return length, nil
	}
	offer := []Format{{Unit: Inches, Fraction: 16}, {Unit: Millimetres}}
	if unit.metric() {
		slices.Reverse(offer)
	}
	var instead []string
	for _, f := range offer {
		if f.nearest(length) != 0 {
			instead = append(instead, s.with(start, end, f.Length(length)))
		}
	}
	return 0, s.fail(start, fmt.Sprintf("%s %s cannot be held exactly", number, unit), instead...)
}

func (s *scanner) tooLong(at int) *Error {
	return s.fail(at, "no length here is over 1000 km")
}

// unitMissing refuses the number that ends at a byte, for want of a unit or for
// a misspelt one.
func (s *scanner) unitMissing(end int, offer ...Unit) *Error {
	s.at = end
	if s.skipSpace(); unitsNear(s.nextWord()) != nil {
		return s.leftOver()
	}
	var instead []string
	for _, unit := range offer {
		instead = append(instead, s.with(end, end, " "+unit.String()))
	}
	return s.fail(end, "a unit is missing after the number", instead...)
}

// partOf returns the unit in which a rest smaller than unit is usually given.
func partOf(unit Unit) Unit {
	switch unit {
	case Centimetres:
		return Millimetres
	case Metres:
		return Centimetres
	}
	return Inches
}
