package site

import (
	"cmp"
	"slices"
	"time"

	"hussif/build/across"
	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/build/photo"
	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/theme"
)

// An Input is all that a site is made from.
type Input struct {
	Journal  *journal.Journal
	Findings []source.Finding           // of check
	Pictures map[string][]photo.Picture // scaled copies by the picture's path in the journal, narrowest first
	Today    edtf.Day
}

// A Page is a page before it is printed.
type Page struct {
	Path string
	View func() any // one of the views of package theme
}

// A book is a site in the making. It is filled by newBook and read by workers.
type book struct {
	Input
	lessons lesson.List
	moved   map[*journal.Material][]movement // oldest first
	madeFor map[*journal.Person][]*journal.Build
	taught  map[cutFor]func() across.Sheet
	fits    map[*journal.Build]buildFit
}

// buildFit is how a build fits its wearer on the days that matter.
type buildFit struct {
	now    fit.Table
	plan   *room.Plan // what can be done about what is short now; nil where nothing is
	then   *fit.Table // when it was first finished, where that is known
	ledger fit.Book
}

// SamePage is the rule for two records that would make one page.
const SamePage = "two of one page"

// Plan works out the pages of a site in the order of their paths. Two records
// whose names differ only in marks that addresses cannot have are an error.
func Plan(in Input) ([]Page, []source.Finding) {
	b := newBook(in)
	var pages []Page
	add := func(path string, view func() any) { pages = append(pages, Page{Path: path, View: view}) }
	add(startPath, b.start)
	add(nextPath, b.nextTime)
	add(tagsPath, b.tags)
	add(foundPath, b.found)
	for _, s := range shelves {
		add(s.path(), func() any { return b.list(s) })
	}
	for year, notes := range b.notesByYear() {
		add(yearPath(year), func() any { return b.notesOf(year, notes) })
	}
	b.addSheets(add)
	var findings []source.Finding
	taken := make(map[string]journal.Record)
	for _, p := range pages {
		taken[p.Path] = nil // by a page about no one record
	}
	for _, r := range in.Journal.Records() {
		path := pathOf(r.Head().ID)
		if first, ok := taken[path]; ok {
			findings = append(findings, samePage(r, first))
			continue
		}
		taken[path] = r
		add(path, func() any { return b.record(r) })
	}
	slices.SortFunc(pages, func(a, b Page) int { return cmp.Compare(a.Path, b.Path) })
	return pages, findings
}

// addSheets adds the pages that belong to the page of a record.
func (b *book) addSheets(add func(path string, view func() any)) {
	for _, r := range b.Journal.Builds {
		add(under(r, sheetName), func() any { return b.buildSheet(r) })
		if len(r.Seams) > 0 {
			add(under(r, takeDownName), func() any { return b.takeDown(r) })
		}
		if plan := b.fits[r].plan; plan != nil && len(plan.Options) > 0 {
			for _, c := range cutPanels(r, plan.Options[0]) {
				if c.fault != nil {
					continue
				}
				for _, paper := range papers() {
					add(tilesPath(r, c.Seam, paper), func() any { return b.tiles(r, c, paper) })
				}
			}
		}
	}
	for _, r := range b.Journal.Patterns {
		add(under(r, sheetName), func() any { return b.patternSheet(r) })
	}
	for _, r := range b.Journal.People {
		add(under(r, sheetName), func() any { return b.personSheet(r) })
		add(under(r, "wardrobe"), func() any { return b.wardrobe(r) })
	}
}

// samePage tells of a record whose page is taken, by another record or by a list.
func samePage(r, first journal.Record) source.Finding {
	at := r.Head().File.Span(0, 0)
	if first == nil {
		f := source.Found(at, source.Error, SamePage, "this makes the page %s, which the site has already", pathOf(r.Head().ID))
		f.Help = "rename the file"
		return f
	}
	f := source.Found(at, source.Error, SamePage, "this makes the same page as %q", first.Head().ID)
	f.Help = "rename one of them so that letters or digits differ"
	f.Related = []source.Place{{Span: first.Head().File.Span(0, 0), Text: "the other one"}}
	return f
}

func newBook(in Input) *book {
	b := &book{
		Input: in, lessons: lesson.Gather(in.Journal), moved: movedBy(in.Journal), madeFor: madeForAll(in.Journal), taught: lessonsOfPatterns(in),
		fits: make(map[*journal.Build]buildFit, len(in.Journal.Builds)),
	}
	rates := wayin.RatesOf(in.Journal)
	for _, build := range in.Journal.Builds {
		f := buildFit{now: fit.Of(in.Journal, build, in.Today), ledger: fit.Ledger(in.Journal, build)}
		if plan := room.For(in.Journal, build, f.now, rates); len(plan.Needs) > 0 {
			f.plan = &plan
		}
		if day, ok := fit.FirstFinish(build); ok {
			then := fit.Of(in.Journal, build, day)
			f.then = &then
		}
		b.fits[build] = f
	}
	return b
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
		Site: name, Title: title, Kind: kind, Root: rootFrom(path), Section: section,
		Crumbs: crumbs, Found: len(b.Findings),
	}
}

// day writes a calendar day as pages show it.
func day(d edtf.Day) string {
	year, month, dayOfMonth := d.Date()
	return time.Date(year, time.Month(month), dayOfMonth, 0, 0, 0, 0, time.UTC).Format("2 January 2006")
}
