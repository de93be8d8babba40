package worksheet

import (
	"fmt"
	"html/template"
	"math"

	"hussif/theme/draw"
)

func (c *CircleSkirt) draw(p *Paper, part float64) {
	r, outer := mm(c.Radius.Is), 0.0
	known := c.Long.Known
	if outer = mm(c.Radius.Is + c.Long.Is + c.Hem.Is); !known {
		outer = r * 3
	}
	cut := mm(c.Radius.Is - c.Allowance.Is)
	angle := 2 * math.Pi * min(part, 1)
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Closed: true, Points: sector(cut, outer, angle)},
		draw.Shape{Kind: "seam-line", Points: arc(0, 0, r, 0, angle)})
	fig.Spans = append(fig.Spans, draw.Span{From: 0, To: r, Words: "radius " + p.trade(c.Radius.Is)})
	if known {
		fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "seam-line", Points: arc(0, 0, mm(c.Radius.Is+c.Long.Is), 0, angle)})
		fig.Spans = append(fig.Spans, draw.Span{From: 0, To: outer, Words: p.trade(c.Radius.Is+c.Long.Is+c.Hem.Is) + " to the hem cut"})
	} else {
		fig.Key = []string{"the length is not given: the hem is only sketched"}
	}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "The skirt, " + c.partWords(part),
		Desc: fmt.Sprintf("To scale: the waist seam has a radius of %s, its cutting line one of %s.",
			p.trade(c.Radius.Is), p.trade(c.Radius.Is-c.Allowance.Is)),
		Draw: func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
	c.print(p, part)
}

// sector returns the outline of a ring's sector whose centre is at 0, from the X axis
// on, clockwise as seen on paper.
func sector(inner, outer, angle float64) []draw.Point {
	points := arc(0, 0, outer, 0, angle)
	back := arc(0, 0, inner, 0, angle)
	for i := range back {
		points = append(points, back[len(back)-1-i])
	}
	return points
}

// print is a quarter of the circle or what there is of it: with it as a pattern, laid
// round and round, any part of a circle is drawn.
func (c *CircleSkirt) print(p *Paper, part float64) {
	angle := min(2*math.Pi*part, math.Pi/2)
	r, cut := mm(c.Radius.Is), mm(c.Radius.Is-c.Allowance.Is)
	reach, words := mm(c.Radius.Is+c.Long.Is+c.Hem.Is), "The dashed lines are the waist seam and the finished hem; the solid ones are cut."
	seam := mm(c.Radius.Is + c.Long.Is)
	if !c.Long.Known {
		reach, words = r+100, "The dashed line is the waist seam, the inner solid one its cut. The length is not given, so only the waist is printed."
		seam = reach
	}
	down := func(points []draw.Point) []draw.Point { // the middle of the piece downwards
		turn := math.Pi/2 - angle/2
		sin, cos := math.Sincos(turn)
		out := make([]draw.Point, len(points))
		for i, q := range points {
			out[i] = draw.Point{X: q.X*cos - q.Y*sin, Y: q.X*sin + q.Y*cos}
		}
		return out
	}
	view := draw.FullSize{Cut: down(sector(cut, reach, angle)), Finished: down(sector(r, seam, angle)),
		Label: "skirt, " + plainNumber(angle*180/math.Pi) + " degrees of the circle"}
	p.Prints = append(p.Prints, Print{
		Name: "skirt", Title: "A quarter of the circle at full size",
		Desc: fmt.Sprintf("A sector of %s degrees with a waist seam of radius %s.", plainNumber(angle*180/math.Pi), p.trade(c.Radius.Is)),
		Words: []string{words, "The straight edges are seam lines or folds: add the allowance of " + p.trade(c.Allowance.Is) + " where they are sewn.",
			"The middle of the piece runs down the page; lay one straight edge on the grain."},
		Sheet: func(w draw.Words, paper draw.Paper) (draw.Sheets, error) {
			view.Words = w
			return draw.Tiles(view, paper)
		},
	})
}
