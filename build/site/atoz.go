package site

import (
	"maps"
	"slices"
	"strings"

	"hussif/build/address"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/theme"
)

// listed returns the records that the index from A to Z has. Where there are so many
// notes that each year has a page of its own, these have them.
func (b *book) listed() []journal.Record {
	b.trace.Ask(askListed, "")
	records := b.Input.Journal.Traced(nil).Records()
	if b.facts.byYear == nil {
		return records
	}
	return slices.DeleteFunc(slices.Clone(records), func(r journal.Record) bool { return r.Head().Kind == journal.KindNote })
}

// searchPage is the page on which the site is searched. It says, from A to Z, all that
// has a page, and what garments, features and tags there are.
func (b *book) searchPage() any {
	d := b.at(address.Search)
	view := theme.Search{
		Frame: b.frame(d.path, "Search", "", "search"), Parts: b.searchParts(),
		Empty: "Nothing is written yet.",
	}
	years := b.allYears()
	for _, year := range slices.Backward(slices.Sorted(maps.Keys(years))) {
		view.Beside = append(view.Beside, theme.Link{Href: d.root + address.Year(year), Text: "Notes of " + year})
	}
	view.Letters = show.Letters(append(d.indexed(), d.indexedNames()...))
	return view
}

// indexed lists the records, and the kinds of garment with the builds of each.
func (d desk) indexed() []theme.IndexEntry {
	var entries []theme.IndexEntry
	garments := make(map[string][]theme.Link)
	for _, r := range d.listed() {
		l := d.to(r)
		notes := []string{strings.ToLower(shelfOf(r.Head().Kind).One)}
		switch r := r.(type) {
		case *journal.Build:
			if g := show.Sentence(strings.TrimSpace(r.Garment)); g != "" {
				garments[g] = append(garments[g], l)
			}
		case *journal.Note:
			notes = []string{show.Day(r.Date)}
			if r.Of != nil {
				notes = append(notes, r.Of.Title)
			}
		}
		l.Note = strings.Join(notes, ", ")
		entries = append(entries, theme.IndexEntry{Link: l})
	}
	for garment, builds := range garments {
		entries = append(entries, theme.IndexEntry{Link: theme.Link{Text: garment}, Pages: builds})
	}
	return entries
}

func (d desk) indexedNames() []theme.IndexEntry {
	d.trace.Ask(askNames, "")
	features, tags := d.names()
	var entries []theme.IndexEntry
	for _, name := range features {
		entries = append(entries, theme.IndexEntry{Link: theme.Link{Href: d.root + address.Feature(name), Text: show.Sentence(name), Note: "feature"}})
	}
	for _, tag := range tags {
		entries = append(entries, theme.IndexEntry{Link: theme.Link{Href: d.root + tagPath(tag), Text: tag, Note: "tag"}})
	}
	return entries
}
