package check

import (
	"slices"

	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/content/source"
)

var keepsTooMuch = Rule{
	Name: "keeps more than it has",
	Doc:  "A seam or a closing must keep more than there is now, so it has nothing to give and less than it needs.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side, count: 2, crosses: {waist: {now: 1/4 in, keep: 3/8 in}}}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side, count: 2, crosses: {waist: {now: 3/8 in, keep: 1/4 in}}}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			for _, s := range b.Seams {
				p.keeps(s.Value("keep"), s.Has("now") && s.Has("keep"), s.Now, s.Keep)
				p.keeps(s.Value("keep"), s.Has("trimmed to") && s.Has("keep"), s.TrimmedTo, s.Keep)
				for _, c := range s.Crosses {
					p.keeps(c.Value("keep"), c.Has("now") && c.Has("keep"), c.Now, c.Keep)
				}
			}
			for _, c := range b.Closures {
				p.keeps(c.Value("keep"), c.Has("overlap") && c.Has("keep"), c.Overlap, c.Keep)
			}
		})
	},
}

func (p *Pass) keeps(at source.Span, both bool, now, keep quantity.Length) {
	if both && keep > now {
		f := p.Journal.Settings.Format
		p.Report(at, source.Warning, "%s must stay, and there is only %s", f.Length(keep), f.Length(now)).
			Help = "look at the two figures: `now` is what is there, `keep` the least that must stay"
	}
}

var caughtInACircle = Rule{
	Name: "caught in a circle",
	Doc:  "Seams catch each other in a circle, so none of them could have been sewn first or can be opened first.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side, caught by: armhole}
  - {name: armhole, caught by: side}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side, caught by: armhole}
  - {name: armhole}
---
`,
	Run: func(p *Pass) {
		p.wayFaults(wayin.Circle, source.Error, "leave out the `caught by` of the one that was sewn last")
	},
}

var unjoinedPiece = Rule{
	Name: "piece of no seam",
	Doc:  "A piece is listed that no seam joins to anything, so what comes loose with it cannot be told.",
	Bad: `
-- builds/grey-jacket/build.md --
---
pieces: [back, front, cuff]
seams:
  - {name: side, joins: [back, front]}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
pieces: [back, front, cuff]
seams:
  - {name: side, joins: [back, front]}
  - {name: cuff seam, joins: [cuff, front]}
---
`,
	Run: func(p *Pass) {
		p.wayFaults(wayin.UnjoinedPiece, source.Hint, "name it under `joins:` of a seam")
	},
}

var seamOfNoPiece = Rule{
	Name: "seam of no piece",
	Doc:  "A seam joins nothing although others of the build say what they join, so what comes loose cannot be told.",
	Bad: `
-- builds/grey-jacket/build.md --
---
pieces: [back, front]
seams:
  - {name: side, joins: [back, front]}
  - {name: shoulder}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
pieces: [back, front]
seams:
  - {name: side, joins: [back, front]}
  - {name: shoulder, joins: [back, front]}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			joined := false
			for _, s := range b.Seams {
				joined = joined || len(s.Joins) > 0
			}
			for _, s := range b.Seams {
				if joined && len(s.Joins) == 0 {
					p.Report(s.Name.Span, source.Hint, "nothing says which pieces the seam %q joins", s.Name.Text).
						Help = "add `joins: [...]` with the names of pieces"
				}
			}
		})
	},
}

// wayFaults reports the faults of one kind in the graphs of pieces and seams. A
// piece that no seam joins is not told of where a seam joins one that is not
// listed: most likely that is the same, misspelt.
func (p *Pass) wayFaults(kind wayin.FaultKind, level source.Level, help string) {
	p.builds(func(b *journal.Build) {
		faults := wayin.Read(b, wayin.Rates{}).Faults()
		misspelt := slices.ContainsFunc(faults, func(f wayin.Fault) bool { return f.Kind == wayin.UnknownPiece })
		for _, fault := range faults {
			if fault.Kind == kind && (kind != wayin.UnjoinedPiece || !misspelt) {
				p.Report(fault.Word.Span, level, "%s", fault.Text()).Help = help
			}
		}
	})
}
