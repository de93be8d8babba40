package agenda

import (
	"cmp"
	"maps"
	"slices"

	"hussif/build/effort"
	"hussif/build/fit"
	"hussif/build/wardrobe"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// An Outing is who wears what at an occasion.
type Outing struct {
	Occasion journal.ID
	Day      edtf.Day // of which the garments are judged: that of the occasion, or today where it is to come
	Passed   bool
	Wearers  []Wearer // in the order of the journal's people, garments of nobody last
}

// A Wearer is one person's clothes for an occasion.
type Wearer struct {
	Person      journal.ID // empty where the garments name nobody
	Garments    []Garment  // from the skin out
	Layers      []Layer    // the dressing list, those garments included
	Contradicts bool       // the garments do not agree on the order of the layers
	Help        []Help
}

// A Garment is a build to be worn.
type Garment struct {
	Build journal.ID
	Worn  bool // the journal says that it was; else it was or is only meant to be
	Fits  wardrobe.Garment
	Work  effort.Work // of today
}

// Trouble reports whether something is amiss with the garment: it is not finished, it
// does not fit, or nobody can tell.
func (g Garment) Trouble() bool { return !g.Fits.Ready() || g.Fits.Answer > wardrobe.NeedsAdjusting }

// For returns the clothes for an occasion: the builds that name it, those that it lists
// and those of which a note tells that they were worn at it.
func For(j *journal.Journal, o *journal.Occasion, book effort.Book) Outing {
	out := Outing{Occasion: o.ID, Day: book.Day, Passed: max(o.Date, o.Until) < book.Day}
	if out.Passed {
		out.Day = o.Date
	}
	worn, meant := clothes(j, o)
	byWearer := make(map[*journal.Person][]*journal.Build)
	maps.Copy(meant, worn)
	for _, b := range slices.SortedFunc(maps.Keys(meant), func(a, b *journal.Build) int { return cmp.Compare(a.ID, b.ID) }) {
		byWearer[j.Person(b.For)] = append(byWearer[j.Person(b.For)], b)
	}
	for _, p := range append(slices.Clip(j.People()), nil) {
		builds := byWearer[p]
		if len(builds) == 0 {
			continue
		}
		slices.SortStableFunc(builds, func(a, b *journal.Build) int { return cmp.Compare(len(a.Over), len(b.Over)) })
		w := Wearer{Help: helpers(builds, out.Day)}
		var own wardrobe.Wardrobe
		if p != nil {
			w.Person, own = p.ID, wardrobe.Of(j, p, out.Day)
		}
		w.Layers, w.Contradicts = dress(builds)
		for _, l := range w.Layers {
			at := slices.IndexFunc(builds, func(b *journal.Build) bool { return b.ID == l.Build })
			if at < 0 {
				continue
			}
			b := builds[at]
			g := Garment{Build: b.ID, Worn: worn[b], Work: book.Of(b.ID)}
			if at := slices.IndexFunc(own.Garments, func(g wardrobe.Garment) bool { return g.Build == b.ID }); at >= 0 {
				g.Fits = own.Garments[at]
			} else {
				g.Fits = wardrobe.Garment{Build: b.ID, State: g.Work.State, Table: fit.Of(j, b, out.Day), Answer: wardrobe.Unknown}
			}
			w.Garments = append(w.Garments, g)
		}
		out.Wearers = append(out.Wearers, w)
	}
	return out
}

// clothes returns the builds that were worn at an occasion, and those that name it.
func clothes(j *journal.Journal, o *journal.Occasion) (worn, meant map[*journal.Build]bool) {
	worn, meant = make(map[*journal.Build]bool), make(map[*journal.Build]bool)
	for _, ref := range o.Worn {
		if b := j.Build(ref); b != nil {
			worn[b] = true
		}
	}
	for _, tie := range j.LinkedFrom(o.ID) {
		switch from := tie.From.(type) {
		case *journal.Build:
			if slices.ContainsFunc(from.Occasion, func(ref journal.Ref) bool { return j.Occasion(ref) == o }) {
				meant[from] = true
			}
		case *journal.Note:
			if from.Of != nil && from.Stage == "worn" && j.Occasion(from.Occasion) == o {
				worn[from.Of] = true
			}
		}
	}
	return worn, meant
}
