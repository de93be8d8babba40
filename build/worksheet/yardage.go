package worksheet

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// Yardage is how much cloth rectangles take, and how much to buy.
type Yardage struct {
	Pieces Sizes
	Cloth  Length
	Nap    Choice
	Shrink Number
	Repeat Length
}

// About implements [Sheet].
func (*Yardage) About() About {
	return About{
		Name: "yardage", Also: []string{"yards of cloth", "cloth needed", "fabric needed"},
		Short:   "the length of cloth that rectangular pieces take, and how much to buy",
		Long:    "Give the pieces with their allowances, width first and length along the warp. They are laid in rows across the cloth; a cleverer layout may take less. Without nap or print a piece may be turned across the cloth where that saves length. What shrinks is bought longer.",
		Example: "pieces: [4 of 22 in x 40 in, 2 of 8 in x 12 in]\ncloth width: 54 in\nshrinkage: 5 %",
		Formula: "bought = needed ÷ (1 − shrinkage)",
		Source:  "arithmetic; rows filled from the longest piece down, a usual rule of packing (first fit, decreasing height: Coffman, Garey, Johnson and Tarjan 1980)",
		Care:    "Hot water for shrinking scalds: let it cool before you reach in, and ask a conservator before washing anything old.",
	}
}

// Inputs implements [Sheet].
func (y *Yardage) Inputs() []Input {
	return []Input{
		{Name: "pieces", Doc: "the pieces with their allowances, width by length", Into: &y.Pieces, Need: Always, Example: "4 of 22 in x 40 in"},
		{Name: "cloth width", Doc: "usable width of the cloth, without selvedges", Into: y.Cloth.upTo(10 * quantity.Metre), Need: Always, Example: "54 in"},
		{Name: "nap", Doc: "whether all pieces have to lie along the cloth, for nap, print or grain", Into: y.Nap.yesNo(), Default: "yes", Example: "no"},
		{Name: "shrinkage", Doc: "how much the cloth shrinks in length", Into: y.Shrink.between(0, 0.5).percent(), Default: "0 %", Example: "5 %"},
		{Name: "repeat", Doc: "length of the pattern's repeat, at which every row begins anew", Into: y.Repeat.upTo(5 * quantity.Metre), Example: "12 in"},
	}
}

// A laid is a piece on the cloth.
type laid struct {
	cut           Cut
	x, y          quantity.Length
	wide, long    quantity.Length
	turned, first bool
}

// mostPieces is how many pieces are laid out.
const mostPieces = 500

// Solve implements [Sheet].
func (y *Yardage) Solve(p *Paper) {
	total := 0
	for i, c := range y.Pieces.All {
		total += c.N
		fits := c.Size.Width <= y.Cloth.Is || !y.Nap.yes() && c.Size.Length <= y.Cloth.Is
		if !fits {
			p.Faults = append(p.Faults, Fault{Input: "pieces", Item: i, Text: fmt.Sprintf("a piece of %s does not lie on cloth %s wide", p.f.Size(c.Size), p.exact(y.Cloth.Is))})
		}
	}
	if total > mostPieces {
		p.fault("pieces", "at most %d pieces are laid out at once", mostPieces)
	}
	if len(p.Faults) > 0 {
		return
	}
	layout, needed := y.best()
	p.line("needed = the rows, one below the other", p.exact(needed), "%s in %s", plural(total, "piece"), plural(rows(layout), "row"))
	bought := rounded(float64(needed) / (1 - y.Shrink.Is))
	p.line("bought = needed ÷ (1 − shrinkage)", p.exact(bought), "%s ÷ (1 − %s)", p.exact(needed), plainNumber(y.Shrink.Is))
	unit, name := quantity.Yard/8, "eighth of a yard"
	if p.metric {
		unit, name = 10*quantity.Centimetre, "tenth of a metre"
	}
	sold := (bought + unit - 1) / unit * unit
	p.count("pieces", total)
	p.say("needed", needed)
	p.say("bought", bought)
	p.Answers = append(p.Answers, Answer{Name: "bought, to an " + name, Words: p.f.Amount(quantity.Amount{Kind: quantity.ByLength, Length: sold}), Length: sold})
	if p.metric {
		p.Answers[len(p.Answers)-1].Name = "bought, to a " + name
	}
	used := 0.0
	for _, l := range layout {
		used += float64(l.wide) * float64(l.long)
	}
	used /= float64(needed) * float64(y.Cloth.Is)
	p.number("part of the cloth used", used, fmt.Sprintf("%.0f %%", 100*used))
	p.main("needed", p.Answers[3].Name)
	p.cut("cut in rows as drawn, the longest pieces first")
	if y.Shrink.Is > 0 {
		p.cut("wash and press the cloth as the garment will be before cutting")
	} else {
		p.caution("nothing is counted for shrinkage: wash a square of the cloth, measure it, and give the percentage")
	}
	y.draw(p, layout, needed)
}

// best returns the shorter of two layouts: all pieces along the cloth where they fit,
// or, without nap, each with its longer side across where that fits.
func (y *Yardage) best() ([]laid, quantity.Length) {
	along := func(c Cut) bool { return c.Size.Width > y.Cloth.Is }
	layout, needed := y.rows(along)
	if y.Nap.yes() {
		return layout, needed
	}
	across := func(c Cut) bool {
		return along(c) || c.Size.Length > c.Size.Width && c.Size.Length <= y.Cloth.Is
	}
	if other, less := y.rows(across); less < needed {
		return other, less
	}
	return layout, needed
}

// rows lays the pieces in rows, the longest first, each in the first row that has room.
func (y *Yardage) rows(turn func(Cut) bool) ([]laid, quantity.Length) {
	var all []laid
	for _, c := range y.Pieces.All {
		for range c.N {
			l := laid{cut: c, wide: c.Size.Width, long: c.Size.Length, turned: turn(c)}
			if l.turned {
				l.wide, l.long = l.long, l.wide
			}
			all = append(all, l)
		}
	}
	slices.SortStableFunc(all, func(a, b laid) int {
		return cmp.Or(cmp.Compare(b.long, a.long), cmp.Compare(b.wide, a.wide))
	})
	type row struct{ y, used quantity.Length }
	var rows []row
	var next quantity.Length
	for i := range all {
		l := &all[i]
		at := slices.IndexFunc(rows, func(r row) bool { return r.used+l.wide <= y.Cloth.Is })
		if at < 0 {
			at = len(rows)
			rows = append(rows, row{y: next})
			next += l.long
			if y.Repeat.Known {
				next = (next + y.Repeat.Is - 1) / y.Repeat.Is * y.Repeat.Is
			}
		}
		l.first = rows[at].used == 0
		l.x, l.y = rows[at].used, rows[at].y
		rows[at].used += l.wide
	}
	return all, next
}

func rows(layout []laid) int {
	n := 0
	for _, l := range layout {
		if l.first {
			n++
		}
	}
	return n
}

func (y *Yardage) draw(p *Paper, layout []laid, needed quantity.Length) {
	wide, long := mm(y.Cloth.Is), mm(needed)
	fig := draw.Figure{Metric: p.metric}
	outline := func(x, y, w, h float64, kind string) {
		fig.Shapes = append(fig.Shapes, draw.Shape{Kind: kind, Closed: true, Points: []draw.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}})
	}
	outline(0, 0, wide, long, "cut-line")
	for _, l := range layout {
		outline(mm(l.x), mm(l.y), mm(l.wide), mm(l.long), "seam-line")
		if words := l.cut.Name; words != "" && float64(l.wide) > float64(y.Cloth.Is)*0.12 && mm(l.long) > long*0.05 {
			fig.Labels = append(fig.Labels, draw.Label{At: draw.Point{X: mm(l.x + l.wide/2), Y: mm(l.y + l.long/2)}, Words: words})
		}
	}
	fig.Spans = []draw.Span{{From: 0, To: wide, Words: p.trade(y.Cloth.Is) + " wide"}, {From: 0, To: long, Upright: true, Words: p.trade(needed)}}
	p.Drawings = append(p.Drawings, Drawing{
		Title: "The pieces on the cloth",
		Desc:  fmt.Sprintf("To scale: %s in %s on cloth %s wide, %s long.", plural(len(layout), "piece"), plural(rows(layout), "row"), p.trade(y.Cloth.Is), p.trade(needed)),
		Draw:  func(w draw.Words) template.HTML { fig.Words = w; return draw.DrawFigure(fig) },
	})
}
