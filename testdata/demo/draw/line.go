package main

import "math"

// A point lies on a sheet; x goes right and y down, in hundredths of its height.
type point struct{ x, y float64 }

// A line is a row of points close enough together to look curved.
type line []point

// pt keeps the drawings short.
func pt(x, y float64) point { return point{x, y} }

// straight joins points by straight lines.
func straight(points ...point) line {
	var out line
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		steps := max(1, int(math.Hypot(b.x-a.x, b.y-a.y)*4))
		for s := range steps {
			out = append(out, between(a, b, float64(s)/float64(steps)))
		}
	}
	return append(out, points[len(points)-1])
}

// curve runs smoothly through points: a Catmull-Rom spline, its ends doubled.
func curve(points ...point) line {
	const steps = 24
	var out line
	last := len(points) - 1
	for i := range last {
		p0, p1, p2, p3 := points[max(i-1, 0)], points[i], points[i+1], points[min(i+2, last)]
		for s := range steps {
			t := float64(s) / steps
			out = append(out, point{
				spline(p0.x, p1.x, p2.x, p3.x, t),
				spline(p0.y, p1.y, p2.y, p3.y, t),
			})
		}
	}
	return append(out, points[last])
}

func spline(a, b, c, d, t float64) float64 {
	return 0.5 * (2*b + (c-a)*t + (2*a-5*b+4*c-d)*t*t + (3*b-a-3*c+d)*t*t*t)
}

// oval is a closed ellipse round a centre.
func oval(centre point, rx, ry float64) line {
	const steps = 96
	out := make(line, 0, steps+1)
	for s := range steps + 1 {
		sin, cos := math.Sincos(2 * math.Pi * float64(s) / steps)
		out = append(out, point{centre.x + rx*cos, centre.y + ry*sin})
	}
	return out
}

func between(a, b point, t float64) point {
	return point{a.x + (b.x-a.x)*t, a.y + (b.y-a.y)*t}
}

// ring joins lines end to end into an outline.
func ring(parts ...line) line {
	var out line
	for _, p := range parts {
		out = append(out, p...)
	}
	return out
}

func (l line) back() line {
	out := make(line, len(l))
	for i, p := range l {
		out[len(l)-1-i] = p
	}
	return out
}

// mirrored turns a line over at an upright axis.
func (l line) mirrored(axis float64) line {
	out := make(line, len(l))
	for i, p := range l {
		out[i] = point{2*axis - p.x, p.y}
	}
	return out
}

func (l line) moved(dx, dy float64) line {
	out := make(line, len(l))
	for i, p := range l {
		out[i] = point{p.x + dx, p.y + dy}
	}
	return out
}

// turned rotates a line about a point; a positive angle turns clockwise.
func (l line) turned(about point, degrees float64) line {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	out := make(line, len(l))
	for i, p := range l {
		x, y := p.x-about.x, p.y-about.y
		out[i] = point{about.x + x*cos - y*sin, about.y + x*sin + y*cos}
	}
	return out
}

func (l line) length() float64 {
	var sum float64
	for i := 1; i < len(l); i++ {
		sum += math.Hypot(l[i].x-l[i-1].x, l[i].y-l[i-1].y)
	}
	return sum
}

// at returns the point at a share of the length, 0 to 1.
func (l line) at(t float64) point {
	want := t * l.length()
	for i := 1; i < len(l); i++ {
		step := math.Hypot(l[i].x-l[i-1].x, l[i].y-l[i-1].y)
		if step > 0 && want <= step {
			return between(l[i-1], l[i], want/step)
		}
		want -= step
	}
	return l[len(l)-1]
}

// part is the stretch of a line between two shares of its length.
func (l line) part(from, to float64) line {
	n := max(2, int((to-from)*l.length()*3))
	out := make(line, 0, n+1)
	for i := range n + 1 {
		out = append(out, l.at(from+(to-from)*float64(i)/float64(n)))
	}
	return out
}

// amid is the line a share of the way from one line to another, as a fold hangs
// between two seams.
func amid(a, b line, share float64) line {
	const steps = 48
	out := make(line, 0, steps+1)
	for i := range steps + 1 {
		t := float64(i) / steps
		out = append(out, between(a.at(t), b.at(t), share))
	}
	return out
}

// beside runs along a line at a distance; a positive one is to its left as seen
// going along it, with y downwards.
func (l line) beside(distance float64) line {
	out := make(line, len(l))
	for i, p := range l {
		a, b := l[max(i-1, 0)], l[min(i+1, len(l)-1)]
		dx, dy := b.x-a.x, b.y-a.y
		size := math.Hypot(dx, dy)
		if size == 0 {
			size = 1
		}
		out[i] = point{p.x + dy/size*distance, p.y - dx/size*distance}
	}
	return out
}

// levelLine runs across between two sides, sagging towards the middle.
func levelLine(left, right line, t, sag float64) line {
	const steps = 24
	var out line
	for i := range steps + 1 {
		p := amid(left, right, float64(i)/steps).at(t)
		away := 2*float64(i)/steps - 1
		out = append(out, pt(p.x, p.y+sag*(1-away*away)))
	}
	return out
}
