package draw

import "html/template"

// A Figure is any drawing to scale: outlines and lines with their dimensions, which
// stand below it and to its left, and a few words.
type Figure struct {
	Words
	Shapes []Shape
	Spans  []Span
	Labels []Label
	Metric bool     // the scale bar is in centimetres, else in inches
	Key    []string // lines of words that explain it
}

// A Shape is an outline or a line. Its Kind is that of the lines of this package:
// "cut-line", "seam-line", "level-line", "cloth", "axis", "tick", "ruling".
type Shape struct {
	Kind   string
	Points []Point
	Closed bool
}

// A Span is a dimension from one place to another: along X, or along Y where
// Upright.
type Span struct {
	From, To float64
	Upright  bool
	Words    string
}

// A Label is words at a place, centred.
type Label struct {
	At    Point
	Words string
}

// What the dimensions of a figure take.
const (
	figureEdge    = 12.0
	spanRow       = 24.0
	uprightColumn = 26.0
)

// DrawFigure draws a figure as large as the page lets it.
func DrawFigure(v Figure) template.HTML {
	outlines := make([][]Point, len(v.Shapes))
	for i, s := range v.Shapes {
		outlines[i] = s.Points
	}
	f := around(outlines...)
	var upright, level []Span
	for _, s := range v.Spans {
		if s.Upright {
			upright = append(upright, s)
		} else {
			level = append(level, s)
		}
	}
	left := figureEdge + uprightColumn*float64(len(upright))
	top := figureEdge
	scale := scaled(f.wide(), f.high(), page-left-figureEdge, 320)
	put := func(q Point) Point {
		return Point{left + (finite(q.X)-f.left)*scale, top + (finite(q.Y)-f.top)*scale}
	}
	below := top + f.high()*scale + 14
	foot := below + spanRow*float64(len(level))
	p := drawing("figure", v.Words, foot+34+14*float64(len(v.Key)))
	for _, s := range v.Shapes {
		points := each(s.Points, put)
		if s.Closed {
			p.polygon(s.Kind, points)
			continue
		}
		kind := s.Kind
		if kind == "cut-line" {
			kind = "edge" // it encloses no cloth
		}
		p.path(kind, trace(points))
	}
	for _, l := range v.Labels {
		at := put(l.At)
		p.text("halo minor", "middle", clamped(at.X, l.Words, 12), at.Y+4, l.Words)
	}
	for i, s := range level {
		p.spanX(put(Point{X: s.From}).X, put(Point{X: s.To}).X, below+spanRow*float64(i), s.Words)
	}
	for i, s := range upright {
		x := left - 8 - uprightColumn*float64(i)
		p.spanY(x, put(Point{Y: s.From}).Y, put(Point{Y: s.To}).Y, s.Words)
	}
	p.scaleBar(left, foot+6, scale, v.Metric)
	for i, words := range v.Key {
		p.text("minor", "start", left, foot+38+14*float64(i), words)
	}
	return p.done()
}
