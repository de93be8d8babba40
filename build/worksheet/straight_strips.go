package worksheet

import (
	"fmt"
	"html/template"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// StraightStrips are strips cut across the cloth from selvedge to selvedge.
type StraightStrips struct {
	Width, Cloth, Needed Length
	Seam                 Length
	Number               Count
}

// About implements [Sheet].
func (*StraightStrips) About() About {
	return About{
		Name: "straight strips", Also: []string{"strips", "ruffle strips", "strips across the cloth"},
		Short:   "how many strips across the cloth make a length, and how much cloth they take",
		Long:    "Strips for ruffles, facings and straight bindings, cut across the cloth and joined. Give the length that is needed or the number of strips.",
		Example: "strip: 4 in\ncloth width: 54 in\nneeded: 250 in\nseam: 1/4 in",
		Formula: "strips = (needed − 2 × seam) ÷ (cloth width − 2 × seam), up to a whole one; cloth = strips × strip",
		Source:  "common practice, as in upholsterers' yardage for welt",
		Care:    "Close a rotary cutter each time you lay it down, cut away from yourself along a ruler with a guard, and keep your other hand off the edge.",
	}
}

// Inputs implements [Sheet].
func (s *StraightStrips) Inputs() []Input {
	return []Input{
		{Name: "strip", Doc: "how wide each strip is cut", Into: s.Width.upTo(5 * quantity.Metre), Need: Always, Example: "1 1/2 in"},
		{Name: "cloth width", Doc: "usable width of the cloth, without selvedges", Into: s.Cloth.upTo(10 * quantity.Metre), Need: Always, Example: "54 in"},
		{Name: "needed", Doc: "how long the joined strip has to be", Into: &s.Needed, Need: Solved, Example: "950 in"},
		{Name: "number", Doc: "how many strips, instead of the length needed", Into: s.Number.from(1, mostStrips), Need: Solved, Example: "18"},
		{Name: "seam", Doc: "allowance of the joins", Into: s.Seam.orNothing().upTo(10 * quantity.Centimetre), Default: "0 in", Metric: "0 cm", Example: "1/4 in"},
	}
}

// Solve implements [Sheet].
func (s *StraightStrips) Solve(p *Paper) {
	each := s.Cloth.Is - 2*s.Seam.Is
	if each <= 0 {
		p.fault("seam", "the seams take the whole width of the cloth")
		return
	}
	switch {
	case s.Needed.Known && s.Number.Known:
		p.fault("number", "with the length that is needed, the number of strips follows: leave one of the two out")
		return
	case s.Needed.Known:
		// The two outer ends lose nothing.
		n := (max(s.Needed.Is-2*s.Seam.Is, 1) + each - 1) / each
		if n > mostStrips {
			p.fault("needed", "this takes more than %d strips", mostStrips)
			return
		}
		p.line("strips = (needed − 2 × seam) ÷ (cloth width − 2 × seam), up to a whole one", fmt.Sprint(n),
			"(%s − 2 × %s) ÷ (%s − 2 × %s)", p.exact(s.Needed.Is), p.exact(s.Seam.Is), p.exact(s.Cloth.Is), p.exact(s.Seam.Is))
		s.Number.set(int(n))
	case !s.Number.Known:
		p.wants("the length that is needed has to be known, or how many strips there are", "needed", "number")
		return
	}
	n := quantity.Length(s.Number.Is)
	cloth, length := n*s.Width.Is, n*each+2*s.Seam.Is
	p.line("cloth = strips × strip", p.exact(cloth), "%d × %s", n, p.exact(s.Width.Is))
	p.count("strips", int(n))
	p.count("joins", int(n)-1)
	p.say("length of cloth", cloth)
	p.say("length of the joined strip", length)
	p.main("strips", "length of cloth")
	p.cut("cut %s across the cloth, %s wide", plural(int(n), "strip"), p.trade(s.Width.Is))
	s.draw(p)
}

func (s *StraightStrips) draw(p *Paper) {
	n := min(s.Number.Is, 60)
	w, each := mm(s.Cloth.Is), mm(s.Width.Is)
	long := each * float64(n)
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{}, {X: w}, {X: w, Y: long}, {Y: long}}})
	for i := 1; i < n; i++ {
		y := each * float64(i)
		fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "seam-line", Points: []draw.Point{{X: 0, Y: y}, {X: w, Y: y}}})
	}
	fig.Spans = []draw.Span{{From: 0, To: w, Words: p.trade(s.Cloth.Is)}, {From: 0, To: long, Upright: true, Words: p.trade(s.Width.Is * quantity.Length(n))}}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "Strips across the cloth",
		Desc:  fmt.Sprintf("To scale: %s of %s across cloth %s wide.", plural(n, "strip"), p.trade(s.Width.Is), p.trade(s.Cloth.Is)),
		Draw:  func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}
