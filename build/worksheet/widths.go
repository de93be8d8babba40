package worksheet

import "hussif/content/quantity"

// Widths are how the cloth is pieced together from the widths that are sold.
type Widths struct {
	Wide      Length
	Allowance Length
	Round     Choice
}

func (w *Widths) inputs() []Input {
	return []Input{
		{Name: "cloth width", Doc: "usable width of the cloth on the bolt, without selvedges, to say how many widths to join", Into: w.Wide.upTo(10 * quantity.Metre), Example: "45 in"},
		{Name: "allowance", Doc: "seam allowance on each edge of a join", Into: w.Allowance.orNothing().upTo(quantity.Metre), Default: "1/2 in", Metric: "1.2 cm", With: "cloth width", Example: "1/2 in"},
		{Name: "closed", Doc: "whether the joined cloth is sewn to a ring", Into: w.Round.yesNo(), Default: "no", With: "cloth width", Example: "yes"},
	}
}

// pieces answers how many widths a length across takes. Each width loses an allowance
// on both edges, also where an edge is an end and is hemmed or faced.
func (w *Widths) pieces(p *Paper, across quantity.Length) {
	if !w.Wide.Known {
		return
	}
	each := w.Wide.Is - 2*w.Allowance.Is
	if each <= 0 {
		p.fault("allowance", "the allowances take the whole width of the cloth")
		return
	}
	n := int((across + each - 1) / each)
	joins := n - 1
	if w.Round.yes() {
		joins = n
	}
	p.line("widths = cloth ÷ (cloth width − 2 × allowance), up to a whole one", plural(n, "width"),
		"%s ÷ (%s − 2 × %s)", p.exact(across), p.exact(w.Wide.Is), p.exact(w.Allowance.Is))
	p.count("widths of cloth", n)
	p.count("joins", joins)
	p.cut("join %s of %s; what is over is %s", plural(n, "width"), p.exact(w.Wide.Is), p.trade(each*quantity.Length(n)-across))
}
