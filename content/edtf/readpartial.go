package edtf

import (
	"strconv"
	"strings"
)

// A cursor walks over a stretch of a text, so that offsets count from the start
// of the whole text.
type cursor struct {
	text    string
	at, end int
}

// peek returns the next byte, 0 at the end.
func (c *cursor) peek() byte {
	if c.at < c.end {
		return c.text[c.at]
	}
	return 0
}

// take steps over one byte if it is the next.
func (c *cursor) take(b byte) bool {
	if c.peek() != b || c.at == c.end {
		return false
	}
	c.at++
	return true
}

// run steps over as many bytes of the set as follow.
func (c *cursor) run(set string) string {
	from := c.at
	for c.at < c.end && strings.IndexByte(set, c.text[c.at]) >= 0 {
		c.at++
	}
	return c.text[from:c.at]
}

// mark steps over one qualifier, if one follows.
func (c *cursor) mark() marks {
	m := markOf(c.peek())
	if m != 0 {
		c.at++
	}
	return m
}

func (c *cursor) refuse(at int, format string, args ...any) *Error {
	return refuse(c.text, at, format, args...)
}

const (
	digits     = "0123456789"
	maskDigits = digits + "X"
)

// readPartial reads text[from:to], which must be one date and nothing else.
func readPartial(text string, from, to int) (partial, *Error) {
	c := &cursor{text: text, at: from, end: to}
	var p partial
	if fault := p.readYear(c); fault != nil {
		return p, fault
	}
	for len(p.parts) <= dayPart && p.parts[yearPart].mask != "" && c.take('-') {
		if fault := p.readPart(c); fault != nil {
			return p, fault
		}
	}
	if c.at < to {
		return p, p.excess(c)
	}
	for _, part := range p.parts {
		if part.marks != 0 && strings.Contains(part.mask, "X") {
			return p, c.refuse(from, "a part with an X cannot be marked ?, ~ or %% as well")
		}
	}
	if !p.settle() {
		return p, c.refuse(from, "%s", p.noSuchDay())
	}
	return p, nil
}

// excess refuses what follows a date that is complete.
func (p *partial) excess(c *cursor) *Error {
	switch c.peek() {
	case 'T', 't':
		return c.refuse(c.at, "a time of day is not read, only a date")
	case '.':
		return c.refuse(c.at, "a range with two dots stands in brackets")
	case '-':
		if len(p.parts) == 1 {
			return c.refuse(c.at, "a year written with Y or S has no month")
		}
	}
	return c.refuse(c.at, "nothing can follow the date here")
}

// readYear reads the year with the marks on either side of it.
func (p *partial) readYear(c *cursor) *Error {
	marks := c.mark()
	from := c.at
	long := c.take('Y')
	p.negative = c.take('-')
	mask := c.run(maskDigits)
	switch {
	case long:
		if fault := p.readLongYear(c, from, mask); fault != nil {
			return fault
		}
		mask = ""
	case mask == "":
		return c.refuse(from, "a date starts with its year in four digits")
	case len(mask) != 4:
		return c.refuse(from, "a year has four digits")
	case p.negative && mask == "0000":
		return c.refuse(from, "the year 0 has no minus sign")
	default:
		p.low, _ = number(strings.ReplaceAll(mask, "X", "0"))
		p.high, _ = number(strings.ReplaceAll(mask, "X", "9"))
		if p.negative {
			p.low, p.high = -p.high, -p.low
		}
	}
	if c.peek() == 'S' {
		if fault := p.readSignificant(c); fault != nil {
			return fault
		}
		mask = ""
	}
	p.parts = append(make([]part, 0, 3), part{mask: mask, marks: marks | c.mark()})
	return nil
}

// readPart reads the month, season or day after a hyphen.
func (p *partial) readPart(c *cursor) *Error {
	which, name := len(p.parts), [...]string{"year", "month", "day"}[len(p.parts)]
	if which == dayPart && p.season() != nil {
		return c.refuse(c.at, "a season has no day")
	}
	marks := c.mark()
	from := c.at
	mask := c.run(maskDigits)
	if len(mask) != 2 {
		return c.refuse(from, "a %s has two digits", name)
	}
	right := c.mark()
	// A mark to the right of a part holds for all parts to its left too.
	for i := range p.parts {
		p.parts[i].marks |= right
	}
	p.parts = append(p.parts, part{mask: mask, marks: marks | right})
	if which == monthPart && !possible(mask, 12) && p.season() == nil {
		return c.refuse(from, "there is no month %s", mask)
	}
	if which == dayPart && !possible(mask, 31) {
		return c.refuse(from, "there is no day %s in any month", mask)
	}
	return nil
}

// possible reports whether any number from 1 to most fits the mask.
func possible(mask string, most int) bool {
	for n := 1; n <= most; n++ {
		if fits(mask, n) {
			return true
		}
	}
	return false
}

// noSuchDay says why a date whose parts are each possible is still none.
func (p *partial) noSuchDay() string {
	month, plain := number(p.parts[monthPart].mask)
	if p.masked() || !plain {
		return "no day of the calendar is written like that"
	}
	name := monthNames[month-1]
	return name + " " + yearText(p.low) + " has only " + strconv.Itoa(daysIn(p.low, month)) + " days"
}
