package draw

import (
	"fmt"
	"html/template"
	"math"
)

// A Scale is dated things on a scale of years, in groups such as what shows a
// feature and what lacks it, with the era that they are held against.
type Scale struct {
	Words
	Era     Stretch
	EraName string // "era: 1780 to 1789"; without it no era is drawn
	Groups  []Group
}

// A Group is things that say the same.
type Group struct {
	Label  string // "shown by 4"
	Things []Thing
}

// A Thing is one that has a date, or may have: it is drawn where Known.
type Thing struct {
	Label   string  // "Moss green jacket with piped back"
	Date    string  // "about 1785", "without a date"
	Stated  Stretch // what the date says
	Counted Stretch // the same, or wider where the date is approximate
	Unsure  bool    // the date has a question mark
	Known   bool
}

// A Stretch is from one moment to another, in years and parts of a year: the year
// 1786 is from 1786 to 1787. Where an end is open its figure is not looked at.
type Stretch struct {
	From, To         float64
	OpenFrom, OpenTo bool
}

// Where things stand on a scale of years.
const (
	scaleLeft, scaleRight = 6.0, page - 6.0
	barHigh               = 9.0
	arrowLong             = 8.0
)

// DrawScale draws a bar for each dated thing below its name. A bar is solid where
// the date is plain, hatched where it is uncertain, and open with a thin line as
// far as it may reach where it is approximate; an end that is not known is an
// arrow. A key at the foot names the kinds that occur.
func DrawScale(v Scale) template.HTML {
	years, dated := yearsOf(v)
	plan := planScale(v, dated)
	p := drawing("scale", v.Words, plan.high)
	p.hatching("era", "hatch", 5)
	p.hatching("unsure", "unsure-hatch", 4)
	if dated {
		p.rulings(years, plan.axis, plan.foot)
		if v.EraName != "" {
			p.era(v, years, plan)
		}
		p.yearAxis(years, plan.axis)
	} else {
		p.text("minor", "start", scaleLeft, plan.axis, "nothing has a known date")
	}
	for _, row := range plan.rows {
		p.thing(row, years, dated)
	}
	for i, k := range plan.key {
		p.keyLine(k, plan.foot+20+float64(i)*keyHigh)
	}
	return p.done()
}

// yearsOf returns the scale on which all ends that are known have room, and false
// when there are none.
func yearsOf(v Scale) (yearScale, bool) {
	low, high := math.Inf(1), math.Inf(-1)
	take := func(s Stretch) {
		if !s.OpenFrom {
			low, high = min(low, finite(s.From)), max(high, finite(s.From))
		}
		if !s.OpenTo {
			low, high = min(low, finite(s.To)), max(high, finite(s.To))
		}
	}
	for _, g := range v.Groups {
		for _, t := range g.Things {
			if t.Known {
				take(t.Stated)
				take(t.Counted)
			}
		}
	}
	if low > high {
		return yearScale{}, false
	}
	if v.EraName != "" {
		take(v.Era)
	}
	const shortest = 5
	margin := max((high-low)*0.06, (shortest-(high-low))/2, 0.5)
	return newYearScale(low-margin, high+margin), true
}

// era draws the era as a hatched strip on the axis, its edges down to the foot.
func (p *pen) era(v Scale, years yearScale, plan scalePlan) {
	left, right := years.span(v.Era)
	fmt.Fprintf(p, `<rect class="era" x="%s" y="%s" width="%s" height="8" fill="url(#%s-era)"/>`,
		num(left), num(plan.axis-8), num(right-left), p.id)
	if !v.Era.OpenFrom {
		p.line("era-edge", left, plan.axis-8, left, plan.foot)
	}
	if !v.Era.OpenTo {
		p.line("era-edge", right, plan.axis-8, right, plan.foot)
	}
	p.line("leader", (left+right)/2, plan.axis-8, (left+right)/2, plan.eraFoot+3)
	for i, words := range plan.eraName {
		p.text("halo name", "middle", clamped((left+right)/2, words, 12), plan.eraFoot-float64(len(plan.eraName)-1-i)*lineHigh, words)
	}
}

// thing draws one row: the name, the date, the bar.
func (p *pen) thing(row scaleRow, years yearScale, dated bool) {
	if row.heading {
		p.line("group-line", scaleLeft, row.top+4, scaleRight, row.top+4)
	}
	class := "halo"
	if row.heading {
		class = "halo name"
	}
	for i, words := range row.words {
		y := row.top + row.first + float64(i)*lineHigh
		if row.beside && i == len(row.words)-1 {
			p.nameAndDate(y, words, row.thing.Date)
			continue
		}
		p.text(class, "start", scaleLeft, y, words)
	}
	if row.dateY > 0 {
		p.text("halo minor", "start", scaleLeft, row.dateY, row.thing.Date)
	}
	if dated && row.thing.Known {
		p.dateBar(row.thing, years, row.barY)
	}
}

// nameAndDate writes both in one line, so that the date follows whatever the width
// of the reader's letters.
func (p *pen) nameAndDate(y float64, name, date string) {
	fmt.Fprintf(p, `<text class="halo" text-anchor="start" x="%s" y="%s" fill="currentColor" stroke="none">%s<tspan class="minor" dx="8">%s</tspan></text>`,
		num(scaleLeft), num(y), fractions(name), fractions(date))
}

// hatching is a pattern of slanted lines, so far apart.
func (p *pen) hatching(name, class string, apart float64) {
	fmt.Fprintf(p, `<defs><pattern id="%s-%s" width="%s" height="%s" patternUnits="userSpaceOnUse"><path class="%s" d="M-1 %sL%s -1M-1 1L1 -1M%s %sL%s %s"/></pattern></defs>`,
		p.id, name, num(apart), num(apart), class, num(apart+1), num(apart+1), num(apart-1), num(apart+1), num(apart+1), num(apart-1))
}
