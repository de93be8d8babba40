package worksheet

import (
	"math"

	"hussif/content/quantity"
)

// CircleSkirt is a skirt cut as a circle or a part of one.
type CircleSkirt struct {
	Part      Choice
	Waist     Length
	Ease      Length
	Radius    Length
	Long      Length
	Hem       Length
	Allowance Length
	Cloth     Length
}

// parts of a circle, in the order of the choice.
var parts = [...]float64{1, 0.75, 0.5, 1.0 / 3, 0.25}

// About implements [Sheet].
func (*CircleSkirt) About() About {
	return About{
		Name: "circle skirt", Also: []string{"circular skirt", "half-circle skirt", "quarter-circle skirt"},
		Short:   "the radius of a full or part-circle skirt, and how it lies on the cloth",
		Long:    "Give the part of a circle and the waist, or two of part, waist and radius. With the length it says whether the pieces lie on the width of the cloth, and into how many the skirt is cut where one is too wide. The radius is that of the seam; the cutting line lies the allowance inside it.",
		Example: "part: half\nwaist: 26 in\nlength: 27 in\ncloth width: 54 in",
		Formula: "radius = (waist + ease) ÷ (2π × part)",
		Source:  "geometry of the circle: circumference = 2π × radius",
		Care:    "Let the skirt hang a day before levelling the hem: the bias parts drop (common practice). Cut away from your hand, and close a rotary cutter each time you lay it down.",
	}
}

// Inputs implements [Sheet].
func (c *CircleSkirt) Inputs() []Input {
	return []Input{
		{Name: "part", Doc: "which part of a circle", Into: c.Part.of("full|whole|1", "three quarter|three quarters|3/4", "half|1/2", "third|1/3", "quarter|1/4"), Need: Solved, Example: "half"},
		{Name: "waist", Doc: "the girth that the waist seam goes round", Into: c.Waist.upTo(10 * quantity.Metre), Need: Solved, Example: "26 in"},
		{Name: "ease", Doc: "added to the waist", Into: c.Ease.orNothing().upTo(quantity.Metre), Default: "0 in", Metric: "0 cm", Example: "1/2 in"},
		{Name: "radius", Doc: "radius of the waist seam", Into: c.Radius.upTo(10 * quantity.Metre), Need: Solved, Example: "8 1/4 in"},
		{Name: "length", Doc: "finished length from the waist seam", Into: c.Long.upTo(5 * quantity.Metre), Example: "27 in"},
		{Name: "hem", Doc: "hem allowance", Into: c.Hem.orNothing().upTo(quantity.Metre), Default: "1/2 in", Metric: "1.2 cm", With: "length", Example: "1/2 in"},
		{Name: "allowance", Doc: "seam allowance at the waist and on the straight edges", Into: c.Allowance.orNothing().upTo(quantity.Metre), Default: "1/2 in", Metric: "1.2 cm", Example: "1/2 in"},
		{Name: "cloth width", Doc: "usable width of the cloth, without selvedges", Into: c.Cloth.upTo(10 * quantity.Metre), Example: "54 in"},
	}
}

// Solve implements [Sheet].
func (c *CircleSkirt) Solve(p *Paper) {
	part := parts[c.Part.Is]
	round := float64(c.Waist.Is + c.Ease.Is)
	switch {
	case c.Part.Known && c.Waist.Known:
		r := rounded(round / (2 * math.Pi * part))
		if c.Radius.Known && !p.agree("radius", c.Radius.Is, r, 1, "%s of a circle round %s", c.partWords(part), p.exact(quantity.Length(round))) {
			return
		}
		c.Radius.set(r)
	case c.Part.Known && c.Radius.Known:
		round = 2 * math.Pi * part * float64(c.Radius.Is)
		if c.Waist.set(rounded(round) - c.Ease.Is); c.Waist.Is <= 0 {
			p.fault("ease", "the ease alone is more than goes round this radius")
			return
		}
	case c.Waist.Known && c.Radius.Known:
		if part = round / (2 * math.Pi * float64(c.Radius.Is)); part > 1 {
			p.fault("radius", "%s is more than a whole circle of this radius goes round, which is %s", p.exact(quantity.Length(round)), p.exact(rounded(2*math.Pi*float64(c.Radius.Is))))
			return
		}
	default:
		var missing []string
		for _, in := range c.Inputs() {
			if in.Need == Solved && !in.Into.given() {
				missing = append(missing, in.Name)
			}
		}
		p.wants("two of part, waist and radius have to be known", missing...)
		return
	}
	cutRadius := c.Radius.Is - c.Allowance.Is
	if cutRadius <= 0 {
		p.fault("allowance", "the allowance is more than the radius of the waist, %s", p.exact(c.Radius.Is))
		return
	}
	p.line("radius = (waist + ease) ÷ (2π × part)", p.exact(c.Radius.Is), "(%s + %s) ÷ (6.2832 × %s)", p.exact(c.Waist.Is), p.exact(c.Ease.Is), plainNumber(part))
	p.say("radius of the waist seam", c.Radius.Is)
	p.say("radius of the waist cut", cutRadius)
	p.number("part of a circle", part, c.partWords(part))
	p.say("waist", c.Waist.Is)
	p.main("radius of the waist seam")
	p.caution("a waist cut on the bias stretches: stay-stitch it or sew a tape to it before it is handled")
	if c.Long.Known {
		c.cloth(p, part, cutRadius)
	}
	c.draw(p, part)
}

func (c *CircleSkirt) partWords(part float64) string {
	if c.Part.Known {
		return c.Part.names()[c.Part.Is] + " circle"
	}
	return plainNumber(part) + " of a circle"
}

// cloth answers how the skirt lies on the cloth.
func (c *CircleSkirt) cloth(p *Paper, part float64, cutRadius quantity.Length) {
	outer := c.Radius.Is + c.Long.Is + c.Hem.Is
	p.line("outer radius = radius + length + hem", p.exact(outer), "%s + %s + %s", p.exact(c.Radius.Is), p.exact(c.Long.Is), p.exact(c.Hem.Is))
	p.say("radius of the hem cut", outer)
	hem := rounded(2 * math.Pi * part * float64(c.Radius.Is+c.Long.Is))
	p.line("hem = 2π × part × (radius + length)", p.exact(hem), "6.2832 × %s × (%s + %s)", plainNumber(part), p.exact(c.Radius.Is), p.exact(c.Long.Is))
	p.say("hem round", hem)
	if !c.Cloth.Known {
		wide, _ := sectorOn(part, float64(outer), float64(cutRadius), float64(c.Allowance.Is))
		p.say("width that one piece takes", rounded(wide))
		return
	}
	pieces := 0
	var wide, long float64
	for n := 1; n <= 24; n++ {
		wide, long = sectorOn(part/float64(n), float64(outer), float64(cutRadius), float64(c.Allowance.Is))
		if rounded(wide) <= c.Cloth.Is {
			pieces = n
			break
		}
	}
	if pieces == 0 {
		p.fault("cloth width", "no piece of this skirt lies on cloth %s wide", p.exact(c.Cloth.Is))
		return
	}
	p.count("pieces", pieces)
	p.say("width that each piece takes", rounded(wide))
	p.say("length that each piece takes", rounded(long))
	total := rounded(long) * quantity.Length(pieces)
	p.say("cloth, piece after piece", total)
	p.main("radius of the waist seam", "radius of the hem cut", "pieces", "cloth, piece after piece")
	if pieces == 1 {
		p.cut("cut it in one piece, one straight edge along the selvedge")
	} else {
		p.cut("cut %d pieces, each %s, one straight edge of each along the selvedge", pieces, c.angle(part/float64(pieces)))
	}
	p.cut("draw the waist with a radius of %s and the hem with %s from one point", p.trade(cutRadius), p.trade(outer))
	p.caution("laid head to tail the pieces may take less than %s: try it on paper first", p.f.Amount(quantity.Amount{Kind: quantity.ByLength, Length: total}))
}

func (c *CircleSkirt) angle(part float64) string {
	return plainNumber(360*part) + " degrees of the circle"
}

// sectorOn returns the width and the length of cloth that a ring's sector takes with
// one straight edge along the selvedge and an allowance along both straight edges.
// part is that of a whole circle.
func sectorOn(part, outer, inner, allowance float64) (wide, long float64) {
	if part >= 1 {
		return 2 * outer, 2 * outer
	}
	angle := 2 * math.Pi * part
	// The edge lies along Y from the centre down, the sector turns away from it.
	switch {
	case angle <= math.Pi/2:
		wide, long = outer*math.Sin(angle), outer-inner*math.Cos(angle)
	case angle <= math.Pi:
		wide, long = outer, outer-outer*math.Cos(angle)
	case angle <= 3*math.Pi/2:
		wide, long = outer-outer*math.Sin(angle), 2*outer
	default:
		wide, long = 2*outer, 2*outer
	}
	// An allowance beside each straight edge adds no more than itself each way.
	return wide + 2*allowance, long + allowance
}
