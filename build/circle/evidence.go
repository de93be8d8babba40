package circle

import (
	"cmp"
	"slices"

	"hussif/build/address"
	"hussif/build/search"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/theme"
)

// exhibits shows evidence with the links of the page.
func (d desk) exhibits() show.Exhibits {
	return show.Exhibits{
		To:  d.toRecord,
		Ref: func(ref journal.Ref) theme.Link { return d.toRecord(d.byID[journal.ID(ref.To)]) },
		Feature: func(name string) theme.Link {
			l := theme.Link{Text: name}
			if path, ok := d.features[near.Folded(name)]; ok {
				l.Href = d.root + path
			}
			return l
		},
		Customs: edtf.Customs{},
	}
}

// toRecord links to a build or a reference, by the record that evidence knows.
func (d desk) toRecord(r journal.Record) theme.Link {
	l := d.to(string(r.Head().ID), r.Head().Title)
	if found, ok := d.byID[r.Head().ID]; ok {
		l.Note = "found by " + found.Maker.Name
	}
	return l
}

// evidencePage pools what all references show.
func (b *book) evidencePage() any {
	d := b.at(address.Evidence)
	var references []*journal.Reference
	for _, r := range b.References {
		references = append(references, r.Reference)
	}
	view := d.exhibits().Book(b.Evidence, references)
	view.Frame = d.frame("Evidence", "", "evidence")
	if len(view.Features) == 0 {
		view.Empty = "Nothing here."
	}
	return view
}

// feature is what the references of all makers say of one feature.
func (b *book) feature(name string) any {
	f, _ := b.Evidence.For(name)
	d := b.at(b.features[near.Folded(name)])
	x := d.exhibits()
	view := x.Page(f)
	view.Frame = d.frame(show.Sentence(f.Name), "Feature", "evidence")
	for _, build := range f.Claimed {
		claimed := b.of[build.ID]
		for _, c := range claimed.Claims {
			if near.Folded(c.What.Text) == near.Folded(f.Name) {
				link := d.toRecord(build)
				link.Note = "by " + claimed.Maker.Name
				view.Claims = append(view.Claims, x.Claim(c, link))
			}
		}
	}
	return view
}

// references lists what makers found that bears witness, oldest first.
func (b *book) references() any {
	d := b.at(address.List("references"))
	view := theme.List{Frame: d.frame("References", "", "references")}
	list := slices.Clone(b.References)
	slices.SortStableFunc(list, func(a, b *Reference) int {
		return cmp.Or(cmp.Compare(undated(a.Date), undated(b.Date)), cmp.Compare(a.Date.Earliest, b.Date.Earliest), cmp.Compare(search.Fold(a.Title), search.Fold(b.Title)))
	})
	for _, r := range list {
		view.Groups = show.Under(view.Groups, show.Sentence(cmp.Or(string(r.Type), "other")), theme.Card{
			Link: d.toRecord(r.Reference), Lines: given(r.Date.String(), r.Holder),
		})
	}
	if len(view.Groups) == 0 {
		view.Empty = "Nothing here."
	}
	return view
}

func (b *book) reference(r *Reference) any {
	d := b.at(string(r.ID))
	view := theme.Thing{Frame: d.frame(r.Title, "Reference", "references")}
	facts, features := show.Reference(r.Reference)
	facts.Link("Found by", d.toMaker(r.Maker))
	facts.Link("On the maker's site", theirs(r.Maker, r.Page)...)
	view.Facts, view.Features = facts, features
	view.Builds = d.cards(r.Builds)
	return view
}
