package draw

import (
	"fmt"
	"html/template"
	"math"
)

// A Layout is a left-over piece of cloth with the panels that are to be cut from
// it: X along its width and Y along its length, from one corner.
type Layout struct {
	Words
	Width, Length float64
	Wide, Long    string // "9 in"
	Panels        []Placed
	Warp          float64 // the angle between the length and the warp, in degrees clockwise
	WarpKnown     bool
	Metric        bool // the scale bar is in centimetres, else in inches
}

// A Placed is a panel on a piece.
type Placed struct {
	Finished, Cut []Point
	Grain         [2]Point // the ends of its grain line
	Label         string   // "1"
}

// DrawLayout draws a piece to scale with the panels on it, its grain and its
// size. A piece that is longer than wide lies on its side.
func DrawLayout(v Layout) template.HTML {
	put, warp := func(q Point) Point { return q }, v.Warp
	wide, high, across, along := finite(v.Width), finite(v.Length), v.Wide, v.Long
	lies := high > wide
	if lies {
		width := wide
		put = func(q Point) Point { return Point{q.Y, width - q.X} }
		wide, high, across, along = high, wide, v.Long, v.Wide
		warp -= 90
	}
	const left, top, most = 30.0, 10.0, 288.0
	scale := scaled(wide, high, most, 300)
	on := func(q Point) Point {
		q = put(Point{finite(q.X), finite(q.Y)})
		return Point{left + q.X*scale, top + q.Y*scale}
	}
	below := top + high*scale + 12
	p := drawing("layout", v.Words, below+62)
	p.twill()
	fmt.Fprintf(p, `<rect class="cloth" x="%s" y="%s" width="%s" height="%s" fill="url(#%s-twill)"/>`,
		num(left), num(top), num(wide*scale), num(high*scale), p.id)
	for _, panel := range v.Panels {
		p.placed(panel, on)
	}
	p.spanX(left, left+wide*scale, below, across)
	p.spanY(18, top, top+high*scale, along)
	p.scaleBar(left, below+32, scale, v.Metric)
	p.warp(warp, v.WarpKnown, 200, below+40)
	return p.done()
}

// twill is the pattern of cloth that is left.
func (p *pen) twill() {
	fmt.Fprintf(p, `<defs><pattern id="%s-twill" width="6" height="6" patternUnits="userSpaceOnUse"><path class="twill" d="M-1 7L7 -1M-1 1L1 -1M5 7L7 5"/></pattern></defs>`, p.id)
}

func (p *pen) placed(v Placed, on func(Point) Point) {
	cut := each(v.Cut, on)
	p.polygon("cut-line", cut)
	p.polygon("seam-line", each(v.Finished, on))
	a, b := on(v.Grain[0]), on(v.Grain[1])
	p.arrow("grain", a, b)
	f := around(cut)
	size := min(f.wide(), f.high())
	if size < 14 {
		return // the arrow alone has room
	}
	p.text("placed-name name", "middle", (a.X+b.X)/2, (a.Y+b.Y)/2+4.5, v.Label)
}

// warp shows which way the warp runs, as a small weave with an arrow.
func (p *pen) warp(degrees float64, known bool, x, y float64) {
	if !known {
		p.text("minor", "start", x-14, y+10, "grain not known")
		return
	}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	const reach = 15
	p.arrow("grain", Point{x + reach*sin, y - reach*cos}, Point{x - reach*sin, y + reach*cos})
	p.text("minor", "start", x+22, y+4, "warp of the cloth")
}
