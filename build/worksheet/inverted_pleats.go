package worksheet

// InvertedPleats are box pleats seen from the back: two folds that meet in front.
type InvertedPleats struct {
	pleating
	Thickness
	Widths
}

// About implements [Sheet].
func (*InvertedPleats) About() About {
	return About{
		Name: "inverted pleats", Also: []string{"inverted pleat", "inverted box pleats"},
		Short:   "cloth, number, width and depth of pleats whose folds meet in front",
		Long:    "An inverted pleat is a box pleat from the back, and takes as much cloth. Shown is the width from the middle of one pleat to the middle of the next; for one pleat in a panel it is the width of the whole panel.",
		Example: "pleats: 1\nfinished: 26 in\ndepth: 2 1/2 in",
		Formula: "finished = pleats × shown; cloth = finished + 4 × pleats × depth",
		Source:  "common practice; the dressmaking trade textbook of NIMI (India), p. 205",
		Care:    "Press with a cloth over the pleats and keep fingers and face out of the steam; ask somebody who knows the cloth before pressing anything old.",
	}
}

// Inputs implements [Sheet].
func (i *InvertedPleats) Inputs() []Input {
	i.folds = 4
	return append(append(i.pleating.inputs("repeat"), i.Thickness.inputs()...), i.Widths.inputs()...)
}

// Solve implements [Sheet].
func (i *InvertedPleats) Solve(p *Paper) {
	if !i.solve(p) {
		return
	}
	layers := 3
	if 2*i.Depth.Is > i.Shown.Is {
		layers = 1 + 2*int((2*i.Depth.Is+i.Shown.Is-1)/i.Shown.Is)
		p.caution("the folds are deeper than half of what shows, so those of neighbours lie over one another behind: %d layers", layers)
	}
	i.answers(p, layers, &i.Thickness, &i.Widths)
	p.main("cloth", "pleats", "shown", "depth")
	v, d := i.Shown.Is, i.Depth.Is
	half := v / 2
	p.cut("mark half of %s, then %s four times, then half of %s, for each; both outer marks come to the middle one", p.trade(v), p.trade(d), p.trade(v))
	p.drawPleats("inverted pleats", &i.pleating,
		fold{half, half, 0}, fold{half + d, half - d, 1}, fold{half + 3*d, half + d, 2}, fold{half + 4*d, half, 1}, fold{v + 4*d, v, 0})
}
