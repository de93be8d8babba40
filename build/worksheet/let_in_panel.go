package worksheet

import (
	"errors"
	"fmt"
	"html/template"
	"strings"

	"hussif/build/panel"
	"hussif/content/quantity"
	"hussif/theme/draw"
)

// LetInPanel is a piece let into a seam.
type LetInPanel struct {
	Widths           Rungs
	Sides, Top, Foot Length
	Number           Count
	Grain            Choice
	Piece            Piece
	PieceGrain       Choice
	Nap              Choice
}

// About implements [Sheet].
func (*LetInPanel) About() About {
	return About{
		Name: "let-in panel", Also: []string{"panel", "gore", "gusset", "godet"},
		Short:   "the piece to let into a seam so that it is so wide at each height",
		Long:    "Give the finished width at two heights along the seam or more; a width of nothing at an end makes a point. The cutting line lies the allowance outside, with mitred corners. With a left-over piece it says whether the panels come out of it; it may miss a cleverer layout and then says that none was found.",
		Example: "widths: [0 in at 0 in, 1 in at 3 in, 3 in at 7 1/2 in]\nnumber: 2\npiece: 9 in x 31 in",
		Formula: "straight between the widths; cutting line = outline moved out by the allowance",
		Source:  "plane geometry; mitres and square ends are common practice",
		Care:    "Cut away from your hand, along a ruler with a guard, and close a rotary cutter each time you lay it down.",
	}
}

// grains in the order of [panel.Grain].
func grains(c *Choice) *Choice { return c.of("any", "straight", "cross", "bias") }

// Inputs implements [Sheet].
func (l *LetInPanel) Inputs() []Input {
	return []Input{
		{Name: "widths", Doc: "finished widths, each at a height along the seam, from the top down", Into: &l.Widths, Need: Always, Example: "0 in at 0 in, 3 in at 7 1/2 in"},
		{Name: "sides", Doc: "allowance on the long edges", Into: l.Sides.orNothing().upTo(quantity.Metre), Default: "1/2 in", Metric: "1.2 cm", Example: "1/2 in"},
		{Name: "top", Doc: "allowance beyond the first width", Into: l.Top.orNothing().upTo(quantity.Metre), Default: "1/2 in", Metric: "1.2 cm", Example: "1/2 in"},
		{Name: "foot", Doc: "allowance beyond the last width", Into: l.Foot.orNothing().upTo(quantity.Metre), Default: "1/2 in", Metric: "1.2 cm", Example: "1 in"},
		{Name: "number", Doc: "how many are cut", Into: l.Number.from(1, 100), Default: "1", Example: "2"},
		{Name: "grain", Doc: "the grain that runs down the panel", Into: grains(&l.Grain), Default: "straight", Example: "bias"},
		{Name: "piece", Doc: "a left-over piece, width by length", Into: &l.Piece, Example: "9 in x 31 in"},
		{Name: "piece grain", Doc: "the grain that runs along the length of that piece", Into: grains(&l.PieceGrain), Default: "straight", With: "piece", Example: "cross"},
		{Name: "nap", Doc: "whether all have to lie one way", Into: l.Nap.yesNo(), Default: "no", With: "piece", Example: "yes"},
	}
}

// Solve implements [Sheet].
func (l *LetInPanel) Solve(p *Paper) {
	var levels []panel.Level
	for _, r := range l.Widths.All {
		levels = append(levels, panel.Level{At: r.At, Width: r.Width})
	}
	shape, err := panel.Cut(levels, panel.Allowance{Sides: l.Sides.Is, Top: l.Top.Is, Foot: l.Foot.Is})
	if err != nil {
		l.refuse(p, err)
		return
	}
	var widths []string
	for _, r := range l.Widths.All {
		widths = append(widths, p.exact(r.Width)+" at "+p.exact(r.At))
	}
	p.line("cutting line = outline + allowance all round", tradeOf(p.f).Size(shape.CutSize), "%s; + %s at the sides, %s at the top, %s at the foot",
		strings.Join(widths, ", "), p.exact(l.Sides.Is), p.exact(l.Top.Is), p.exact(l.Foot.Is))
	p.say("cut width", shape.CutSize.Width)
	p.say("cut length", shape.CutSize.Length)
	p.count("to cut", l.Number.Is)
	const inch2 = 25.4 * 25.4
	words := fmt.Sprintf("%.1f square in", shape.CutArea/inch2)
	if p.metric {
		words = fmt.Sprintf("%.0f square cm", shape.CutArea/100)
	}
	p.number("area of each, in square mm", shape.CutArea, words)
	p.main("cut width", "cut length")
	many := "one"
	if l.Number.Is > 1 {
		many = fmt.Sprintf("%d, mirrored in pairs", l.Number.Is)
	}
	p.cut("cut %s, with the grain line %s", many, map[int]string{0: "any way", 1: "on the straight grain", 2: "on the cross grain", 3: "on the bias"}[l.Grain.Is])
	p.cut("mark front and back, right side and upper end before lifting it off the cloth")
	l.draw(p, shape)
	if l.Piece.Known {
		l.layOut(p, shape)
	}
	l.print(p, shape, many)
}

// refuse turns the faults of a panel into those of the sheet.
func (l *LetInPanel) refuse(p *Paper, err error) {
	all := []error{err}
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		all = joined.Unwrap()
	}
	for _, e := range all {
		var slip *panel.Error
		if !errors.As(e, &slip) {
			p.fault("widths", "%v", e)
			continue
		}
		fault := Fault{Input: "widths", Item: -1, Text: slip.Reason}
		switch slip.Field {
		case "sides", "top", "foot":
			fault.Input = slip.Field
		case "at", "width":
			fault.Item = slip.Level - 1
		}
		p.Faults = append(p.Faults, fault)
	}
}

func points(all []panel.Point) []draw.Point {
	out := make([]draw.Point, len(all))
	for i, q := range all {
		out[i] = draw.Point{X: mm(q.X), Y: mm(q.Y)}
	}
	return out
}

func (l *LetInPanel) levels(p *Paper) []draw.Level {
	var out []draw.Level
	for _, r := range l.Widths.All {
		size := p.trade(r.Width)
		if r.Width == 0 {
			size = "a point"
		}
		out = append(out, draw.Level{At: mm(r.At), Width: mm(r.Width), Name: r.Name, Size: size})
	}
	return out
}

func (l *LetInPanel) desc(p *Paper, s panel.Shape) string {
	var at []string
	for _, r := range l.Widths.All {
		at = append(at, fmt.Sprintf("%s wide %s down", p.trade(r.Width), p.trade(r.At)))
	}
	return fmt.Sprintf("Finished, from the top: %s. Cut with its allowances it is %s wide and %s long.",
		strings.Join(at, ", "), p.trade(s.CutSize.Width), p.trade(s.CutSize.Length))
}

func (l *LetInPanel) draw(p *Paper, s panel.Shape) {
	view := draw.Panel{Finished: points(s.Finished), Cut: points(s.Cut), Levels: l.levels(p),
		Wide: p.trade(s.CutSize.Width), Long: p.trade(s.CutSize.Length), Metric: p.metric}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "The panel", Desc: l.desc(p, s),
		Draw: func(w draw.Words) template.HTML { view.Words = w; return draw.DrawPanel(view) },
	})
}

func (l *LetInPanel) layOut(p *Paper, s panel.Shape) {
	layout, err := panel.LayOut(s, l.Number.Is, panel.Piece{Size: l.Piece.Is, Grain: panel.Grain(l.PieceGrain.Is)}, panel.Grain(l.Grain.Is), l.Nap.yes())
	switch {
	case err != nil:
		p.fault("piece", "%v", err)
		return
	case layout.Found:
		p.cut("out of a piece of %s: they take %s", p.f.Size(l.Piece.Is), tradeOf(p.f).Size(layout.Used))
	case layout.GrainUnknown && len(layout.Placements) > 0:
		p.caution("they come out of the piece if its length is on the straight grain, which is not said")
	default:
		p.caution("not found on the piece: %s", layout.Lacks.Words(tradeOf(p.f)))
	}
	if len(layout.Placements) == 0 {
		return
	}
	view := draw.Layout{Width: mm(l.Piece.Is.Width), Length: mm(l.Piece.Is.Length), Wide: p.trade(l.Piece.Is.Width), Long: p.trade(l.Piece.Is.Length), Metric: p.metric}
	if g := panel.Grain(l.PieceGrain.Is); g != panel.UnknownGrain {
		view.Warp, view.WarpKnown = map[panel.Grain]float64{panel.Cross: 90, panel.Bias: 45}[g], true
	}
	top, foot := s.Levels[0].At, s.Levels[len(s.Levels)-1].At
	for i, place := range layout.Placements {
		ends := points(place.Put([]panel.Point{{Y: top}, {Y: foot}}))
		label := fmt.Sprint(i + 1)
		if place.Flipped {
			label += ", turned over"
		}
		view.Panels = append(view.Panels, draw.Placed{Finished: points(place.Put(s.Finished)), Cut: points(place.Put(s.Cut)), Grain: [2]draw.Point{ends[0], ends[1]}, Label: label})
	}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "On the left-over piece",
		Desc:  fmt.Sprintf("To scale: %s on a piece of %s, taking %s.", plural(len(layout.Placements), "panel"), p.f.Size(l.Piece.Is), tradeOf(p.f).Size(layout.Used)),
		Draw:  func(w draw.Words) template.HTML { view.Words = w; return draw.DrawLayout(view) },
	})
}

func (l *LetInPanel) print(p *Paper, s panel.Shape, many string) {
	view := draw.FullSize{Label: "let-in panel, cut " + many, Finished: points(s.Finished), Cut: points(s.Cut), Levels: l.levels(p)}
	p.Prints = append(p.Prints, Print{
		Name: "panel", Title: "The panel at full size", Desc: l.desc(p, s),
		Words: []string{"Trim one edge of each sheet and lay it over its neighbour to the marks.", "The solid line is the cutting line, the dashed one the seam. Cut " + many + "."},
		Sheet: func(w draw.Words, paper draw.Paper) (draw.Sheets, error) {
			view.Words = w
			return draw.Tiles(view, paper)
		},
	})
}
