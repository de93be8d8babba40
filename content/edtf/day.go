package edtf

import (
	"fmt"
	"math"
	"time"
)

// A Day is a calendar day of the proleptic Gregorian calendar, counted from
// 1970-01-01, which is the zero value. Days before it are negative.
type Day int

// yearLimit is the furthest year, before or after year 0, whose days a Day can
// count: no year is longer than 366 days.
const yearLimit = math.MaxInt / 366

const (
	daysIn4Years   = 4*365 + 1
	daysIn100Years = 25*daysIn4Years - 1
	daysIn400Years = 4*daysIn100Years + 1
	// fromMarch0 is the number of days from 0000-03-01 to 1970-01-01.
	fromMarch0 = 719468
)

// daysBefore gives the days before each month of a year that starts in March.
// Such a year ends with its leap day, so the table holds for every year.
var daysBefore = [12]int{0, 31, 61, 92, 122, 153, 184, 214, 245, 275, 306, 337}

// DayOf returns the day with that date. A month or day outside its usual range
// is carried over, as time.Date does: the 0th of March is the last of February.
// The year must lie within about 2.5e16 years of year 0 (5.8e6 where an int has
// 32 bits).
func DayOf(year, month, day int) Day {
	// March is month 0 of its year.
	carried, month := floorDiv(month-3, 12)
	cycle, year := floorDiv(year+carried, 400)
	return Day(cycle*daysIn400Years + year*365 + year/4 - year/100 + daysBefore[month] + day - 1 - fromMarch0)
}

// Date returns the year, the month from 1 and the day of the month from 1. Year
// 0 is the year before year 1.
func (d Day) Date() (year, month, day int) {
	// The count is split before it is moved to March of year 0, so that the
	// first and last Day there is do not overflow.
	cycle, n := floorDiv(int(d), daysIn400Years)
	more, n := floorDiv(n+fromMarch0, daysIn400Years)
	// The leap day that closes the longest century, and the longest four
	// years, would otherwise be counted to the next.
	century := min(n/daysIn100Years, 3)
	n -= century * daysIn100Years
	four := n / daysIn4Years
	n -= four * daysIn4Years
	one := min(n/365, 3)
	n -= one * 365
	year = (cycle+more)*400 + century*100 + four*4 + one
	month = 11
	for daysBefore[month] > n {
		month--
	}
	day = n - daysBefore[month] + 1
	if month >= 10 {
		return year + 1, month - 9, day
	}
	return year, month + 3, day
}

// String writes the day as 1784-05-17, a year before year 0 as -0044-03-15.
func (d Day) String() string {
	y, m, day := d.Date()
	return fmt.Sprintf("%s-%02d-%02d", yearText(y), m, day)
}

// DayFromTime returns the day t falls on in its own time zone.
func DayFromTime(t time.Time) Day {
	y, m, d := t.Date()
	return DayOf(y, int(m), d)
}

// daysIn returns the length of a month of a year, the month being 1 to 12.
func daysIn(year, month int) int {
	return int(DayOf(year, month+1, 1) - DayOf(year, month, 1))
}

// yearText writes a year with at least four digits.
func yearText(year int) string {
	if year < 0 {
		return fmt.Sprintf("%05d", year)
	}
	return fmt.Sprintf("%04d", year)
}

// floorDiv divides rounding down, so that the remainder is never negative.
func floorDiv(n, by int) (quotient, remainder int) {
	quotient, remainder = n/by, n%by
	if remainder < 0 {
		return quotient - 1, remainder + by
	}
	return quotient, remainder
}
