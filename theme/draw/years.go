package draw

import (
	"math"
	"strconv"
)

// A yearScale puts years across a drawing.
type yearScale struct {
	from, to float64
	step     float64 // between marked years
}

// newYearScale returns the scale from one moment to another, marked as finely as
// the numbers of the years have room.
func newYearScale(from, to float64) yearScale {
	s := yearScale{from: from, to: to, step: 1}
	room := max(wide(yearName(from), 11), wide(yearName(to), 11)) + 16
	per := (scaleRight - scaleLeft) / (to - from)
	for i := 0; s.step*per < room; i++ {
		s.step *= [...]float64{2, 2.5, 2}[i%3]
	}
	return s
}

// x returns where a moment lies, which is on the scale if it is not.
func (s yearScale) x(year float64) float64 {
	part := (finite(year) - s.from) / (s.to - s.from)
	return scaleLeft + min(max(part, 0), 1)*(scaleRight-scaleLeft)
}

// span returns where a stretch lies, open ends at the end of the scale. It is wide
// enough to be seen.
func (s yearScale) span(t Stretch) (left, right float64) {
	a, b := finite(t.From), finite(t.To)
	if !t.OpenFrom && !t.OpenTo {
		a, b = min(a, b), max(a, b)
	}
	left, right = s.x(a), s.x(b)
	if t.OpenFrom {
		left = scaleLeft
	}
	if t.OpenTo {
		right = scaleRight
	}
	least := 4.0
	if t.OpenFrom || t.OpenTo {
		least = 2 * arrowLong
	}
	if short := least - (right - left); short > 0 {
		left = min(max(left-short/2, scaleLeft), scaleRight-least)
		right = left + least
	}
	return left, right
}

// marks returns the years that are marked: those whose number has room.
func (s yearScale) marks() []float64 {
	var all []float64
	for year := math.Ceil(s.from/s.step) * s.step; year <= s.to; year += s.step {
		half := wide(yearName(year), 11) / 2
		if at := s.x(year); at-half >= 1 && at+half <= page-1 {
			all = append(all, year)
		}
	}
	return all
}

// rulings draws a line from each marked year down to the foot.
func (p *pen) rulings(s yearScale, top, foot float64) {
	for _, year := range s.marks() {
		p.line("ruling", s.x(year), top, s.x(year), foot)
	}
}

// yearAxis draws the axis and the numbers of the years.
func (p *pen) yearAxis(s yearScale, top float64) {
	p.line("axis", scaleLeft, top, scaleRight, top)
	for _, year := range s.marks() {
		at := s.x(year)
		p.line("tick", at, top, at, top+5)
		p.text("halo numeral", "middle", at, top+18, yearName(year))
	}
}

// yearName writes a year, those up to year 0 as years BC.
func yearName(year float64) string {
	n := int(math.Round(year))
	if n <= 0 {
		return strconv.Itoa(1-n) + " BC"
	}
	return strconv.Itoa(n)
}
