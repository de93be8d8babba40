package check

import (
	"slices"
	"strings"

	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/quantity"
	"hussif/content/source"
)

// No measure of a body or a garment is longer than this: a train of five yards
// and a skirt hem of as much fit within it.
const longestMeasure = 6 * quantity.Metre

var unlikelyMeasure = Rule{
	Name: "unlikely measure",
	Doc:  "A measure is nothing, less than nothing, or longer than any garment: most likely a slip of the pen or the wrong unit.",
	Bad: `
-- people/ada.md --
---
measured:
  - {date: 2026-01-10, bust girth: 365 in}
---
`,
	Good: `
-- people/ada.md --
---
measured:
  - {date: 2026-01-10, bust girth: 36 1/2 in}
---
`,
	Run: func(p *Pass) {
		check := func(readings journal.Readings) {
			for _, r := range readings {
				if r.Value.Known() && (r.Value.Length <= 0 || r.Value.Length > longestMeasure) {
					f := p.Report(r.Span, source.Warning, "can %s be %s?", r.Point, p.Journal.Settings.Format.Estimate(r.Value))
					f.Help = "look at the figure and its unit"
				}
			}
		}
		p.sessions(func(s *journal.Session) { check(s.Readings) })
		p.notes(func(n *journal.Note) { check(n.Measured) })
	},
}

func (p *Pass) sessions(visit func(*journal.Session)) {
	for _, person := range p.Journal.People() {
		if !p.Journal.Faulty(person) {
			for i := range person.Measured {
				visit(&person.Measured[i])
			}
		}
	}
	p.notes(func(n *journal.Note) {
		for i := range n.Body {
			visit(&n.Body[i])
		}
	})
}

var strangeLayer = Rule{
	Name: "strange layer",
	Doc:  "A layer worn underneath is named once only and almost like another one. Measures are compared over the same layers, so a misspelt one hides them.",
	Bad: `
-- people/ada.md --
---
measured:
  - {date: 2026-01-10, over: [shift, stays], bust girth: 36 1/2 in}
  - {date: 2026-06-02, over: [shift, stay], bust girth: 36 in}
---
-- builds/grey-jacket/build.md --
---
over: [shift, stays]
---
`,
	Good: `
-- people/ada.md --
---
measured:
  - {date: 2026-01-10, over: [shift, stays], bust girth: 36 1/2 in}
  - {date: 2026-06-02, over: [shift, stays], bust girth: 36 in}
---
-- builds/grey-jacket/build.md --
---
over: [shift, stays]
---
`,
	Run: func(p *Pass) {
		var words []journal.Word
		p.sessions(func(s *journal.Session) { words = append(words, s.Over...) })
		p.builds(func(b *journal.Build) { words = append(words, b.Over...) })
		count := make(map[string]int)
		for _, w := range words {
			count[strings.ToLower(w.Text)]++
		}
		var common []string
		for name, n := range count {
			if n > 1 {
				common = append(common, name)
			}
		}
		slices.Sort(common)
		for _, w := range words {
			if name := strings.ToLower(w.Text); count[name] == 1 {
				if instead := near.Of(name, common); len(instead) > 0 {
					f := p.Report(w.Span, source.Hint, "%q is worn nowhere else in the journal", w.Text)
					f.Instead = instead
				}
			}
		}
	},
}

var noWearer = Rule{
	Name: "no wearer",
	Doc:  "A build names what it should fit but not whom, so no fit can be worked out.",
	Bad: `
-- builds/grey-jacket/build.md --
---
fit: {bust girth: 0 to 1 in}
---
`,
	Good: `
-- people/ada.md --
-- builds/grey-jacket/build.md --
---
for: ada
fit: {bust girth: 0 to 1 in}
---
`,
	Run: func(p *Pass) {
		p.builds(func(b *journal.Build) {
			if len(b.Fit) > 0 && b.For.IsZero() {
				f := p.Report(b.Key("fit"), source.Hint, "nothing says for whom this is made")
				f.Help = "add `for: ...` with the name of a file in people/"
			}
		})
	},
}
