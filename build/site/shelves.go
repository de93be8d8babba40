package site

import (
	"hussif/build/address"
	"hussif/content/journal"
)

// shelf is what the menu and the list page of a kind are called.
type shelf struct {
	Kind  journal.Kind
	Title string
	One   string // what a page of the kind is, in a word
}

func (s shelf) section() string { return address.Section(s.Kind) }

func (s shelf) path() string { return address.List(s.section()) }

var shelves = []shelf{
	{journal.KindBuild, "Builds", "Build"},
	{journal.KindPerson, "People", "Person"},
	{journal.KindPattern, "Patterns", "Pattern"},
	{journal.KindReference, "References", "Reference"},
	{journal.KindMaterial, "Materials", "Material"},
	{journal.KindTechnique, "Techniques", "Technique"},
	{journal.KindOccasion, "Occasions", "Occasion"},
	{journal.KindNote, "Notes", "Note"},
}

func shelfOf(k journal.Kind) shelf {
	for _, s := range shelves {
		if s.Kind == k {
			return s
		}
	}
	panic("site: no shelf for " + string(k))
}
