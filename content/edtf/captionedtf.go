package edtf

import (
	"fmt"
	"strings"
)

// complete lends each date of a caption what it lacks and shares the marks:
// "ca." before the first date holds for all, "?" after the last one too.
func (r *captionReader) complete(list []atom, by joint) *Error {
	for i := len(list) - 2; i >= 0; i-- {
		list[i].borrow(&list[i+1])
	}
	for i := 1; i < len(list); i++ {
		if !list[i].follow(&list[i-1]) {
			return r.notLater(list[i-1], list[i], by)
		}
	}
	all := list[0].lead | list[len(list)-1].trail
	for i := range list {
		list[i].lead |= list[i].trail | all
	}
	return r.hundreds(list)
}

// notLater refuses "1784–12", which may be a month or a year of the next
// century.
func (r *captionReader) notLater(first, second atom, by joint) *Error {
	fault := refuse(r.text, second.at, "what is shortened does not come after %d; write it in full", first.n)
	// The caption is no more than a year, a dash, two digits and its end.
	if by != joinTo || len(r.tokens) != 4 || second.size != 2 {
		return fault
	}
	month := second.n % 100
	if month < 1 || month > 12 {
		fault.Reason = fmt.Sprintf("%02d is no month, and as a year it does not come after %d", month, first.n)
		return fault
	}
	fault.Reason = fmt.Sprintf("this may be a month of %d or a year of the next century", first.n)
	fault.Instead = []string{moment{year: first.n, month: month}.edtf(), years(first.n, second.n+100).whole}
	return fault
}

// hundreds refuses "1700s", which may be ten years or a hundred, unless another
// decade beside it tells which.
func (r *captionReader) hundreds(list []atom) *Error {
	for i := range list {
		if list[i].unit == decade && list[i].n%100 != 0 {
			return nil
		}
	}
	for i := range list {
		a := list[i]
		if a.unit != decade {
			continue
		}
		fault := refuse(r.text, a.at, "%ds may be ten years or a hundred", a.n)
		if len(list) > 1 {
			return fault
		}
		for _, unit := range []unit{decade, century} {
			a.unit = unit
			if unit == century {
				a.n = a.n/100 + 1
			}
			if reach, ok := a.reach(r.customs); ok {
				fault.Instead = append(fault.Instead, years(reach.from.year, reach.to.year).whole)
			}
		}
		return fault
	}
	return nil
}

// reach is [atom.reach] with the reason where there is none.
func (r *captionReader) reach(a atom) (reach, *Error) {
	reach, ok := a.reach(r.customs)
	switch {
	case ok:
		return reach, nil
	case a.unit == century || a.unit == decade || a.unit == year:
		return reach, refuse(r.text, a.at, "that part is said of a century or a year only")
	}
	return reach, refuse(r.text, a.at, "the year, decade or century of this date is missing")
}

// writtenList writes the dates as one, as a span, or as a set.
func (r *captionReader) writtenList(list []atom, by joint) (string, *Error) {
	reaches := make([]reach, len(list))
	for i, a := range list {
		var fault *Error
		if reaches[i], fault = r.reach(a); fault != nil {
			return "", fault
		}
	}
	first, last := reaches[0], reaches[len(list)-1]
	switch by {
	case joinTo:
		if list[0].season == northernWinter && last.from == (moment{year: list[0].n + 1}) {
			// "winter 1784/85" is one winter.
			first.from = moment{year: list[0].n, month: 12}
			last.to = moment{year: list[1].n, month: 2}
		}
		return span(first.from, list[0].lead, "/", last.to, list[len(list)-1].lead), nil
	case joinOr, joinAnd:
		members := make([]string, len(list))
		for i, reach := range reaches {
			members[i] = reach.written(list[i].lead, "..", reach.from == reach.to)
		}
		inside := strings.Join(members, ",")
		if by == joinAnd {
			return "{" + inside + "}", nil
		}
		return "[" + inside + "]", nil
	}
	return first.written(list[0].lead, "/", list[0].lead == 0), nil
}

// written writes a reach as short as it can be, or from end to end.
func (r reach) written(m marks, between string, short bool) string {
	if short || r.lone {
		return r.whole + m.String()
	}
	return span(r.from, m, between, r.to, m)
}

func span(from moment, fromMarks marks, between string, to moment, toMarks marks) string {
	return from.edtf() + fromMarks.String() + between + to.edtf() + toMarks.String()
}

// writtenBetween writes one date out of a span.
func (r *captionReader) writtenBetween(list []atom) (string, *Error) {
	first, fault := r.reach(list[0])
	if fault != nil {
		return "", fault
	}
	last, fault := r.reach(list[1])
	if fault != nil {
		return "", fault
	}
	text := span(first.from, list[0].lead, "..", last.to, list[1].lead)
	if len(first.from.edtf()) != len(last.to.edtf()) {
		// A set holds no range from a month to a year.
		return strings.Replace(text, "..", "/", 1), nil
	}
	return "[" + text + "]", nil
}

// writtenBound writes all days on one side of a date.
func (r *captionReader) writtenBound(a atom, limit bound) (string, *Error) {
	reach, fault := r.reach(a)
	if fault != nil {
		return "", fault
	}
	mark := a.lead.String()
	switch limit {
	case before:
		return "[.." + reach.from.next(-1).edtf() + mark + "]", nil
	case after:
		return "[" + reach.to.next(1).edtf() + mark + "..]", nil
	case upTo:
		return "[.." + reach.to.edtf() + mark + "]", nil
	}
	return "[" + reach.from.edtf() + mark + "..]", nil
}
