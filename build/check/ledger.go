package check

import (
	"slices"

	"hussif/build/fit"
	"hussif/content/journal"
	"hussif/content/source"
)

var noEffect = Rule{
	Name: "no effect",
	Doc:  "An alteration does not say enough for its effect on any measure to be worked out, so the garment's size is unknown until it is measured again.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side back, count: 2, crosses: {waist: 1 in}}
---
-- builds/grey-jacket/2026-03-01.md --
---
altered:
  - {seam: side back, now: 1/2 in}
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
			for _, e := range fit.Ledger(p.Journal, b).Entries {
				if e.Why == "" || p.Journal.Faulty(p.note(e.From)) || !seamsAgree(b, e.Row) {
					continue
				}
				f := p.Report(rowSpan(e.Row), source.Warning, "what this alteration does cannot be worked out: %s", e.Why)
				f.Help = "say what it adds in all, as in `changes: {bust girth: +1 in}`, or measure the garment again"
			}
		})
	},
}

// seamsAgree reports whether a row names only what its build lists; where it does
// not, the rules about seams have told so.
func seamsAgree(b *journal.Build, row *journal.Altered) bool {
	if seamUnknown(b, row.Seam) {
		return false
	}
	seam := seamOf(b, row.Seam.Text)
	return seam == nil || !slices.ContainsFunc(row.At, func(l journal.Level) bool { return notCrossed(seam, l) })
}

// rowSpan returns the place of the seam's name, by which a maker knows a row, or
// else that of the whole row.
func rowSpan(row *journal.Altered) source.Span {
	if row.Seam.Text != "" {
		return row.Seam.Span
	}
	return row.Where.Span
}

var ledger = Rule{
	Name: "not as expected",
	Doc:  "A garment measures something else than its last measures and the alterations since led to expect, by more than the error of measuring. An alteration did not do what it said, or one was not written down, or the tape slipped.",
	Bad: `
-- builds/grey-jacket/build.md --
---
seams:
  - {name: side back, count: 2, crosses: {waist: 1 in}}
---
-- builds/grey-jacket/2026-03-01.md --
---
measured: {waist: 27 in}
altered:
  - {seam: side back, was: 1 in, now: 1/2 in}
---
-- builds/grey-jacket/2026-03-08.md --
---
measured: {waist: 28 in}
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
measured: {waist: 27 in}
altered:
  - {seam: side back, was: 1 in, now: 1/2 in}
---
-- builds/grey-jacket/2026-03-08.md --
---
measured: {waist: 29 in}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			// A note that could not be read may have told of an alteration.
			if slices.ContainsFunc(b.Notes, func(n *journal.Note) bool { return p.Journal.Faulty(n) }) {
				return
			}
			for _, c := range fit.Ledger(p.Journal, b).Checks {
				if !c.Held() {
					p.unexpected(c)
				}
			}
		})
	},
}

func (p *Pass) unexpected(c fit.Check) {
	format := p.Journal.Settings.Format
	at := readingSpan(p.note(c.From).Measured, c)
	if len(c.Rows) == 0 {
		f := p.Report(at, source.Warning, "%s was %s when last measured and is %s here, and nothing tells of an alteration since",
			c.Point, format.Length(c.Expected), format.Estimate(c.Measured))
		f.Help = "measure again, or write down what was altered"
		return
	}
	f := p.Report(at, source.Warning, "%s is %s here, where the alterations since it was last measured lead to expect %s",
		c.Point, format.Estimate(c.Measured), format.Length(c.Expected))
	f.Help = "measure again, or put right what was written of the alteration"
	for _, row := range c.Rows {
		altered := &p.note(row).Altered[row.Entry]
		f.Related = append(f.Related, source.Place{Span: rowSpan(altered), Text: "altered here"})
	}
}

// readingSpan returns where a note gives the value that was checked: under the
// point's own name, or under the plain name that stands for both sides.
func readingSpan(readings journal.Readings, c fit.Check) source.Span {
	var at source.Span
	for _, r := range readings {
		switch {
		case r.Point == c.Point:
			return r.Span
		case r.Point.Measure == c.Point.Measure:
			at = r.Span
		}
	}
	return at
}

// note returns the note that a fact of a garment rests on.
func (p *Pass) note(from fit.Reason) *journal.Note {
	r, _ := p.Journal.Find(string(from.Record))
	return r.(*journal.Note)
}
