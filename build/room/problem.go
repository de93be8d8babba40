package room

import (
	"cmp"
	"slices"

	"hussif/build/wayin"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A problem is an Input without what closings meet, and without what cannot be
// met.
type problem struct {
	in      Input
	needs   []Need
	shares  [][]share      // by need, those with least to give on each edge first
	seams   []*Seam        // that cross any need, by name
	sides   []measure.Side // on which each is opened: one, where all that it crosses of the needs is there
	byHours bool
}

func newProblem(in Input) *problem { return &problem{in: in} }

// add adds a need, or says why no seam can meet it.
func (pr *problem) add(n Need) string {
	var shares []share
	why := "no seam crosses the " + n.Point.String()
	for i := range pr.in.Seams {
		s := &pr.in.Seams[i]
		for k := range s.Levels {
			l := &s.Levels[k]
			if l.Point != n.Point {
				continue
			}
			if l.Edges == 0 {
				why = "of the seam " + s.Name + ": " + l.Why
				continue
			}
			shares = append(shares, share{i, l, pr.in.down(l.Each()), quantity.Length(l.Edges)})
		}
	}
	if len(shares) == 0 {
		return why
	}
	pr.needs = append(pr.needs, n)
	pr.shares = append(pr.shares, shares)
	return ""
}

// gatherSeams lists the seams that cross any need.
func (pr *problem) gatherSeams() {
	var used []int
	for _, shares := range pr.shares {
		for _, s := range shares {
			if !slices.Contains(used, s.seam) {
				used = append(used, s.seam)
			}
		}
	}
	slices.SortFunc(used, func(a, b int) int {
		return cmp.Or(cmp.Compare(pr.in.Seams[a].Name, pr.in.Seams[b].Name), cmp.Compare(a, b))
	})
	for _, i := range used {
		pr.seams = append(pr.seams, &pr.in.Seams[i])
	}
	for _, shares := range pr.shares {
		for k := range shares {
			shares[k].seam = slices.Index(used, shares[k].seam)
		}
		slices.SortFunc(shares, func(a, b share) int {
			return cmp.Or(cmp.Compare(a.each, b.each), cmp.Compare(a.seam, b.seam))
		})
	}
	pr.findSides()
	load := pr.load(pr.all())
	pr.byHours = load.Opening.Known && load.Sewing.Known
}

// findSides finds the seams of which half need not be opened: one of a pair of
// sleeves, where the other one fits.
func (pr *problem) findSides() {
	pr.sides = make([]measure.Side, len(pr.seams))
	whole := make([]bool, len(pr.seams))
	for _, shares := range pr.shares {
		for _, s := range shares {
			side, seam := s.level.Point.Side, pr.seams[s.seam]
			shared := seam.Count%2 == 0 && s.level.Edges == seam.Count
			if side == measure.Both || !shared || pr.sides[s.seam] != measure.Both && pr.sides[s.seam] != side {
				whole[s.seam] = true
			}
			pr.sides[s.seam] = side
		}
	}
	for i := range whole {
		if whole[i] {
			pr.sides[i] = measure.Both
		}
	}
}

// all returns that all seams are opened.
func (pr *problem) all() []bool {
	all := make([]bool, len(pr.seams))
	for i := range all {
		all[i] = true
	}
	return all
}

// many returns how many of a set of equal seams are opened.
func (pr *problem) many(i int) int {
	if pr.sides[i] != measure.Both {
		return pr.seams[i].Count / 2
	}
	return pr.seams[i].Count
}

// targets returns what has to be reached to open some seams.
func (pr *problem) targets(few []wayin.Target, open []bool) []wayin.Target {
	for i, s := range pr.seams {
		if open[i] {
			few = append(few, wayin.Target{Entry: s.Entry, Side: pr.sides[i]})
		}
	}
	return few
}

// load returns how much there is to do to open some seams.
func (pr *problem) load(open []bool) wayin.Load {
	var few [mostTried]wayin.Target
	return pr.in.Garment.Load(pr.targets(few[:0], open)...)
}

// A cost is what ways in are compared by.
type cost struct {
	unknown int   // seams of unknown length, where hours are not compared
	work    int64 // nanoseconds or nanometres
}

func (pr *problem) cost(open []bool) cost {
	l := pr.load(open)
	if pr.byHours {
		return cost{0, int64(l.Opening.For + l.Sewing.For)}
	}
	return cost{l.Unknown, int64(l.Length)}
}

func (c cost) compare(other cost) int {
	return cmp.Or(cmp.Compare(c.unknown, other.unknown), cmp.Compare(c.work, other.work))
}

// near reports whether a way in is no more than a fifth longer than the best.
func (c cost) near(best cost) bool { return c.unknown == best.unknown && 5*c.work <= 6*best.work }
