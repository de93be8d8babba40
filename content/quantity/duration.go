package quantity

import (
	"fmt"
	"strings"
	"time"

	"hussif/content/near"
)

// longestTime is the longest time that is read, about ten years without a pause.
const longestTime = 10 * 365 * 24 * time.Hour

// ParseDuration reads hours and minutes of work: "3h 20m", "3.5 h", "1 1/2
// hours", "20 min", "3:20". A number alone is hours. Days are refused, since a
// day of work has no fixed length, and so is what is negative, longer than ten
// years or no whole number of nanoseconds.
func ParseDuration(text string) (time.Duration, error) {
	return parse(text, func(s *scanner) (time.Duration, *Error) {
		s.skipSpace()
		start := s.at
		if negative, _ := s.sign(); negative {
			return 0, s.fail(start, "no work takes less than no time", s.with(start, s.at, ""))
		}
		if !s.atNumber() {
			return 0, s.fail(s.at, "a number is missing, such as 3 h 20 min")
		}
		var total, last time.Duration // last is the unit last named
		for s.atNumber() {
			at := s.at
			number, e := s.number()
			if e != nil {
				return 0, e
			}
			end := s.at
			if last == 0 && strings.HasPrefix(s.text[end:], ":") {
				return s.clock(number, at)
			}
			s.skipSpace()
			unit, e := s.timeUnit(end, last)
			if e != nil {
				return 0, e
			}
			part, e := s.exactTime(number, unit, at)
			if e != nil {
				return 0, e
			}
			if last != 0 && unit >= last {
				return 0, s.fail(at, "hours stand once, before minutes")
			}
			if total += part; total > longestTime {
				return 0, s.tooMuchTime(start)
			}
			last = unit
			s.skipSpace()
		}
		if !s.done() {
			return 0, s.fail(s.at, "cannot make sense of "+quote(s.text[s.at:]))
		}
		return total, nil
	})
}

// clock reads the minutes of "3:20" after its hours, which begin at a byte.
func (s *scanner) clock(hours Fraction, at int) (time.Duration, *Error) {
	colon := s.at
	s.at++
	start := s.at
	minutes, _ := s.digits()
	if s.at-start != 2 || minutes > 59 || !s.done() || hours.Den != 1 {
		return 0, s.fail(colon, "hours and minutes with a colon are written as in 3:20")
	}
	total, e := s.exactTime(hours, time.Hour, at)
	if e != nil {
		return 0, e
	}
	if total += time.Duration(minutes) * time.Minute; total > longestTime {
		return 0, s.tooMuchTime(at)
	}
	return total, nil
}

// timeUnit reads the unit of the number that ends at a byte; a number that
// stands alone is hours.
func (s *scanner) timeUnit(end int, last time.Duration) (time.Duration, *Error) {
	start := s.at
	word := s.word()
	var unit time.Duration
	switch strings.ToLower(word) {
	case "h", "hr", "hrs", "hour", "hours":
		unit = time.Hour
	case "m", "min", "mins", "minute", "minutes":
		unit = time.Minute
	case "":
		if last == 0 && s.done() {
			return time.Hour, nil
		}
		return 0, s.fail(end, "say whether this is hours or minutes", s.with(end, end, " min"), s.with(end, end, " h"))
	case "d", "day", "days":
		return 0, s.fail(start, "days of work differ in length: say how many hours")
	default:
		likely := near.Of(word, []string{"hour", "hours", "hrs", "min", "mins", "minute", "minutes"})
		if likely == nil {
			likely = []string{"h", "min"}
		}
		var instead []string
		for _, unit := range likely {
			instead = append(instead, s.with(start, s.at, unit))
		}
		return 0, s.fail(start, fmt.Sprintf("%s is neither hours nor minutes", quote(word)), instead...)
	}
	if strings.HasPrefix(s.text[s.at:], ".") && !s.atNumber() {
		s.at++
	}
	return unit, nil
}

// exactTime returns how long a number of a unit is; at is its first byte.
func (s *scanner) exactTime(number Fraction, unit time.Duration, at int) (time.Duration, *Error) {
	ns, exact, held := number.times(int64(unit))
	length := time.Duration(ns)
	if !held || length > longestTime {
		return 0, s.tooMuchTime(at)
	}
	if !exact {
		return 0, s.fail(at, "this time cannot be held exactly", s.with(at, s.at, FormatDuration(length)))
	}
	return length, nil
}

func (s *scanner) tooMuchTime(at int) *Error {
	return s.fail(at, "no work takes longer than ten years")
}

// FormatDuration writes hours and minutes to the nearest minute, halves away
// from zero: "3 h 20 min", "20 min", "3 h", "0 min".
func FormatDuration(d time.Duration) string {
	n := magnitude(d)
	minutes := n / uint64(time.Minute)
	if n%uint64(time.Minute) >= uint64(time.Minute/2) {
		minutes++
	}
	var text string
	switch hours, rest := minutes/60, minutes%60; {
	case hours == 0:
		text = fmt.Sprintf("%d min", rest)
	case rest == 0:
		text = fmt.Sprintf("%d h", hours)
	default:
		text = fmt.Sprintf("%d h %d min", hours, rest)
	}
	if d < 0 && minutes > 0 {
		return minus + text
	}
	return text
}
