package panel

import (
	"math"

	"hussif/content/quantity"
)

// Put returns where the points of a panel lie on the piece. Quarter turns are
// exact; at other angles each point is rounded once, to the nanometre.
func (p Placement) Put(points []Point) []Point {
	placed := make([]Point, len(points))
	for i, q := range points {
		q = turned(q, p.Turn)
		placed[i] = Point{p.At.X + q.X, p.At.Y + q.Y}
	}
	return placed
}

// turned turns a point clockwise, as seen on paper, about the origin.
func turned(p Point, degrees int) Point {
	switch degrees {
	case 0:
		return p
	case 90:
		return Point{-p.Y, p.X}
	case 180:
		return Point{-p.X, -p.Y}
	case 270:
		return Point{p.Y, -p.X}
	}
	sin, cos := math.Sincos(float64(degrees) * math.Pi / 180)
	x, y := float64(p.X), float64(p.Y)
	return Point{
		quantity.Length(math.Round(x*cos - y*sin)),
		quantity.Length(math.Round(x*sin + y*cos)),
	}
}

// least returns the corner of an outline's bounding rectangle that is nearest to
// the piece's own.
func least(outline []Point) Point {
	corner := outline[0]
	for _, p := range outline {
		corner = Point{min(corner.X, p.X), min(corner.Y, p.Y)}
	}
	return corner
}

// most returns the opposite corner.
func most(outline []Point) Point {
	corner := outline[0]
	for _, p := range outline {
		corner = Point{max(corner.X, p.X), max(corner.Y, p.Y)}
	}
	return corner
}

// swapped exchanges the two directions of an outline.
func swapped(outline []Point) []Point {
	points := make([]Point, len(outline))
	for i, p := range outline {
		points[i] = Point{p.Y, p.X}
	}
	return points
}

// swappedSize does so for a size.
func swappedSize(s quantity.Size) quantity.Size {
	return quantity.Size{Width: s.Length, Length: s.Width}
}
