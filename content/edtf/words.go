package edtf

import (
	"slices"
	"strings"
)

// String says the date in plain words for a page: "about 1785", "1780 to 1789",
// "17 May 1784". A caption keeps the maker's words, and the zero Date is "".
func (d Date) String() string {
	if d.Text != d.EDTF {
		return d.Text
	}
	e, fault := parse(d.EDTF)
	if fault != nil {
		return d.Text
	}
	return e.words()
}

func (e *expression) words() string {
	switch e.form {
	case interval:
		return e.stretches[0].intervalWords()
	case oneOf:
		words := e.memberWords("or earlier", "or later", "or")
		if len(e.stretches) > 2 || slices.ContainsFunc(e.stretches, stretch.closed) {
			return "one of " + words
		}
		return words
	case allOf:
		return e.memberWords("and all before", "and all after", "and")
	}
	return e.stretches[0].from.words(", ", "")
}

// closed reports whether the stretch has two ends, as 1670..1672 has.
func (s stretch) closed() bool {
	return !s.lone && s.from.kind == stated && s.to.kind == stated
}

// memberWords lists the members of a set.
func (e *expression) memberWords(before, after, last string) string {
	members := make([]string, len(e.stretches))
	for i, s := range e.stretches {
		switch {
		case s.lone:
			members[i] = s.from.bracketed()
		case s.from.kind == open:
			members[i] = s.to.bracketed() + " " + before
		case s.to.kind == open:
			members[i] = s.from.bracketed() + " " + after
		default:
			members[i] = s.from.bracketed() + " to " + s.to.bracketed()
		}
	}
	n := len(members) - 1
	if n == 0 {
		return members[0]
	}
	return strings.Join(members[:n], ", ") + " " + last + " " + members[n]
}

func (s *stretch) intervalWords() string {
	switch {
	case s.from.kind == open:
		return "up to " + s.to.bracketed()
	case s.from.kind == unknown:
		return "up to " + s.to.bracketed() + ", start unknown"
	case s.to.kind == open:
		return "from " + s.from.bracketed() + " on"
	case s.to.kind == unknown:
		return "from " + s.from.bracketed() + ", end unknown"
	}
	return s.from.bracketed() + " to " + s.to.bracketed()
}
