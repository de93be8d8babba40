package draw

import (
	"fmt"
	"math"
)

// A frame is the bounding rectangle of points in millimetres.
type frame struct{ left, top, right, foot float64 }

func around(outlines ...[]Point) frame {
	f := frame{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, outline := range outlines {
		for _, p := range outline {
			x, y := finite(p.X), finite(p.Y)
			f = frame{min(f.left, x), min(f.top, y), max(f.right, x), max(f.foot, y)}
		}
	}
	if f.left > f.right {
		return frame{}
	}
	return f
}

func (f frame) wide() float64 { return f.right - f.left }
func (f frame) high() float64 { return f.foot - f.top }

// scaled returns the scale at which a size fits into a space.
func scaled(wide, high, intoWide, intoHigh float64) float64 {
	scale := math.Inf(1)
	if wide > 0 {
		scale = intoWide / wide
	}
	if high > 0 {
		scale = min(scale, intoHigh/high)
	}
	if math.IsInf(scale, 1) {
		return 1
	}
	return scale
}

// spanX draws a dimension along X with its words below.
func (p *pen) spanX(x1, x2, y float64, words string) {
	p.line("ruling", x1, y, x2, y)
	p.line("ruling", x1, y-4, x1, y+4)
	p.line("ruling", x2, y-4, x2, y+4)
	p.text("size", "middle", clamped((x1+x2)/2, words, 12), y+15, words)
}

// spanY draws a dimension along Y with its words to the left of it.
func (p *pen) spanY(x, y1, y2 float64, words string) {
	p.line("ruling", x, y1, x, y2)
	p.line("ruling", x-4, y1, x+4, y1)
	p.line("ruling", x-4, y2, x+4, y2)
	p.upright("size", x-6, (y1+y2)/2, words)
}

// arrow draws a line with a head at both ends.
func (p *pen) arrow(class string, a, b Point) { p.arrowOf(7, class, a, b) }

// arrowOf does so with heads of a length.
func (p *pen) arrowOf(head float64, class string, a, b Point) {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	if long == 0 {
		return
	}
	head = min(head, long/3)
	half := head * 0.37
	ux, uy := (b.X-a.X)/long, (b.Y-a.Y)/long
	p.line(class, a.X, a.Y, b.X, b.Y)
	for _, end := range []struct {
		at  Point
		dir float64
	}{{a, 1}, {b, -1}} {
		bx, by := end.at.X+ux*head*end.dir, end.at.Y+uy*head*end.dir
		p.filled(class, end.at, Point{bx - uy*half, by + ux*half}, Point{bx + uy*half, by - ux*half})
	}
}

// scaleBar draws a bar of a round length, from x on, and names it.
func (p *pen) scaleBar(x, y, scale float64, metric bool) {
	unit, name := 25.4, "in"
	if metric {
		unit, name = 10, "cm"
	}
	n := 1.0
	for _, more := range []float64{2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000} {
		if more*unit*scale <= 90 {
			n = more
		}
	}
	parts := 4
	if n == 1 || n == 5 {
		parts = 5
	}
	long := n * unit * scale / float64(parts)
	for i := range parts {
		fill := ""
		if i%2 == 0 {
			fill = ` fill="currentColor"`
		}
		fmt.Fprintf(p, `<rect class="bar" x="%s" y="%s" width="%s" height="5"%s/>`, num(x+float64(i)*long), num(y), num(long), fill)
	}
	p.text("minor", "start", x, y+18, num(n)+" "+name)
}
