package edtf

import (
	"slices"
	"strings"
)

// A part is the year, month or day of a date as written.
type part struct {
	mask  string // digits and X; empty for a year written with Y or S
	marks marks
}

// A partial is one date of an expression: a year, perhaps with a month or a
// season, perhaps with a day. Any digit may be masked by X.
type partial struct {
	parts     []part // year, month or season, day: as many as are given
	negative  bool
	low, high int  // the years the year part can stand for
	rough     bool // the year was written with S
	estimate  int  // the year before its S

	first, last Day // of all days the date can stand for
}

const (
	yearPart = iota
	monthPart
	dayPart
)

// season returns the season that stands in place of the month; nil for none.
func (p *partial) season() *season {
	if len(p.parts) <= monthPart {
		return nil
	}
	code, plain := number(p.parts[monthPart].mask)
	if !plain {
		return nil
	}
	return seasonOf(code)
}

// masked reports whether any part has an unspecified digit.
func (p *partial) masked() bool {
	return slices.ContainsFunc(p.parts, func(part part) bool { return strings.Contains(part.mask, "X") })
}

// marks returns the marks carried by at least one part.
func (p *partial) marks() marks {
	var m marks
	for _, part := range p.parts {
		m |= part.marks
	}
	return m
}

// shared returns the marks carried by every part.
func (p *partial) shared() marks {
	m := uncertain | approximate
	for _, part := range p.parts {
		m &= part.marks
	}
	return m
}

// cut returns the date with only its first n parts, which widens it.
func (p *partial) cut(n int) partial {
	q := *p
	q.parts = p.parts[:n]
	q.settle()
	return q
}

// settle works out the first and last day; false when there is no such day.
func (p *partial) settle() bool {
	first, ok := p.edge(false)
	if !ok {
		return false
	}
	p.first = first
	p.last, _ = p.edge(true)
	return true
}

// edge returns the earliest or latest day that fits every part. Years are tried
// from the edge inwards, because 15XX-02-29 has no such day in 1500.
func (p *partial) edge(latest bool) (Day, bool) {
	year, step := p.low, 1
	if latest {
		year, step = p.high, -1
	}
	for ; p.low <= year && year <= p.high; year += step {
		if !fits(p.parts[yearPart].mask, max(year, -year)) {
			continue
		}
		if day, ok := p.edgeInYear(year, latest); ok {
			return day, true
		}
	}
	return 0, false
}

func (p *partial) edgeInYear(year int, latest bool) (Day, bool) {
	if len(p.parts) == 1 {
		if latest {
			return DayOf(year, 12, 31), true
		}
		return DayOf(year, 1, 1), true
	}
	if s := p.season(); s != nil {
		first, last := s.days(year)
		if latest {
			return last, true
		}
		return first, true
	}
	month, end, step := 1, 13, 1
	if latest {
		month, end, step = 12, 0, -1
	}
	for ; month != end; month += step {
		if !fits(p.parts[monthPart].mask, month) {
			continue
		}
		if day, ok := p.edgeInMonth(year, month, latest); ok {
			return day, true
		}
	}
	return 0, false
}

func (p *partial) edgeInMonth(year, month int, latest bool) (Day, bool) {
	mask := "XX"
	if len(p.parts) > dayPart {
		mask = p.parts[dayPart].mask
	}
	length := daysIn(year, month)
	day, end, step := 1, length+1, 1
	if latest {
		day, end, step = length, 0, -1
	}
	for ; day != end; day += step {
		if fits(mask, day) {
			return DayOf(year, month, day), true
		}
	}
	return 0, false
}

// fits reports whether n, written with as many digits as the mask has, agrees
// with it. The empty mask agrees with every number.
func fits(mask string, n int) bool {
	for i := len(mask) - 1; i >= 0; i-- {
		if mask[i] != 'X' && int(mask[i]-'0') != n%10 {
			return false
		}
		n /= 10
	}
	return true
}

// number returns the value of a mask that has no X.
func number(mask string) (n int, plain bool) {
	for i := range len(mask) {
		if mask[i] == 'X' {
			return 0, false
		}
		n = n*10 + int(mask[i]-'0')
	}
	return n, mask != ""
}
