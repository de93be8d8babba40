package quantity

// A Length is an exact length in nanometres. One inch is 25 400 000 nm by
// definition, so every 1/64 in and every 0.1 mm is a whole number.
type Length int64

// Lengths of one of each unit, in nanometres.
const (
	Nanometre  Length = 1
	Millimetre        = 1_000_000 * Nanometre
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
	Yard              = 36 * Inch
)

// longest is the longest length that is read. It is beyond any cloth, and
// thousands of such lengths can be added without overflow.
const longest = 1000 * 1000 * Metre

// ParseLength reads one length, with or without a sign: "37 1/2 in", `37½"`,
// "95,3 cm", "1 ft 3 in", "-1/4 in". A number without a unit takes bare, and is
// refused where bare is NoUnit. Lengths beyond 1000 km are refused.
func ParseLength(text string, bare Unit) (Length, error) {
	return parse(text, func(s *scanner) (Length, *Error) {
		length, e := s.lengthOr(bare)
		if e == nil && !s.done() {
			e = s.leftOver()
		}
		return length, e
	})
}

// lengthOr reads a length; a number without a unit takes bare.
func (s *scanner) lengthOr(bare Unit) (Length, *Error) {
	r, e := s.reading()
	if e != nil {
		return 0, e
	}
	if r.open && bare == NoUnit && !s.done() {
		return 0, s.leftOver()
	}
	return s.close(r, bare)
}
