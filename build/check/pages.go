package check

import (
	"hussif/build/address"
	"hussif/content/journal"
	"hussif/content/source"
)

var samePage = Rule{
	Name: "two of one page",
	Doc:  "Two files would make the same page of the site: their names differ only in marks that addresses cannot have, or one has the name of a page that the site makes itself.",
	Bad: `
-- materials/blue linen.md --
One.
-- materials/blue+linen.md --
Another.
`,
	Good: `
-- materials/blue linen.md --
One.
-- materials/light blue linen.md --
Another.
`,
	Run: func(p *Pass) {
		own := make(map[string]bool)
		for _, path := range address.Own() {
			own[path] = true
		}
		records := p.Journal.Records()
		for _, r := range records {
			for _, name := range address.Sheets(r.Head().Kind) {
				own[address.Under(r.Head().ID, name)] = true
			}
		}
		first := make(map[string]*journal.Page)
		for _, r := range records {
			page := r.Head()
			path := address.Of(page.ID)
			at := page.File.Span(0, 0)
			if own[path] {
				p.Report(at, source.Error, "this makes the page %s, which the site has already", path).Help = "rename the file"
				continue
			}
			if other := first[path]; other != nil {
				f := p.Report(at, source.Error, "this makes the same page as %q", other.ID)
				f.Help = "rename one of them so that letters or digits differ"
				f.Related = []source.Place{{Span: other.File.Span(0, 0), Text: "the other one"}}
				continue
			}
			first[path] = page
		}
	},
}

var notesOfNoBuild = Rule{
	Name: "notes of no build",
	Doc:  "A folder in builds/ holds notes but no build.md, so they belong to no build and what they measure counts for nothing.",
	Bad: `
-- builds/grey-jacket/2026-03-01.md --
Cut the lining.
`,
	Good: `
-- builds/grey-jacket/build.md --
---
title: Grey jacket
---
-- builds/grey-jacket/2026-03-01.md --
Cut the lining.
`,
	Run: func(p *Pass) {
		told := make(map[string]bool)
		for _, n := range p.Journal.Notes() {
			folder, in := journal.BuildFolder(n.File.Name)
			if n.Of != nil || !in || told[folder] || n.Has("build") {
				continue
			}
			told[folder] = true
			p.Report(n.File.Span(0, 0), source.Warning, "%s has no build.md, so its notes belong to no build", folder).
				Help = "add build.md there, or name the build of each note with `build: ...`"
		}
	},
}
