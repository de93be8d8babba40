package quantity

import "strings"

// A Range is all lengths from Least to Most, both included.
type Range struct{ Least, Most Length }

// ParseRange reads two lengths with "to" or a dash between them, or one length,
// which is then both least and most: "0 to 1 in", "1 1/2 in–2 1/2 in", "1 in".
// The unit may stand once, at the end. A hyphen that could be taken for a
// minus sign ("1 -2 in"), or for the joint of a negative mixed number
// ("-1-1/2 in"), is refused, as is a range that runs backwards.
func ParseRange(text string, bare Unit) (Range, error) {
	return parse(text, func(s *scanner) (Range, *Error) {
		first, e := s.reading()
		if e != nil {
			return Range{}, e
		}
		if first.negative && strings.ContainsAny(s.text[first.digits:first.end], "-\u2010\u2011") {
			return Range{}, s.unclearJoint(first)
		}
		if s.done() {
			length, e := s.close(first, bare)
			return Range{length, length}, e
		}
		if e := s.until(first); e != nil {
			return Range{}, e
		}
		second, e := s.reading()
		if e != nil {
			return Range{}, e
		}
		if !s.done() {
			return Range{}, s.leftOver()
		}
		least, most, e := s.closeBoth(first, second, bare)
		if e == nil && least > most {
			e = s.backwards(first, second)
		}
		return Range{least, most}, e
	})
}

// until moves past what stands between the ends of a range.
func (s *scanner) until(first reading) *Error {
	s.at = first.end
	before := s.skipSpace()
	at := s.at
	if s.take("to") {
		return nil
	}
	r, size := s.peek()
	switch r {
	case '–', '—':
		s.at += size
		return nil
	case '-', '\u2010', '\u2011':
		s.at += size
		if after := s.skipSpace(); after == before {
			return nil
		}
		return s.fail(at, "this hyphen could be a dash or a minus sign",
			s.with(first.end, s.at, " to "), s.with(first.end, s.at, " to -"))
	}
	return s.leftOver()
}

// unclearJoint refuses "-1-1/2 in".
func (s *scanner) unclearJoint(r reading) *Error {
	joint := r.digits + strings.IndexAny(s.text[r.digits:r.end], "-\u2010\u2011")
	ahead := scanner{s.text, joint}
	ahead.hyphen()
	return s.fail(joint, "this hyphen could belong to a mixed number or to a range",
		s.with(joint, ahead.at, " "), s.with(joint, ahead.at, " to "))
}

// backwards refuses a range whose least is more than its most. Where the first
// is a whole number and the second a fraction, the two may be one mixed number.
func (s *scanner) backwards(first, second reading) *Error {
	least, most := s.text[second.start:second.end], s.text[first.start:first.end]
	var instead []string
	if first.open {
		instead = append(instead, s.with(first.end, second.start, " "))
		if !second.open {
			most += " " + second.unit.String()
		}
	}
	return s.fail(first.start, "a range goes from the least to the most",
		append(instead, s.with(first.start, second.end, least+" to "+most))...)
}
