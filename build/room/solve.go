package room

import (
	"cmp"
	"slices"

	"hussif/content/quantity"
)

// Solve finds the plans of least work; see the package comment.
func Solve(in Input) Plan {
	p := Plan{Input: in}
	rest := p.close()
	pr := newProblem(in)
	for _, n := range rest {
		if n.By <= 0 {
			continue
		}
		if why := pr.add(n); why != "" {
			p.Unmet = append(p.Unmet, Unmet{n, why})
		}
	}
	pr.gatherSeams()
	p.ByHours = pr.byHours
	switch {
	case len(pr.needs) == 0:
	case len(pr.seams) > mostTried || len(pr.needs) > 64:
		p.Greedy = true
		p.Options = []Option{pr.option(pr.greedy())}
	default:
		choices := pr.choose()
		p.Others = max(0, len(choices)-shown)
		for _, c := range choices[:len(choices)-p.Others] {
			p.Options = append(p.Options, pr.option(pr.sets(c)))
		}
	}
	return p
}

// mostTried is the most seams of which all selections are tried.
const mostTried = 12

// close moves closings as far as they are needed and returns what is still
// short. Where several could be moved, one that is moved anyhow goes first, then
// that with the most to give, then by name.
func (p *Plan) close() []Need {
	rest := slices.Clone(p.Needs)
	moved := make([]Move, len(p.Closures))
	order := make([]int, len(p.Closures))
	for i := range order {
		order[i] = i
	}
	for k := range rest {
		n := &rest[k]
		slices.SortFunc(order, func(a, b int) int {
			return cmp.Or(cmp.Compare(min(len(moved[b].Levels), 1), min(len(moved[a].Levels), 1)),
				cmp.Compare(p.Closures[b].Room(), p.Closures[a].Room()),
				cmp.Compare(p.Closures[a].Name, p.Closures[b].Name), cmp.Compare(a, b))
		})
		for _, i := range order {
			c := &p.Closures[i]
			if by := min(c.Room(), n.By); by > 0 && c.crosses(*n) {
				n.By -= by
				moved[i].Levels = append(moved[i].Levels, Lapped{n.Point, by, c.Overlap - by})
			}
		}
	}
	for i, m := range moved {
		if len(m.Levels) > 0 {
			m.Closure = p.Closures[i].Name
			p.Moves = append(p.Moves, m)
		}
	}
	return rest
}

func (c *Closure) crosses(n Need) bool {
	for _, p := range c.Crosses {
		if covers(p, n.Point) {
			return true
		}
	}
	return false
}

// A share is what a seam has at a need.
type share struct {
	seam  int // in the problem's list
	level *Level
	each  quantity.Length // most that each edge can give
	edges quantity.Length
}

// give divides what is needed at a measure by the edges of the seams that are
// open and cross it. Each edge gives the least of what is returned and of what it
// can; missing is what they cannot give all together.
func (pr *problem) give(need int, open []bool) (each, missing quantity.Length) {
	var edges quantity.Length
	for _, s := range pr.shares[need] {
		if open[s.seam] {
			edges += s.edges
		}
	}
	rest := pr.needs[need].By
	for _, s := range pr.shares[need] { // those with least to give first
		if !open[s.seam] {
			continue
		}
		if each = (rest + edges - 1) / edges; s.each >= each {
			return each, 0
		}
		rest -= s.edges * s.each
		edges -= s.edges
		each = s.each
	}
	return each, rest
}
