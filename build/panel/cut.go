package panel

import (
	"math"

	"hussif/content/quantity"
)

// Cut returns the panel that has the given finished widths, in the order of
// their levels, with its cutting outline. It fails with one [*Error] or several,
// joined, where there are fewer than two levels, where they do not increase,
// where a width is negative, where all are nothing or one between the ends is,
// and where a figure is beyond any panel.
func Cut(levels []Level, allow Allowance) (Shape, error) {
	if err := refuse(levels, allow); err != nil {
		return Shape{}, err
	}
	s := Shape{
		Levels:    append([]Level(nil), levels...),
		Allowance: allow,
		Finished:  finished(levels),
		Cut:       cutting(levels, allow),
	}
	s.FinishedArea, s.CutArea = area(s.Finished), area(s.Cut)
	s.FinishedSize, s.CutSize = size(s.Finished), size(s.Cut)
	return s, nil
}

func finished(levels []Level) []Point {
	var right, left []Point
	for _, l := range levels {
		half := l.Width / 2
		right = append(right, Point{l.Width - half, l.At})
		left = append(left, Point{-half, l.At})
	}
	return outline(right, left)
}

func cutting(levels []Level, allow Allowance) []Point {
	if allow.Sides == 0 { // a point would grow a tail without width
		if levels[0].Width == 0 {
			allow.Top = 0
		}
		if levels[len(levels)-1].Width == 0 {
			allow.Foot = 0
		}
	}
	edge := make([]vec, len(levels))
	for i, l := range levels {
		edge[i] = vec{float64(l.Width) / 2, float64(l.At)}
	}
	var right, left []Point
	for _, v := range moved(edge, allow) {
		p := Point{quantity.Length(math.Round(v.x)), quantity.Length(math.Round(v.y))}
		if len(right) > 0 && p == right[len(right)-1] {
			continue
		}
		right = append(right, p)
		left = append(left, Point{-p.X, p.Y})
	}
	return outline(right, left)
}
