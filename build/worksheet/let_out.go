package worksheet

import (
	"fmt"
	"html/template"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// LetOut is seams sewn again nearer to the edge, or further in.
type LetOut struct {
	Seams    Count
	Was, Now Length
	Keep     Length
	Gives    Change
	Girth    Length
}

// About implements [Sheet].
func (*LetOut) About() About {
	return About{
		Name: "let-out", Also: []string{"let out", "letting out", "taking in"},
		Short:   "how much letting seams out gives, or what each edge has to give",
		Long:    "Each seam has two edges and both move: letting one seam out from 5/8 to 1/4 in gives 3/4 in. Count the seams that one reading of the tape crosses. Give three of seams, was, now and gives.",
		Example: "seams: 2\nwas: 5/8 in\ngives: 1 1/2 in\nkeep: 1/4 in",
		Formula: "gives = seams × 2 × (was − now)",
		Source:  "common practice; the whole divided by the seam edges: R. Robinson, Costume construction text, ch. 17, Central Washington University",
		Care:    "Unpick with the point away from you and in good light. A bodice that has to be drawn together to meet is too tight to breathe in: whoever feels faint or cannot sit is unlaced at once.",
	}
}

// Inputs implements [Sheet].
func (l *LetOut) Inputs() []Input {
	return []Input{
		{Name: "seams", Doc: "how many seams one reading of the tape crosses", Into: l.Seams.from(1, 50), Need: Solved, Example: "2"},
		{Name: "was", Doc: "allowance on each edge before", Into: l.Was.orNothing().upTo(quantity.Metre), Need: Solved, Example: "5/8 in"},
		{Name: "now", Doc: "allowance on each edge after", Into: l.Now.orNothing().upTo(quantity.Metre), Need: Solved, Example: "1/4 in"},
		{Name: "gives", Doc: "how much the girth grows in all; with a minus sign, how much it is taken in", Into: &l.Gives, Need: Solved, Example: "1 1/2 in"},
		{Name: "keep", Doc: "least allowance that has to stay", Into: l.Keep.orNothing().upTo(quantity.Metre), Example: "1/4 in"},
		{Name: "girth", Doc: "what the garment measures before", Into: &l.Girth, Example: "36 in"},
	}
}

// Solve implements [Sheet].
func (l *LetOut) Solve(p *Paper) {
	known := 0
	var missing []string
	for _, in := range l.Inputs()[:4] {
		if in.Into.given() {
			known++
		} else {
			missing = append(missing, in.Name)
		}
	}
	if known < 3 {
		p.wants("three of seams, was, now and gives have to be known", missing...)
		return
	}
	n := quantity.Length(l.Seams.Is)
	switch {
	case known == 4:
		if !p.agree("gives", l.Gives.Is, 2*n*(l.Was.Is-l.Now.Is), n, "%s let out by %s on each edge", plural(int(n), "seam"), p.exact(l.Was.Is-l.Now.Is)) {
			return
		}
	case !l.Gives.Known:
		l.Gives.set(2 * n * (l.Was.Is - l.Now.Is))
	case !l.Now.Known:
		l.Now.set(l.Was.Is - l.Gives.Is/(2*n))
	case !l.Was.Known:
		l.Was.set(l.Now.Is + l.Gives.Is/(2*n))
	case !l.Seams.Known:
		if !l.seams(p) {
			return
		}
		n = quantity.Length(l.Seams.Is)
	}
	if l.Now.Is < 0 {
		p.fault("gives", "%s with allowances of %s give %s at the most", plural(int(n), "seam"), p.exact(l.Was.Is), p.exact(2*n*l.Was.Is))
		return
	}
	if l.Was.Is < 0 {
		p.fault("gives", "%s cannot be taken in so far and end with allowances of %s", plural(int(n), "seam"), p.exact(l.Now.Is))
		return
	}
	l.answer(p, n)
}

// seams finds how many seams share a change, the fewest that do.
func (l *LetOut) seams(p *Paper) bool {
	each := 2 * (l.Was.Is - l.Now.Is)
	if each == 0 || (each > 0) != (l.Gives.Is > 0) {
		p.fault("now", "from %s to %s does not change the girth by %s, whatever the number of seams", p.exact(l.Was.Is), p.exact(l.Now.Is), p.exact(l.Gives.Is))
		return false
	}
	n := (max(l.Gives.Is, -l.Gives.Is) + max(each, -each) - 1) / max(each, -each)
	if n > 50 {
		p.fault("gives", "this takes %d seams", n)
		return false
	}
	l.Seams.set(int(n))
	if made := n * each; made != l.Gives.Is {
		p.caution("%s give %s, a little more than asked for: sew each at %s instead", plural(int(n), "seam"), p.exact(made), p.exact(l.Was.Is-l.Gives.Is/(2*n)))
		l.Now.set(l.Was.Is - l.Gives.Is/(2*n))
	}
	return true
}

func (l *LetOut) answer(p *Paper, n quantity.Length) {
	each := l.Was.Is - l.Now.Is
	p.line("gives = seams × 2 × (was − now)", p.exact(l.Gives.Is), "%d × 2 × (%s − %s)", n, p.exact(l.Was.Is), p.exact(l.Now.Is))
	p.say("gives", l.Gives.Is)
	p.count("seams", int(n))
	p.count("edges", int(2*n))
	p.say("each edge moves", each)
	p.say("allowance before", l.Was.Is)
	p.say("allowance after", l.Now.Is)
	p.main("gives", "each edge moves", "allowance after")
	if l.Girth.Known {
		after := l.Girth.Is + l.Gives.Is
		p.line("girth after = girth + gives", p.exact(after), "%s + %s", p.exact(l.Girth.Is), p.exact(l.Gives.Is))
		p.say("girth after", after)
		p.main("gives", "each edge moves", "allowance after", "girth after")
	}
	way := "out"
	if each < 0 {
		way = "in"
	}
	p.cut("sew each of %s again %s from the edge, %s further %s than before", plural(int(n), "seam"), p.trade(l.Now.Is), p.trade(max(each, -each)), way)
	if l.Keep.Known && l.Now.Is < l.Keep.Is {
		p.caution("only %s would stay, less than the %s that has to: %s in all is the most, or let a panel in", p.exact(l.Now.Is), p.exact(l.Keep.Is), p.exact(2*n*max(l.Was.Is-l.Keep.Is, 0)))
	}
	if each > 0 {
		p.caution("old stitching lines and faded edges may show: look at the right side of an opened inch first")
	}
	l.draw(p)
}

func (l *LetOut) draw(p *Paper) {
	was, now := mm(l.Was.Is), mm(l.Now.Is)
	wide := max(was, now)*2 + 40
	middle := wide / 2
	high := wide * 0.3
	fig := draw.Figure{Metric: p.metric}
	edge := func(x float64, kind string) draw.Shape {
		return draw.Shape{Kind: kind, Points: []draw.Point{{X: x, Y: 0}, {X: x, Y: high}}}
	}
	fig.Shapes = []draw.Shape{edge(middle, "cut-line"), edge(middle-was, "seam-line"), edge(middle+was, "seam-line"),
		edge(middle-now, "level-line"), edge(middle+now, "level-line"), {Kind: "ruling", Points: []draw.Point{{X: 0, Y: 0}, {X: wide, Y: 0}}}}
	fig.Spans = []draw.Span{
		{From: middle - was, To: middle, Words: "was " + p.trade(l.Was.Is)}, {From: middle, To: middle + now, Words: "now " + p.trade(l.Now.Is)},
	}
	fig.Key = []string{"solid: the two cut edges; dashed: old seam; dotted: new one"}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "One seam, opened flat",
		Desc:  fmt.Sprintf("To scale: on each edge the seam moves from %s to %s from the cut.", p.trade(l.Was.Is), p.trade(l.Now.Is)),
		Draw:  func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}
