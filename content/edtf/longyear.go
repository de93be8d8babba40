package edtf

import (
	"math"
	"strings"
)

// readLongYear reads what follows Y and its sign: digits, perhaps an exponent.
func (p *partial) readLongYear(c *cursor, from int, mask string) *Error {
	exponent := ""
	if c.take('E') {
		if exponent = c.run(digits); exponent == "" {
			return c.refuse(c.at, "a power of ten follows E")
		}
	}
	if mask == "" || mask[0] == '0' || strings.Contains(mask, "X") {
		return c.refuse(from, "a year after Y is digits alone, the first not 0")
	}
	year, ok := scaled(mask, exponent)
	switch {
	case !ok:
		return c.refuse(from, "that year is further off than days can be counted here")
	case year < 10_000:
		return c.refuse(from, "Y is for years of more than four digits")
	case p.negative:
		year = -year
	}
	p.low, p.high = year, year
	return nil
}

// scaled returns digits times ten to a power; false beyond the years a [Day]
// can count.
func scaled(mask, exponent string) (year int, ok bool) {
	for i := range len(mask) {
		digit := int(mask[i] - '0')
		if year > (yearLimit-digit)/10 {
			return 0, false
		}
		year = year*10 + digit
	}
	power, _ := number(strings.TrimLeft(exponent, "0"))
	if len(exponent) > 9 {
		power = math.MaxInt
	}
	for ; power > 0; power-- {
		if year > yearLimit/10 {
			return 0, false
		}
		year *= 10
	}
	return year, true
}

// readSignificant reads S and how many digits of the year are to be trusted.
func (p *partial) readSignificant(c *cursor) *Error {
	at := c.at
	c.take('S')
	count := c.run(digits)
	if p.low != p.high {
		return c.refuse(at, "a year with an X has no S after it")
	}
	year := max(p.low, -p.low)
	size := 1
	for rest := year; rest >= 10; rest /= 10 {
		size++
	}
	significant, _ := number(count)
	if len(count) == 0 || len(count) > 2 || significant == 0 || significant > size {
		return c.refuse(at, "S is followed by how many of the year's %d digits are certain", size)
	}
	unit := 1
	for range size - significant {
		unit *= 10
	}
	p.rough, p.estimate = true, p.low
	low := year / unit * unit
	high := low + unit - 1
	if high > yearLimit {
		return c.refuse(at, "that year is further off than days can be counted here")
	}
	p.low, p.high = low, high
	if p.negative {
		p.low, p.high = -high, -low
	}
	return nil
}
