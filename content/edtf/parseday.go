package edtf

import (
	"fmt"
	"strconv"
	"strings"
)

// ParseDay reads one calendar day written YYYY-MM-DD and nothing else. Other
// common orders are refused with the day they must mean; 03/04/2026, which
// may mean two, with both. The error is an *[Error].
func ParseDay(text string) (Day, error) {
	if day, ok := exactDay(text); ok {
		return day, nil
	}
	return 0, refuseDay(text)
}

// exactDay reads YYYY-MM-DD.
func exactDay(text string) (Day, bool) {
	const pattern = "dddd-dd-dd"
	if len(text) != len(pattern) {
		return 0, false
	}
	for i := range len(pattern) {
		if pattern[i] == 'd' && (text[i] < '0' || text[i] > '9') || pattern[i] == '-' && text[i] != '-' {
			return 0, false
		}
	}
	year, _ := number(text[:4])
	month, _ := number(text[5:7])
	day, _ := number(text[8:])
	return realDay(year, month, day)
}

// realDay returns the day of a date that exists.
func realDay(year, month, day int) (Day, bool) {
	if month < 1 || month > 12 || day < 1 || day > daysIn(year, month) {
		return 0, false
	}
	return DayOf(year, month, day), true
}

const dayForm = "a day is written as year, month and day, such as 2026-02-14"

// refuseDay says why a text is not YYYY-MM-DD.
func refuseDay(text string) *Error {
	fault := refuse(text, 0, "%s", dayForm)
	trimmed := strings.TrimSpace(text)
	if trimmed == "" {
		fault.Reason = "a day is missing; " + fault.Reason
		return fault
	}
	fault.Offset = strings.Index(text, trimmed)
	if fields, ok := threeNumbers(trimmed); ok {
		fields.explain(fault)
		return fault
	}
	// "14 February 2026" names one day too.
	if e, err := Read(trimmed, Customs{}); err == nil && e.Earliest == e.Latest && !e.OpenStart && !e.OpenEnd {
		fault.suggestDays(e.Earliest)
	}
	return fault
}

// A numericDate is three numbers that some punctuation parts, in the order
// written.
type numericDate struct {
	n         [3]int
	yearFirst bool
	yearLast  bool
}

// threeNumbers reads 14/02/2026, 2026.2.14 and the like.
func threeNumbers(text string) (numericDate, bool) {
	var d numericDate
	fields := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("/.-– ", r) })
	if len(fields) != len(d.n) {
		return d, false
	}
	for i, field := range fields {
		if len(field) > 4 || strings.Trim(field, digits) != "" {
			return d, false
		}
		d.n[i], _ = number(field)
	}
	d.yearFirst, d.yearLast = len(fields[0]) == 4, len(fields[2]) == 4
	return d, true
}

// explain fills in what a day of three numbers may have meant.
func (d numericDate) explain(fault *Error) {
	year, month, day := d.n[2], d.n[1], d.n[0]
	switch {
	case d.yearFirst == d.yearLast:
		fault.Reason = "the year needs four digits; " + fault.Reason
		return
	case d.yearFirst:
		year, day = d.n[0], d.n[2]
	}
	straight, first := realDay(year, month, day)
	swapped, second := realDay(year, day, month)
	switch {
	case d.yearFirst && first:
		fault.suggestDays(straight)
	case d.yearLast && first && second && month != day:
		fault.Reason = fmt.Sprintf("this may be %s or %s", straight.words(), swapped.words())
		fault.suggestDays(straight, swapped)
	case first:
		fault.suggestDays(straight)
	case second:
		fault.suggestDays(swapped)
	case month >= 1 && month <= 12 && day > 0:
		length := daysIn(year, month)
		fault.Reason = fmt.Sprintf("%s %04d has only %d days", monthNames[month-1], year, length)
		fault.suggestDays(DayOf(year, month, length))
	default:
		fault.Reason = "there is no such day; " + fault.Reason
	}
}

// suggestDays adds the days that can be written YYYY-MM-DD.
func (e *Error) suggestDays(days ...Day) {
	for _, day := range days {
		if text := day.String(); len(text) == len("2026-02-14") {
			e.Instead = append(e.Instead, text)
		}
	}
}

// words writes the day as 17 May 1784.
func (d Day) words() string {
	y, m, day := d.Date()
	return strconv.Itoa(day) + " " + monthNames[m-1] + " " + yearText(y)
}
