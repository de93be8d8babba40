package edtf

import "fmt"

// An atom is one date of a caption, perhaps still lacking what the next or the
// last one supplies: in "early to mid 18th century" the first is only "early".
type atom struct {
	at          int // offset in the caption
	lead, trail marks
	portion     *portion
	unit        unit
	n           int // the century, the decade's first year, or the year
	size        int // how many digits a short year has
	month, day  int // 0 for none
	season      int // EDTF code, 0 for none
}

type unit int

const (
	noUnit      unit = iota // "early", "spring", "May"
	ordinal                 // "18th", perhaps of a century
	century                 // "18th century"
	decade                  // "1780s"
	shortDecade             // "80s"
	year                    // "1784", "May 1784", "spring 1784"
	short                   // "87", a year or a day
)

// A moment is a year, a month or a day, with 0 for what is not given.
type moment struct{ year, month, day int }

func (m moment) edtf() string {
	text := yearText(m.year)
	if m.month > 0 {
		text += fmt.Sprintf("-%02d", m.month)
	}
	if m.day > 0 {
		text += fmt.Sprintf("-%02d", m.day)
	}
	return text
}

// next returns the year, month or day after m, and for by = -1 the one before.
func (m moment) next(by int) moment {
	switch {
	case m.day > 0:
		m.year, m.month, m.day = (DayOf(m.year, m.month, m.day) + Day(by)).Date()
	case m.month > 0:
		m.year, m.month, _ = DayOf(m.year, m.month+by, 1).Date()
	default:
		m.year += by
	}
	return m
}

// A reach is what a complete atom stands for.
type reach struct {
	from, to moment
	whole    string // the shortest EDTF for it
	lone     bool   // whether whole is one date, which can carry a mark
}

// reach puts a complete atom down in years, months or days.
func (a *atom) reach(c Customs) (reach, bool) {
	switch a.unit {
	case century:
		part := wholeCentury
		if a.portion != nil {
			part = a.portion.century
		}
		first, last := c.century(a.n, part)
		r := years(first, last)
		if a.portion == nil && !c.FromOne {
			r.whole = fmt.Sprintf("%02dXX", a.n-1)
		}
		return r, true
	case decade:
		if a.portion == nil {
			r := years(a.n, a.n+wholeDecade[1])
			r.whole = fmt.Sprintf("%03dX", a.n/10)
			return r, true
		}
		part := a.portion.decade
		return years(a.n+part[0], a.n+part[1]), part != nowhere
	case year:
		return a.yearReach()
	}
	return reach{}, false
}

func years(first, last int) reach {
	r := reach{from: moment{year: first}, to: moment{year: last}}
	r.whole = r.from.edtf() + "/" + r.to.edtf()
	return r
}

func (a *atom) yearReach() (reach, bool) {
	code := a.season
	if a.portion != nil {
		if code != 0 || a.month != 0 {
			return reach{}, false
		}
		code = a.portion.year
	}
	if code == 0 {
		m := moment{a.n, a.month, a.day}
		return reach{m, m, m.edtf(), true}, true
	}
	first, last := seasonOf(code).days(a.n)
	from, to := monthOfDay(first), monthOfDay(last)
	return reach{from, to, fmt.Sprintf("%04d-%d", a.n, code), true}, true
}

func monthOfDay(d Day) moment {
	y, m, _ := d.Date()
	return moment{year: y, month: m}
}

// borrow fills in what a lacks and the date after it in the caption has.
func (a *atom) borrow(next *atom) {
	switch {
	case a.unit == ordinal && next.unit == century:
		a.unit = century
	case a.unit == short && next.unit == year && next.day > 0:
		a.unit, a.n, a.month, a.day = year, next.n, next.month, a.n
	case a.unit != noUnit:
	case a.portion != nil && (next.unit == century || next.unit == decade || next.unit == year && next.month == 0 && next.season == 0):
		a.unit, a.n = next.unit, next.n
	case a.portion == nil && next.unit == year && (next.month > 0 || next.season > 0):
		a.unit, a.n = year, next.n
	}
}

// follow gives a shortened year or decade the digits it lacks from the date
// before it; false when it would not come later.
func (a *atom) follow(before *atom) bool {
	kept := 100
	if a.unit == short && a.size == 1 {
		kept = 10
	}
	switch {
	case a.unit == short && before.unit == year:
		a.unit = year
	case a.unit == shortDecade && before.unit == decade:
		a.unit = decade
	default:
		return true
	}
	a.n += before.n / kept * kept
	return a.n > before.n
}
