package quantity

import (
	"strings"

	"hussif/content/near"
)

// A State says how well a length is known. The zero value is Exact.
type State int

// The states of an estimate.
const (
	Exact       State = iota // as measured
	About                    // roughly so
	Unknown                  // nobody knows
	NotMeasured              // it could be measured but has not been
)

// An Estimate is a length that may be approximate or missing. Where it is not
// [Estimate.Known] its Length is 0 and means nothing.
type Estimate struct {
	Length Length
	State  State
}

// Known reports whether there is a length, be it an approximate one.
func (e Estimate) Known() bool { return e.State == Exact || e.State == About }

// ParseEstimate reads a length as [ParseLength] does, a length after "about",
// "approximately", "approx.", "around", "roughly", "circa", "ca.", "c.", "~" or
// "≈", or one of "unknown", "not known", "?", "not measured" and "unmeasured".
func ParseEstimate(text string, bare Unit) (Estimate, error) {
	return parse(text, func(s *scanner) (Estimate, *Error) {
		switch strings.Join(strings.Fields(strings.ToLower(s.text)), " ") {
		case "unknown", "not known", "?":
			return Estimate{State: Unknown}, nil
		case "not measured", "unmeasured":
			return Estimate{State: NotMeasured}, nil
		}
		s.skipSpace()
		var estimate Estimate
		if s.roughly() {
			estimate.State = About
			s.skipSpace()
		}
		if word := s.nextWord(); word != "" {
			instead := near.Of(s.text[s.at:], []string{"unknown", "not known", "not measured", "unmeasured"})
			for _, about := range near.Of(word, []string{"about", "around", "roughly", "circa"}) {
				instead = append(instead, s.with(s.at, s.at+len(word), about))
			}
			return estimate, s.fail(s.at, `a length is missing, for which "unknown" or "not measured" may stand`, instead...)
		}
		length, e := s.lengthOr(bare)
		if e == nil && !s.done() {
			e = s.leftOver()
		}
		estimate.Length = length
		return estimate, e
	})
}

// roughly moves past a word or mark for an approximate value.
func (s *scanner) roughly() bool {
	if r, size := s.peek(); r == '~' || r == '≈' {
		s.at += size
		return true
	}
	if !s.take("about", "approximately", "approx", "around", "roughly", "circa", "ca", "c") {
		return false
	}
	if strings.HasPrefix(s.text[s.at:], ".") {
		s.at++
	}
	return true
}
