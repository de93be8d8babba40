package main

import "math"

// Inks and washes of the box; nothing changes them.
var (
	sepia  = tint{0.20, 0.15, 0.12, 0.92}
	red    = tint{0.66, 0.14, 0.12, 0.90}
	grey   = tint{0.55, 0.57, 0.60, 0.62}
	madder = tint{0.67, 0.24, 0.20, 0.66}
	blue   = tint{0.27, 0.37, 0.55, 0.62}
	green  = tint{0.42, 0.50, 0.30, 0.62}
	walnut = tint{0.52, 0.36, 0.24, 0.60}
	linen  = tint{0.83, 0.76, 0.60, 0.55}
	skin   = tint{0.93, 0.76, 0.64, 0.50}
	water  = tint{0.52, 0.66, 0.70, 0.50}
	shadow = tint{0.36, 0.33, 0.36, 0.30}
)

// Widths of the pen.
const (
	thin   = 0.16
	medium = 0.28
	broad  = 0.44
)

// ink draws a line by hand: it wavers, swells in the middle and thins out at the
// ends.
func (s *sheet) ink(l line, width float64, t tint) {
	s.stain(s.cover(s.pen(l, width, 1)), t, false)
}

// pen returns the outline of a stroke.
func (s *sheet) pen(l line, width, unsteady float64) line {
	n := max(2, int(l.length()/0.8))
	l = l.part(0, 1)
	phase := s.hand.Float64() * 1000
	left, right := make(line, 0, n+1), make(line, 0, n+1)
	for i := range n + 1 {
		t := float64(i) / float64(n)
		p := l.at(t)
		a, b := l.at(max(0, t-0.5/float64(n))), l.at(min(1, t+0.5/float64(n)))
		dx, dy := b.x-a.x, b.y-a.y
		size := math.Hypot(dx, dy)
		if size == 0 {
			continue
		}
		nx, ny := dy/size, -dx/size
		along := t * l.length()
		waver := (noise(phase+along/5, 0.5) - 0.5) * 0.36 * unsteady
		half := width / 2 * (0.55 + 0.45*math.Sqrt(math.Sin(math.Pi*min(1, max(0, 0.04+0.92*t))))) * (0.75 + 0.5*noise(phase+along/3, 9.5))
		left = append(left, pt(p.x+nx*(waver+half), p.y+ny*(waver+half)))
		right = append(right, pt(p.x+nx*(waver-half), p.y+ny*(waver-half)))
	}
	return ring(left, right.back())
}

// stitch draws a line of stitches, each as long as said with as much between.
func (s *sheet) stitch(l line, long, apart, width float64, t tint) {
	whole := l.length()
	var strokes []line
	for at := 0.0; at+long <= whole; at += long + apart {
		strokes = append(strokes, s.pen(l.part(at/whole, (at+long)/whole), width, 0.2))
	}
	if strokes != nil {
		s.stain(s.cover(strokes...), t, false)
	}
}

// wash lays colour inside an outline, a little darker where it dried at the edge.
func (s *sheet) wash(outline line, t tint) {
	inside := s.cover(outline)
	s.stain(inside, t, true)
	closed := append(outline[:len(outline):len(outline)], outline[0])
	for _, width := range []float64{0.5, 1.3} {
		s.stain(s.cover(s.pen(closed, width, 0.4)).within(inside), t.at(t.strength*0.26), false)
	}
}

// hatch shades the inside of an outline with slanting strokes of the pen.
func (s *sheet) hatch(outline line, degrees, apart float64, t tint) {
	inside := s.cover(outline)
	low, high := pt(math.Inf(1), math.Inf(1)), pt(math.Inf(-1), math.Inf(-1))
	for _, p := range outline {
		low, high = pt(min(low.x, p.x), min(low.y, p.y)), pt(max(high.x, p.x), max(high.y, p.y))
	}
	centre := between(low, high, 0.5)
	reach := math.Hypot(high.x-low.x, high.y-low.y) / 2
	var strokes []line
	for d := -reach; d <= reach; d += apart {
		row := straight(pt(centre.x-reach, centre.y+d), pt(centre.x+reach, centre.y+d)).turned(centre, degrees)
		strokes = append(strokes, s.pen(row, thin*0.8, 0.7))
	}
	s.stain(s.cover(strokes...).within(inside), t, false)
}

// cloth is a washed piece with an ink outline.
func (s *sheet) cloth(outline line, t tint) {
	s.blank(outline)
	s.wash(outline, t)
	s.ink(append(outline[:len(outline):len(outline)], outline[0]), medium, sepia)
}

// dark is a tint laid on once more for folds and shaded sides.
func dark(t tint) tint {
	return tint{t.r * 0.62, t.g * 0.62, t.b * 0.66, 0.30}
}

// fold is a soft shadow along one side of a line, with the line itself. The
// shadow is deepest a little way along and runs out to nothing.
func (s *sheet) fold(l line, depth float64, t tint) {
	for _, share := range []float64{1, 0.55} {
		edge := l.beside(depth * share)
		for i := range edge {
			along := float64(i) / float64(len(edge)-1)
			edge[i] = between(l[i], edge[i], 1.25*math.Sqrt(along+0.04)*(1-along*along))
		}
		s.stain(s.cover(ring(l, edge.back())), dark(t), true)
	}
	s.ink(l, thin, sepia)
}

// piping is a cord along a line: two edges and the twist of the cover.
func (s *sheet) piping(l line, width float64, t tint) {
	edges := ring(l.beside(width/2), l.beside(-width/2).back())
	s.blank(edges)
	s.wash(edges, t)
	s.ink(l.beside(width/2), thin, sepia)
	s.ink(l.beside(-width/2), thin, sepia)
	n := int(l.length() / (width * 0.9))
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		s.ink(straight(l.beside(width/2).at(t), l.beside(-width/2).at(min(1, t+0.5/float64(n)))), thin*0.7, sepia.at(0.5))
	}
}

// dot is a small disc: an eyelet, a button, the head of a pin.
func (s *sheet) dot(at point, radius float64, t tint) {
	s.stain(s.cover(oval(at, radius, radius)), t, false)
}

// ground is the shadow that a thing casts where it stands.
func (s *sheet) ground(centre point, rx, ry float64) {
	for _, k := range []float64{1, 0.8, 0.55} {
		s.stain(s.cover(oval(centre, rx*k, ry*k)), shadow.at(0.13), true)
	}
}
