package check

import (
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

var datesOutOfOrder = Rule{
	Name: "dates out of order",
	Doc:  "Something ends before it begins: an occasion, or a garment that was finished before the first note about it.",
	Bad: `
-- occasions/market-day.md --
---
date: 2027-05-08
until: 2027-05-07
---
`,
	Good: `
-- occasions/market-day.md --
---
date: 2027-05-08
until: 2027-05-09
---
`,
	Run: func(p *Pass) {
		for _, o := range p.Journal.Occasions() {
			if !p.Journal.Faulty(o) && o.Has("until") && o.Until < o.Date {
				f := p.Report(o.Value("until"), source.Warning, "%s ends on a day before it begins", o.Title)
				f.Related = []source.Place{{Span: o.Value("date"), Text: "begins here"}}
			}
		}
		p.builds(func(b *journal.Build) {
			if b.Has("finished") && len(b.Notes) > 0 && b.Finished < b.Notes[0].Date {
				f := p.Report(b.Value("finished"), source.Warning, "%s was finished before the first note about it", b.Title)
				f.Related = []source.Place{{Span: b.Notes[0].Where.Span, Text: "the first note"}}
			}
		})
	},
}

var remakesItself = Rule{
	Name: "remakes itself",
	Doc:  "Following `remakes` and `reworks` from garment to garment leads back to where it began.",
	Bad: `
-- builds/grey-jacket/build.md --
---
remakes: first-jacket
---
-- builds/first-jacket/build.md --
---
remakes: grey-jacket
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
remakes: first-jacket
---
-- builds/first-jacket/build.md --
The first one.
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			for field, first := range map[string]journal.Ref{"remakes": b.Remakes, "reworks": b.Reworks} {
				if p.leadsTo(p.Journal.Build(first), b, make(map[*journal.Build]bool)) {
					p.Report(b.Value(field), source.Error, "%s comes from itself", b.Title)
				}
			}
		})
	},
}

// leadsTo reports whether going back from one build reaches another, looking at
// none twice.
func (p *Pass) leadsTo(from, to *journal.Build, seen map[*journal.Build]bool) bool {
	if from == nil || seen[from] {
		return false
	}
	seen[from] = true
	return from == to || p.leadsTo(p.Journal.Build(from.Remakes), to, seen) ||
		p.leadsTo(p.Journal.Build(from.Reworks), to, seen)
}

var uncorrectedPattern = Rule{
	Name: "pattern not corrected",
	Doc:  "A pattern was changed while cutting, the change never reached the paper, and the pattern was cut from again.",
	Bad: `
-- patterns/jacket-draft.md --
-- builds/first-jacket/build.md --
---
pattern: jacket-draft
---
-- builds/first-jacket/2024-03-01.md --
---
pattern changed: {waist girth: +1/2 in}
on the pattern: no
---
-- builds/second-jacket/build.md --
---
pattern: jacket-draft
---
-- builds/second-jacket/2026-02-01.md --
---
stage: cutting
---
`,
	Good: `
-- patterns/jacket-draft.md --
-- builds/first-jacket/build.md --
---
pattern: jacket-draft
---
-- builds/first-jacket/2024-03-01.md --
---
pattern changed: {waist girth: +1/2 in}
on the pattern: yes
---
-- builds/second-jacket/build.md --
---
pattern: jacket-draft
---
-- builds/second-jacket/2026-02-01.md --
---
stage: cutting
---
`,
	Run: func(p *Pass) {
		type cut struct {
			of   *journal.Build
			from *journal.Pattern
		}
		told := make(map[cut]bool)
		chalked := make(map[*journal.Pattern][]chalk)
		p.notes(func(n *journal.Note) { // oldest first
			if n.Of == nil {
				return
			}
			for _, ref := range n.Of.Pattern {
				pattern := p.Journal.Pattern(ref)
				if pattern == nil {
					continue
				}
				if at := (cut{n.Of, pattern}); n.Stage == "cutting" && !told[at] {
					told[at] = p.cutAgain(n, pattern, chalked[pattern])
				}
				for _, c := range n.PatternChanged {
					chalked[pattern] = append(chalked[pattern], chalk{c, n})
				}
			}
		})
	},
}

// A chalk is a change that was made to the pieces of a pattern while cutting or
// fitting one build.
type chalk struct {
	journal.Change
	note *journal.Note
}

// cutAgain tells of the changes that should have been on a pattern by the time a
// note tells of cutting from it for another build. It reports whether there are any.
func (p *Pass) cutAgain(n *journal.Note, pattern *journal.Pattern, before []chalk) bool {
	var places []source.Place
	for i, c := range before {
		lost := c.note.OnPattern == journal.No && c.note.Of != n.Of
		if lost && !drawn(pattern, n.Date, c, before[i+1:]) {
			places = append(places, source.Place{Span: c.Key, Text: c.Point.String() + " was changed here, for " + c.note.Of.Title})
		}
	}
	if len(places) == 0 {
		return false
	}
	f := p.Report(n.Key("stage"), source.Hint, "%s was cut from again before an earlier change reached the paper", pattern.Title)
	f.Help = "draw the change on the pattern and say so under `changed:` there, or make it again at this cutting"
	f.Related = places
	return true
}

// drawn reports whether a change of one measure reached the pattern after all, no
// later than a day: by the pattern's own page or by a later note.
func drawn(p *journal.Pattern, day edtf.Day, c chalk, later []chalk) bool {
	for _, l := range later {
		if l.Point == c.Point && l.note.OnPattern == journal.Yes {
			return true
		}
	}
	for _, a := range p.Changed {
		inTime := !a.Has("date") || c.note.Date <= a.Date && a.Date <= day
		if a.OnPattern == journal.Yes && inTime && covers(a, c) {
			return true
		}
	}
	return false
}

// covers reports whether a change on the paper is about a measure; one that names
// no measure may be about any.
func covers(a journal.Amendment, c chalk) bool {
	if len(a.Measures) == 0 {
		return true
	}
	for _, m := range a.Measures {
		if m.Point == c.Point {
			return true
		}
	}
	return false
}
