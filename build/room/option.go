package room

import (
	"slices"

	"hussif/content/quantity"
)

// option works out what each seam gives at each measure, and how wide panels are.
func (pr *problem) option(open, panels []bool) Option {
	var o Option
	var names []string
	at := make([]int, len(pr.seams)) // places in o.Seams and o.Panels
	panelAt := make([]int, len(pr.seams))
	for i, s := range pr.seams {
		if !open[i] {
			continue
		}
		names = append(names, s.Name)
		at[i] = len(o.Seams)
		o.Seams = append(o.Seams, Change{Seam: s.Name, Count: s.Count, Piped: s.Piped})
		if panels[i] {
			panelAt[i] = len(o.Panels)
			o.Panels = append(o.Panels, Panel{Seam: s.Name, Count: s.Count, Slight: true})
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
				panel.Widths = append(panel.Widths, Width{
					Point: s.level.Point, Width: (missing + times - 1) / times, Times: s.level.Edges / 2,
					At: s.level.At, Placed: s.level.Placed,
				})
			}
		}
	}
	o.Way = pr.in.Garment.Way(names...)
	for i, s := range pr.seams {
		if open[i] {
			o.Warnings = append(o.Warnings, blends(s, o.Seams[at[i]].Levels)...)
		}
	}
	for i := range o.Panels {
		slices.SortStableFunc(o.Panels[i].Widths, byHeight)
	}
	return o
}
