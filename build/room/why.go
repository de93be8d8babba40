package room

import (
	"fmt"
	"strings"

	"hussif/content/quantity"
)

// Why says in a sentence, without a full stop, why an option stands where it does:
// of the first why panels are needed, if they are, and by what it is better than the
// next; of the others by how much they are worse than the first.
func (p Plan) Why(option int, f quantity.Format) string {
	o := p.Options[option]
	var said []string
	switch {
	case option > 0:
		said = append(said, p.worse(p.Options[0], o, f))
	case p.Greedy:
		said = append(said, p.panelled(f)...)
		said = append(said, "there are too many seams to try all together, so each measure was met by itself")
	case len(p.Options) > 1:
		said = append(said, p.panelled(f)...)
		said = append(said, p.better(o, p.Options[1], f)+" than the next")
	case p.Next != nil:
		said = append(said, p.panelled(f)...)
		said = append(said, p.better(o, *p.Next, f)+" than the next best way, by "+p.Next.names())
	default:
		said = append(said, p.panelled(f)...)
		said = append(said, p.only(o)...)
	}
	if len(o.Or) > 0 {
		said = append(said, "comes to the same as "+either(o.Or)+" and stands first by name")
	}
	return strings.Join(said, "; ")
}

// panelled says why panels are needed; nothing where they are not.
func (p Plan) panelled(f quantity.Format) []string {
	var short []string
	for _, n := range p.Beyond {
		short = append(short, f.Finer().Length(n.By)+" too little at "+n.Point.String())
	}
	if short == nil {
		return nil
	}
	return []string{"a panel is needed, for all the seams together give " + list(short)}
}

// only says why there is no choice; nothing where there is one that comes to the same.
func (p Plan) only(o Option) []string {
	switch {
	case len(o.Or) > 0:
		return nil
	case len(p.Beyond) > 0:
		return []string{"there is no other way with as few panels"}
	case len(o.Seams) == 1:
		return []string{"no other seam gives enough"}
	}
	return []string{"no fewer seams give enough"}
}

// better says by what an option stands before another one.
func (p Plan) better(a, b Option, f quantity.Format) string {
	return p.compare(a, b, f, "less", "fewer")
}

// worse says by what an option stands behind the first.
func (p Plan) worse(first, o Option, f quantity.Format) string {
	return p.compare(first, o, f, "more", "more") + " than the first"
}

// compare says how two options differ in the first thing that they are put in order
// by, in the words of either.
func (p Plan) compare(a, b Option, f quantity.Format, less, fewer string) string {
	saved := b.Way.Opening.For + b.Way.Sewing.For - a.Way.Opening.For - a.Way.Sewing.For
	shorter := b.Way.Length - a.Way.Length
	switch {
	case p.ByHours && saved > 0 && quantity.FormatDuration(saved) == quantity.FormatDuration(0):
		return "takes a little " + less
	case p.ByHours && saved > 0:
		return "takes " + quantity.FormatDuration(saved) + " " + less
	case !p.ByHours && a.Way.Unknown != b.Way.Unknown:
		return "opens " + seams(b.Way.Unknown-a.Way.Unknown, fewer) + " of unknown length"
	case !p.ByHours && shorter > 0:
		return "opens " + some(shorter, f) + " " + less
	case a.count() != b.count():
		return "opens " + seams(b.count()-a.count(), fewer)
	}
	return "lets edges out " + some(b.Largest-a.Largest, f.Finer()) + " " + less
}

// some shows a length, or that it is too small to be shown.
func some(l quantity.Length, f quantity.Format) string {
	if f.Length(l) == f.Length(0) {
		return "a little"
	}
	return f.Length(l)
}

func seams(n int, fewer string) string {
	if n == 1 {
		return "1 " + fewer + " seam"
	}
	return fmt.Sprintf("%d %s seams", n, fewer)
}

// names says which seams an option opens.
func (o Option) names() string {
	var names []string
	for _, s := range o.Seams {
		names = append(names, s.Seam)
	}
	return list(names)
}

// either joins what comes to the same: "back", "any of: back; side and yoke".
func either(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	return "any of: " + strings.Join(names, "; ")
}
