package check

import (
	"slices"
	"strconv"

	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/content/source"
)

// mostListed is how many notes a finding names. A maker who has answered those is
// told of the rest.
const mostListed = 5

var unanswered = Rule{
	Name: "unanswered next-time notes",
	Doc:  "A build that is planned or under way has a pattern or technique, or a garment that it was made from, about which an earlier next-time note says something. Carry the note, or set it aside with a reason.",
	Bad: `
-- patterns/jacket-draft.md --
---
next time: cut the sleeve wider
---
-- builds/grey-jacket/build.md --
---
pattern: jacket-draft
---
`,
	Good: `
-- patterns/jacket-draft.md --
---
next time: cut the sleeve wider
---
-- builds/grey-jacket/build.md --
---
pattern: jacket-draft
carries: jacket-draft#next-cut-sleeve-wider
---
`,
	Run: func(p *Pass) {
		list := lesson.Gather(p.Journal)
		p.builds(func(b *journal.Build) {
			if !unfinished(b) || slices.ContainsFunc(b.Notes, func(n *journal.Note) bool { return p.Journal.Faulty(n) }) {
				return
			}
			open, all := list.OpenFor(b, mostListed)
			if all == 0 {
				return
			}
			f := p.Report(b.Value("title"), source.Hint, "%s for %s", notesUnanswered(all), b.Title)
			f.Help = "carry each with `carries:`, or put it under `set aside:` with a reason"
			for _, l := range open {
				if from, ok := p.Journal.Find(string(l.From)); ok {
					f.Related = append(f.Related, source.Place{Span: placeOf(from, l.Anchor), Text: p.Journal.Name(from) + "#" + l.Anchor})
				}
			}
		})
	},
}

func notesUnanswered(count int) string {
	if count == 1 {
		return "an earlier next-time note is not answered"
	}
	return strconv.Itoa(count) + " earlier next-time notes are not answered"
}

func unfinished(b *journal.Build) bool {
	if b.State != "" {
		return b.State == journal.StatePlanned || b.State == journal.StateUnderWay
	}
	_, finished := fit.FirstFinish(b)
	return !finished
}

// placeOf returns where a next-time note of a record stands.
func placeOf(r journal.Record, anchor string) source.Span {
	page := r.Head()
	for _, next := range page.Next {
		if next.Anchor == anchor {
			return next.Where.Span
		}
	}
	for _, remark := range page.Text.Remarks {
		if remark.Kind == prose.NextTime && remark.Anchor == anchor {
			return remark.Span
		}
	}
	return page.Where.Span
}
