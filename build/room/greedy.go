package room

import (
	"cmp"

	"hussif/content/quantity"
)

// greedy meets one need after the other, those first that want a panel. At each
// it opens the seam that adds least to the way in until they give enough.
func (pr *problem) greedy() (open, panels []bool) {
	open, panels = make([]bool, len(pr.seams)), make([]bool, len(pr.seams))
	all := pr.all()
	for k := range pr.needs {
		if _, missing := pr.give(k, all); missing == 0 || pr.crossedBy(k, panels) {
			continue
		}
		s := pr.next(k, panels, open, func(s share) quantity.Length { return -quantity.Length(pr.many(s.seam)) })
		open[s], panels[s] = true, true
	}
	for k := range pr.needs {
		for !pr.crossedBy(k, panels) {
			if _, missing := pr.give(k, open); missing == 0 {
				break
			}
			open[pr.next(k, open, open, func(s share) quantity.Length { return min(s.each, 1) })] = true
		}
	}
	return open, panels
}

// crossedBy reports whether any of some seams crosses a need.
func (pr *problem) crossedBy(need int, of []bool) bool {
	for _, s := range pr.shares[need] {
		if of[s.seam] {
			return true
		}
	}
	return false
}

// next returns the best seam across a need that is not taken: the most by rank,
// then what adds least to the way in, then what has most to give, then by name.
func (pr *problem) next(need int, taken, open []bool, rank func(share) quantity.Length) int {
	best := -1
	var bestCost cost
	var bestShare share
	for _, s := range pr.shares[need] {
		if taken[s.seam] {
			continue
		}
		was := open[s.seam]
		open[s.seam] = true
		c := pr.cost(open)
		open[s.seam] = was
		if best < 0 || cmp.Or(cmp.Compare(rank(bestShare), rank(s)), c.compare(bestCost),
			cmp.Compare(bestShare.edges*bestShare.each, s.edges*s.each), cmp.Compare(s.seam, best)) < 0 {
			best, bestCost, bestShare = s.seam, c, s
		}
	}
	return best
}
