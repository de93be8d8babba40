package site

import (
	"cmp"
	"slices"

	"hussif/build/address"
	"hussif/build/audience"
	"hussif/build/export"
	"hussif/build/photo"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/theme"
)

// An Input is all that a site is made from.
type Input struct {
	Journal  *journal.Journal
	Findings []source.Finding           // of check
	Bodies   *Bodies                    // seen while the journal was read, or nil
	Pictures map[string][]photo.Picture // scaled copies by the picture's path in the journal, narrowest first
	Today    edtf.Day
	For      journal.Audience            // whom the site is for, of whose journal this is; "" for its maker
	Fits     map[journal.ID]audience.Fit // of builds whose measures others do not see; nil for the maker

	// Await, where it is set, waits for the findings while check is still looking.
	Await func() []source.Finding

	// Since tells what may be otherwise in the journal than in the one that the
	// workshop was shown before; nil stands for anything.
	Since *journal.News
}

// A page is a page of a site before it is made, or another text that is made from
// the journal.
type page struct {
	path string
	view func(*book) any             // one of the views of package theme
	text func(*book) ([]byte, error) // of what is no HTML; then there is no view
}

// pages returns the pages of a site in the order of their paths, with its calendar,
// its feed and the index of its words. Check has seen to it that no two records make one page.
func (b *book) pages() []page {
	pages := []page{
		{path: address.Calendar, text: (*book).calendar},
		{path: theme.FeedPath, text: (*book).feed},
	}
	if b.For == journal.Circle {
		pages = append(pages, page{path: export.Path, text: (*book).export})
	}
	for i, path := range b.searchParts() {
		pages = append(pages, page{path: path, text: func(b *book) ([]byte, error) { return b.searchPart(i) }})
	}
	add := func(path string, view func(*book) any) { pages = append(pages, page{path: path, view: view}) }
	add(address.Start, (*book).start)
	add(address.NextTime, (*book).nextTime)
	add(address.Tags, (*book).tags)
	if !b.shared() {
		add(address.Found, (*book).found)
	}
	add(address.ToDo, (*book).toDo)
	add(address.Decisions, (*book).decisionsPage)
	add(address.Stash, (*book).stashPage)
	add(address.Evidence, (*book).evidencePage)
	add(address.Search, (*book).searchPage)
	for _, f := range b.facts.evidence.Features {
		add(address.Feature(f.Name), func(b *book) any { return b.featurePage(f.Name) })
	}
	for _, s := range shelves {
		add(s.path(), func(b *book) any { return b.list(s) })
	}
	for year := range b.facts.byYear {
		add(address.Year(year), func(b *book) any { return b.notesOf(year) })
	}
	for _, r := range b.Journal.Records() {
		b.addPagesOf(r, func(path string, view func(*book) any) {
			add(path, func(b *book) any {
				b.trace.Record(r)
				return view(b)
			})
		})
	}
	slices.SortFunc(pages, func(a, b page) int { return cmp.Compare(a.path, b.path) })
	return pages
}

// addPagesOf adds the page of a record and those that belong to it.
func (b *book) addPagesOf(r journal.Record, add func(path string, view func(*book) any)) {
	id := r.Head().ID
	add(b.facts.paths[id], func(b *book) any { return b.record(r) })
	b.addWorkPages(r, add)
	if r, ok := r.(*journal.Build); ok {
		add(address.Under(id, address.Documentation), func(b *book) any { return b.documentation(r) })
	}
	if b.shared() {
		return
	}
	switch r := r.(type) {
	case *journal.Build:
		add(address.Under(id, address.Remake), func(b *book) any { return b.buildSheet(r) })
		if len(r.Seams) > 0 {
			add(address.Under(id, address.TakeDown), func(b *book) any { return b.takeDown(r) })
		}
		for i, c := range b.panelsOf(r) {
			if c.fault != nil {
				continue
			}
			for _, paper := range papers() {
				add(tilesPath(r, c, paper), func(b *book) any { return b.tiles(r, b.panelsOf(r)[i], paper) })
			}
		}
	case *journal.Pattern:
		add(address.Under(id, address.Remake), func(b *book) any { return b.patternSheet(r) })
	case *journal.Person:
		add(address.Under(id, address.Remake), func(b *book) any { return b.personSheet(r) })
		add(address.Under(id, address.Wardrobe), func(b *book) any { return b.wardrobe(r) })
	}
}

func (b *book) record(r journal.Record) any {
	switch r := r.(type) {
	case *journal.Build:
		return b.build(r)
	case *journal.Note:
		return b.note(r)
	case *journal.Person:
		return b.person(r)
	case *journal.Pattern:
		return b.pattern(r)
	case *journal.Reference:
		return b.reference(r)
	case *journal.Material:
		return b.material(r)
	case *journal.Technique:
		return b.technique(r)
	case *journal.Occasion:
		return b.occasion(r)
	}
	panic("site: a record of no kind")
}

// frame returns what stands round a page. Its crumbs lead to the shelf.
func (b *book) frame(path, title, kind, section string, crumbs ...theme.Link) theme.Frame {
	name := b.Journal.Settings.Title
	if name == "" {
		name = "Workroom journal"
	}
	return theme.Frame{
		Site: name, Title: title, Kind: kind, Root: address.Root(path), Section: section,
		Crumbs: crumbs, Feed: true, Shared: b.shared(), URL: b.onTheWeb(path),
	}
}
