package draw

import (
	"fmt"
	"html/template"
	"math"
)

// A Tape is what one measure comes to: of the body, of the garment, and as it is
// wanted.
type Tape struct {
	Words
	Body    Mark
	Garment Mark // from Least to Most where it laces or laps
	Wanted  Mark // the body and the ease
	Metric  bool // marks in centimetres, else in inches
}

// A Mark is a reading or a range in millimetres. One without a Label is not
// drawn.
type Mark struct {
	Least, Most float64
	Error       float64 // of measuring, to both sides; 0 draws none
	Label       string  // "garment 36 3/4 in"
}

// Where things stand on the drawing of a tape.
const (
	tapeLeft, tapeRight = 4.0, page - 4.0
	tapeHigh            = 48.0
	lineHigh            = 15.0 // of a label

	// Marks leave the tape's numbers free, which stand between these heights.
	numeralTop, numeralFoot = 16.0, 30.0
)

// DrawTape draws a stretch of a tape measure with the body's measure above it,
// the garment's below it and the wanted range on it.
func DrawTape(v Tape) template.HTML {
	from, to := window(v)
	x := func(mm float64) float64 {
		return tapeLeft + (finite(mm)-from)/(to-from)*(tapeRight-tapeLeft)
	}
	body, garment, wanted := label(v.Body), label(v.Garment), label(v.Wanted)
	top := 6.0
	if len(body) > 0 {
		top = 4 + float64(len(body))*lineHigh + 20
	}
	foot := top + tapeHigh
	garmentAt := foot + 34
	wantedAt := foot + 20
	if len(garment) > 0 {
		wantedAt = garmentAt + float64(len(garment))*lineHigh + 3
	}
	high := wantedAt + float64(len(wanted))*lineHigh - 8
	p := drawing("tape", v.Words, high)
	p.band(top, foot)
	p.tapeMarks(newRuler(from, to, tapeRight-tapeLeft, v.Metric, 4.5, 30).whole(), top, x)
	if len(wanted) > 0 {
		p.wanted(v.Wanted, wanted, foot, wantedAt, x)
	}
	if len(body) > 0 {
		at := x(v.Body.Least)
		p.line("body", at, top, at, top+numeralTop)
		p.line("body", at, top+numeralFoot, at, foot)
		p.filled("body", Point{at, top}, Point{at - 5, top - 9}, Point{at + 5, top - 9})
		p.whisker("body", v.Body, top-13, x)
		p.label(body, at, 13)
	}
	if len(garment) > 0 {
		p.garment(v.Garment, top, foot, x)
		p.label(garment, x((v.Garment.Least+v.Garment.Most)/2), garmentAt)
	}
	return p.done()
}

// label returns the lines of a mark's words.
func label(m Mark) []string { return wrapped(m.Label, 12, page-12) }

func (p *pen) label(lines []string, x, y float64) {
	for i, words := range lines {
		p.text("halo name", "middle", clamped(x, words, 12), y+float64(i)*lineHigh, words)
	}
}

// window returns the stretch of tape that holds all marks with a margin. It is
// long enough that a slip of measuring does not look large, and never begins
// before the tape does.
func window(v Tape) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for _, m := range []Mark{v.Body, v.Garment, v.Wanted} {
		if m.Label != "" {
			from = min(from, finite(m.Least)-finite(m.Error))
			to = max(to, finite(m.Most)+finite(m.Error), finite(m.Least)+finite(m.Error))
		}
	}
	if from > to {
		from, to = 0, 0
	}
	shortest := 3 * 25.4
	if v.Metric {
		shortest = 80
	}
	before := from
	margin := max((to-from)*0.12, (shortest-(to-from))/2)
	from, to = from-margin, to+margin
	if from < 0 && before >= 0 {
		from = 0
	}
	return from, to
}

// band draws the tape, torn off at both ends.
func (p *pen) band(top, foot float64) {
	points := []Point{{tapeLeft - 2, top}, {tapeRight + 2, top}}
	const teeth = 6
	step := (foot - top) / teeth
	for i := 1; i < teeth; i++ {
		points = append(points, Point{tapeRight + 2 - float64(i%2)*4, top + float64(i)*step})
	}
	points = append(points, Point{tapeRight + 2, foot}, Point{tapeLeft - 2, foot})
	for i := 1; i < teeth; i++ {
		points = append(points, Point{tapeLeft - 2 + float64(i%2)*4, foot - float64(i)*step})
	}
	p.polygon("tape-band", points)
}

// tapeMarks draws the marks from the tape's upper edge, longer at halves and
// longest where a number stands.
func (p *pen) tapeMarks(r ruler, top float64, x func(float64) float64) {
	const edge = 8 // clear of the torn ends
	for _, n := range r.marks(r.tick) {
		at, long, class := x(n*r.unit), 5.0, "tick"
		switch {
		case multiple(n, r.number):
			long, class = 15, "tick whole"
		case multiple(n, 1):
			long = 12
		case multiple(n, 0.5):
			long = 9
		}
		if at < tapeLeft+edge || at > tapeRight-edge {
			continue
		}
		p.line(class, at, top, at, top+long)
		numeral := r.numeral(n)
		if half := wide(numeral, 11) / 2; multiple(n, r.number) && at-half > tapeLeft+3 && at+half < tapeRight-3 {
			p.text("numeral", "middle", at, top+numeralFoot-3, numeral)
		}
	}
}

// wanted draws the range as a hatched strip along the tape's lower edge.
func (p *pen) wanted(m Mark, lines []string, foot, y float64, x func(float64) float64) {
	left, right := x(min(m.Least, m.Most)), x(max(m.Least, m.Most))
	middle := (left + right) / 2
	if right-left < 3 {
		left, right = middle-1.5, middle+1.5
	}
	fmt.Fprintf(p, `<defs><pattern id="%s-wanted" width="5" height="5" patternUnits="userSpaceOnUse"><path class="hatch" d="M-1 6L6 -1M-1 1L1 -1M4 6L6 4"/></pattern></defs>`, p.id)
	fmt.Fprintf(p, `<rect class="wanted" x="%s" y="%s" width="%s" height="14" fill="url(#%s-wanted)"/>`, num(left), num(foot-15), num(right-left), p.id)
	p.line("leader", middle, foot, middle, y-11)
	p.label(lines, middle, y)
}

// garment draws a reading as an open mark, a range as a bar with open ends.
func (p *pen) garment(m Mark, top, foot float64, x func(float64) float64) {
	left, right := x(min(m.Least, m.Most)), x(max(m.Least, m.Most))
	for _, at := range []float64{left, right} {
		p.line("garment", at, top+numeralFoot, at, foot)
		p.polygon("garment-mark", []Point{{at, foot}, {at + 5, foot + 9}, {at - 5, foot + 9}})
		if left == right {
			break
		}
	}
	if right > left {
		p.line("garment-range", left, foot+12, right, foot+12)
	}
	p.whisker("garment", m, foot+14, x)
}

// whisker draws the error of measuring to both sides of a mark.
func (p *pen) whisker(class string, m Mark, y float64, x func(float64) float64) {
	if finite(m.Error) <= 0 {
		return
	}
	left, right := x(min(m.Least, m.Most)-m.Error), x(max(m.Least, m.Most)+m.Error)
	p.line(class+"-error", left, y, right, y)
	p.line(class+"-error", left, y-3, left, y+3)
	p.line(class+"-error", right, y-3, right, y+3)
}
