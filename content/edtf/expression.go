package edtf

import "strings"

// An expression is an EDTF text taken apart.
type expression struct {
	form      form
	stretches []stretch // one, or the members of a set
}

type form int

const (
	single   form = iota // 1784-05
	interval             // 1784/1787
	oneOf                // [1784,1786]
	allOf                // {1784,1786}
)

// A stretch runs from one end to another. The ends of a lone date are equal.
type stretch struct {
	from, to end
	lone     bool
}

// An end is a date, or nothing.
type end struct {
	partial
	kind endKind
}

type endKind int

const (
	stated  endKind = iota
	open            // ".."
	unknown         // left empty
)

// Parse reads an EDTF expression of the subset in the package comment, and no
// caption. The error is an *[Error].
func Parse(text string) (Date, error) {
	e, fault := parse(text)
	if fault != nil {
		fault.Instead = repaired(text)
		return Date{}, fault
	}
	return e.date(text), nil
}

func parse(text string) (expression, *Error) {
	switch {
	case text == "":
		return expression{}, refuse(text, 0, "a date is missing")
	case text[0] == '[':
		return parseSet(text, oneOf, "]")
	case text[0] == '{':
		return parseSet(text, allOf, "}")
	}
	if i := strings.IndexByte(text, '/'); i >= 0 {
		return parseInterval(text, i)
	}
	p, fault := readPartial(text, 0, len(text))
	if fault != nil {
		return expression{}, fault
	}
	return expression{single, []stretch{loneStretch(p)}}, nil
}

func loneStretch(p partial) stretch {
	e := end{partial: p}
	return stretch{from: e, to: e, lone: true}
}

func parseInterval(text string, slash int) (expression, *Error) {
	from, fault := readEnd(text, 0, slash)
	if fault != nil {
		return expression{}, fault
	}
	to, fault := readEnd(text, slash+1, len(text))
	if fault != nil {
		return expression{}, fault
	}
	if from.kind != stated && to.kind != stated {
		return expression{}, refuse(text, 0, "an interval has a date at one end at least")
	}
	s := stretch{from: from, to: to}
	if s.reversed() {
		return expression{}, refuse(text, slash+1, "the interval ends before it starts")
	}
	return expression{interval, []stretch{s}}, nil
}

// readEnd reads one end of an interval.
func readEnd(text string, from, to int) (end, *Error) {
	switch text[from:to] {
	case "":
		return end{kind: unknown}, nil
	case "..":
		return end{kind: open}, nil
	}
	p, fault := readPartial(text, from, to)
	return end{partial: p}, fault
}

func parseSet(text string, form form, closing string) (expression, *Error) {
	e := expression{form: form}
	if !strings.HasSuffix(text, closing) {
		return e, refuse(text, len(text), "the set is not closed with %s", closing)
	}
	last := len(text) - len(closing)
	for from := 1; ; {
		to := last
		if comma := strings.IndexByte(text[from:last], ','); comma >= 0 {
			to = from + comma
		}
		s, fault := readMember(text, from, to)
		if fault != nil {
			return e, fault
		}
		if s.from.kind == open && from > 1 || s.to.kind == open && to < last {
			return e, refuse(text, from, "only the first date of a set can be open before it and only the last after it")
		}
		e.stretches = append(e.stretches, s)
		if to == last {
			return e, nil
		}
		from = to + 1
	}
}

// readMember reads a date of a set, or a range with two dots.
func readMember(text string, from, to int) (stretch, *Error) {
	dots := strings.Index(text[from:to], "..")
	if dots < 0 {
		p, fault := readPartial(text, from, to)
		return loneStretch(p), fault
	}
	s := stretch{from: end{kind: open}, to: end{kind: open}}
	before, after := from+dots, from+dots+len("..")
	if before > from {
		p, fault := readPartial(text, from, before)
		if fault != nil {
			return s, fault
		}
		s.from = end{partial: p}
	}
	if after < to {
		p, fault := readPartial(text, after, to)
		if fault != nil {
			return s, fault
		}
		s.to = end{partial: p}
	}
	switch {
	case before == from && after == to:
		return s, refuse(text, from, "a range with two dots has a date at one end at least")
	case s.reversed():
		return s, refuse(text, after, "the range ends before it starts")
	case s.closed() && !s.even():
		return s, refuse(text, from, "both ends of a range are years, both months or both days")
	}
	return s, nil
}

// reversed reports whether the stretch ends before it starts.
func (s *stretch) reversed() bool {
	return s.from.kind == stated && s.to.kind == stated && s.to.last < s.from.first
}

// even reports whether both ends are given to the same precision.
func (s *stretch) even() bool {
	return len(s.from.parts) == len(s.to.parts) && (s.from.season() == nil) == (s.to.season() == nil)
}
