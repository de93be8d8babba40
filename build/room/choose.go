package room

import (
	"cmp"
	"math/bits"
	"slices"

	"hussif/content/quantity"
)

// A set is some seams of a problem, a bit each.
type set uint16

// A choice is which seams are opened, and which of these take panels.
type choice struct {
	open, panels set
	cost         cost
	seams        int // how many are opened, all of each count
	largest      quantity.Length
}

// A trial knows of every selection of seams what it can meet.
type trial struct {
	*problem
	met    []uint64 // needs that the seams of a set can meet, a bit each
	cross  []uint64 // needs that they cross, and could meet with panels
	useful set      // seams that have anything to give
	all    uint64   // the needs
	costs  []cost   // of the ways in, as far as worked out
	costed []bool
}

// ties reports whether two choices differ in nothing that they are put in order by
// but the names of their seams.
func (c choice) ties(other choice) bool {
	return c.cost == other.cost && c.seams == other.seams && c.largest == other.largest
}

// compare puts the better choice first.
func (c choice) compare(other choice) int {
	return cmp.Or(c.cost.compare(other.cost), cmp.Compare(c.seams, other.seams), cmp.Compare(c.largest, other.largest),
		c.open.compare(other.open), c.panels.compare(other.panels))
}

// choose returns the choices with the fewest panels whose way in is near the
// least, best first; and, or nil, the best of those with a longer one that do not
// open all that the best choice does and more.
func (pr *problem) choose() (choices []choice, next *choice) {
	t := pr.try()
	var best cost
	found := false
	panels := t.fewestPanels()
	t.visit(panels, func(open, _ set) {
		if c := t.cost(open); !found || c.compare(best) < 0 {
			best, found = c, true
		}
	})
	t.visit(panels, func(open, panels set) {
		if c := t.cost(open); c.near(best) {
			choices = append(choices, choice{open, panels, c, t.count(open), t.largest(open)})
		}
	})
	slices.SortFunc(choices, choice.compare)
	first := choices[0].open
	t.visit(panels, func(open, panels set) {
		c := choice{open: open, panels: panels, cost: t.cost(open)}
		if c.cost.near(best) || first&^open == 0 || next != nil && c.cost.compare(next.cost) > 0 {
			return
		}
		c.seams, c.largest = t.count(open), t.largest(open)
		if next == nil || c.compare(*next) < 0 {
			next = &c
		}
	})
	return choices, next
}

func (pr *problem) try() *trial {
	sets := 1 << len(pr.seams)
	t := &trial{
		problem: pr, all: 1<<len(pr.needs) - 1,
		met: make([]uint64, sets), cross: make([]uint64, sets),
		costs: make([]cost, sets), costed: make([]bool, sets),
	}
	room := make([]quantity.Length, sets)
	for k, shares := range pr.shares {
		var of [mostTried]quantity.Length
		var crossing set
		for _, s := range shares {
			of[s.seam] += s.edges * s.each
			crossing |= 1 << s.seam
			if s.each > 0 {
				t.useful |= 1 << s.seam
			}
		}
		for s := 1; s < sets; s++ {
			room[s] = room[s&(s-1)] + of[bits.TrailingZeros(uint(s))]
			if room[s] >= pr.needs[k].By {
				t.met[s] |= 1 << k
			}
			if set(s)&crossing != 0 {
				t.cross[s] |= 1 << k
			}
		}
	}
	return t
}

// fewestPanels returns the sets of seams that, with panels in them, meet what all
// seams together cannot, and ask for as few panels as can be.
func (t *trial) fewestPanels() []set {
	must := t.all &^ t.met[len(t.met)-1]
	var fewest []set
	least := 0
	for s := range t.cross {
		if must&^t.cross[s] != 0 {
			continue
		}
		n := t.count(set(s))
		if len(fewest) == 0 || n < least {
			fewest, least = fewest[:0], n
		}
		if n == least {
			fewest = append(fewest, set(s))
		}
	}
	return fewest
}

// visit calls yield with all choices that meet every need and open no seam for
// nothing.
func (t *trial) visit(panels []set, yield func(open, panels set)) {
	everything := set(len(t.met) - 1)
	for _, p := range panels {
		others := t.useful &^ p & everything
		for more := others; ; more = (more - 1) & others {
			if open := p | more; t.met[open]|t.cross[p] == t.all {
				yield(open, p)
			}
			if more == 0 {
				break
			}
		}
	}
}

func (t *trial) cost(open set) cost {
	if !t.costed[open] {
		var in [mostTried]bool
		t.costs[open], t.costed[open] = t.problem.cost(t.members(open, &in)), true
	}
	return t.costs[open]
}

// largest returns the largest change of allowance on any edge.
func (t *trial) largest(open set) quantity.Length {
	var in [mostTried]bool
	members := t.members(open, &in)
	var most quantity.Length
	for k := range t.needs {
		each, _ := t.give(k, members)
		most = max(most, each)
	}
	return most
}

// members fills in with the seams of a set.
func (pr *problem) members(s set, in *[mostTried]bool) []bool {
	for i := range pr.seams {
		in[i] = s&(1<<i) != 0
	}
	return in[:len(pr.seams)]
}

// sets returns which seams a choice opens, and which take panels.
func (pr *problem) sets(c choice) (open, panels []bool) {
	var a, b [mostTried]bool
	return pr.members(c.open, &a), pr.members(c.panels, &b)
}

// names says which seams a choice opens and which take panels: "back and side, with
// panels in side".
func (pr *problem) names(c choice) string {
	open, panels := pr.sets(c)
	var opened, let []string
	for i, s := range pr.seams {
		if open[i] {
			opened = append(opened, s.Name)
		}
		if panels[i] {
			let = append(let, s.Name)
		}
	}
	if let == nil {
		return list(opened)
	}
	return list(opened) + ", with panels in " + list(let)
}

// count returns how many seams there are in a set, all that are opened of each.
func (pr *problem) count(s set) int {
	n := 0
	for i := range pr.seams {
		if s&(1<<i) != 0 {
			n += pr.many(i)
		}
	}
	return n
}

// compare puts first the set with the first name that is not in both.
func (s set) compare(other set) int {
	return cmp.Compare(bits.Reverse16(uint16(other)), bits.Reverse16(uint16(s)))
}
