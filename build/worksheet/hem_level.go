package worksheet

import (
	"fmt"
	"html/template"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// HemLevel levels a hem from the top: straight panels turned down further where the
// body is shorter from waist to floor.
type HemLevel struct {
	Lengths Lengths
	Cut     Length
	Hem     Length
	Least   Length
}

// About implements [Sheet].
func (*HemLevel) About() About {
	return About{
		Name: "hem level", Also: []string{"hem levels", "levelling a hem", "turn-down"},
		Short:   "how far to turn down the top of a straight-cut skirt at each point, so that the hem is level",
		Long:    "A skirt of straight panels has a straight hem and is levelled at its top. Give the finished length at points round the body, over all that is worn under it, shoes included. Without a cut length, the one that the longest point takes is worked out.",
		Example: "lengths: {front: 38 in, side: 39 in, back: 40 1/2 in}",
		Formula: "turn-down = cut length − hem − finished length",
		Source:  "common practice for skirts that are gauged or pleated with their top turned down",
	}
}

// Inputs implements [Sheet].
func (h *HemLevel) Inputs() []Input {
	return []Input{
		{Name: "lengths", Doc: "finished lengths at points round the body, with their names", Into: h.Lengths.ofEach(Length{most: 5 * quantity.Metre}), Need: Always, Example: "front: 38 in, side: 39 in, back: 40 1/2 in"},
		{Name: "cut length", Doc: "how long the panels are cut", Into: h.Cut.upTo(10 * quantity.Metre), Example: "44 in"},
		{Name: "hem", Doc: "hem allowance", Into: h.Hem.orNothing().upTo(quantity.Metre), Default: "1 in", Metric: "2.5 cm", Example: "1 in"},
		{Name: "least", Doc: "the least that is turned down anywhere", Into: h.Least.orNothing().upTo(quantity.Metre), Default: "1/2 in", Metric: "1.2 cm", Example: "1 in"},
	}
}

// Solve implements [Sheet].
func (h *HemLevel) Solve(p *Paper) {
	all := h.Lengths.All
	longest := all[0].Is
	for _, s := range all {
		longest = max(longest, s.Is)
	}
	least := longest + h.Hem.Is + h.Least.Is
	if !h.Cut.Known {
		h.Cut.set(least)
		p.line("cut length = longest + hem + least turn-down", p.exact(least), "%s + %s + %s", p.exact(longest), p.exact(h.Hem.Is), p.exact(h.Least.Is))
	}
	p.say("cut length", h.Cut.Is)
	for i, s := range all {
		name := s.Name
		if name == "" {
			name = fmt.Sprintf("point %d", i+1)
		}
		turn := h.Cut.Is - h.Hem.Is - s.Is
		if turn < 0 {
			p.Faults = append(p.Faults, Fault{Input: "lengths", Item: i, Text: fmt.Sprintf("at %s the panels are too short by %s: they would have to be cut %s long", name, p.exact(-turn), p.exact(least))})
			continue
		}
		p.line("turn-down at "+name+" = cut length − hem − length", p.exact(turn), "%s − %s − %s", p.exact(h.Cut.Is), p.exact(h.Hem.Is), p.exact(s.Is))
		p.say("turn-down at "+name, turn)
		p.main("turn-down at " + name)
		if turn < h.Least.Is {
			p.caution("at %s only %s is turned down, less than the %s asked for", name, p.exact(turn), p.exact(h.Least.Is))
		}
	}
	if len(p.Faults) > 0 {
		return
	}
	p.main("cut length")
	p.cut("cut the panels %s long, turn up %s for the hem, and mark the turn-down at each point", p.trade(h.Cut.Is), p.trade(h.Hem.Is))
	p.cut("join the marks by a smooth curve and turn down along it; do not cut it off: at a remake it is length")
	if len(all) > 1 {
		h.draw(p)
	}
}

func (h *HemLevel) draw(p *Paper) {
	all := h.Lengths.All
	long := mm(h.Cut.Is)
	apart := long * 0.9 / float64(len(all)-1)
	wide := apart * float64(len(all)-1)
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{}, {X: wide}, {X: wide, Y: long}, {Y: long}}})
	var line []draw.Point
	for i, s := range all {
		at := draw.Point{X: apart * float64(i), Y: mm(h.Cut.Is - h.Hem.Is - s.Is)}
		line = append(line, at)
		fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "level-line", Points: []draw.Point{{X: at.X, Y: 0}, {X: at.X, Y: long}}})
		name := s.Name
		if name == "" {
			name = fmt.Sprint(i + 1)
		}
		fig.Labels = append(fig.Labels, draw.Label{At: draw.Point{X: at.X, Y: long * (0.35 + 0.12*float64(i%3))}, Words: name + " " + p.trade(h.Cut.Is-h.Hem.Is-s.Is)})
	}
	hem := mm(h.Cut.Is - h.Hem.Is)
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "seam-line", Points: line}, draw.Shape{Kind: "seam-line", Points: []draw.Point{{X: 0, Y: hem}, {X: wide, Y: hem}}})
	fig.Spans = []draw.Span{{From: 0, To: long, Upright: true, Words: p.trade(h.Cut.Is) + " cut"}}
	fig.Key = []string{"dashed: the line to turn down along, and the hem"}
	desc := "Heights are to scale, the points are drawn evenly apart. Turned down"
	for i, s := range all {
		if i > 0 {
			desc += ","
		}
		desc += " " + p.trade(h.Cut.Is-h.Hem.Is-s.Is)
		if s.Name != "" {
			desc += " at " + s.Name
		}
	}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "The panels, opened out", Desc: desc + ".",
		Draw: func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}
