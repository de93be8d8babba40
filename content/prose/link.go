package prose

import (
	"cmp"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"hussif/content/source"
)

// A Link is one pointer out of the body or to another place in it.
type Link struct {
	// To is the id of a Tie, the path of a Relative link without escapes, or the
	// whole address of any other. It is "" where the link is to a place in the
	// note itself.
	To     string
	Anchor string // what follows the "#" of a Tie or a Relative link, spelled as headings' anchors are
	Text   string // what the reader sees; "" for a Tie without words of its own
	Title  string
	Form   LinkForm

	Private bool        // stands in a private remark
	Span    source.Span // of the target as written; the definition's where that is elsewhere
}

// A LinkNode is a link in the tree. Its children are its words; where it has
// none, the words are Link.Text.
type LinkNode struct {
	ast.BaseInline
	Link Link
}

// A PictureNode is a picture in the tree.
type PictureNode struct {
	ast.BaseInline
	Picture Picture
}

// The kinds of our inline nodes.
var (
	LinkKind    = ast.NewNodeKind("Link of the journal")
	PictureKind = ast.NewNodeKind("Picture of the journal")
)

// Kind implements [ast.Node].
func (*LinkNode) Kind() ast.NodeKind { return LinkKind }

// Dump implements [ast.Node].
func (n *LinkNode) Dump(src []byte, level int) {
	ast.DumpHelper(n, src, level, map[string]string{"To": n.Link.To, "Anchor": n.Link.Anchor}, nil)
}

// Kind implements [ast.Node].
func (*PictureNode) Kind() ast.NodeKind { return PictureKind }

// Dump implements [ast.Node].
func (n *PictureNode) Dump(src []byte, level int) {
	ast.DumpHelper(n, src, level, map[string]string{"To": n.Picture.To, "Alt": n.Picture.Alt}, nil)
}

// links is the extension that puts a LinkNode or a PictureNode, with its target
// sorted by form, where goldmark has a link, an image or a bare address.
type links struct{}

// Extend implements [goldmark.Extender].
func (links) Extend(m goldmark.Markdown) {
	m.Parser().AddOptions(parser.WithASTTransformers(util.Prioritized(links{}, 1100)))
}

// Transform implements [parser.ASTTransformer].
func (links) Transform(doc *ast.Document, reader text.Reader, pc parser.Context) {
	c := linkChanger{src: reader.Source(), body: bodyOf(pc)}
	c.change(doc, nil)
}

type linkChanger struct {
	src  []byte
	body source.Span
}

// change works through the children of n. Within outer, a link or a picture,
// there can be no other link: it gives way to its words, and the call of a
// footnote moves behind outer.
func (c linkChanger) change(n, outer ast.Node) {
	for child := n.FirstChild(); child != nil; {
		next := child.NextSibling()
		switch old := child.(type) {
		case *ast.Link:
			made := &LinkNode{Link: c.link(old.Destination, old.Pos())}
			made.Link.Title = unescape(old.Title)
			for moved := old.FirstChild(); moved != nil; moved = old.FirstChild() {
				made.AppendChild(made, moved)
			}
			n.ReplaceChild(n, old, made)
			c.change(made, outermost(outer, made))
			made.Link.Text = plainText(made, c.src)
		case *ast.Image:
			link := c.link(old.Destination, old.Pos())
			c.change(old, outermost(outer, old))
			n.ReplaceChild(n, old, &PictureNode{Picture: Picture{
				To: link.To, Form: link.Form, Span: link.Span,
				Alt: plainText(old, c.src), Title: unescape(old.Title),
			}})
		case *ast.AutoLink:
			label := old.Label(c.src)
			if outer != nil {
				n.ReplaceChild(n, old, literal(label))
				break
			}
			n.ReplaceChild(n, old, &LinkNode{Link: c.autoLink(old, label)})
		case *LinkNode:
			if outer != nil {
				n.ReplaceChild(n, old, literal([]byte(wordsOf(old.Link))))
			}
		case *east.FootnoteLink:
			if outer != nil {
				outer.Parent().InsertAfter(outer.Parent(), outer, old)
			}
		default:
			c.change(child, outer)
		}
		child = next
	}
}

func outermost(outer, inner ast.Node) ast.Node {
	if outer == nil {
		return inner
	}
	return outer
}

// wordsOf returns what stands for a link that has no children.
func wordsOf(l Link) string { return cmp.Or(l.Text, l.To, l.Anchor) }

// asWritten returns a tie without words of its own as it is written: whoever shows
// it may put the title there of what it leads to.
func asWritten(l Link) string {
	to := l.To
	if l.Anchor != "" {
		to += "#" + l.Anchor
	}
	return "[[" + to + "]]"
}

func literal(words []byte) *ast.String {
	s := ast.NewString(words)
	s.SetRaw(true)
	return s
}

// link sorts a destination, which goldmark hands out as written.
func (c linkChanger) link(destination []byte, fallback int) Link {
	start, ok := place(c.src, destination)
	if !ok {
		start = max(fallback, 0)
	}
	l := target(destination)
	l.Span = c.body.At(start, len(destination))
	if !ok {
		l.Span = c.body.At(start, 0)
	}
	return l
}

// autoLink sorts an address in angle brackets or a bare one, in which backslashes
// and references mean nothing.
func (c linkChanger) autoLink(n *ast.AutoLink, label []byte) Link {
	address := string(n.URL(c.src))
	if n.AutoLinkType == ast.AutoLinkEmail && !strings.HasPrefix(strings.ToLower(address), "mailto:") {
		address = "mailto:" + address
	}
	l := Link{To: address, Text: string(label), Form: Refused}
	if form := formOf(address); form == Outside {
		l.Form = Outside
	}
	start, _ := place(c.src, label)
	l.Span = c.body.At(start, len(label))
	return l
}
