package check

import (
	"slices"
	"strings"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

var answersNothing = Rule{
	Name: "answers nothing",
	Doc:  "`carries` and `set aside` name a next-time note, and `turned out` names a decision, each by its page and its part of that. What is named here is neither.",
	Bad: `
-- patterns/jacket-draft.md --
## Sleeve
Next time: cut it wider.
-- builds/grey-jacket/build.md --
---
pattern: jacket-draft
carries: [jacket-draft#sleeve, jacket-draft#next-cut-wider]
---
`,
	Good: `
-- patterns/jacket-draft.md --
## Sleeve
Next time: cut it wider.
-- builds/grey-jacket/build.md --
---
pattern: jacket-draft
carries: jacket-draft#next-cut-wider
---
`,
	Run: func(p *Pass) {
		p.ties(func(t tie) {
			if slices.Contains(t.wanted, t.anchor) {
				return
			}
			named := t.ref.To
			if t.anchor != "" {
				named += "#" + t.anchor
			}
			f := p.Report(t.ref.Span, source.Warning, "%s is no %s", named, t.noun)
			for _, anchor := range t.wanted[:min(len(t.wanted), mostListed)] {
				f.Instead = append(f.Instead, t.ref.To+"#"+anchor)
			}
			if len(t.wanted) == 0 {
				f.Help = "that page has no " + t.noun
			}
		})
	},
}

var movingAnchor = Rule{
	Name: "part that may move",
	Doc:  "A next-time note or decision is named by its number on the page, or by first words that another there has too. When one is put in before it the link means another. Name it by its own words.",
	Bad: `
-- patterns/jacket-draft.md --
---
next time: [cut the sleeve wider, lengthen the back]
---
-- builds/grey-jacket/build.md --
---
pattern: jacket-draft
carries: [jacket-draft#next-1, jacket-draft#next-lengthen-back]
---
`,
	Good: `
-- patterns/jacket-draft.md --
---
next time: [cut the sleeve wider, lengthen the back]
---
-- builds/grey-jacket/build.md --
---
pattern: jacket-draft
carries: [jacket-draft#next-cut-sleeve-wider, jacket-draft#next-lengthen-back]
---
`,
	Run: func(p *Pass) {
		p.ties(func(t tie) {
			switch {
			case !slices.Contains(t.wanted, t.anchor):
			case journal.Numbered(t.ref.Anchor):
				f := p.Report(t.ref.Span, source.Hint, "%q counts the parts of %s, and numbers move when one is put in before", t.ref.Anchor, p.Journal.Name(t.to))
				f.Instead = []string{t.ref.To + "#" + t.anchor}
			case slices.ContainsFunc(t.wanted, func(other string) bool { return sameWords(other, t.anchor) }):
				f := p.Report(t.ref.Span, source.Hint, "another %s of %s begins with the same words", t.noun, p.Journal.Name(t.to))
				f.Help = "begin one of them otherwise, so that the link cannot come to mean the other"
			}
		})
	},
}

// sameWords reports whether two anchors of a page differ by a number at the end.
func sameWords(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	rest, ok := strings.CutPrefix(b, a+"-")
	return ok && strings.Trim(rest, "0123456789") == ""
}

var carriedAndSetAside = Rule{
	Name: "carried and set aside",
	Doc:  "A build says of one next-time note both that it carries it and that it sets it aside. A later note may say otherwise than an earlier one; here both hold at once.",
	Bad: `
-- patterns/jacket-draft.md --
---
next time: cut the sleeve wider
---
-- builds/grey-jacket/build.md --
---
pattern: jacket-draft
carries: jacket-draft#next-cut-sleeve-wider
set aside: [{note: jacket-draft#next-cut-sleeve-wider, because: it has no sleeves}]
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
set aside: [{note: jacket-draft#next-cut-sleeve-wider, because: it has no sleeves}]
---
`,
	Run: func(p *Pass) {
		type answer struct {
			by     journal.ID // the build, or the note that belongs to none
			to     journal.Record
			anchor string
		}
		carried := make(map[answer][]tie)
		var aside []tie
		of := func(t tie) answer { return answer{t.by, t.to, t.anchor} }
		p.ties(func(t tie) {
			switch t.field {
			case "carries":
				carried[of(t)] = append(carried[of(t)], t)
			case "set aside":
				aside = append(aside, t)
			}
		})
		for _, t := range aside {
			for _, c := range carried[of(t)] {
				if t.day != 0 && c.day != 0 && t.day != c.day {
					continue
				}
				f := p.Report(t.ref.Span, source.Warning, "%s#%s is set aside and carried at once", p.Journal.Name(t.to), t.anchor)
				f.Related = []source.Place{{Span: c.ref.Span, Text: "carried here"}}
				break
			}
		}
	},
}

// A tie is a link from later work to a next-time note or decision.
type tie struct {
	field  string
	ref    journal.Ref
	by     journal.ID // the build, or the note that belongs to none
	day    edtf.Day   // of the note; 0 for the build's own page
	to     journal.Record
	anchor string   // of the part meant; empty where none is named
	noun   string   // what the field wants
	wanted []string // the anchors of those that the page has
}

// ties visits the links of `carries`, `set aside` and `turned out`. Those that
// lead nowhere have been told of.
func (p *Pass) ties(visit func(tie)) {
	one := func(t tie) {
		to, ok := p.Journal.Find(t.ref.To)
		if !ok || p.Journal.Faulty(to) {
			return
		}
		if t.anchor, ok = journal.Anchor(to, t.ref.Anchor); !ok && t.ref.Anchor != "" {
			return
		}
		t.to, t.noun, t.wanted = to, "next-time note", journal.NextAnchors(to)
		if t.field == "turned out" {
			t.noun, t.wanted = "decision", journal.DecisionAnchors(to)
		}
		visit(t)
	}
	answers := func(by journal.ID, day edtf.Day, carries []journal.Ref, aside []journal.SetAside) {
		for _, ref := range carries {
			one(tie{field: "carries", ref: ref, by: by, day: day})
		}
		for _, s := range aside {
			one(tie{field: "set aside", ref: s.Note, by: by, day: day})
		}
	}
	p.builds(func(b *journal.Build) { answers(b.ID, 0, b.Carries, b.SetAside) })
	p.notes(func(n *journal.Note) {
		by := n.ID
		if n.Of != nil {
			by = n.Of.ID
		}
		answers(by, n.Date, n.Carries, n.SetAside)
		for _, o := range n.TurnedOut {
			one(tie{field: "turned out", ref: o.Decision, by: by, day: n.Date})
		}
	})
}
