package worksheet

import "hussif/content/quantity"

// A Thickness is how thick the cloth is, measured by itself or as a stack, which is
// the surer way: fold it until it can be read on a ruler.
type Thickness struct {
	Thickness Length
	Stack     Length
	Layers    Count
}

func (t *Thickness) inputs() []Input {
	return []Input{
		{Name: "thickness", Doc: "how thick one layer of the cloth is", Into: t.Thickness.upTo(5 * quantity.Centimetre), Example: "1/32 in"},
		{Name: "stack", Doc: "how high a stack of the cloth is, pressed as it will be sewn", Into: t.Stack.upTo(quantity.Metre), Example: "1/4 in"},
		{Name: "layers", Doc: "how many layers are in that stack", Into: t.Layers.from(1, 1000), Example: "8"},
	}
}

// of returns how thick one layer is, and whether that is known.
func (t *Thickness) of(p *Paper) (quantity.Length, bool) {
	switch {
	case t.Thickness.Known:
		return t.Thickness.Is, true
	case t.Stack.Known && t.Layers.Known:
		one := t.Stack.Is / quantity.Length(t.Layers.Is)
		p.line("thickness = stack ÷ layers", p.exact(one), "%s ÷ %d", p.exact(t.Stack.Is), t.Layers.Is)
		return one, true
	case t.Stack.Known:
		p.wants("a stack tells the thickness when its layers have been counted", "layers")
	case t.Layers.Known:
		p.wants("layers tell the thickness when they have been measured as a stack", "stack")
	}
	return 0, false
}

// underFoot is about as much as goes under the presser foot of a machine for the
// home, pressed together: 6 mm (from memory; makers give 5 to 10 mm).
const underFoot = 6 * quantity.Millimetre

// bulk answers how thick so many layers are, and warns where no machine takes them.
func (p *Paper) bulk(layers int, one quantity.Length) {
	stack := one * quantity.Length(layers)
	p.line("bulk = layers × thickness", p.exact(stack), "%d × %s", layers, p.exact(one))
	p.say("bulk at the thickest", stack)
	if stack > underFoot {
		p.caution("%s is thicker than the needle plate and the foot of most machines will take: sew this edge by hand, or less deep", p.trade(stack))
	}
}
