package worksheet

import (
	"fmt"
	"html/template"
	"math"

	"hussif/theme/draw"
)

// Gathers are cloth drawn up without regard to its folds.
type Gathers struct {
	Cloth, Finished Length
	Ratio           Number
	Widths
}

// About implements [Sheet].
func (*Gathers) About() About {
	return About{
		Name: "gathers", Also: []string{"gathering", "ruffle"},
		Short:   "cloth for a gathered edge, and the widths to join for it",
		Long:    "Give two of finished width, cloth and ratio. One and a half to 1 is little, two to 1 usual and three to 1 full for thin cloth (common practice).",
		Example: "finished: 30 in\nratio: 2 1/2\ncloth width: 45 in",
		Formula: "cloth = finished × ratio; widths = cloth ÷ (cloth width − 2 × allowance), up to a whole one",
		Source:  "common practice",
	}
}

// Inputs implements [Sheet].
func (g *Gathers) Inputs() []Input {
	return append([]Input{
		{Name: "finished", Doc: "how wide the gathered edge is to be", Into: &g.Finished, Need: Solved, Example: "30 in"},
		{Name: "ratio", Doc: "how many times the finished width the cloth is", Into: g.Ratio.between(1, 20), Need: Solved, Example: "2 1/2"},
		{Name: "cloth", Doc: "how wide the cloth is before it is gathered", Into: &g.Cloth, Need: Solved, Example: "75 in"},
	}, g.Widths.inputs()...)
}

// Solve implements [Sheet].
func (g *Gathers) Solve(p *Paper) {
	switch {
	case g.Finished.Known && g.Ratio.Known && !g.Cloth.Known:
		g.Cloth.set(rounded(float64(g.Finished.Is) * g.Ratio.Is))
	case g.Cloth.Known && g.Ratio.Known && !g.Finished.Known:
		g.Finished.set(rounded(float64(g.Cloth.Is) / g.Ratio.Is))
	case g.Cloth.Known && g.Finished.Known:
	default:
		var missing []string
		for _, in := range g.Inputs()[:3] {
			if !in.Into.given() {
				missing = append(missing, in.Name)
			}
		}
		p.wants("two of finished, ratio and cloth have to be known", missing...)
		return
	}
	ratio := float64(g.Cloth.Is) / float64(g.Finished.Is)
	switch {
	case ratio <= 1:
		p.fault("cloth", "the cloth is not wider than the finished edge, so there is nothing to gather")
		return
	case g.Ratio.Known && math.Abs(ratio-g.Ratio.Is) > 0.05:
		p.fault("ratio", "%s into %s is %s to 1, not %s", p.exact(g.Cloth.Is), p.exact(g.Finished.Is), plainNumber(ratio), plainNumber(g.Ratio.Is))
		return
	}
	p.line("cloth = finished × ratio", p.exact(g.Cloth.Is), "%s × %s", p.exact(g.Finished.Is), plainNumber(ratio))
	p.say("finished", g.Finished.Is)
	p.number("cloth to finished", ratio, plainNumber(ratio)+" to 1")
	p.say("cloth", g.Cloth.Is)
	p.main("cloth", "finished", "widths of cloth")
	p.cut("cut the cloth %s wide, and add the turnings at both ends", p.trade(g.Cloth.Is))
	g.pieces(p, g.Cloth.Is)
	p.main("cloth", "widths of cloth")
	p.cut("divide both edges into quarters, or eighths where they are long, and draw each up to %s", p.trade(g.Finished.Is/4))
	if ratio > 4 {
		p.caution("more than 4 to 1 gathers evenly only in very thin cloth: try gauging")
	}
	g.drawing(p)
}

func (g *Gathers) drawing(p *Paper) {
	w, l := mm(g.Cloth.Is), mm(g.Finished.Is)
	high := w * 0.12
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes,
		draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{}, {X: w}, {X: w, Y: high}, {Y: high}}},
		draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{Y: 2 * high}, {X: l, Y: 2 * high}, {X: w, Y: 3 * high}, {Y: 3 * high}}})
	for i := 1; i < 4; i++ {
		part := float64(i) / 4
		fig.Shapes = append(fig.Shapes,
			draw.Shape{Kind: "seam-line", Points: []draw.Point{{X: w * part}, {X: w * part, Y: high}}},
			draw.Shape{Kind: "seam-line", Points: []draw.Point{{X: l * part, Y: 2 * high}, {X: w * part, Y: 3 * high}}})
	}
	fig.Spans = []draw.Span{{From: 0, To: l, Words: p.trade(g.Finished.Is) + " finished"}, {From: 0, To: w, Words: p.trade(g.Cloth.Is) + " of cloth"}}
	fig.Key = []string{"above: flat, in quarters; below: its upper edge drawn up"}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "Cloth before and after gathering",
		Desc:  fmt.Sprintf("Widths are to scale: %s of cloth, in quarters, drawn up into %s.", p.trade(g.Cloth.Is), p.trade(g.Finished.Is)),
		Draw:  func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}
