package room

import (
	"cmp"
	"slices"

	"hussif/build/wayin"
	"hussif/content/quantity"
)

// A problem is an Input without what closings meet, and without what cannot be
// met.
type problem struct {
	in      Input
	needs   []Need
	shares  [][]share // by need, those with least to give on each edge first
	seams   []*Seam   // that cross any need, by name
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
			shares = append(shares, share{i, l, l.Each(), quantity.Length(l.Edges)})
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
	all := make([]bool, len(pr.seams))
	for i := range all {
		all[i] = true
	}
	load := pr.load(all)
	pr.byHours = load.Opening.Known && load.Sewing.Known
}

// load returns how much there is to do to open some seams.
func (pr *problem) load(open []bool) wayin.Load {
	var few [mostTried]int
	entries := few[:0]
	for i, s := range pr.seams {
		if open[i] {
			entries = append(entries, s.Entry)
		}
	}
	return pr.in.Garment.Load(entries...)
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
