package edtf

import "math"

// date puts an expression down as the interval it covers.
func (e *expression) date(text string) Date {
	d := Date{Text: text, EDTF: text}
	e.cover(&d, func(p *partial) (Day, Day) { return p.first, p.last })
	shared := uncertain | approximate
	for i := range e.stretches {
		for _, end := range e.stretches[i].ends() {
			if end.kind == stated {
				shared &= end.marks()
			}
		}
	}
	d.Uncertain = shared&uncertain != 0
	d.Approximate = shared&approximate != 0
	return d
}

func (s *stretch) ends() [2]*end { return [2]*end{&s.from, &s.to} }

// cover sets the span of d so that it holds every stretch, the days of each
// date being what days says they are.
func (e *expression) cover(d *Date, days func(*partial) (first, last Day)) {
	d.Earliest, d.Latest = math.MaxInt, math.MinInt
	d.OpenStart, d.OpenEnd = false, false
	for i := range e.stretches {
		s := &e.stretches[i]
		if s.from.kind == stated {
			// Only the first day of a start counts: widened, its last may lie
			// beyond the end.
			first, _ := days(&s.from.partial)
			d.Earliest = min(d.Earliest, first)
		} else {
			d.OpenStart = true
		}
		if s.to.kind == stated {
			_, last := days(&s.to.partial)
			d.Latest = max(d.Latest, last)
		} else {
			d.OpenEnd = true
		}
	}
	if d.OpenStart {
		d.Earliest = 0
	}
	if d.OpenEnd {
		d.Latest = 0
	}
}

// Padded returns d with its interval widened where a date is approximate: by
// the years of c to each side of that date, or, where the year is known and
// only the month or day is approximate, to the whole year or month. A date that
// is not approximate comes back as it was; so does one already padded with c.
// What EDTF marks uncertain ("?") is not widened.
func (d Date) Padded(c Customs) Date {
	e, fault := parse(d.EDTF)
	if fault != nil {
		return d
	}
	e.cover(&d, func(p *partial) (Day, Day) { return p.padded(c.circa()) })
	return d
}

// padded returns the first and last day of a date, widened if approximate.
func (p *partial) padded(years int) (first, last Day) {
	for i, part := range p.parts {
		if part.marks&approximate == 0 {
			continue
		}
		if i == yearPart {
			return shifted(p.first, -years), shifted(p.last, years)
		}
		whole := p.cut(i)
		return whole.first, whole.last
	}
	return p.first, p.last
}

// shifted moves a day by whole years; the 29th of February falls back to the
// 28th where it must. A day that would leave the years a Day can count
// stays where it is.
func shifted(d Day, years int) Day {
	year, month, day := d.Date()
	switch {
	case years > 0 && year > yearLimit-years:
		return d
	case years < 0 && year < -yearLimit-years:
		return d
	}
	year += years
	return DayOf(year, month, min(day, daysIn(year, month)))
}
