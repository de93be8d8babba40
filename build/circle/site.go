package circle

import (
	"cmp"
	"strings"

	"hussif/build/address"
	"hussif/build/export"
	"hussif/build/photo"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/near"
	"hussif/theme"
)

// A book is a pool with all that its pages need.
type book struct {
	*Pool
	title    string
	today    edtf.Day
	pictures map[*Maker]map[string][]photo.Picture // scaled copies by the picture's path in her site
	features map[string]string                     // paths of the features' pages by folded name
	listed   []found                               // everything that has a page of its own
}

// A page is a page of the site before it is made.
type page struct {
	path string
	view func(*book) any
}

// pages returns the pages of the site.
func (b *book) pages() []page {
	pages := []page{
		{address.Start, (*book).start},
		{address.List("builds"), (*book).byEra},
		{address.List("makers"), (*book).makers},
		{address.List("patterns"), (*book).patterns},
		{address.List("techniques"), (*book).techniques},
		{address.List("references"), (*book).references},
		{address.NextTime, (*book).nextTime},
		{address.Evidence, (*book).evidencePage},
		{address.Search, (*book).searchPage},
	}
	for _, m := range b.Makers {
		pages = append(pages, page{m.Path, func(b *book) any { return b.maker(m) }})
	}
	for _, build := range b.Builds {
		pages = append(pages, page{build.Path, func(b *book) any { return b.build(build) }})
	}
	for _, p := range b.Patterns {
		pages = append(pages, page{p.Path, func(b *book) any { return b.pattern(p) }})
	}
	for _, t := range b.Techniques {
		pages = append(pages, page{t.Path, func(b *book) any { return b.technique(t) }})
	}
	for _, r := range b.References {
		pages = append(pages, page{string(r.ID), func(b *book) any { return b.reference(r) }})
	}
	for _, f := range b.Evidence.Features {
		pages = append(pages, page{b.features[near.Folded(f.Name)], func(b *book) any { return b.feature(f.Name) }})
	}
	return pages
}

// A desk makes the links of one page, which know where it lies.
type desk struct {
	*book
	path, root string
}

func (b *book) at(path string) desk { return desk{b, path, address.Root(path)} }

// frame returns what stands round the page, of which some HTML tells first.
func (d desk) frame(title, kind, section string, about ...string) theme.Frame {
	f := theme.Frame{Site: d.title, Title: title, Kind: kind, Root: d.root, Section: section, Shared: true, Circle: true}
	for _, text := range about {
		f.About = cmp.Or(f.About, export.Words(text))
	}
	for _, place := range theme.CircleMenu() {
		if place.Section == section && place.Path != d.path && section != "start" {
			f.Crumbs = []theme.Link{d.to(place.Path, place.Name)}
		}
	}
	return f
}

func (d desk) to(path, text string) theme.Link { return theme.Link{Href: d.root + path, Text: text} }

func (d desk) toMaker(m *Maker) theme.Link { return d.to(m.Path, m.Name) }

func (d desk) toMakers(makers []*Maker) []theme.Link {
	var out []theme.Link
	for _, m := range makers {
		out = append(out, d.toMaker(m))
	}
	return out
}

// toCommon links to things that several makers may use.
func toCommon[T any](d desk, list []*Common[T]) []theme.Link {
	var out []theme.Link
	for _, c := range list {
		out = append(out, d.to(c.Path, c.Title))
	}
	return out
}

// abroad links to a page of a maker's own site; without an address where that is not on
// the web.
func abroad(m *Maker, page, text string) theme.Link {
	l := theme.Link{Text: text}
	if m.Log.Site != "" {
		l.Href = strings.TrimSuffix(m.Log.Site, "/") + "/" + page
	}
	return l
}

// dayOf writes a day of a log as pages show it; "" for none.
func dayOf(iso string) string {
	day, err := edtf.ParseDay(iso)
	if err != nil {
		return ""
	}
	return show.Day(day)
}

// card stands for a build in a list.
func (d desk) card(b *Build) theme.Card {
	c := theme.Card{
		Link: d.to(b.Path, b.Title), Kind: cmp.Or(b.Garment, "Build"), State: b.State, Photo: d.face(b), Lines: []string{"by " + b.Maker.Name},
		Fit: b.gravest(),
	}
	if !b.Era.IsZero() {
		c.Lines = append(c.Lines, b.Era.String())
	}
	if len(b.Log) > 0 {
		c.Lines = append(c.Lines, dayOf(b.Log[0].Day)+": "+b.Log[0].Title)
	}
	return c
}

func (d desk) cards(builds []*Build) []theme.Card {
	var out []theme.Card
	for _, b := range builds {
		out = append(out, d.card(b))
	}
	return out
}

// face returns the picture that stands for a build; nil where it has none.
func (d desk) face(b *Build) *theme.Photo {
	if photos := d.photos(b); len(photos) > 0 {
		return &photos[0]
	}
	return nil
}

// photos returns the pictures of a build that were there to be shown.
func (d desk) photos(b *Build) []theme.Photo {
	var out []theme.Photo
	for _, p := range b.Photos {
		if shown := show.Photo(d.root, d.pictures[b.Maker][p.File]); shown != nil {
			shown.Alt, shown.Caption = cmp.Or(p.Alt, p.Caption), p.Caption
			out = append(out, *shown)
		}
	}
	return out
}
