package edtf

import (
	"fmt"
	"regexp"
	"strings"
)

// Read reads an EDTF expression or, where the text is none, a museum caption in
// English, by the customs given. Where a text can be both, EDTF is what counts:
// 1801-02 is February 1801. Two exceptions keep years from being taken for
// parts of a year: 1820-30 is the span of years, and 1820-24 is refused with
// both its readings. The error is an *[Error].
func Read(text string, c Customs) (Date, error) {
	trimmed := strings.TrimSpace(text)
	d, fault := read(trimmed, c)
	if fault == nil {
		return d, nil
	}
	fault.Instead = advice(trimmed, fault, c)
	if len(fault.Instead) == 0 {
		fault.Reason += "; a date may be such as 1784, ca. 1785, 1780s, late 18th century or 17 May 1784"
	}
	fault.Text, fault.Offset = text, fault.Offset+strings.Index(text, trimmed)
	return Date{}, fault
}

// read is Read without advice, except where a text has two readings.
func read(text string, c Customs) (Date, *Error) {
	if years, code := shortSpan(text); years != "" {
		if code >= northernSpring {
			return captionDate(text, years), nil
		}
		return Date{}, twoReadings(text, years, code)
	}
	e, fault := parse(text)
	if fault == nil {
		return e.date(text), nil
	}
	made, captionFault := captionEDTF(text, c)
	if captionFault == nil {
		return captionDate(text, made), nil
	}
	n, numeric := threeNumbers(text)
	switch {
	case numeric && (n.yearLast || strings.ContainsAny(text, "/. ")):
		fault = refuse(text, 0, "%s", dayForm)
		n.explain(fault)
	case strings.Trim(text, "0123456789xXuYTZES-/.,:+~?%[]{}") != "" || captionFault.Instead != nil:
		fault = captionFault
	}
	return Date{}, fault
}

// captionDate is the date of a caption that stands for an expression.
func captionDate(text, made string) Date {
	e, _ := parse(made)
	d := e.date(made)
	d.Text = text
	return d
}

var yearAndCode = regexp.MustCompile(`^\d{4}-\d\d?$`)

// shortSpan recognises texts like 1820-30 and 1784-5, in which a caption
// shortens the later year and EDTF has, or nearly has, a part of the first year.
// It returns the years as an interval, "" when the text means none, and the
// number after the hyphen, which is a month or the code of a season.
func shortSpan(text string) (years string, code int) {
	if !yearAndCode.MatchString(text) {
		return "", 0
	}
	from, to := text[:4], text[5:]
	code, _ = number(to)
	if len(to) == 2 && seasonOf(code) == nil || to <= from[4-len(to):] {
		return "", 0
	}
	return from + "/" + from[:4-len(to)] + to, code
}

// twoReadings refuses 1820-24 and 1784-5.
func twoReadings(text, years string, code int) *Error {
	other := fmt.Sprintf("%s-%02d", text[:4], code)
	fault := refuse(text, 0, "this may be %s or %s", said(years), said(other))
	if other == text {
		// In a set there are no captions to take it for.
		other = "[" + text + "]"
	}
	fault.Instead = []string{years, other}
	return fault
}

// said puts an expression known to parse in words.
func said(text string) string {
	e, _ := parse(text)
	return e.words()
}
