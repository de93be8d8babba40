package worksheet

import (
	"fmt"
	"html/template"
	"math"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// Piping is a strip folded round a cord and sewn into a seam.
type Piping struct {
	Diameter, Round  Length
	Allowance, Strip Length
	Thickness
	Seams Lengths
	Ends  Length
	Join  Length
	Piece Piece
}

// About implements [Sheet].
func (*Piping) About() About {
	return About{
		Name: "piping", Also: []string{"corded piping", "cording", "welt"},
		Short:   "width and length of the strip round a cord, and of the cord",
		Long:    "A cord is sold by its thickness or measured round: say which, under diameter or round. Give two of cord, allowance and strip and the third is worked out. With the seams to be piped it says how much strip and cord there has to be, and with a piece of cloth whether that gives it.",
		Example: "diameter: 1/8 in\nallowance: 1/2 in\nseams: [2 of 17 in, 40 in]\npiece: 14 in x 20 in",
		Formula: "strip = 2 × allowance + wrap; wrap = π × diameter + 2 × thickness of the cloth; length = seams + 2 ends for each",
		Source:  "common practice, as in sewing tutorials on piping; the thickness of the cloth is added once for each side of the cord",
		Care:    "Close a rotary cutter each time you lay it down, and cut away from yourself. A cording foot leaves less room for fingers than you are used to.",
	}
}

// Inputs implements [Sheet].
func (s *Piping) Inputs() []Input {
	own := []Input{
		{Name: "diameter", Doc: "how thick the cord is, across", Into: s.Diameter.upTo(20 * quantity.Centimetre), Need: Solved, Example: "5/32 in"},
		{Name: "round", Doc: "how much the cord measures round, instead of across", Into: s.Round.upTo(quantity.Metre), Need: Solved, Example: "1/2 in"},
		{Name: "allowance", Doc: "seam allowance beyond the cord", Into: s.Allowance.upTo(quantity.Metre), Need: Solved, Example: "1/2 in"},
		{Name: "strip", Doc: "how wide the strip is cut", Into: s.Strip.upTo(quantity.Metre), Need: Solved, Example: "1 1/2 in"},
	}
	rest := []Input{
		{Name: "seams", Doc: "the seams to be piped, one by one or as 2 of 17 in", Into: &s.Seams, Example: "2 of 17 in"},
		{Name: "ends", Doc: "what is left over at each end of a seam", Into: s.Ends.orNothing().upTo(quantity.Metre), Default: "1 in", Metric: "2.5 cm", With: "seams", Example: "1 in"},
		{Name: "piece", Doc: "the cloth that the strips are cut from on the bias, width by length", Into: &s.Piece, Example: "20 in x 31 in"},
		{Name: "join", Doc: "allowance where strips are joined", Into: s.Join.orNothing().upTo(10 * quantity.Centimetre), Default: "1/4 in", Metric: "6 mm", With: "piece", Example: "1/4 in"},
	}
	return append(append(own, s.Thickness.inputs()...), rest...)
}

// Solve implements [Sheet].
func (s *Piping) Solve(p *Paper) {
	cloth, known := s.Thickness.of(p)
	if len(p.Faults) > 0 {
		return
	}
	if s.Diameter.Known && s.Round.Known {
		if !p.agree("round", s.Round.Is, rounded(math.Pi*float64(s.Diameter.Is)), 2, "a cord %s across measures round: those", p.exact(s.Diameter.Is)) {
			return
		}
	} else if s.Diameter.Known {
		s.Round.set(rounded(math.Pi * float64(s.Diameter.Is)))
		p.line("round = π × diameter", p.exact(s.Round.Is), "3.1416 × %s", p.exact(s.Diameter.Is))
	}
	sought := "strip"
	switch {
	case s.Round.Known && s.Allowance.Known && s.Strip.Known:
		if !p.agree("strip", s.Strip.Is, 2*s.Allowance.Is+s.Round.Is+2*cloth, 2, "a cord %s round and two allowances of %s", p.exact(s.Round.Is), p.exact(s.Allowance.Is)) {
			return
		}
	case s.Round.Known && s.Allowance.Known:
		s.Strip.set(2*s.Allowance.Is + s.Round.Is + 2*cloth)
	case s.Round.Known && s.Strip.Known:
		sought = "allowance"
		if s.Allowance.set((s.Strip.Is - s.Round.Is - 2*cloth) / 2); s.Allowance.Is <= 0 {
			p.fault("strip", "the cord alone takes %s", p.exact(s.Round.Is+2*cloth))
			return
		}
	case s.Strip.Known && s.Allowance.Known:
		sought = "cord across"
		if s.Round.set(s.Strip.Is - 2*s.Allowance.Is - 2*cloth); s.Round.Is <= 0 {
			p.fault("allowance", "two allowances and the cloth leave nothing for a cord")
			return
		}
	default:
		var missing []string
		if !s.Round.Known {
			missing = append(missing, "diameter", "round")
		}
		for _, in := range s.Inputs()[2:4] {
			if !in.Into.given() {
				missing = append(missing, in.Name)
			}
		}
		p.wants("two of cord, allowance and strip have to be known", missing...)
		return
	}
	p.line("strip = 2 × allowance + round + 2 × thickness", p.exact(s.Strip.Is), "2 × %s + %s + 2 × %s", p.exact(s.Allowance.Is), p.exact(s.Round.Is), p.exact(cloth))
	p.say("strip", s.Strip.Is)
	p.say("cord across", rounded(float64(s.Round.Is)/math.Pi))
	p.say("cord round", s.Round.Is)
	p.say("allowance", s.Allowance.Is)
	p.main(sought)
	if !known {
		p.caution("the thickness of the cloth is not counted: wrap a scrap round the cord and measure before cutting all")
	}
	p.cut("cut strips %s wide, on the bias where a seam curves", p.trade(s.Strip.Is))
	s.lengths(p)
	s.draw(p)
}

// lengths answers how much strip and cord the seams take, and whether a piece gives
// it.
func (s *Piping) lengths(p *Paper) {
	if !s.Seams.given() {
		return
	}
	n := 0
	for _, seam := range s.Seams.All {
		n += seam.Times
	}
	need := s.Seams.total() + 2*quantity.Length(n)*s.Ends.Is
	p.line("length = seams + 2 × ends for each", p.exact(need), "%s + %d × 2 × %s", p.exact(s.Seams.total()), n, p.exact(s.Ends.Is))
	p.say("strip in all", need)
	p.say("cord in all", need)
	p.main("strip in all")
	if !s.Piece.Known {
		return
	}
	size := s.Piece.Is
	if s.Strip.Is >= min(size.Width, size.Length) || float64(size.Width)+float64(size.Length) > mostStrips*math.Sqrt2*float64(s.Strip.Is) {
		p.fault("piece", "strips of %s cannot be cut from a piece of %s", p.exact(s.Strip.Is), p.f.Size(size))
		return
	}
	cuts, joined := cutBias(size, s.Strip.Is).joined(s.Join.Is, 0)
	turns, round := tube(size, s.Strip.Is, s.Join.Is)
	p.count("strips from the piece", cuts)
	p.say("length of strips joined one by one", rounded(joined))
	p.count("turns of a tube from the piece", turns)
	p.say("length round a tube", rounded(round))
	switch most := rounded(math.Max(joined, round)); {
	case most < need:
		p.caution("the piece is short by %s of strip", p.trade(need-most))
	default:
		p.cut("the piece gives %s, %s more than needed", p.trade(most), p.trade(most-need))
	}
}

func (s *Piping) draw(p *Paper) {
	r := float64(s.Round.Is) / math.Pi / 2 / 1e6
	a := mm(s.Allowance.Is)
	wide := mm(s.Strip.Is)
	y := 2*r + wide*0.15
	fig := draw.Figure{Metric: p.metric}
	fig.Shapes = append(fig.Shapes, draw.Shape{Kind: "cut-line", Closed: true, Points: circle(r, r, r)},
		draw.Shape{Kind: "cut-line", Points: []draw.Point{{X: r, Y: 0}, {X: 2 * r, Y: r * 0.85}, {X: 2*r + a, Y: r * 0.85}}},
		draw.Shape{Kind: "cut-line", Points: []draw.Point{{X: r, Y: 2 * r}, {X: 2 * r, Y: r * 1.15}, {X: 2*r + a, Y: r * 1.15}}},
		draw.Shape{Kind: "cut-line", Closed: true, Points: []draw.Point{{X: 0, Y: y}, {X: wide, Y: y}, {X: wide, Y: y + wide*0.2}, {X: 0, Y: y + wide*0.2}}},
		draw.Shape{Kind: "seam-line", Points: []draw.Point{{X: a, Y: y}, {X: a, Y: y + wide*0.2}}},
		draw.Shape{Kind: "seam-line", Points: []draw.Point{{X: wide - a, Y: y}, {X: wide - a, Y: y + wide*0.2}}})
	fig.Spans = []draw.Span{
		{From: 0, To: a, Words: p.trade(s.Allowance.Is)}, {From: a, To: wide - a, Words: "wrap " + p.trade(s.Strip.Is-2*s.Allowance.Is)},
		{From: 0, To: wide, Words: "strip " + p.trade(s.Strip.Is)},
	}
	fig.Key = []string{"above: the piping from its end; below: the strip"}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "Piping and its strip",
		Desc: fmt.Sprintf("To scale: a cord %s across in a strip %s wide, with allowances of %s.",
			p.trade(rounded(2*r*1e6)), p.trade(s.Strip.Is), p.trade(s.Allowance.Is)),
		Draw: func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}

// circle returns an outline round a middle.
func circle(x, y, r float64) []draw.Point { return arc(x, y, r, 0, 2*math.Pi) }

// arc returns points on a circle from one angle to another, counted clockwise from
// the X axis as seen on paper, near enough to one another that no chord lies more
// than 0.02 mm off the arc on a radius of a metre.
func arc(x, y, r, from, to float64) []draw.Point {
	n := max(24, int(math.Ceil((to-from)/0.0125)))
	points := make([]draw.Point, n+1)
	for i := range points {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/float64(n))
		points[i] = draw.Point{X: x + r*cos, Y: y + r*sin}
	}
	return points
}
