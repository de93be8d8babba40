package worksheet

import (
	"fmt"
	"html/template"
	"math"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// BiasStrips are strips cut at 45 degrees to the grain, joined one by one or cut
// round a tube.
type BiasStrips struct {
	Width    Length
	Piece    Piece
	Needed   Length
	Seam     Length
	Shortest Length
}

// About implements [Sheet].
func (*BiasStrips) About() About {
	return About{
		Name: "bias strips", Also: []string{"bias", "bias binding", "bias tape", "continuous bias"},
		Short:   "how much bias a piece gives, or the square that a length of bias takes",
		Long:    "Give the width of the strip with the piece, and it says how long the strips are together, cut one by one or round a tube; with the length that is needed instead, the square to cut; with both piece and length but no width, the widest strip. The rule by area promises more than whole strips give, so both are shown.",
		Example: "strip: 1 1/2 in\npiece: 18 in x 18 in\nneeded: 100 in",
		Formula: "by area: length = width × length of the piece ÷ strip; square = √(length × strip); whole strips: each is the parallelogram that lies within two cuts, less 2√2 × seam at each join",
		Source:  "by area: common practice, as on many soft-furnishing pages; whole strips: plane geometry",
		Care:    "Close a rotary cutter each time you lay it down, cut away from yourself along a ruler with a guard, and keep your other hand off the edge. Somebody who has not used one should be shown first.",
	}
}

// Inputs implements [Sheet].
func (b *BiasStrips) Inputs() []Input {
	return []Input{
		{Name: "strip", Doc: "how wide the strip is cut", Into: b.Width.upTo(quantity.Metre), Need: Solved, Example: "2 in"},
		{Name: "piece", Doc: "the piece of cloth, width by length", Into: &b.Piece, Need: Solved, Example: "20 in x 20 in"},
		{Name: "needed", Doc: "how long the joined strip has to be", Into: &b.Needed, Need: Solved, Example: "200 in"},
		{Name: "seam", Doc: "allowance of the joins", Into: b.Seam.orNothing().upTo(10 * quantity.Centimetre), Default: "1/4 in", Metric: "6 mm", Example: "1/4 in"},
		{Name: "shortest", Doc: "the shortest strip worth joining", Into: &b.Shortest, Example: "6 in"},
	}
}

// Solve implements [Sheet].
func (b *BiasStrips) Solve(p *Paper) {
	if b.Piece.Known && 2*b.Seam.Is >= min(b.Piece.Is.Width, b.Piece.Is.Length) {
		p.fault("piece", "the piece is not larger than the seams of a join")
		return
	}
	switch {
	case b.Width.Known && b.Piece.Known:
		b.fromPiece(p)
	case b.Width.Known && b.Needed.Known:
		b.square(p)
	case b.Piece.Known && b.Needed.Known:
		b.widest(p)
	case b.Width.Known:
		p.wants("a strip alone tells nothing", "piece", "needed")
	case b.Piece.Known:
		p.wants("a piece alone tells nothing", "strip", "needed")
	default:
		p.wants("two of strip, piece and needed have to be known", "strip", "piece", "needed")
	}
}

func (b *BiasStrips) fromPiece(p *Paper) {
	w, size := b.Width.Is, b.Piece.Is
	if w >= min(size.Width, size.Length) {
		p.fault("strip", "no strip of %s lies across a piece of %s", p.exact(w), p.f.Size(size))
		return
	}
	if float64(size.Width)+float64(size.Length) > mostStrips*math.Sqrt2*float64(w) {
		p.fault("strip", "this makes more than %d strips", mostStrips)
		return
	}
	byArea := rounded(float64(size.Width) * float64(size.Length) / float64(w))
	cuts := cutBias(size, w)
	n, joined := cuts.joined(b.Seam.Is, b.Shortest.Is)
	turns, round := tube(size, w, b.Seam.Is)
	p.line("by area: length = width × length ÷ strip", p.exact(byArea), "%s × %s ÷ %s", p.exact(size.Width), p.exact(size.Length), p.exact(w))
	p.line("strips one by one, joined: their sum − joins × 2√2 × seam", p.exact(rounded(joined)), "%d strips, %d joins × 2.828 × %s", n, max(n-1, 0), p.exact(b.Seam.Is))
	p.line("round a tube: turns × √2 × (shorter side − 2 × seam)", p.exact(rounded(round)), "%d × 1.414 × (%s − 2 × %s)", turns, p.exact(min(size.Width, size.Length)), p.exact(b.Seam.Is))
	p.say("length by area", byArea)
	p.count("strips", n)
	p.count("joins", max(n-1, 0))
	p.say("length of strips joined one by one", rounded(joined))
	p.count("turns of a tube", turns)
	p.say("length round a tube", rounded(round))
	p.main("length of strips joined one by one", "length round a tube")
	rest := float64(size.Width)*float64(size.Length) - float64(w)*sum(cuts.strips)
	p.number("rest of the cloth", rest/(float64(size.Width)*float64(size.Length)), fmt.Sprintf("%.0f %% of the piece, in the corners", 100*rest/(float64(size.Width)*float64(size.Length))))
	if b.Needed.Known {
		b.enough(p, math.Max(joined, round))
	}
	b.cuts(p, size)
	b.draw(p, cuts)
}

func (b *BiasStrips) enough(p *Paper, most float64) {
	if short := b.Needed.Is - rounded(most); short > 0 {
		p.caution("the piece is short by %s of strip", p.trade(short))
		return
	}
	p.cut("it is enough for the %s needed, with %s to spare", p.exact(b.Needed.Is), p.trade(rounded(most)-b.Needed.Is))
}

func (b *BiasStrips) cuts(p *Paper, size quantity.Size) {
	p.cut("straighten a piece of %s by a drawn thread", p.f.Size(size))
	p.cut("for single strips: cut from a corner at 45 degrees, then every %s, measured square to that cut; join them along the grain", p.trade(b.Width.Is))
	p.cut("for a tube: cut off a corner at 45 degrees, sew it to the other end, mark lines %s apart, sew the straight edges together one line further on, and cut round", p.trade(b.Width.Is))
}

func (b *BiasStrips) square(p *Paper) {
	w := float64(b.Width.Is)
	byArea := math.Sqrt(float64(b.Needed.Is) * w)
	side, turns := tubeSquare(b.Needed.Is, b.Width.Is, b.Seam.Is)
	if math.IsInf(side, 1) || turns >= mostStrips {
		p.fault("needed", "this takes more than %d turns of strip", mostStrips)
		return
	}
	unit, name := quantity.Inch, "whole inch"
	if p.metric {
		unit, name = quantity.Centimetre, "whole centimetre"
	}
	up := func(f float64) quantity.Length { return (rounded(f) + unit - 1) / unit * unit }
	p.line("by area: square = √(length × strip)", p.exact(rounded(byArea)), "√(%s × %s)", p.exact(b.Needed.Is), p.exact(b.Width.Is))
	p.line("by whole turns: square = the larger of turns × √2 × strip and length ÷ (turns × √2), + 2 × seam", p.exact(rounded(side)),
		"%d turns of %s", turns, p.exact(b.Width.Is))
	p.say("square by area", rounded(byArea))
	p.say("square by area, to a "+name, up(byArea))
	p.say("square by whole turns", rounded(side))
	p.say("square by whole turns, to a "+name, up(side))
	p.count("turns of a tube", turns)
	p.main("square by whole turns, to a " + name)
	cut := quantity.Size{Width: up(side), Length: up(side)}
	b.cuts(p, cut)
	b.draw(p, cutBias(cut, b.Width.Is))
}

func (b *BiasStrips) widest(p *Paper) {
	a := float64(min(b.Piece.Is.Width, b.Piece.Is.Length) - 2*b.Seam.Is)
	long := float64(max(b.Piece.Is.Width, b.Piece.Is.Length) - 2*b.Seam.Is)
	turns := math.Ceil(float64(b.Needed.Is)/(math.Sqrt2*a) - 1e-9)
	if turns > mostStrips {
		p.fault("needed", "this takes more than %d turns of strip", mostStrips)
		return
	}
	w := quantity.Length(long / (math.Sqrt2 * turns))
	p.line("turns = length ÷ (√2 × (shorter side − 2 × seam)), up to a whole one", fmt.Sprintf("%.0f", turns), "%s ÷ (1.414 × %s)", p.exact(b.Needed.Is), p.exact(rounded(a)))
	p.line("strip = (longer side − 2 × seam) ÷ (√2 × turns)", p.exact(w), "%s ÷ (1.414 × %.0f)", p.exact(rounded(long)), turns)
	p.count("turns of a tube", int(turns))
	p.say("strip", w)
	p.main("strip")
	b.Width.set(w)
	if w < 3*quantity.Millimetre {
		p.caution("a strip this narrow cannot be sewn")
		return
	}
	b.cuts(p, b.Piece.Is)
	b.draw(p, cutBias(b.Piece.Is, w))
}

func (b *BiasStrips) draw(p *Paper, c biasCut) {
	w, l := c.wide/1e6, c.long/1e6
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{}, {X: w}, {X: w, Y: l}, {Y: l}}})
	const most = 80 // lines that can still be told apart
	step := (len(c.cuts) + most - 1) / most
	for i := 0; i < len(c.cuts); i += max(step, 1) {
		fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "seam-line", Points: c.cuts[i][:]})
	}
	fig.Spans = []draw.Span{
		{From: 0, To: w, Words: p.trade(rounded(c.wide))}, {From: 0, To: l, Upright: true, Words: p.trade(rounded(c.long))},
	}
	fig.Key = []string{fmt.Sprintf("dashed: cuts %s apart, at 45 degrees to the grain", p.trade(rounded(c.width)))}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "Bias strips on the piece",
		Desc: fmt.Sprintf("To scale: a piece %s by %s, cut at 45 degrees from a corner every %s.",
			p.trade(rounded(c.wide)), p.trade(rounded(c.long)), p.trade(rounded(c.width))),
		Draw: func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}

func sum(all []float64) float64 {
	total := 0.0
	for _, f := range all {
		total += f
	}
	return total
}
