package evidence

import (
	"slices"
	"strings"
	"unicode"

	"hussif/content/journal"
	"hussif/content/near"
)

// Unshown returns the references that the claim rests on though they do not say
// that they show the feature. A stated departure may rest on what lacks it.
func (c Claim) Unshown() []Rest {
	var found []Rest
	for _, r := range c.RestsOn {
		doubtful := r.Says == Silent || r.Says == Lacks || r.Says == Disputes
		if doubtful && !(c.Verdict == Departure && r.Says == Lacks) {
			found = append(found, r)
		}
	}
	return found
}

// Unfounded reports whether no dated reference shows the feature or speaks against
// it, and the claim does not say that it departs.
func (c Claim) Unfounded() bool { return c.Verdict == WithoutEvidence }

// Undated returns the references that speak of features but have no date, nor has
// any other page of their object, so that they cannot be counted.
func (b *Book) Undated() []*journal.Reference {
	var found []*journal.Reference
	for _, o := range b.objects {
		for _, r := range o.References {
			if o.Date.IsZero() && len(r.Shows)+len(r.Lacks) > 0 {
				found = append(found, r)
			}
		}
	}
	return found
}

// SameObjects returns the objects that several references are about.
func (b *Book) SameObjects() []*Object {
	var found []*Object
	for _, o := range b.objects {
		if len(o.References) > 1 {
			found = append(found, o)
		}
	}
	return found
}

// A Misspelling is a name that one page alone uses for a feature while a name
// almost the same is there.
type Misspelling struct {
	Use  Use
	Near []string // names that may be meant
}

// Misspelt returns the names of features that are likely slips of the pen for
// others: one word of the name is off by as much as package near allows, or the
// words are set apart or hyphened differently. Of two such names that are as rare
// the one that no reference has is doubted, or else the later in the alphabet;
// names that differ by a figure are not.
func (b *Book) Misspelt() []Misspelling {
	alike := make(map[string][]int)
	for i, f := range b.Features {
		for _, key := range likenesses(f.Name) {
			alike[key.rest] = append(alike[key.rest], i)
		}
	}
	var found []Misspelling
	for i, f := range b.Features {
		if pages(f) > 1 {
			continue
		}
		var names []string
		for _, key := range likenesses(f.Name) {
			for _, k := range alike[key.rest] {
				g := b.Features[k]
				if k != i && likelier(g, f) && key.near(g.Name) && !slices.Contains(names, g.Name) {
					names = append(names, g.Name)
				}
			}
		}
		if len(names) > 0 {
			found = append(found, Misspelling{f.Uses[0], names})
		}
	}
	return found
}

// A likeness is what two names share that differ in one word, or in nothing but
// how their words are set apart.
type likeness struct {
	rest string // equal for both
	word string // the word in which they may differ; empty for the second kind
	at   int    // its place
}

func likenesses(name string) []likeness {
	words := wordsOf(name)
	all := []likeness{{rest: strings.Join(words, "")}}
	for i, word := range words {
		rest := slices.Clone(words)
		rest[i] = "\n" // no word is so
		all = append(all, likeness{strings.Join(rest, " "), word, i})
	}
	return all
}

// near reports whether a name that shares the rest is near in the one word too.
func (l likeness) near(name string) bool {
	if l.word == "" {
		return true
	}
	other := wordsOf(name)[l.at]
	figures := strings.ContainsFunc(l.word+other, unicode.IsDigit)
	return !figures && len(near.Of(l.word, []string{other})) > 0
}

func wordsOf(name string) []string {
	return strings.FieldsFunc(near.Folded(name), func(r rune) bool { return unicode.IsSpace(r) || r == '-' })
}

// likelier reports whether of two names the first is more likely to be right.
func likelier(f, than Feature) bool {
	if a, b := pages(f), pages(than); a != b {
		return a > b
	}
	if a, b := attested(f), attested(than); a != b {
		return a
	}
	return near.Folded(f.Name) < near.Folded(than.Name)
}

func attested(f Feature) bool { return len(f.Shown)+len(f.Lacked)+len(f.Disputed) > 0 }

// pages returns how many pages use the feature's name.
func pages(f Feature) int {
	seen := make(map[journal.Record]bool)
	for _, u := range f.Uses {
		seen[u.In] = true
	}
	return len(seen)
}
