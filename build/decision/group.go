package decision

import (
	"cmp"
	"slices"

	"hussif/content/journal"
	"hussif/content/near"
)

// A Group is the decisions about one thing, newest first.
type Group struct {
	Name      string
	ID        journal.ID // empty for a kind of garment and for an outcome
	Decisions []Decision
}

// ByGarment groups the decisions by kind of garment. Groups go by name; a decision
// about several stands in several, and one about none in none.
func (l List) ByGarment() []Group {
	return byName(group(l.All, func(d Decision) []string { return d.Garments },
		func(garment string) Group { return Group{Name: garment} }))
}

// ByTechnique groups the decisions by technique, likewise.
func (l List) ByTechnique() []Group {
	return byName(group(l.All, func(d Decision) []journal.ID { return d.Techniques },
		func(id journal.ID) Group { return Group{Name: l.titles[id], ID: id} }))
}

// Unjudged is the group of the decisions of which nothing has been said since.
const Unjudged = "not yet known"

// ByOutcome groups the decisions by how they turned out in the end: kept, changed,
// regretted, and last those of which nothing has been said.
func (l List) ByOutcome() []Group {
	groups := group(l.All, func(d Decision) []string {
		if o, ok := d.Outcome(); ok {
			return []string{string(o.How)}
		}
		return []string{Unjudged}
	}, func(how string) Group { return Group{Name: how} })
	order := []string{string(journal.Kept), string(journal.Changed), string(journal.Regretted), Unjudged}
	slices.SortFunc(groups, func(a, b Group) int {
		return cmp.Compare(slices.Index(order, a.Name), slices.Index(order, b.Name))
	})
	return groups
}

func group[K comparable](all []Decision, keys func(Decision) []K, begin func(K) Group) []Group {
	var groups []Group
	at := make(map[K]int)
	for _, d := range all {
		for _, key := range keys(d) {
			i, ok := at[key]
			if !ok {
				i = len(groups)
				at[key] = i
				groups = append(groups, begin(key))
			}
			groups[i].Decisions = append(groups[i].Decisions, d)
		}
	}
	return groups
}

func byName(groups []Group) []Group {
	slices.SortFunc(groups, func(a, b Group) int {
		return cmp.Or(cmp.Compare(near.Folded(a.Name), near.Folded(b.Name)), cmp.Compare(a.ID, b.ID))
	})
	return groups
}

// For returns the decisions that bear on a record, newest first: those written in
// it or about it, for a build those of its notes, for a pattern, technique or
// person those of the builds that have it, and for a reference, material or note
// those that rest on it.
func (l List) For(id journal.ID) []Decision {
	var found []Decision
	for _, at := range l.bearing[id] {
		found = append(found, l.All[at])
	}
	return found
}

// index notes which decisions bear on each record, since every page asks.
func (l *List) index(j *journal.Journal) {
	l.bearing = make(map[journal.ID][]int)
	for at, d := range l.All {
		ids := slices.Concat([]journal.ID{d.From, d.Build}, d.Wearers, d.Patterns, d.Techniques, d.Others)
		for _, ref := range d.RestsOn {
			if r, ok := j.Find(ref.To); ok {
				ids = append(ids, r.Head().ID)
			}
		}
		for _, id := range ids {
			if seen := l.bearing[id]; id != "" && (len(seen) == 0 || seen[len(seen)-1] != at) {
				l.bearing[id] = append(seen, at)
			}
		}
	}
}
