package site

import (
	"html/template"
	"sync"

	"github.com/yuin/goldmark/ast"

	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/theme"
)

// Bodies are the texts of records, printed while the journal is read so that none
// has to be read again for its page. The zero value is ready.
type Bodies struct {
	printed sync.Map // theme.Body by journal.Record
}

// See prints the text of a record. It is for [journal.Folder.Journal].
func (b *Bodies) See(r journal.Record, tree ast.Node) {
	if tree.HasChildren() {
		b.printed.Store(r, printed(r, tree))
	}
}

// take returns the text of a record and does not keep it, since nearly all are
// wanted once. One that is not there is read now.
func (b *Bodies) take(r journal.Record) theme.Body {
	if b != nil {
		if body, ok := b.printed.LoadAndDelete(r); ok {
			return body.(theme.Body)
		}
	}
	page := r.Head()
	return printed(r, prose.Tree(page.File, page.Text.Body, journal.Start(r)))
}

func printed(r journal.Record, tree ast.Node) theme.Body {
	page := r.Head()
	body, err := theme.Prose(tree, page.File.Data[page.Text.Body.Start:page.Text.Body.End])
	if err != nil {
		panic(err) // writing to memory does not fail
	}
	return body
}

// body prints a record's text.
func (d desk) body(r journal.Record) template.HTML { return d.bodyWith(r, linker{d, r}) }

// bodyWith prints it with links of another sort.
func (d desk) bodyWith(r journal.Record, links theme.Linker) template.HTML {
	page := r.Head()
	d.trace.Ask(journal.Text, string(page.ID))
	if page.Text.Body.Start == page.Text.Body.End {
		return ""
	}
	return d.Bodies.take(r).With(links)
}
