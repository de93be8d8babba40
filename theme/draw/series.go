package draw

import (
	"html/template"
	"math"
	"slices"
	"strconv"
	"time"
)

// A Series is how measures change over time.
type Series struct {
	Words
	Runs   []Run
	Metric bool // the scale is in centimetres, else in inches
}

// A Run is one measure over time, in order of days. Up to four are told apart by
// their kind of line and the shape of their points.
type Run struct {
	Label   string // "body over stays"
	Stepped bool   // the value holds until the next one, as a garment's does
	Values  []Value
}

// A Value is a length in millimetres on one day. One that is not known makes a
// gap.
type Value struct {
	Day   time.Time
	Size  float64
	Known bool
}

// Where things stand on the drawing of a series.
const (
	seriesLeft, seriesRight = 56.0, 234.0
	seriesTop, seriesFoot   = 14.0, 194.0
	seriesHigh              = 240.0
	endsLeft                = 248.0
)

// DrawSeries draws values over time on a ruled ground, each run named at its end.
func DrawSeries(v Series) template.HTML {
	days := daysOf(v)
	low, high := reach(v)
	r := newRuler(low, high, seriesFoot-seriesTop, v.Metric, 24, 24)
	x := func(day time.Time) float64 {
		first, last := days[0], days[len(days)-1]
		if first.Equal(last) {
			return (seriesLeft + seriesRight) / 2
		}
		return seriesLeft + 8 + float64(day.Sub(first))/float64(last.Sub(first))*(seriesRight-seriesLeft-16)
	}
	y := func(mm float64) float64 {
		return seriesFoot - (finite(mm)-low)/(high-low)*(seriesFoot-seriesTop)
	}
	p := drawing("series", v.Words, seriesHigh)
	p.line("axis", seriesLeft, seriesFoot+4, seriesRight, seriesFoot+4)
	if len(days) == 0 {
		p.text("minor", "middle", (seriesLeft+seriesRight)/2, (seriesTop+seriesFoot)/2, "nothing is known yet")
		return p.done()
	}
	marks := r.marks(r.number)
	for i, n := range marks {
		at, words := y(n*r.unit), r.numeral(n)
		if i == len(marks)-1 {
			words += " " + r.name
		}
		p.line("ruling", seriesLeft, at, seriesRight, at)
		p.text("numeral", "end", seriesLeft-6, at+4, words)
	}
	p.days(days, x)
	for i, run := range v.Runs {
		p.run(i, run, x, y)
	}
	p.ends(v.Runs, x, y)
	return p.done()
}

// daysOf returns the days on which something is known, in order.
func daysOf(v Series) []time.Time {
	var days []time.Time
	for _, run := range v.Runs {
		for _, value := range run.Values {
			if value.Known {
				days = append(days, value.Day)
			}
		}
	}
	slices.SortFunc(days, time.Time.Compare)
	return slices.CompactFunc(days, time.Time.Equal)
}

// reach returns the lengths between which all known values lie, with a margin.
func reach(v Series) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, run := range v.Runs {
		for _, value := range run.Values {
			if value.Known {
				low, high = min(low, finite(value.Size)), max(high, finite(value.Size))
			}
		}
	}
	if low > high {
		low, high = 0, 0
	}
	margin := max((high-low)*0.12, (30-(high-low))/2)
	return low - margin, high + margin
}

// days writes days below the axis: the first, the last, and what there is room
// for.
func (p *pen) days(days []time.Time, x func(time.Time) float64) {
	const room = 44
	last := x(days[len(days)-1])
	before := math.Inf(-1)
	for i, day := range days {
		at := x(day)
		p.line("tick", at, seriesFoot+4, at, seriesFoot+9)
		if i < len(days)-1 && (at-before < room || last-at < room) {
			continue
		}
		before = at
		p.text("minor", "middle", at, seriesFoot+22, day.Format("2 Jan"))
		p.text("minor", "middle", at, seriesFoot+36, day.Format("2006"))
	}
}

// run draws the line of a run, broken where a value is not known, and its points.
func (p *pen) run(i int, run Run, x func(time.Time) float64, y func(float64) float64) {
	kind := i%4 + 1
	var stretch, points []Point
	flush := func() {
		if len(stretch) > 1 {
			p.path("run run-"+strconv.Itoa(kind), trace(stretch))
		}
		stretch = nil
	}
	for _, value := range run.Values {
		at := Point{x(value.Day), 0}
		if !value.Known {
			flush()
			continue
		}
		at.Y = y(value.Size)
		if last := len(stretch) - 1; run.Stepped && last >= 0 {
			stretch = append(stretch, Point{at.X, stretch[last].Y})
		}
		stretch = append(stretch, at)
		points = append(points, at)
	}
	flush()
	for _, at := range points {
		p.point(kind, at)
	}
}

// point draws the mark of a kind of run: round, square, a triangle, a lozenge.
func (p *pen) point(kind int, at Point) {
	const r = 3.6
	class := "point point-" + strconv.Itoa(kind)
	switch kind {
	case 1:
		p.circle(class, at.X, at.Y, r)
	case 2:
		p.polygon(class, []Point{{at.X - r, at.Y - r}, {at.X + r, at.Y - r}, {at.X + r, at.Y + r}, {at.X - r, at.Y + r}})
	case 3:
		p.polygon(class, []Point{{at.X, at.Y - r - 1}, {at.X + r + 1, at.Y + r}, {at.X - r - 1, at.Y + r}})
	default:
		p.polygon(class, []Point{{at.X, at.Y - r - 1.5}, {at.X + r + 1.5, at.Y}, {at.X, at.Y + r + 1.5}, {at.X - r - 1.5, at.Y}})
	}
}

// ends names each run beside its last point.
func (p *pen) ends(runs []Run, x func(time.Time) float64, y func(float64) float64) {
	var lasts []Point
	var names [][]string
	var at, high []float64
	for _, run := range runs {
		value, known := lastKnown(run.Values)
		if !known {
			continue
		}
		end := Point{x(value.Day), y(value.Size)}
		lines := wrapped(run.Label, 12, page-endsLeft)
		lasts, names = append(lasts, end), append(names, lines)
		at, high = append(at, end.Y), append(high, float64(len(lines))*14+6)
	}
	for i, middle := range spread(at, high, 0, seriesHigh) {
		p.path("leader", trace([]Point{{lasts[i].X + 7, lasts[i].Y}, {seriesRight, lasts[i].Y}, {endsLeft - 4, middle}}))
		line := middle - high[i]/2 + 14
		for _, name := range names[i] {
			p.text("name", "start", endsLeft, line, name)
			line += 14
		}
	}
}

// lastKnown returns the last value that is known, if there is one.
func lastKnown(values []Value) (Value, bool) {
	for _, v := range slices.Backward(values) {
		if v.Known {
			return v, true
		}
	}
	return Value{}, false
}
