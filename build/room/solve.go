package room

import (
	"cmp"
	"slices"

	"hussif/content/quantity"
)

// Solve finds the plans of least work; see the package comment.
func Solve(in Input) Plan {
	p := solve(in)
	if len(p.Beyond) > 0 && in.Step > 0 {
		// No panel is cut for what is less than can be marked.
		in.exact = true
		if exact := solve(in); len(exact.Beyond) == 0 {
			return exact
		}
	}
	return p
}

func solve(in Input) Plan {
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
		choices, next := pr.choose()
		p.tell(pr, choices)
		if next != nil {
			o := pr.option(pr.sets(*next))
			p.Next = &o
		}
	}
	p.Beyond = pr.beyond()
	return p
}

// tell makes options of choices, one of each tie, and counts those beyond what is
// shown.
func (p *Plan) tell(pr *problem, choices []choice) {
	for i, c := range choices {
		tied := i > 0 && c.ties(choices[i-1])
		last := len(p.Options) - 1
		switch {
		case tied && len(p.Options[last].Or) < shown && p.Others == 0:
			p.Options[last].Or = append(p.Options[last].Or, pr.names(c))
		case tied || len(p.Options) == shown:
			p.Others++
		default:
			p.Options = append(p.Options, pr.option(pr.sets(c)))
		}
	}
}

// beyond returns what the needs ask for that all seams together cannot give.
func (pr *problem) beyond() []Need {
	var out []Need
	all := pr.all()
	for k, n := range pr.needs {
		if _, missing := pr.give(k, all); missing > 0 {
			out = append(out, Need{n.Point, missing, n.Error})
		}
	}
	return out
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
			by := min(p.down(c.Room()), p.up(n.By))
			if by > 0 && c.crosses(n.Point) && !c.inFit(n.Point) {
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

// A share is what a seam has at a need.
type share struct {
	seam  int // in the problem's list
	level *Level
	each  quantity.Length // most that each edge can give
	edges quantity.Length
}

// give divides what is needed at a measure by the edges of the seams that are
// open and cross it. Each edge gives the least of what is returned and of what it
// can; missing is what they cannot give all together. Where they can, what each
// gives is rounded up to what can be marked.
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
			return pr.in.up(each), 0
		}
		rest -= s.edges * s.each
		edges -= s.edges
		each = s.each
	}
	return each, rest
}
