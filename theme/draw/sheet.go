package draw

import (
	"fmt"
	"html/template"
	"math"
)

// A sheet knows how the pages of a full-size drawing lie on the panel.
type sheet struct {
	FullSize
	wide, high   float64 // of a page's drawing
	across, down int
	left, top    float64 // of the first page, on the panel
}

// page draws one page: what of the panel lies on it, and how it joins the others.
func (s sheet) page(row, column int) template.HTML {
	own := name(row, column)
	w := s.Words
	w.ID += "-" + own
	w.Title += ", page " + own
	w.Desc += fmt.Sprintf(" Page %s of a grid %d across and %d down, at full size.", own, s.across, s.down)
	p := begin("sheet", w, s.wide, s.high, "mm")
	left := s.left + float64(column)*(s.wide-Overlap)
	top := s.top + float64(row)*(s.high-Overlap)
	put := func(q Point) Point { return Point{finite(q.X) - left, finite(q.Y) - top} }
	s.panel(p, put)
	if row == 0 && column == 0 {
		s.squares(p, put)
	}
	s.joins(p, row, column)
	p.text("sheet-name", "start", Overlap+2, s.high-18, own)
	p.text("sheet-words", "start", Overlap+2, s.high-12, fmt.Sprintf("row %d of %d, column %d of %d", row+1, s.down, column+1, s.across))
	return p.done()
}

// panel draws the whole panel; the page shows its own part.
func (s sheet) panel(p *pen, put func(Point) Point) {
	p.polygon("cut-line", each(s.Cut, put))
	p.polygon("seam-line", each(s.Finished, put))
	f := around(s.Finished)
	p.arrowOf(5, "grain", put(Point{0, f.top + f.high()*0.1}), put(Point{0, f.foot - f.high()*0.1}))
	for i, l := range s.Levels {
		a, b := put(Point{-l.Width / 2, l.At}), put(Point{l.Width / 2, l.At})
		if i > 0 && i < len(s.Levels)-1 { // the ends are seams
			p.line("level-line", a.X, a.Y, b.X, b.Y)
		}
		words := l.Size
		if l.Name != "" {
			words = l.Name + ", " + l.Size
		}
		s.beside(p, "sheet-words", put(Point{0, l.At - 1.5}), words)
	}
	at := put(Point{0, s.labelAt()})
	for _, line := range s.label() {
		s.beside(p, "sheet-label", at, line)
		at.Y += labelLine
	}
	s.beside(p, "sheet-words", at, "arrow: grain; solid: cut; dashed: sew")
}

// The size of the letters of the label, and from one line of it to the next.
const (
	labelSize = 5.0
	labelLine = 6.0
)

// label returns the lines of the label, which stay on their page.
func (s sheet) label() []string { return wrapped(s.Label, labelSize, besideGrain-8) }

// labelAt returns the height on the panel of its label: the middle of the row of
// pages on which the panel's own middle lies.
func (s sheet) labelAt() float64 {
	f := around(s.Finished)
	middle := f.top + f.high()/2
	row := math.Floor((middle - s.top) / (s.high - Overlap))
	return min(max(s.top+row*(s.high-Overlap)+s.high/2, f.top+10), f.foot-10)
}

// beside writes words next to the grain line, on the side on which its page has
// room for them.
func (s sheet) beside(p *pen, class string, at Point, words string) {
	const clear = Overlap + 4 // of what is written where pages join
	switch {
	case at.Y > 0 && at.Y < clear:
		at.Y = clear
	case at.Y > s.high-clear && at.Y < s.high:
		at.Y = s.high - clear
	}
	if s.leftward() {
		p.text(class, "end", at.X-3, at.Y, words)
		return
	}
	p.text(class, "start", at.X+3, at.Y, words)
}

// leftward reports whether the words beside the grain line stand to its left.
func (s sheet) leftward() bool {
	column := math.Floor(-s.left / (s.wide - Overlap))
	return -s.left-column*(s.wide-Overlap) > s.wide-besideGrain
}

// besideGrain is how much room the words next to the grain line take.
const besideGrain = 75.0

// squares draws the test squares, side by side or one above the other, where the
// outlines leave room for them, or else in the page's first corner.
func (s sheet) squares(p *pen, put func(Point) Point) {
	const five, two, gap = 50.0, 50.8, 6.0
	at, next := Point{gap, gap}, Point{five + gap, 0}
	for _, step := range []Point{{five + gap, 0}, {0, five + gap}} {
		if place, ok := s.room(put, step.X+two, step.Y+two); ok {
			at, next = place, step
			break
		}
	}
	p.square(at, five, "5 cm")
	p.square(Point{at.X + next.X, at.Y + next.Y}, two, "2 in")
}

// room returns where on a page a rectangle keeps clear of all that is drawn.
func (s sheet) room(put func(Point) Point, wide, high float64) (Point, bool) {
	const edge, clear, step, foot = 6.0, 4.0, 4.0, 24.0 // at the foot stands the page's name
	outlines := [][]Point{each(s.Cut, put), each(s.Finished, put)}
	for y := edge; y+high+foot < s.high; y += step {
		for x := edge; x+wide+clear < s.wide-Overlap; x += step {
			f := frame{x - clear, y - clear, x + wide + clear, y + high + clear}
			if free(outlines, f) && !s.written(put, f) {
				return Point{x, y}, true
			}
		}
	}
	return Point{}, false
}

// written reports whether the grain line or the words beside it may run through a
// rectangle.
func (s sheet) written(put func(Point) Point, r frame) bool {
	f := around(s.Finished)
	a, b := put(Point{0, f.top}), put(Point{0, f.foot})
	left, right := a.X, a.X+besideGrain
	if s.leftward() {
		left, right = a.X-besideGrain, a.X
	}
	// Only the label is as long as that; it stands in the middle of the page.
	label := put(Point{0, s.labelAt()}).Y
	if r.left < right && r.right > left && r.top < label+labelLine*float64(len(s.label()))+4 && r.foot > label-6 {
		return true
	}
	return r.left < a.X+3 && r.right > a.X-3 && r.top < b.Y && r.foot > a.Y-6
}

func (p *pen) square(at Point, side float64, name string) {
	fmt.Fprintf(p, `<rect class="test" x="%s" y="%s" width="%s" height="%s"/>`, num(at.X), num(at.Y), num(side), num(side))
	p.text("sheet-words", "middle", at.X+side/2, at.Y+side/2, "this square is "+name)
	p.text("sheet-words", "middle", at.X+side/2, at.Y+side/2+5, "measure it before cutting")
}

// free reports whether no outline passes through a rectangle.
func free(outlines [][]Point, f frame) bool {
	for _, outline := range outlines {
		for i, a := range outline {
			if passes(a, outline[(i+1)%len(outline)], f) {
				return false
			}
		}
	}
	return true
}

// passes reports whether a line runs through a rectangle: the part of it that is
// left when it is cut at the four sides is not empty.
func passes(a, b Point, f frame) bool {
	from, to := 0.0, 1.0
	for _, side := range [][3]float64{{a.X, b.X - a.X, f.left}, {-a.X, a.X - b.X, -f.right}, {a.Y, b.Y - a.Y, f.top}, {-a.Y, a.Y - b.Y, -f.foot}} {
		start, by, least := side[0], side[1], side[2]
		switch {
		case by > 0:
			from = max(from, (least-start)/by)
		case by < 0:
			to = min(to, (least-start)/by)
		case start < least:
			return false
		}
	}
	return from < to
}

// joins draws how a page joins its neighbours: trimmed along the line through the
// marks at its right and its foot, it is laid over the next page so that the marks
// meet.
func (s sheet) joins(p *pen, row, column int) {
	const middle, beside = Overlap / 2, 1.6
	right, foot := s.wide-middle, s.high-middle
	if column > 0 {
		s.joinUpright(p, "under", middle, middle-beside, "lies under "+name(row, column-1))
	}
	if column < s.across-1 {
		s.joinUpright(p, "trim", right, right-beside, "trim here, lay over "+name(row, column+1))
	}
	if row > 0 {
		s.joinLevel(p, "under", middle, middle-beside, "lies under "+name(row-1, column))
	}
	if row < s.down-1 {
		s.joinLevel(p, "trim", foot, foot-beside, "trim here, lay over "+name(row+1, column))
	}
}

func (s sheet) joinUpright(p *pen, class string, x, words float64, text string) {
	p.line(class, x, 0, x, s.high)
	p.register(x, s.high/4)
	p.register(x, s.high*3/4)
	p.upright("sheet-words", words, s.high/2, text)
}

func (s sheet) joinLevel(p *pen, class string, y, words float64, text string) {
	p.line(class, 0, y, s.wide, y)
	p.register(s.wide/4, y)
	p.register(s.wide*3/4, y)
	p.text("sheet-words", "middle", s.wide/2, words, text)
}

// register draws a mark that stands at one place of the panel on both pages.
func (p *pen) register(x, y float64) {
	const r, reach = 2.0, 3.6
	p.circle("register", x, y, r)
	p.line("register", x-reach, y, x+reach, y)
	p.line("register", x, y-reach, x, y+reach)
}
