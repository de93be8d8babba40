package worksheet

// KnifePleats are pleats that all lie one way.
type KnifePleats struct {
	pleating
	Thickness
	Widths
}

// About implements [Sheet].
func (*KnifePleats) About() About {
	return About{
		Name: "knife pleats", Also: []string{"pleats", "side pleats"},
		Short:   "cloth, number, shown width and depth of pleats that lie one way",
		Long:    "Give any three of the figures and the others are worked out: for a waist usually its finished width, how much each pleat shows and how deep it is. Full pleats are as deep as they show and take three times the finished width. Depth is that of the fold; a book that gives the cloth a fold takes up means twice as much.",
		Example: "finished: 34 in\nshown: 1 in\ndepth: 1 in",
		Formula: "finished = pleats × shown; cloth = finished + 2 × pleats × depth",
		Source:  "common practice; worked so in the dressmaking trade textbook of NIMI (India), pp. 203-204",
		Care:    "Press with a cloth over the pleats and keep fingers and face out of the steam; ask somebody who knows the cloth before pressing anything old.",
	}
}

// Inputs implements [Sheet].
func (k *KnifePleats) Inputs() []Input {
	k.folds = 2
	return append(append(k.pleating.inputs("pleat"), k.Thickness.inputs()...), k.Widths.inputs()...)
}

// Solve implements [Sheet].
func (k *KnifePleats) Solve(p *Paper) {
	if !k.solve(p) {
		return
	}
	// Each point of a pleat is covered by as many folds as begin within one depth.
	layers := 1 + 2*int((k.Depth.Is+k.Shown.Is-1)/k.Shown.Is)
	k.answers(p, layers, &k.Thickness, &k.Widths)
	p.main("cloth", "pleats", "shown", "depth")
	if k.Depth.Is > k.Shown.Is {
		p.caution("the folds are deeper than the pleats show, so they lie over one another: %d layers", layers)
	}
	v, d := k.Shown.Is, k.Depth.Is
	p.cut("mark %s, then twice %s, and so on: the first mark of each two folds over to the next", p.trade(v), p.trade(d))
	p.drawPleats("knife pleats", &k.pleating, fold{v, v, 0}, fold{v + d, v - d, 1}, fold{v + 2*d, v, 2})
}
