package draw

import "fmt"

// wider reports whether more is counted than the date says.
func (t Thing) wider() bool {
	a, b := t.Counted, t.Stated
	return a.OpenFrom != b.OpenFrom || a.OpenTo != b.OpenTo ||
		!a.OpenFrom && finite(a.From) != finite(b.From) || !a.OpenTo && finite(a.To) != finite(b.To)
}

// kind returns the class of a thing's bar, which tells how sure the date is.
func (t Thing) kind() string {
	switch {
	case t.Unsure:
		return "date-bar unsure"
	case t.wider():
		return "date-bar about"
	}
	return "date-bar"
}

// dateBar draws when a thing is dated, around a height.
func (p *pen) dateBar(t Thing, years yearScale, y float64) {
	left, right := years.span(t.Stated)
	if t.wider() {
		from, to := years.span(t.Counted)
		p.line("reach", from, y, left, y)
		p.line("reach", right, y, to, y)
		if !t.Counted.OpenFrom {
			p.line("reach", from, y-4, from, y+4)
		}
		if !t.Counted.OpenTo {
			p.line("reach", to, y-4, to, y+4)
		}
	}
	p.bar(t.kind(), left, right, y, t.Stated.OpenFrom, t.Stated.OpenTo)
}

// bar draws a bar from left to right, with arrows for open ends.
func (p *pen) bar(class string, left, right, y float64, openLeft, openRight bool) {
	const half = barHigh / 2
	fill := "currentColor"
	switch class {
	case "date-bar unsure":
		fill = "url(#" + p.id + "-unsure)"
	case "date-bar about":
		fill = "none"
	}
	from, to := left, right
	if openLeft {
		from += arrowLong
		p.filled("date-arrow", Point{left, y}, Point{from, y - half - 2}, Point{from, y + half + 2})
	}
	if openRight {
		to -= arrowLong
		p.filled("date-arrow", Point{right, y}, Point{to, y - half - 2}, Point{to, y + half + 2})
	}
	fmt.Fprintf(p, `<rect class="%s" x="%s" y="%s" width="%s" height="%s" fill="%s"/>`,
		class, num(from), num(y-half), num(max(to-from, 0)), num(barHigh), fill)
}
