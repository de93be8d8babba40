package worksheet

import (
	"fmt"
	"html/template"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// Gauging is cloth drawn up on rows of even stitches, also called cartridge pleats.
type Gauging struct {
	Cloth, Spacing Length
	Pleats         Count
	Finished, Room Length
	Ratio          Number
	Rows           Count
	Tails          Length
	Thickness
	Widths
}

// About implements [Sheet].
func (*Gauging) About() About {
	return About{
		Name: "gauging", Also: []string{"cartridge pleats", "cartridge pleating", "gauged pleats"},
		Short:   "stitches, pleats and thread of cloth drawn up on rows of even stitches",
		Long:    "Two stitches make a pleat, one fold out and one in, and it stands as deep as a stitch is long. Give the cloth and the spacing, or the finished width with how much of it a pleat has, or how many pleats there are to be: what can be is worked out. With the thickness of the cloth it says whether the pleats will close up. Half the spacing gives twice as many pleats, half as deep.",
		Example: "cloth: 120 in\nspacing: 1/4 in\nfinished: 30 in\nstack: 1/4 in\nlayers: 8",
		Formula: "stitches = cloth ÷ spacing; pleats = stitches ÷ 2; room of a pleat = finished ÷ pleats",
		Source:  "common practice",
		Care:    "A long drawing thread cuts: wrap it round a pencil and not your finger.",
	}
}

// Inputs implements [Sheet].
func (g *Gauging) Inputs() []Input {
	own := []Input{
		{Name: "cloth", Doc: "how wide the cloth is that is drawn up", Into: &g.Cloth, Need: Solved, Example: "120 in"},
		{Name: "spacing", Doc: "how far apart the stitches are", Into: g.Spacing.upTo(50 * quantity.Centimetre), Need: Solved, Example: "1/4 in"},
		{Name: "finished", Doc: "how wide the drawn-up edge is to be", Into: &g.Finished, Need: Solved, Example: "30 in"},
		{Name: "pleats", Doc: "how many pleats", Into: &g.Pleats, Need: Solved, Example: "240"},
		{Name: "room", Doc: "how much of the finished edge one pleat has", Into: &g.Room, Need: Solved, Example: "1/8 in"},
		{Name: "ratio", Doc: "how many times the finished width the cloth is", Into: g.Ratio.between(1, 100), Need: Solved, Example: "4"},
		{Name: "rows", Doc: "how many rows of stitches", Into: g.Rows.from(1, 50), Default: "2", Example: "3"},
		{Name: "tails", Doc: "thread left over for each row, both ends together", Into: g.Tails.orNothing().upTo(5 * quantity.Metre), Default: "12 in", Metric: "30 cm", Example: "12 in"},
	}
	return append(append(own, g.Thickness.inputs()...), g.Widths.inputs()...)
}

// Solve implements [Sheet].
func (g *Gauging) Solve(p *Paper) {
	bySpacing := g.Cloth.Known && g.Spacing.Known
	for range 4 { // each round may find what the next needs
		g.step()
	}
	switch {
	case !g.Cloth.Known:
		p.wants("how wide the cloth is has to be known or follow", "cloth", "ratio", "pleats")
		return
	case !g.Pleats.Known:
		p.wants("how far apart the stitches are, or how many pleats there are, has to be known", "spacing", "pleats", "room")
		return
	case g.Pleats.Is < 1:
		p.fault("spacing", "the cloth has no room for two stitches")
		return
	}
	n := quantity.Length(g.Pleats.Is)
	switch {
	case bySpacing && int(g.Cloth.Is/g.Spacing.Is)/2 != g.Pleats.Is:
		p.fault("spacing", "stitches %s apart make %d pleats, not %d", p.exact(g.Spacing.Is), int(g.Cloth.Is/g.Spacing.Is)/2, n)
	case g.Finished.Known && g.Finished.Is >= g.Cloth.Is:
		p.fault("finished", "the drawn-up edge is narrower than the cloth")
	case g.Finished.Known && g.Ratio.Known && abs(g.Ratio.Is-float64(g.Cloth.Is)/float64(g.Finished.Is)) > 0.05:
		p.fault("ratio", "%s into %s is %s to 1, not %s", p.exact(g.Cloth.Is), p.exact(g.Finished.Is),
			plainNumber(float64(g.Cloth.Is)/float64(g.Finished.Is)), plainNumber(g.Ratio.Is))
	default:
		g.answer(p)
	}
}

// step finds whatever follows from what is known.
func (g *Gauging) step() {
	if !g.Pleats.Known && g.Cloth.Known && g.Spacing.Known {
		g.Pleats.set(int(g.Cloth.Is/g.Spacing.Is) / 2)
	}
	if !g.Pleats.Known && g.Finished.Known && g.Room.Known {
		g.Pleats.set(int(nearest(g.Finished.Is, g.Room.Is)))
		g.Room.set(g.Finished.Is / quantity.Length(g.Pleats.Is))
	}
	if !g.Cloth.Known && g.Ratio.Known && g.Finished.Known {
		g.Cloth.set(rounded(g.Ratio.Is * float64(g.Finished.Is)))
	}
	if !g.Finished.Known && g.Ratio.Known && g.Cloth.Known {
		g.Finished.set(rounded(float64(g.Cloth.Is) / g.Ratio.Is))
	}
	if !g.Pleats.Known || g.Pleats.Is == 0 {
		return
	}
	n := quantity.Length(g.Pleats.Is)
	if !g.Cloth.Known && g.Spacing.Known {
		g.Cloth.set(2 * n * g.Spacing.Is)
	}
	if !g.Spacing.Known && g.Cloth.Known {
		g.Spacing.set(g.Cloth.Is / (2 * n))
	}
	if !g.Finished.Known && g.Room.Known {
		g.Finished.set(n * g.Room.Is)
	}
}

func (g *Gauging) answer(p *Paper) {
	n := g.Pleats.Is
	stitches := int(g.Cloth.Is / g.Spacing.Is)
	p.line("stitches = cloth ÷ spacing", fmt.Sprint(stitches), "%s ÷ %s", p.exact(g.Cloth.Is), p.exact(g.Spacing.Is))
	p.line("pleats = stitches ÷ 2, whole ones", fmt.Sprint(n), "%d ÷ 2", stitches)
	p.say("cloth", g.Cloth.Is)
	p.say("spacing", g.Spacing.Is)
	p.count("stitches in each row", stitches)
	p.count("pleats", n)
	p.say("pleats stand", g.Spacing.Is)
	if g.Finished.Known {
		g.drawnUp(p)
	}
	thread := g.Cloth.Is + g.Tails.Is
	p.line("thread for a row = cloth + tails", p.exact(thread), "%s + %s", p.exact(g.Cloth.Is), p.exact(g.Tails.Is))
	p.say("thread for each row", thread)
	p.say("thread in all", thread*quantity.Length(g.Rows.Is))
	p.main("pleats", "spacing", "cloth", "thread in all")
	p.cut("mark %s of dots %s apart, each row right below the other", plural(g.Rows.Is, "row"), p.trade(g.Spacing.Is))
	p.cut("cut %s of strong thread, %s each", plural(g.Rows.Is, "length"), p.trade(thread))
	g.pieces(p, g.Cloth.Is)
	if stitches%2 == 1 {
		p.caution("an odd stitch is over: leave it for the turning")
	}
	p.drawGauging(g)
	p.markStrip("gauging", fmt.Sprintf("Dots for gauging, %s apart", p.exact(g.Spacing.Is)), g.Spacing.Is, min(stitches, mostMarks-1))
}

// drawnUp answers what follows from the finished width.
func (g *Gauging) drawnUp(p *Paper) {
	n := quantity.Length(g.Pleats.Is)
	room := g.Finished.Is / n
	p.line("room of a pleat = finished ÷ pleats", p.exact(room), "%s ÷ %d", p.exact(g.Finished.Is), n)
	p.say("finished", g.Finished.Is)
	p.say("room of a pleat", room)
	ratio := float64(g.Cloth.Is) / float64(g.Finished.Is)
	p.number("cloth to finished", ratio, plainNumber(ratio)+" to 1")
	per, name := quantity.Inch, "pleats to the inch"
	if p.metric {
		per, name = 10*quantity.Centimetre, "pleats to 10 cm"
	}
	dense := float64(n) * float64(per) / float64(g.Finished.Is)
	p.number(name, dense, plainNumber(dense))
	one, ok := g.Thickness.of(p)
	if !ok {
		p.caution("whether it closes up depends on the cloth: fold it, measure a stack and give its height and layers")
		return
	}
	p.line("a pleat is 2 layers thick", p.exact(2*one), "2 × %s", p.exact(one))
	if room < 2*one {
		p.caution("will not close up: %s each is less than the %s that two layers take; %d pleats have room at the most",
			p.exact(room), p.exact(2*one), g.Finished.Is/(2*one))
	}
}

func (p *Paper) drawGauging(g *Gauging) {
	n := min(g.Pleats.Is, 8)
	s := mm(g.Spacing.Is)
	fig := draw.Figure{Metric: p.metric}
	row := s * float64(2*n)
	high := s * float64(min(g.Rows.Is, 4)+1)
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Points: []draw.Point{{X: row, Y: 0}, {X: 0, Y: 0}, {X: 0, Y: high}, {X: row, Y: high}}})
	for r := range min(g.Rows.Is, 4) {
		y := s * float64(r+1)
		for i := range n { // over one spacing, under the next
			x := s * float64(2*i)
			fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Points: []draw.Point{{X: x, Y: y}, {X: x + s, Y: y}}})
		}
	}
	if g.Finished.Known {
		room := mm(g.Finished.Is) / float64(g.Pleats.Is)
		top := high + s
		var path []draw.Point
		for i := range n {
			x := room * float64(i)
			path = append(path, draw.Point{X: x, Y: top + s}, draw.Point{X: x + room*0.2, Y: top}, draw.Point{X: x + room*0.5, Y: top}, draw.Point{X: x + room*0.7, Y: top + s})
		}
		fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Points: path})
		fig.Key = []string{"above: flat, with its stitches; below: drawn up, from its edge"}
		fig.Spans = append(fig.Spans, draw.Span{From: 0, To: room * float64(n), Words: fmt.Sprintf("%d pleats in %s", n, p.trade(g.Finished.Is*quantity.Length(n)/quantity.Length(g.Pleats.Is)))})
	}
	fig.Spans = append(fig.Spans, draw.Span{From: 0, To: row, Words: p.trade(g.Spacing.Is*quantity.Length(2*n)) + " of cloth"})
	p.Drawings = append(p.Drawings, Drawing{
		Title: fmt.Sprintf("The first %d of %d pleats", n, g.Pleats.Is),
		Desc: fmt.Sprintf("To scale: stitches %s apart in %s, so that pleats stand %s deep.",
			p.trade(g.Spacing.Is), plural(g.Rows.Is, "row"), p.trade(g.Spacing.Is)),
		Draw: func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}

func abs(f float64) float64 { return max(f, -f) }
