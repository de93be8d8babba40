package site

import (
	"cmp"
	"hussif/build/address"
	"io"
	"slices"
	"time"

	"hussif/build/output"
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
}

// A Page is a page before it is printed.
type Page struct {
	Path string
	View func() any // one of the views of package theme
}

// Plan works out the pages of a site in the order of their paths. Check has seen
// to it that no two records make one page.
//
// The files beside them are a calendar and a feed.
func Plan(in Input) (pages []Page, beside []output.File) {
	b := newBook(in)
	add := func(path string, view func() any) { pages = append(pages, Page{Path: path, View: view}) }
	add(address.Start, b.start)
	add(address.NextTime, b.nextTime)
	add(address.Tags, b.tags)
	add(address.Found, b.found)
	add(address.ToDo, b.toDo)
	add(address.Decisions, b.decisionsPage)
	add(address.Stash, b.stashPage)
	add(address.Evidence, b.evidencePage)
	for _, f := range b.evidence.Features {
		add(address.Feature(f.Name), func() any { return b.featurePage(f) })
	}
	for _, s := range shelves {
		add(s.path(), func() any { return b.list(s) })
	}
	for year, notes := range b.notesByYear() {
		add(address.Year(year), func() any { return b.notesOf(year, notes) })
	}
	for _, r := range in.Journal.Records() {
		add(address.Of(r.Head().ID), func() any { return b.record(r) })
	}
	b.addSheets(add)
	slices.SortFunc(pages, func(a, b Page) int { return cmp.Compare(a.Path, b.Path) })
	return pages, []output.File{
		{Path: address.Calendar, Content: writing(b.calendar)},
		{Path: theme.FeedPath, Content: writing(b.feed)},
	}
}

// writing makes the content of a file of what a function returns.
func writing(text func() ([]byte, error)) func(io.Writer) error {
	return func(w io.Writer) error {
		data, err := text()
		if err != nil {
			return err
		}
		_, err = w.Write(data)
		return err
	}
}

// addSheets adds the pages that belong to the page of a record.
func (b *book) addSheets(add func(path string, view func() any)) {
	for _, r := range b.Journal.Builds() {
		add(address.Under(r.ID, address.Remake), func() any { return b.buildSheet(r) })
		add(address.Under(r.ID, address.Documentation), func() any { return b.documentation(r) })
		if len(r.Seams) > 0 {
			add(address.Under(r.ID, address.TakeDown), func() any { return b.takeDown(r) })
		}
		for _, c := range b.panels[r] {
			if c.fault != nil {
				continue
			}
			for _, paper := range papers() {
				add(tilesPath(r, c, paper), func() any { return b.tiles(r, c, paper) })
			}
		}
	}
	for _, r := range b.Journal.Patterns() {
		add(address.Under(r.ID, address.Remake), func() any { return b.patternSheet(r) })
	}
	for _, r := range b.Journal.People() {
		add(address.Under(r.ID, address.Remake), func() any { return b.personSheet(r) })
		add(address.Under(r.ID, address.Wardrobe), func() any { return b.wardrobe(r) })
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
		Crumbs: crumbs, Feed: true,
	}
}

// day writes a calendar day as pages show it.
func day(d edtf.Day) string {
	year, month, dayOfMonth := d.Date()
	return time.Date(year, time.Month(month), dayOfMonth, 0, 0, 0, 0, time.UTC).Format("2 January 2006")
}
