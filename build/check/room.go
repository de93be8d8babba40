package check

import (
	"slices"

	"hussif/build/fit"
	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/front"
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
			for i := range b.Seams {
				p.seamKeeps(&b.Seams[i])
			}
			for i := range b.Closures {
				c := &b.Closures[i]
				if c.Has("overlap") && c.Has("keep") && c.Keep > c.Overlap {
					p.keeps(c.Value("keep"), source.Warning, "the closing "+c.Name.Text, c.Keep, c.Overlap).
						Help = "look at the two figures: `overlap` is the lap there is, `keep` the least of it that must stay"
				}
			}
		})
	},
}

// seamKeeps compares what a seam keeps with what it has, where it crosses each
// measure and by whatever of crossing, seam and journal says so. What several
// crossings have of the seam is told once.
func (p *Pass) seamKeeps(s *journal.Seam) {
	crosses := s.Crosses
	if len(crosses) == 0 {
		crosses = journal.Crossings{{}}
	}
	var told []source.Span
	for i := range crosses {
		c := &crosses[i]
		keep, _ := room.Kept(p.Journal.Settings, s, c)
		now, hasNow := s.Now, s.Has("now")
		if c.Has("now") {
			now, hasNow = c.Now, true
		}
		if s.Has("trimmed to") && (!hasNow || s.TrimmedTo < now) {
			now, hasNow = s.TrimmedTo, true
		}
		at, level := s.Name.Span, source.Hint // by the journal's own keep
		switch {
		case c.Has("keep"):
			at, level = c.Value("keep"), source.Warning
		case s.Has("keep"):
			at, level = s.Value("keep"), source.Warning
		case !p.Journal.Settings.Has("keep"):
			continue // nobody said that so much must stay
		}
		if !hasNow || now < 0 || keep <= now || slices.Contains(told, at) {
			continue
		}
		told = append(told, at)
		what := "the seam " + s.Name.Text
		if c.Point.Measure != "" && (c.Has("now") || c.Has("keep")) {
			what += " at " + c.Point.String()
		}
		p.keeps(at, level, what, keep, now).Help = "look at the two figures: `now` is what is there, `keep` the least that must stay"
	}
}

func (p *Pass) keeps(at source.Span, level source.Level, what string, keep, now quantity.Length) *source.Finding {
	f := p.Journal.Settings.Format.Finer()
	return p.Report(at, level, "%s must keep %s and has only %s, so it gives nothing", what, f.Length(keep), f.Length(now))
}

var belowNothing = Rule{
	Name: "below nothing",
	Doc:  "A seam or a closing is said to have less than nothing of something, or to cross a measure past its own end.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side, count: 2, length: 8 in, crosses: {waist: {now: 5/8 in, at: 10 in}}}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side, count: 2, length: 12 in, crosses: {waist: {now: 5/8 in, at: 10 in}}}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			for i := range b.Seams {
				s := &b.Seams[i]
				p.notBelow(s.Where, s.Name.Text, "now", s.Now)
				p.notBelow(s.Where, s.Name.Text, "keep", s.Keep)
				p.notBelow(s.Where, s.Name.Text, "trimmed to", s.TrimmedTo)
				p.notBelow(s.Where, s.Name.Text, "length", s.Length)
				for _, c := range s.Crosses {
					p.notBelow(c.Where, s.Name.Text, "now", c.Now)
					p.notBelow(c.Where, s.Name.Text, "keep", c.Keep)
					p.notBelow(c.Where, s.Name.Text, "at", c.At)
					if s.Length > 0 && c.At > s.Length {
						p.Report(c.Value("at"), source.Warning, "the seam %s is %s long and cannot cross %s at %s", s.Name.Text,
							p.Journal.Settings.Format.Length(s.Length), c.Point, p.Journal.Settings.Format.Length(c.At)).
							Help = "`at` is the height along one seam, from its top; `length` is the length of one"
					}
				}
			}
			for _, c := range b.Closures {
				p.notBelow(c.Where, c.Name.Text, "overlap", c.Overlap)
				p.notBelow(c.Where, c.Name.Text, "keep", c.Keep)
			}
		})
	},
}

func (p *Pass) notBelow(at front.Where, name, field string, l quantity.Length) {
	if l < 0 {
		p.Report(at.Value(field), source.Warning, "`%s` of %s is less than nothing", field, name).
			Help = "leave out the minus, or the field where it is not known"
	}
}

var neverMeasuredOver = Rule{
	Name: "never measured over",
	Doc:  "The wearer of a build was measured, but never over what it is worn with, and the layers cannot be compared, so its fit cannot be told.",
	Bad: `
-- people/ada.md --
---
measured: [{date: 2026-01-10, over: [shift], waist: 28 in}]
---
-- builds/grey-jacket/build.md --
---
for: ada
over: [shift, stays]
fit: {waist: 0 to 1 in}
---
-- builds/grey-jacket/2026-02-14-tried-on.md --
---
measured: {waist: 28 in}
---
`,
	Good: `
-- people/ada.md --
---
measured: [{date: 2026-01-10, over: [shift, stays], waist: 27 in}]
---
-- builds/grey-jacket/build.md --
---
for: ada
over: [shift, stays]
fit: {waist: 0 to 1 in}
---
-- builds/grey-jacket/2026-02-14-tried-on.md --
---
measured: {waist: 28 in}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			if b.State == journal.StateApart || b.State == journal.StateGone {
				return
			}
			rows := fit.Of(p.Journal, b, fit.Latest(p.Journal, b)).Rows
			apart := slices.ContainsFunc(rows, func(r fit.Row) bool { return r.Verdict == fit.NoBodyOver })
			if apart && !slices.ContainsFunc(rows, func(r fit.Row) bool { return r.Body.Read.Known() }) {
				p.Report(b.Value("over"), source.Hint, "%s was never measured over %s", p.Journal.Person(b.For).Title, b.Foundation()).
					Help = "measure over these on a day on which you measure over the others too, and both can be compared"
			}
		})
	},
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
