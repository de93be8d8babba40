package panel

import (
	"slices"

	"hussif/content/quantity"
)

// A Level is the finished width wanted at one distance along the seam, which is
// counted from the seam's upper end or from any point named by the maker.
type Level struct{ At, Width quantity.Length }

// An Allowance is the cloth outside the finished outline.
type Allowance struct {
	Sides quantity.Length // on both long edges
	Top   quantity.Length // beyond the first level
	Foot  quantity.Length // beyond the last level
}

// A Point is a place on the cloth: X across the grain line and Y along it,
// downwards.
type Point struct{ X, Y quantity.Length }

// A Shape is a panel as [Cut] made it. Outlines run clockwise as seen on paper,
// from the right end of the top, and do not repeat their first point.
type Shape struct {
	Levels    []Level
	Allowance Allowance

	Finished, Cut         []Point
	FinishedArea, CutArea float64       // in square millimetres
	FinishedSize, CutSize quantity.Size // across the grain line and along it
}

// outline closes a right-hand and a left-hand side, both from top to bottom. An
// end that both have in common stands once.
func outline(right, left []Point) []Point {
	points := append([]Point(nil), right...)
	for i, p := range slices.Backward(left) {
		if end := i == 0 || i == len(left)-1; end && p == right[i] {
			continue
		}
		points = append(points, p)
	}
	return points
}

// area returns the area within an outline in square millimetres, by the
// shoelace formula (Gauss's area formula).
func area(outline []Point) float64 {
	const mm = float64(quantity.Millimetre)
	twice := 0.0
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		twice += float64(p.X) / mm * (float64(q.Y) / mm)
		twice -= float64(q.X) / mm * (float64(p.Y) / mm)
	}
	return twice / 2
}

// size returns how wide and how long an outline is.
func size(outline []Point) quantity.Size {
	from, to := least(outline), most(outline)
	return quantity.Size{Width: to.X - from.X, Length: to.Y - from.Y}
}
