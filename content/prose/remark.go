package prose

import (
	"bytes"
	"slices"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"hussif/content/source"
)

// A Remark is what a maker told herself in a line that begins with one of three
// openings.
type Remark struct {
	Kind   Kind
	Text   string  // plain, without the opening and the tail
	About  []About // from the tail
	Anchor string  // such as "next-cut-sleeve-wider"; "" for a private one and all inside it

	Private bool        // is a private remark or stands in one
	Span    source.Span // its first paragraph, opening and tail included
}

// A Kind is what a remark is for.
type Kind int

// The kinds of remark.
const (
	NextTime Kind = iota // to be done at the next garment of the sort
	Decided              // a choice that was made
	Private              // for the maker's own eyes
)

// String returns the kind as its opening has it, in lower case.
func (k Kind) String() string { return [...]string{"next time", "decided", "private"}[k] }

// A RemarkNode holds the blocks of a remark, of which the first has lost its
// opening and its tail. Where a list item is one remark from end to end, the node
// is its only child.
type RemarkNode struct {
	ast.BaseBlock
	Remark Remark
}

// RemarkKind is the kind of node of a remark.
var RemarkKind = ast.NewNodeKind("Remark")

// Kind implements [ast.Node].
func (*RemarkNode) Kind() ast.NodeKind { return RemarkKind }

// Dump implements [ast.Node].
func (n *RemarkNode) Dump(src []byte, level int) {
	ast.DumpHelper(n, src, level, map[string]string{"Of": n.Remark.Kind.String()}, nil)
}

// remarks is the extension that makes a remark of
//
//   - a paragraph's lines from one that begins with an opening to the next such
//     line or the end, with the lists, tables, quotes and code that follow
//     without a blank line;
//   - the whole of a list item that begins with an opening.
//
// An opening is "Next time:", "Decided:" or "Private:" in any case, with or
// without emphasis round it. It counts at the start of every line of a paragraph,
// not only the first: to a maker who presses Enter once, that line is a new one,
// and what she calls private must not depend on a blank line.
type remarks struct{}

// Extend implements [goldmark.Extender].
func (remarks) Extend(m goldmark.Markdown) {
	// After footnotes (999) have been moved to the end, before links.
	m.Parser().AddOptions(parser.WithASTTransformers(util.Prioritized(remarks{}, 1000)))
}

// Transform implements [parser.ASTTransformer].
func (remarks) Transform(doc *ast.Document, reader text.Reader, pc parser.Context) {
	m := remarkMaker{src: reader.Source(), body: bodyOf(pc)}
	var blocks []ast.Node
	visit(doc, func(n ast.Node) bool {
		if isWords(n) {
			blocks = append(blocks, n)
		}
		return !isWords(n)
	})
	for _, block := range blocks {
		m.make(block)
	}
}

// isWords reports whether n is a paragraph or its like in a tight list.
func isWords(n ast.Node) bool {
	return n.Kind() == ast.KindParagraph || n.Kind() == ast.KindTextBlock
}

type remarkMaker struct {
	src  []byte
	body source.Span
}

// make makes the remarks of one block, the last one first: each takes what
// stands from its opening to the end of what is left of the block.
func (m remarkMaker) make(block ast.Node) {
	var found []opener
	for line := range lines(block) {
		if o, ok := m.opener(line); ok {
			found = append(found, o)
		}
	}
	if len(found) == 0 {
		return
	}
	end := block.Lines().At(block.Lines().Len() - 1).Stop
	for _, o := range slices.Backward(found) {
		words := block
		if o.line != firstWords(block) {
			words = splitOff(block, o.line)
		}
		m.wrap(words, o, end)
		end = o.at
	}
}

// wrap puts a remark in the place of a block of words, which ends at the offset
// end, and moves into it what belongs to it.
func (m remarkMaker) wrap(words ast.Node, o opener, end int) {
	written := bytes.TrimRight(m.src[o.at:end], " \t\r\n>")
	remark := &RemarkNode{Remark: Remark{Kind: o.kind, Span: m.body.At(o.at, len(written))}}
	parent := words.Parent()
	wholeItem := parent.Kind() == ast.KindListItem && parent.FirstChild() == words
	o.cut(m.src)
	remark.Remark.About = m.cutTail(words)
	empty := plainText(words, m.src) == ""

	parent.InsertBefore(parent, words, remark)
	remark.AppendChild(remark, words)
	for next := remark.NextSibling(); next != nil; next = remark.NextSibling() {
		switch next.Kind() {
		case RemarkKind, east.KindFootnoteList, east.KindFootnoteBacklink:
			return
		case ast.KindHeading, ast.KindThematicBreak:
			if !wholeItem {
				return
			}
		}
		if isWords(next) {
			if _, ok := m.opener(firstWords(next)); ok {
				return
			}
		}
		if !wholeItem && !empty && !m.follows(next) {
			return
		}
		remark.AppendChild(remark, next)
		empty = false // an opening alone on its line takes one block after a blank line
	}
}

// follows reports whether a block begins right below another line of text. The
// flag goldmark keeps for this is not set for tables and wrong after fenced code.
func (m remarkMaker) follows(block ast.Node) bool {
	at := firstByte(block)
	if at < 0 {
		return false
	}
	above := m.src[:bytes.LastIndexByte(m.src[:at], '\n')+1]
	above = bytes.TrimSuffix(above, []byte{'\n'})
	above = above[bytes.LastIndexByte(above, '\n')+1:]
	return len(bytes.Trim(above, " \t\r>")) > 0
}

// firstByte returns an offset in the first line of a block, or -1.
func firstByte(block ast.Node) int {
	switch block.Kind() {
	case east.KindTable:
		// Its own position is that of the paragraph it was part of.
		return block.FirstChild().FirstChild().Pos()
	case ast.KindHTMLBlock:
		if block.Lines().Len() > 0 {
			return block.Lines().At(0).Start
		}
	}
	return block.Pos()
}
