package room

import (
	"slices"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// option works out what each seam gives at each measure, and how wide panels are.
func (pr *problem) option(open, panels []bool) Option {
	var o Option
	at := make([]int, len(pr.seams)) // places in o.Seams and o.Panels
	panelAt := make([]int, len(pr.seams))
	for i, s := range pr.seams {
		if !open[i] {
			continue
		}
		at[i] = len(o.Seams)
		o.Seams = append(o.Seams, Change{Seam: s.Name, Count: pr.many(i), Side: pr.sides[i], Piped: s.Piped})
		if panels[i] {
			panelAt[i] = len(o.Panels)
			o.Panels = append(o.Panels, pr.panel(i))
		}
	}
	for k := range pr.needs {
		each, missing := pr.give(k, open)
		o.Largest = max(o.Largest, each)
		var times quantity.Length
		for _, s := range pr.shares[k] {
			if !open[s.seam] {
				continue
			}
			if by := min(each, s.each); by > 0 {
				levels := &o.Seams[at[s.seam]].Levels
				*levels = append(*levels, Edge{s.level.Point, s.level.Edges, by, s.level.Now, s.level.Now - by})
			}
			if panels[s.seam] {
				times += s.edges / 2
			}
		}
		for _, s := range pr.shares[k] {
			if panels[s.seam] {
				panel := &o.Panels[panelAt[s.seam]]
				panel.Slight = panel.Slight && missing <= pr.needs[k].Error
				panel.at(s.level.Point).Width = pr.in.up((missing + times - 1) / times)
			}
		}
	}
	o.Way = pr.in.Garment.WayTo(pr.targets(nil, open)...)
	for i, s := range pr.seams {
		if open[i] {
			o.Warnings = append(o.Warnings, blends(s, o.Seams[at[i]].Levels)...)
		}
	}
	return o
}

// panel returns a panel for a seam that is as yet no wider than nothing.
func (pr *problem) panel(i int) Panel {
	s, side := pr.seams[i], pr.sides[i]
	p := Panel{Seam: s.Name, Count: pr.many(i), Side: side, Slight: true}
	for _, l := range s.Levels {
		if side == measure.Both || l.Point.Side == measure.Both || l.Point.Side == side {
			p.Widths = append(p.Widths, Width{Point: l.Point, Times: l.Edges / 2, At: l.At, Placed: l.Placed})
		}
	}
	slices.SortStableFunc(p.Widths, byHeight)
	return p
}

// at returns the width at a measure that the panel's seam crosses.
func (p *Panel) at(point measure.Point) *Width {
	i := slices.IndexFunc(p.Widths, func(w Width) bool { return w.Point == point })
	return &p.Widths[i]
}
