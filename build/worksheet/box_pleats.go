package worksheet

// BoxPleats are pleats with a fold to each side.
type BoxPleats struct {
	pleating
	Thickness
	Widths
}

// About implements [Sheet].
func (*BoxPleats) About() About {
	return About{
		Name: "box pleats", Also: []string{"box pleat", "double box pleats"},
		Short:   "cloth, number, width and depth of pleats with a fold to each side",
		Long:    "Give any three of the figures and the others are worked out. The folds meet behind the box when they are half as deep as it shows; such full pleats take three times the finished width. Depth is that of one fold.",
		Example: "pleats: 6\nshown: 4 in\ndepth: 2 in",
		Formula: "finished = pleats × shown; cloth = finished + 4 × pleats × depth",
		Source:  "common practice: number × (visible width + 4 × depth), as on many workroom pages; the dressmaking trade textbook of NIMI (India), p. 204",
		Care:    "Press with a cloth over the pleats and keep fingers and face out of the steam; ask somebody who knows the cloth before pressing anything old.",
	}
}

// Inputs implements [Sheet].
func (b *BoxPleats) Inputs() []Input {
	b.folds = 4
	return append(append(b.pleating.inputs("box"), b.Thickness.inputs()...), b.Widths.inputs()...)
}

// Solve implements [Sheet].
func (b *BoxPleats) Solve(p *Paper) {
	if !b.solve(p) {
		return
	}
	b.boxes(p, &b.Thickness, &b.Widths, "behind")
	v, d := b.Shown.Is, b.Depth.Is
	p.cut("mark half of %s, then %s four times, then half of %s, for each", p.trade(v), p.trade(d), p.trade(v))
	p.drawPleats("box pleats", &b.pleating, fold{v, v, 0}, fold{v + d, v - d, 1}, fold{v + 3*d, v + d, 2}, fold{v + 4*d, v, 1})
}

// boxes answers what box pleats and inverted ones have in common; where says on
// which side the folds meet.
func (s *pleating) boxes(p *Paper, t *Thickness, w *Widths, where string) {
	// Folds reach in from both sides of each box.
	layers := 1 + 2*int((2*s.Depth.Is+s.Shown.Is-1)/s.Shown.Is)
	s.answers(p, layers, t, w)
	p.main("cloth", "pleats", "shown", "depth")
	switch {
	case 2*s.Depth.Is == s.Shown.Is:
		p.caution("the folds meet %s", where)
	case 2*s.Depth.Is > s.Shown.Is:
		p.caution("the folds are deeper than half the pleat, so they lie over one another %s: %d layers", where, layers)
	default:
		p.caution("between the folds %s there is a gap of %s", where, p.trade(s.Shown.Is-2*s.Depth.Is))
	}
}
