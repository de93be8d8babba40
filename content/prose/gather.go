package prose

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
)

// A gatherer goes through a tree once. It collects the facts of its Doc and
// writes into the tree what only the whole of it decides: anchors, and what is
// private.
type gatherer struct {
	src     []byte
	doc     Doc
	anchors Anchors
	open    map[int]bool // the footnotes that are not private
}

// walk gathers from the children of n. It returns a node where the tree is nested
// too deep, and nil otherwise.
func (g *gatherer) walk(n ast.Node, depth int, private bool) ast.Node {
	if depth > maxNesting {
		return n
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		within := private
		switch c := c.(type) {
		case *ast.Heading:
			g.openSecret(c, private)
			if !private {
				g.heading(c)
			}
		case *ast.Paragraph:
			if depth == 0 && g.doc.Opening == "" && hasText(c, g.src) {
				g.doc.Opening = summary(plainText(c, g.src))
			}
		case *LinkNode:
			c.Link.Private = private
			g.doc.Links = append(g.doc.Links, c.Link)
		case *PictureNode:
			c.Picture.Private = private
			g.doc.Pictures = append(g.doc.Pictures, c.Picture)
		case *RemarkNode:
			within = private || c.Remark.Kind == Private
			g.remark(c, within)
		case *WorkNode:
			g.work(c, private)
		case *east.Footnote:
			within = !g.open[c.Index]
		case *east.TableCell:
			g.openSecret(c, private)
			g.brokenTie(c)
		}
		if deep := g.walk(c, depth+1, within); deep != nil {
			return deep
		}
	}
	return nil
}

func (g *gatherer) heading(n *ast.Heading) {
	words := plainText(n, g.src)
	anchor := g.anchors.heading(words)
	n.SetAttributeString("id", []byte(anchor))
	h := Heading{Level: n.Level, Text: words, Anchor: anchor, Span: g.doc.Body.At(max(n.Pos(), 0), 0)}
	if lines := n.Lines(); lines.Len() > 0 {
		start := lines.At(0).Start
		written := bytes.TrimRight(g.src[start:lines.At(lines.Len()-1).Stop], " \t\r\n")
		h.Span = g.doc.Body.At(start, len(written))
	}
	g.doc.Headings = append(g.doc.Headings, h)
}

func (g *gatherer) remark(n *RemarkNode, private bool) {
	r := &n.Remark
	r.Private = private
	r.Text = plainText(n, g.src)
	switch {
	case private:
	case r.Kind == NextTime:
		r.Anchor = g.anchors.Next(r.Text)
	case r.Kind == Decided:
		r.Anchor = g.anchors.Decided(r.Text)
	}
	g.doc.Remarks = append(g.doc.Remarks, *r)
}

// hasText reports whether a block has words of its own, not only pictures.
func hasText(n ast.Node, src []byte) bool {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c.Kind() {
		case PictureKind:
			continue
		case ast.KindText:
			if len(bytes.TrimSpace(c.(*ast.Text).Segment.Value(src))) > 0 {
				return true
			}
		default:
			if hasText(c, src) {
				return true
			}
		}
	}
	return false
}
