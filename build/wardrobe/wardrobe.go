package wardrobe

import (
	"cmp"
	"slices"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// A Wardrobe is what a person can wear on a day.
type Wardrobe struct {
	Person   journal.ID
	Day      edtf.Day
	Garments []Garment // those ready to be worn first, the surest answer first
}

// Of returns the garments made for a person.
func Of(j *journal.Journal, p *journal.Person, day edtf.Day) Wardrobe {
	return of(j, p, day, j.BuildsFor(p))
}

// Borrow returns the garments made for others, or for nobody who is named, as they
// would fit a person.
func Borrow(j *journal.Journal, p *journal.Person, day edtf.Day) Wardrobe {
	return of(j, p, day, slices.DeleteFunc(slices.Clone(j.Builds()), func(b *journal.Build) bool { return j.Person(b.For) == p }))
}

func of(j *journal.Journal, p *journal.Person, day edtf.Day, builds []*journal.Build) Wardrobe {
	w := Wardrobe{Person: p.ID, Day: day}
	for _, b := range builds {
		w.Garments = append(w.Garments, One(j, b, p, day))
	}
	slices.SortFunc(w.Garments, compare)
	return w
}

// Borrowers returns one garment as it would fit each person but its own wearer, in
// the order of a wardrobe.
func Borrowers(j *journal.Journal, b *journal.Build, day edtf.Day) []Garment {
	own := j.Person(b.For)
	var out []Garment
	for _, p := range j.People() {
		if p != own {
			out = append(out, One(j, b, p, day))
		}
	}
	slices.SortFunc(out, compare)
	return out
}

// One returns the answer for one garment and a person, its wearer or not.
func One(j *journal.Journal, b *journal.Build, p *journal.Person, day edtf.Day) Garment {
	g := Garment{Build: b.ID, State: stateOn(b, day), Table: fit.For(j, b, p, day)}
	g.judge()
	return g
}

// compare puts what could be worn at all before what cannot be told, is taken apart
// or gone, then what is ready before what is not, then the better answer, then the
// one that rests on more measures, then the one less off.
func compare(a, b Garment) int {
	return cmp.Or(
		cmp.Compare(past(a), past(b)),
		cmp.Compare(rank(a.State), rank(b.State)),
		cmp.Compare(a.Answer, b.Answer),
		cmp.Compare(b.Judged, a.Judged),
		cmp.Compare(a.Asked, b.Asked),
		cmp.Compare(gravity(a), gravity(b)),
		cmp.Compare(a.Build, b.Build),
		cmp.Compare(a.Table.Wearer, b.Table.Wearer),
	)
}

// past is 1 for a garment that nobody need look at first.
func past(g Garment) int {
	if g.Answer == Unknown || rank(g.State) >= rank(journal.StateApart) {
		return 1
	}
	return 0
}

func gravity(g Garment) int64 {
	if g.Gravest == nil {
		return 0
	}
	return int64(off(g.Gravest))
}
