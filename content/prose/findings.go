package prose

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"hussif/content/source"
)

// Rules for writing that does not do what its maker means.
const (
	BrokenTie  = "tie broken by a table"
	OpenSecret = "private where nothing is hidden"
)

// brokenTie looks for a tie whose bare bar has ended its cell.
func (g *gatherer) brokenTie(cell *east.TableCell) {
	next, ok := cell.NextSibling().(*east.TableCell)
	if !ok || cell.Lines().Len() == 0 || next.Lines().Len() == 0 {
		return
	}
	left, right := cell.Lines().At(0), next.Lines().At(0)
	open := bytes.LastIndex(g.src[left.Start:left.Stop], []byte("[["))
	end := bytes.Index(g.src[right.Start:right.Stop], []byte("]]"))
	if open < 0 || end < 0 || bytes.Contains(g.src[left.Start+open:left.Stop], []byte("]]")) {
		return
	}
	start, bar, stop := left.Start+open, left.Stop, right.Start+end+2
	finding := source.Found(g.doc.Body.At(start, stop-start), source.Warning, BrokenTie,
		"in a table a bar ends the cell, also within a tie")
	finding.Instead = []string{string(g.src[start:bar]) + `\|` + string(g.src[right.Start:stop])}
	g.doc.Findings = append(g.doc.Findings, finding)
}

// openSecret looks for "Private:" at the start of a heading or a cell, where it
// makes no remark and everyone can read on.
func (g *gatherer) openSecret(n ast.Node, private bool) {
	o, ok := remarkMaker{src: g.src}.opener(firstWords(n))
	if !ok || o.kind != Private || private {
		return
	}
	line := n.Lines().At(0)
	written := bytes.TrimRight(line.Value(g.src), " \t\r\n")
	finding := source.Found(g.doc.Body.At(line.Start, len(written)), source.Warning, OpenSecret,
		"a heading or a cell of a table cannot be private: everyone can read this")
	finding.Help = "write it in a paragraph or a list item of its own"
	g.doc.Findings = append(g.doc.Findings, finding)
}
