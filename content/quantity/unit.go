package quantity

import "strings"

// A Unit is a unit of length that a maker may write. The zero value is NoUnit.
type Unit int

// The units of length. The nail and the two ells are old cloth measures, found
// in period sources: 1/16 yd, 3/4 yd and 1 1/4 yd.
const (
	NoUnit Unit = iota
	Inches
	Feet
	Yards
	Millimetres
	Centimetres
	Metres
	Nails
	FlemishElls
	EnglishElls
)

var units = [...]struct {
	name   string
	length Length
}{
	Inches:      {"in", Inch},
	Feet:        {"ft", Foot},
	Yards:       {"yd", Yard},
	Millimetres: {"mm", Millimetre},
	Centimetres: {"cm", Centimetre},
	Metres:      {"m", Metre},
	Nails:       {"nail", Yard / 16},
	FlemishElls: {"Flemish ell", Yard * 3 / 4},
	EnglishElls: {"English ell", Yard * 5 / 4},
}

// spellings are tried in order, so the common ones stand first.
var spellings = [...]struct {
	text string
	unit Unit
}{
	{"in", Inches}, {"cm", Centimetres}, {"mm", Millimetres}, {"yd", Yards}, {"m", Metres}, {"ft", Feet},
	{"inch", Inches}, {"inches", Inches}, {"ins", Inches},
	{"yard", Yards}, {"yards", Yards}, {"yds", Yards},
	{"foot", Feet}, {"feet", Feet},
	{"centimetre", Centimetres}, {"centimetres", Centimetres}, {"centimeter", Centimetres}, {"centimeters", Centimetres}, {"cms", Centimetres},
	{"millimetre", Millimetres}, {"millimetres", Millimetres}, {"millimeter", Millimetres}, {"millimeters", Millimetres}, {"mms", Millimetres},
	{"metre", Metres}, {"metres", Metres}, {"meter", Metres}, {"meters", Metres},
	{"nail", Nails}, {"nails", Nails},
}

// String returns the unit as it is written after a number, such as "in"; for
// NoUnit and for what is no unit it returns "".
func (u Unit) String() string {
	if u < NoUnit || int(u) >= len(units) {
		return ""
	}
	return units[u].name
}

// Length returns how long one of the unit is; 0 for NoUnit and for what is no
// unit.
func (u Unit) Length() Length {
	if u < NoUnit || int(u) >= len(units) {
		return 0
	}
	return units[u].length
}

func (u Unit) metric() bool {
	return u == Millimetres || u == Centimetres || u == Metres
}

// ParseUnit reads a unit of length: an abbreviation, a word in the singular or
// plural, or an inch or foot mark, in capitals or not. A plain "ell" is no
// unit, since the ells of different places differ.
func ParseUnit(text string) (Unit, bool) {
	s := scanner{text: text}
	s.skipSpace()
	unit := s.unit()
	if !s.done() {
		return NoUnit, false
	}
	return unit, unit != NoUnit
}

// unit reads a unit and the full stop of an abbreviation. Where no unit stands
// it returns NoUnit and moves nothing.
func (s *scanner) unit() Unit {
	r, size := s.peek()
	switch r {
	case '"', '″', '”', '“':
		s.at += size
		return Inches
	case '\'', '′', '’', '‘':
		s.at += size
		if again, size := s.peek(); again == r {
			s.at += size
			return Inches
		}
		return Feet
	}
	start := s.at
	word := s.word()
	unit := unitSpelt(word)
	if unit == NoUnit {
		unit = s.ell(word)
	}
	if unit == NoUnit {
		s.at = start
		return NoUnit
	}
	if strings.HasPrefix(s.text[s.at:], ".") && !s.atNumber() {
		s.at++
	}
	return unit
}

func unitSpelt(word string) Unit {
	for i := range spellings {
		if len(spellings[i].text) == len(word) && strings.EqualFold(spellings[i].text, word) {
			return spellings[i].unit
		}
	}
	return NoUnit
}

// ell reads the second word of "English ell" after its first.
func (s *scanner) ell(place string) Unit {
	var unit Unit
	switch {
	case strings.EqualFold(place, "English"):
		unit = EnglishElls
	case strings.EqualFold(place, "Flemish"):
		unit = FlemishElls
	default:
		return NoUnit
	}
	s.skipSpace()
	if word := s.word(); !strings.EqualFold(word, "ell") && !strings.EqualFold(word, "ells") {
		return NoUnit
	}
	return unit
}
