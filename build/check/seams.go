package check

import (
	"slices"

	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/source"
)

var unknownSeam = Rule{
	Name: "unknown seam",
	Doc:  "An alteration, `caught by`, `opened` or `sewed` names a seam that the build does not list, so nothing can be worked out from it.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side back, count: 2, crosses: {waist: 1 in}}
---
-- builds/grey-jacket/2026-03-01.md --
---
altered:
  - {seam: sideback, was: 1 in, now: 1/2 in}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side back, count: 2, crosses: {waist: 1 in}}
---
-- builds/grey-jacket/2026-03-01.md --
---
altered:
  - {seam: side back, was: 1 in, now: 1/2 in}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			for _, s := range b.Seams {
				for _, c := range s.CaughtBy {
					p.knownSeam(b, c.Seam)
				}
			}
		})
		p.notes(func(n *journal.Note) {
			if n.Of == nil {
				return
			}
			for _, seam := range slices.Concat(n.Opened, n.Sewed) {
				p.knownSeam(n.Of, seam)
			}
			for _, a := range n.Altered {
				p.knownSeam(n.Of, a.Seam)
			}
		})
	},
}

func (p *Pass) knownSeam(b *journal.Build, name journal.Word) {
	if !seamUnknown(b, name) {
		return
	}
	var names []string
	for _, s := range b.Seams {
		names = append(names, s.Name.Text)
	}
	f := p.Report(name.Span, source.Error, "%s has no seam called %q", b.ID.Name(), name.Text)
	if f.Instead = near.Of(name.Text, names); len(f.Instead) == 0 {
		f.Help = "add it under `seams:` in " + b.File.Name
	}
}

// seamUnknown reports whether a name is that of no seam. A build that lists no
// seams is asked nothing: its maker has not come to that yet.
func seamUnknown(b *journal.Build, name journal.Word) bool {
	return name.Text != "" && len(b.Seams) > 0 && seamOf(b, name.Text) == nil
}

var seamTwice = Rule{
	Name: "seam named twice",
	Doc:  "Two seams of a build have one name, so an alteration could mean either.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side, count: 2}
  - {name: side, count: 2}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side back, count: 2}
  - {name: side front, count: 2}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			first := make(map[string]source.Span)
			for _, s := range b.Seams {
				if at, ok := first[near.Folded(s.Name.Text)]; ok {
					f := p.Report(s.Name.Span, source.Error, "two seams are called %q", s.Name.Text)
					f.Help = "give each a name of its own, or one entry with `count: 2`"
					f.Related = []source.Place{{Span: at, Text: "the other one"}}
					continue
				}
				first[near.Folded(s.Name.Text)] = s.Name.Span
			}
		})
	},
}

var unknownPiece = Rule{
	Name: "unknown piece",
	Doc:  "A seam joins, or a photo shows, a piece that the build does not list.",
	Bad: `
-- builds/grey-jacket/build.md --
---
pieces: [back, side front]
seams:
  - {name: side back, joins: [back, side frunt]}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
pieces: [back, side front]
seams:
  - {name: side back, joins: [back, side front]}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			for _, s := range b.Seams {
				for _, piece := range s.Joins {
					p.knownPiece(b, piece)
				}
			}
			for _, photo := range b.Photos {
				p.knownPiece(b, photo.Piece)
			}
		})
		p.notes(func(n *journal.Note) {
			for _, photo := range n.Photos {
				if n.Of != nil {
					p.knownPiece(n.Of, photo.Piece)
				}
			}
		})
	},
}

// knownPiece asks nothing of a build that lists no pieces.
func (p *Pass) knownPiece(b *journal.Build, name journal.Word) {
	if name.Text == "" || len(b.Pieces) == 0 {
		return
	}
	var names []string
	for _, piece := range b.Pieces {
		names = append(names, piece.Name.Text)
	}
	if slices.ContainsFunc(names, func(known string) bool { return near.Folded(known) == near.Folded(name.Text) }) {
		return
	}
	f := p.Report(name.Span, source.Hint, "%s has no piece called %q", b.ID.Name(), name.Text)
	if f.Instead = near.Of(name.Text, names); len(f.Instead) == 0 {
		f.Help = "add it under `pieces:` in " + b.File.Name
	}
}

var levelNotCrossed = Rule{
	Name: "level not crossed",
	Doc:  "An alteration was made at a measure that the seam does not cross by what the build says.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: sleeve, count: 2, crosses: {upper arm girth: 5/8 in}}
---
-- builds/grey-jacket/2026-03-01.md --
---
altered:
  - {seam: sleeve, at: wrist girth, was: 5/8 in, now: 1/4 in}
---
`,
	Good: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: sleeve, count: 2, crosses: {upper arm girth: 5/8 in, wrist girth: 1/2 in}}
---
-- builds/grey-jacket/2026-03-01.md --
---
altered:
  - {seam: sleeve, at: wrist girth, was: 5/8 in, now: 1/4 in}
---
`,
	Run: func(p *Pass) {
		p.notes(func(n *journal.Note) {
			for _, a := range n.Altered {
				s := seamOf(n.Of, a.Seam.Text)
				if s == nil {
					continue
				}
				for _, level := range a.At {
					if !notCrossed(s, level) {
						continue
					}
					f := p.Report(level.Name, source.Error, "the seam %q does not cross %s", s.Name.Text, level.Point)
					f.Help = "add it under `crosses:` of the seam, or name another measure"
					f.Related = []source.Place{{Span: s.Name.Span, Text: "the seam"}}
				}
			}
		})
	},
}

// notCrossed reports whether a build's seam lies across some measures, and a level
// is at another.
func notCrossed(s *journal.Seam, level journal.Level) bool {
	return len(s.Crosses) > 0 && !slices.ContainsFunc(s.Crosses, func(c journal.Crossing) bool {
		return c.Point.Measure == level.Point.Measure
	})
}

// seamOf returns the seam of a build that a name means, or nil.
func seamOf(b *journal.Build, name string) *journal.Seam {
	if b == nil {
		return nil
	}
	for i := range b.Seams {
		if near.Folded(b.Seams[i].Name.Text) == near.Folded(name) {
			return &b.Seams[i]
		}
	}
	return nil
}
