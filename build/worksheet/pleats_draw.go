package worksheet

import (
	"fmt"
	"html/template"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// drawnPleats is how many pleats of a row are drawn.
const drawnPleats = 3

// A fold is a straight stretch of one pleat: where it ends on the flat cloth and in
// the row, and on which layer it lies below the right side.
type fold struct {
	flat, row quantity.Length
	layer     float64
}

// drawPleats draws the first pleats of a row: above, the flat cloth with its folds;
// below, the folds from their edge. Each pleat begins where the one before ends.
func (p *Paper) drawPleats(name string, s *pleating, one ...fold) {
	n := min(s.Pleats.Is, drawnPleats)
	each := one[len(one)-1]
	flat, shown := mm(each.flat), mm(each.row)
	row := flat * float64(n)
	high, step := row*0.09, row*0.03 // only to be seen: neither is to scale
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{X: 0, Y: 0}, {X: row, Y: 0}, {X: row, Y: high}, {X: 0, Y: high}}})
	top := 2 * high
	var path []draw.Point
	for i := range n {
		from, at := flat*float64(i), shown*float64(i)
		path = append(path, draw.Point{X: at, Y: top + step*one[0].layer})
		for j, f := range one {
			if j < len(one)-1 || i < n-1 {
				x := from + mm(f.flat)
				fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "seam-line", Points: []draw.Point{{X: x, Y: 0}, {X: x, Y: high}}})
			}
			path = append(path, draw.Point{X: at + mm(f.row), Y: top + step*f.layer})
			if j+1 < len(one) {
				path = append(path, draw.Point{X: at + mm(f.row), Y: top + step*one[j+1].layer})
			}
		}
	}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Points: path})
	fig.Spans = append(fig.Spans, draw.Span{From: 0, To: shown, Words: p.trade(s.Shown.Is) + " shown"})
	if n > 1 {
		fig.Spans = append(fig.Spans, draw.Span{From: 0, To: shown * float64(n), Words: p.trade(s.Shown.Is*quantity.Length(n)) + " finished"})
	}
	fig.Spans = append(fig.Spans, draw.Span{From: 0, To: flat, Words: p.trade(each.flat) + " of cloth for each"})
	fig.Key = []string{"above: the flat cloth with its folds", "below: the folds from their edge, drawn apart"}
	title := fmt.Sprintf("The first %d of %d %s", n, s.Pleats.Is, name)
	switch {
	case s.Pleats.Is == 1:
		title = "The pleat"
	case n == s.Pleats.Is:
		title = fmt.Sprintf("The %d %s", n, name)
	}
	p.Drawings = append(p.Drawings, Drawing{
		Title: title,
		Desc: fmt.Sprintf("Widths are to scale. Each of the %s takes %s of cloth and shows %s, with folds %s deep.",
			name, p.trade(each.flat), p.trade(s.Shown.Is), p.trade(s.Depth.Is)),
		Draw: func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}
