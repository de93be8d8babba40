package circle

import (
	"strings"

	"hussif/build/address"
	"hussif/build/export"
	"hussif/build/search"
	"hussif/build/show"
	"hussif/content/near"
	"hussif/theme"
)

// A found thing is a page as it is searched, with its place in the index from A to Z.
type found struct {
	search.Page
	note string
}

// list returns everything that has a page of its own.
func (b *book) list() []found {
	var out []found
	add := func(path, title, kind, by string, lines ...search.Line) {
		note := strings.ToLower(kind)
		if by != "" {
			note += " by " + by
		}
		out = append(out, found{search.Page{Path: path, Title: title, Kind: kind, Of: by, Lines: lines}, note})
	}
	for _, m := range b.Makers {
		add(m.Path, m.Name, "Maker", "", names("Journal", m.Log.Title)...)
	}
	for _, build := range b.Builds {
		lines := append(words(build.About), names("Garment", build.Garment)...)
		lines = append(lines, names("For", build.For)...)
		for _, f := range build.Features {
			lines = append(lines, names("Feature", f.What)...)
		}
		for _, e := range build.Log {
			lines = append(lines, search.Line{Label: dayOf(e.Day), Text: e.Title + ". " + e.Text})
		}
		add(build.Path, build.Title, "Build", build.Maker.Name, lines...)
	}
	for _, p := range b.Patterns {
		add(p.Path, p.Title, "Pattern", tellers(p), append(names("From", p.Source), spoken(p, func(p *export.Pattern) string { return p.About })...)...)
	}
	for _, t := range b.Techniques {
		lines := spoken(t, func(t *export.Technique) string { return t.About })
		for _, told := range t.Told {
			for _, c := range told.Says.Cautions {
				lines = append(lines, search.Line{Label: "Take care", Text: c})
			}
		}
		add(t.Path, t.Title, "Technique", tellers(t), lines...)
	}
	for _, r := range b.References {
		lines := append(names("Holder", r.Holder), names("Number", r.Accession)...)
		for _, w := range r.Shows {
			lines = append(lines, names("Shows", w.Text)...)
		}
		add(string(r.ID), r.Title, "Reference", r.Maker.Name, lines...)
	}
	for _, f := range b.Evidence.Features {
		add(b.features[near.Folded(f.Name)], show.Sentence(f.Name), "Feature", "")
	}
	at := make(map[string]int)
	for i, f := range out {
		at[f.Path] = i
	}
	for _, l := range b.Lessons {
		path := l.By.Path
		if l.Build != nil {
			path = l.Build.Path
		}
		page := &out[at[path]]
		page.Lines = append(page.Lines, search.Line{Label: "Next time", Anchor: "section-next-time", Text: l.Text})
	}
	return out
}

// words is a line of how a text begins; none for "".
func words(html string) []search.Line {
	if html == "" {
		return nil
	}
	return []search.Line{{Text: export.Words(html)}}
}

// spoken has such a line for each maker who tells of a thing.
func spoken[T any](c *Common[T], about func(*T) string) []search.Line {
	var out []search.Line
	for _, t := range c.Told {
		out = append(out, words(about(t.Says))...)
	}
	return out
}

// names is a line that names a thing; none for "".
func names(label, text string) []search.Line {
	if text == "" {
		return nil
	}
	return []search.Line{{Label: label, Text: text, Names: true}}
}

// parts sorts the pages under the part of the index of words that they are in.
func (b *book) parts() [][]search.Page {
	parts := make([][]search.Page, search.Parts(len(b.listed)))
	for _, f := range b.listed {
		n := search.PartOf(f.Path, len(parts))
		parts[n] = append(parts[n], f.Page)
	}
	return parts
}

// searchPage is the page on which the site is searched, with an index from A to Z.
func (b *book) searchPage() any {
	d := b.at(address.Search)
	view := theme.Search{Frame: d.frame("Search", "", "search"), Empty: "Nothing here."}
	n := search.Parts(len(b.listed))
	for i := range n {
		view.Parts = append(view.Parts, address.SearchPart(i+1, n))
	}
	var entries []theme.IndexEntry
	for _, f := range b.listed {
		l := d.to(f.Path, f.Title)
		l.Note = f.note
		entries = append(entries, theme.IndexEntry{Link: l})
	}
	view.Letters = show.Letters(entries)
	return view
}

// tellers names all who tell of a thing.
func tellers[T any](c *Common[T]) string {
	users, others := c.Users()
	return named(append(users, others...))
}
