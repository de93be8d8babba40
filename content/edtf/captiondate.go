package edtf

import (
	"slices"
	"strconv"
)

// leadMarks reads the words before a date that say how far to trust it.
func (r *captionReader) leadMarks() marks {
	var m marks
	for {
		switch {
		case r.word(aboutWords...):
			m |= approximate
		case r.word(doubtWords...):
			m |= uncertain
		default:
			return m
		}
	}
}

// skip steps over the small words.
func (r *captionReader) skip() {
	for r.word(fillWords...) {
	}
}

// date reads one date of a caption, or as much of one as is written.
func (r *captionReader) date() (atom, *Error) {
	a := atom{at: r.peek().at}
	a.lead = r.leadMarks()
	r.skip()
	from := r.at
	a.portion = r.portion()
	r.skip()
	r.readUnit(&a)
	if r.at == from {
		return a, r.stuck()
	}
	if r.sign(doubtToken) {
		a.trail = uncertain
	}
	return a, nil
}

// portion reads "early", "second quarter" and the like.
func (r *captionReader) portion() *portion {
	name := ""
	switch {
	case r.word("early"):
		name = "early"
	case r.word("late"):
		name = "late"
	case r.word("mid"):
		name = "mid"
	case r.word("middle"):
		name = "mid"
		if r.word("third") {
			name = "second third"
		}
	default:
		return r.fraction()
	}
	if next := r.peek2(); r.peek().kind == dashToken && (next.kind == numberToken || slices.Contains(ordinalWords, next.text)) {
		// "mid-1780s" is no span.
		r.at++
	}
	return portionNamed(name)
}

// fraction reads an ordinal and a fraction, or nothing.
func (r *captionReader) fraction() *portion {
	from := r.at
	which := 0
	last := r.word("last", "final")
	if !last {
		which = r.ordinal()
	}
	for i, name := range fractionWords {
		parts := [...]int{2, 3, 4}[i]
		if !r.word(name) {
			continue
		}
		if last {
			which = parts
		}
		if which >= 1 && which <= parts {
			return portionNamed(ordinalWords[which-1] + " " + name)
		}
	}
	r.at = from
	return nil
}

// ordinal reads "18th" or "eighteenth"; 0 when neither is next.
func (r *captionReader) ordinal() int {
	t, next := r.peek(), r.peek2()
	switch {
	case t.kind == wordToken:
		if i := slices.Index(ordinalWords, t.text); i >= 0 {
			r.at++
			return i + 1
		}
	case t.kind == numberToken && len(t.text) <= 2 && next.kind == wordToken && slices.Contains(ordinalEndings, next.text):
		if n, _ := number(t.text); n > 0 {
			r.at += 2
			return n
		}
	}
	return 0
}

// readUnit reads the century, decade, year, month or day itself.
func (r *captionReader) readUnit(a *atom) {
	if n := r.ordinal(); n > 0 {
		a.unit, a.n = ordinal, n
		from := r.at
		r.word("of")
		if r.month(a) {
			a.day, a.unit = n, noUnit
			r.yearAfter(a)
			return
		}
		r.at = from
		if r.peek().kind == dashToken && slices.Contains(centuryWords, r.peek2().text) {
			r.at++
		}
		if r.word(centuryWords...) {
			a.unit = century
		}
		return
	}
	if code := seasonCode(r.peek().text); code > 0 && a.portion == nil {
		r.at++
		a.season = code
		r.yearAfter(a)
		return
	}
	if r.month(a) {
		r.dayAfter(a)
		r.yearAfter(a)
		return
	}
	r.readNumber(a)
}

// readNumber reads a year, a decade, or a day before its month.
func (r *captionReader) readNumber(a *atom) {
	t := r.peek()
	if t.kind != numberToken || t.text == "0" || len(t.text) == 3 || len(t.text) > 4 {
		return
	}
	n, _ := number(t.text)
	r.at++
	tens := n%10 == 0 && len(t.text) > 1 && r.word("s")
	switch {
	case len(t.text) == 4 && tens:
		a.unit, a.n = decade, n
	case len(t.text) == 4:
		a.unit, a.n = year, n
	case tens:
		a.unit, a.n = shortDecade, n
	case n > 0 && r.month(a):
		a.day = n
		r.yearAfter(a)
	default:
		a.unit, a.n, a.size = short, n, len(t.text)
	}
}

// month reads the name of a month.
func (r *captionReader) month(a *atom) bool {
	t := r.peek()
	if t.kind != wordToken || a.portion != nil {
		return false
	}
	if a.month = monthOf(t.text); a.month == 0 {
		return false
	}
	r.at++
	return true
}

// dayAfter reads the day of "May 17, 1784".
func (r *captionReader) dayAfter(a *atom) {
	from := r.at
	if a.day = r.ordinal(); a.day == 0 {
		if t := r.peek(); t.kind == numberToken && len(t.text) <= 2 {
			a.day, _ = number(t.text)
			r.at += min(a.day, 1)
		}
	}
	r.sign(commaToken)
	if t := r.peek(); t.kind != numberToken || len(t.text) != 4 {
		// The comma or number belongs to what follows.
		r.at, a.day = from, 0
	}
}

// yearAfter reads the year of a month or season.
func (r *captionReader) yearAfter(a *atom) {
	from := r.at
	r.word("of")
	if t := r.peek(); t.kind == numberToken && len(t.text) == 4 {
		a.unit = year
		a.n, _ = strconv.Atoi(t.text)
		r.at++
		return
	}
	r.at = from
}
