package draw

import "html/template"

// A Panel is a piece to let in, with Y downwards and the grain line at X 0.
type Panel struct {
	Words
	Finished, Cut []Point
	Levels        []Level
	Wide, Long    string // the size of the cutting outline: "5 1/4 in"
	Metric        bool   // the scale bar is in centimetres, else in inches
}

// A Level is a height of a panel at which its finished width is given.
type Level struct {
	At, Width float64
	Name      string // "waist"; may be ""
	Size      string // "1 1/2 in"
}

// Where a panel stands on its drawing, and its labels.
const (
	panelLeft, panelWide = 30.0, 166.0
	panelHigh            = 360.0
	labelsLeft           = 222.0
	labelsWide           = page - labelsLeft
)

// DrawPanel draws a panel to scale with its seam line, cutting line, grain arrow,
// levels, dimensions and a scale bar.
func DrawPanel(v Panel) template.HTML {
	f := around(v.Cut, v.Finished)
	scale := scaled(f.wide(), f.high(), panelWide, panelHigh)
	names := make([][]string, len(v.Levels))
	at, high := make([]float64, len(v.Levels)), make([]float64, len(v.Levels))
	needs := 0.0
	for i, l := range v.Levels {
		names[i] = wrapped(l.Name, 12, labelsWide)
		high[i] = float64(len(names[i]))*14 + 19
		needs += high[i]
	}
	tall := max(f.high()*scale, needs, 60)
	left := panelLeft + (panelWide-f.wide()*scale)/2
	top := 10 + (tall-f.high()*scale)/2
	put := func(q Point) Point {
		return Point{left + (finite(q.X)-f.left)*scale, top + (finite(q.Y)-f.top)*scale}
	}

	below := 10 + tall + 12
	p := drawing("panel", v.Words, below+64)
	p.polygon("cut-line", each(v.Cut, put))
	p.polygon("seam-line", each(v.Finished, put))
	for i, l := range v.Levels {
		at[i] = put(Point{0, l.At}).Y
	}
	for i, y := range spread(at, high, 4, 16+tall) {
		l := v.Levels[i]
		from := put(Point{-l.Width / 2, l.At})
		to := put(Point{l.Width / 2, l.At})
		if i > 0 && i < len(v.Levels)-1 { // the ends are seams
			p.line("level-line", from.X, from.Y, to.X, to.Y)
		}
		p.path("leader", trace([]Point{{to.X + 2, to.Y}, {labelsLeft - 18, to.Y}, {labelsLeft - 5, y}}))
		line := y - high[i]/2 + 13
		for _, name := range names[i] {
			p.text("name", "start", labelsLeft, line, name)
			line += 14
		}
		p.text("size", "start", labelsLeft, line, l.Size)
	}
	p.grainLine(v, put)

	from, to := put(Point{f.left, f.top}), put(Point{f.right, f.foot})
	p.spanX(from.X, to.X, below, v.Wide)
	p.spanY(18, from.Y, to.Y, v.Long)
	p.scaleBar(panelLeft, below+34, scale, v.Metric)
	p.key("cut-line", 142, below+39, "cutting line")
	p.key("seam-line", 237, below+39, "seam line")
	return p.done()
}

// grainLine draws the grain arrow along the middle of the panel, broken by its
// name.
func (p *pen) grainLine(v Panel, put func(Point) Point) {
	f := around(v.Finished)
	long := f.high()
	a, b := put(Point{0, f.top + long*0.16}), put(Point{0, f.foot - long*0.16})
	p.arrow("grain", a, b)
	if b.Y-a.Y > 56 {
		p.upright("grain-name", a.X+4, (a.Y+b.Y)/2, "grain")
	}
}

// key shows a kind of line with its name.
func (p *pen) key(class string, x, y float64, name string) {
	p.line(class, x, y-5, x+22, y-5)
	p.text("minor", "start", x, y+13, name)
}

// each returns where points are drawn.
func each(points []Point, put func(Point) Point) []Point {
	all := make([]Point, len(points))
	for i, q := range points {
		all[i] = put(q)
	}
	return all
}
