package check

import (
	"sync"

	"hussif/build/stock"
	"hussif/build/worked"
	"hussif/content/journal"
)

var worksheetFault = Rule{
	Name: worked.Rule,
	Doc:  "A worksheet in a text cannot be worked out as it stands: `hussif work NAME --help` tells what it takes. The page shows the same in its place.",
	Bad: `
-- notes/2026-03-01.md --
~~~work knife pleats
finished: 34 in
shown: 0 in
depth: 1 in
~~~
`,
	Good: `
-- notes/2026-03-01.md --
~~~work knife pleats
finished: 34 in
shown: 1 in
depth: 1 in
~~~
`,
	Run: func(p *Pass) {
		room := worked.Room{Journal: p.Journal, Stock: stockOf(p.Journal)}
		for _, r := range p.Journal.Records() {
			for _, s := range room.Sheets(r) {
				*p.found = append(*p.found, s.Faults...)
			}
		}
	},
}

// stockOf returns the stash's answers about a material. The stash is gathered when
// it is first asked for, which in most journals no worksheet does.
func stockOf(j *journal.Journal) func(journal.ID) stock.Sheet {
	gathered := sync.OnceValue(func() stock.Stash { return stock.Gather(j) })
	return func(m journal.ID) stock.Sheet {
		sheet, _ := gathered().Of(m)
		return sheet
	}
}
