package check

import (
	"hussif/build/effort"
	"hussif/build/evidence"
	"hussif/build/fit"
	"hussif/build/stock"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

var featureMisspelt = Rule{
	Name: "feature almost like another",
	Doc:  "A feature is named once only and almost like another one. Evidence is gathered by name, so a misspelt one stands alone.",
	Bad: `
-- references/green-jacket.md --
---
date: 1785
shows: [piped seams]
---
-- references/blue-jacket.md --
---
date: 1786
shows: [piped seams]
---
-- references/red-jacket.md --
---
date: 1787
shows: [pipped seams]
---
`,
	Good: `
-- references/green-jacket.md --
---
date: 1785
shows: [piped seams]
---
-- references/red-jacket.md --
---
date: 1787
shows: [piped seams]
---
`,
	Run: func(p *Pass) {
		for _, m := range evidence.Gather(p.Journal).Misspelt() {
			p.Report(m.Use.Word.Span, source.Hint, "%q is named nowhere else in the journal", m.Use.Word.Text).Instead = m.Near
		}
	},
}

var restsOnNothing = Rule{
	Name: "rests on what does not show it",
	Doc:  "A feature of a build rests on a reference that does not say it shows it, or that lacks it.",
	Bad: `
-- references/green-jacket.md --
---
date: 1785
lacks: [piped seams]
---
-- builds/grey-jacket/build.md --
---
era: 1780/1789
features:
  - {what: piped seams, rests on: green-jacket}
---
`,
	Good: `
-- references/green-jacket.md --
---
date: 1785
shows: [piped seams]
---
-- builds/grey-jacket/build.md --
---
era: 1780/1789
features:
  - {what: piped seams, rests on: green-jacket}
---
`,
	Run: func(p *Pass) {
		book := evidence.Gather(p.Journal)
		p.builds(func(b *journal.Build) {
			for _, c := range book.Claims(b) {
				for _, rest := range c.Unshown() {
					f := p.Report(rest.Ref.Span, source.Hint, "%s %s", rest.Record.Head().Title, rest.Says)
					f.Help = "add the feature under `shows:` of that page, or rest it on another"
				}
			}
		})
	},
}

var ledgerOfMaterial = Rule{
	Name: "material does not add up",
	Doc:  "What the notes say was bought, used and left over of a material does not agree.",
	Bad: `
-- materials/linen.md --
-- notes/2026-03-01.md --
---
bought: [{material: linen, amount: 2 yd}]
---
-- notes/2026-03-05.md --
---
used: [{material: linen, amount: 3 yd}]
---
`,
	Good: `
-- materials/linen.md --
-- notes/2026-03-01.md --
---
bought: [{material: linen, amount: 3 yd}]
---
-- notes/2026-03-05.md --
---
used: [{material: linen, amount: 3 yd}]
---
`,
	Run: func(p *Pass) {
		for _, s := range stock.Gather(p.Journal).All() {
			for _, fault := range s.Faults {
				level := source.Warning
				if fault.Why == stock.NoSuchPiece || fault.Why == stock.NeverBought {
					level = source.Hint
				}
				if at, ok := p.movement(fault.From); ok {
					p.Report(at, level, "%s", fault.Words(p.Journal.Settings.Format))
				}
			}
		}
	},
}

// movement returns the place of a material entry.
func (p *Pass) movement(r fit.Reason) (source.Span, bool) {
	record, ok := p.Journal.Find(string(r.Record), journal.KindNote)
	if !ok || p.Journal.Faulty(record) {
		return source.Span{}, false
	}
	n := record.(*journal.Note)
	list := map[string][]journal.Movement{"bought": n.Bought, "used": n.Used, "left over": n.LeftOver}[r.Field]
	if r.Entry >= len(list) {
		return source.Span{}, false
	}
	return list[r.Entry].Material.Span, true
}

// lateForOccasion needs a day to look from, which only the site and the commands
// have: without one it looks from the last day that the journal knows.
var lateForOccasion = Rule{
	Name: "late for its occasion",
	Doc:  "By the hours that are left and the pace of the last four weeks, a build will not be ready for its next occasion. The pace is that of the last day the journal knows of.",
	Bad: `
-- occasions/market-day.md --
---
date: 2026-03-20
---
-- builds/grey-jacket/build.md --
---
occasion: market-day
planned: {hours: 60}
---
-- builds/grey-jacket/2026-03-01.md --
---
stage: sewing
hours: 4
---
`,
	Good: `
-- occasions/market-day.md --
---
date: 2026-03-20
---
-- builds/grey-jacket/build.md --
---
occasion: market-day
planned: {hours: 6}
---
-- builds/grey-jacket/2026-03-01.md --
---
stage: sewing
hours: 4
---
`,
	Run: func(p *Pass) {
		day := lastDay(p.Journal)
		for _, w := range effort.Gather(p.Journal, day).Late() {
			r, ok := p.Journal.Find(string(w.Build), journal.KindBuild)
			if !ok || p.Journal.Faulty(r) {
				continue
			}
			p.Report(r.(*journal.Build).Value("occasion"), source.Warning, "%s", w.OutlookWords())
		}
	},
}

// lastDay returns the day of a journal's newest note.
func lastDay(j *journal.Journal) edtf.Day {
	if len(j.Notes()) == 0 {
		return 0
	}
	return j.Notes()[len(j.Notes())-1].Date
}
