package theme

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"
	"sync"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"

	"hussif/content/prose"
)

// A Body is a note's body that has been printed but for its links and pictures,
// for which other notes must be known. It holds no part of the tree.
type Body struct {
	html string
	gaps []gap
}

// A gap is where a link or a picture begins or ends, and what prints that.
type gap struct {
	at   int // in the HTML
	fill func(*linkWriter)
}

// Prose prints a tree of [prose.Tree]; src is the text of its body. Headings
// come out one level lower, since the page's title is the first. Raw HTML is
// shown as typed, without its comments.
func Prose(tree ast.Node, src []byte) (Body, error) {
	p := proseWriters.Get().(*proseWriter)
	defer proseWriters.Put(p)
	p.Reset()
	p.tables, p.gaps = 0, nil
	if err := proseRenderer.Render(p, src, tree); err != nil {
		return Body{}, fmt.Errorf("printing a note's body: %w", err)
	}
	return Body{p.String(), p.gaps}, nil
}

// With returns a body with its links and pictures.
func (b Body) With(l Linker) template.HTML {
	w := linkWriters.Get().(*linkWriter)
	defer linkWriters.Put(w)
	w.Reset()
	w.linker, w.linkEnd = l, ""
	done := 0
	for _, gap := range b.gaps {
		w.WriteString(b.html[done:gap.at])
		gap.fill(w)
		done = gap.at
	}
	w.WriteString(b.html[done:])
	w.linker = nil
	return template.HTML(w.String())
}

// Writers keep what was room enough for other bodies.
var (
	proseWriters = sync.Pool{New: func() any { return new(proseWriter) }}
	linkWriters  = sync.Pool{New: func() any { return new(linkWriter) }}
)

// proseRenderer holds no state of a single body, which is all in the writer, and
// is shared by all workers. Goldmark's own printers do what ours leaves to them.
var proseRenderer = renderer.NewRenderer(renderer.WithNodeRenderers(
	util.Prioritized(prosePrinter{}, 100),
	util.Prioritized(extension.NewTableHTMLRenderer(), 500),
	util.Prioritized(extension.NewStrikethroughHTMLRenderer(), 500),
	util.Prioritized(extension.NewFootnoteHTMLRenderer(), 500),
	util.Prioritized(html.NewRenderer(), 1000),
))

// A proseWriter is one body while it is printed.
type proseWriter struct {
	hypertext
	tables int // so far
	gaps   []gap
}

// later leaves what depends on other notes to when they are known.
func (p *proseWriter) later(fill func(*linkWriter)) { p.gaps = append(p.gaps, gap{p.Len(), fill}) }

// Buffered implements [util.BufWriter].
func (*proseWriter) Buffered() int { return 0 }

// Flush implements [util.BufWriter].
func (*proseWriter) Flush() error { return nil }

type prosePrinter struct{}

// RegisterFuncs implements [renderer.NodeRenderer].
func (prosePrinter) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	for kind, print := range map[ast.NodeKind]func(p *proseWriter, src []byte, n ast.Node, entering bool) ast.WalkStatus{
		ast.KindHeading:           printHeading,
		ast.KindListItem:          printItem,
		ast.KindHTMLBlock:         printHTMLBlock,
		ast.KindRawHTML:           printRawHTML,
		east.KindTable:            printTable,
		east.KindTableCell:        printCell,
		east.KindTaskCheckBox:     printBox,
		east.KindFootnoteList:     printFootnotes,
		east.KindFootnoteBacklink: printBacklink,
		prose.LinkKind:            printLink,
		prose.PictureKind:         printPicture,
		prose.RemarkKind:          printRemark,
		prose.WorkKind:            printWork,
	} {
		r.Register(kind, func(w util.BufWriter, src []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
			return print(w.(*proseWriter), src, n, entering), nil
		})
	}
}

func printHeading(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	tag := fmt.Sprintf("h%d", min(n.(*ast.Heading).Level+1, 6))
	if !entering {
		p.WriteString("</" + tag + ">\n")
		return ast.WalkContinue
	}
	p.WriteString("<" + tag)
	if id, ok := n.AttributeString("id"); ok {
		p.attr("id", string(id.([]byte)))
	}
	p.WriteByte('>')
	return ast.WalkContinue
}

func printHTMLBlock(p *proseWriter, src []byte, n ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		return ast.WalkContinue
	}
	block := n.(*ast.HTMLBlock)
	typed := block.Lines().Value(src)
	if block.HasClosure() {
		typed = append(bytes.Clone(typed), block.ClosureLine.Value(src)...)
	}
	if typed = bytes.TrimSpace(prose.WithoutComments(typed)); len(typed) > 0 {
		p.WriteString(`<pre class="typed">`)
		template.HTMLEscape(p, typed)
		p.WriteString("</pre>\n")
	}
	return ast.WalkContinue
}

func printRawHTML(p *proseWriter, src []byte, n ast.Node, entering bool) ast.WalkStatus {
	if entering {
		template.HTMLEscape(p, prose.WithoutComments(n.(*ast.RawHTML).Segments.Value(src)))
	}
	return ast.WalkSkipChildren
}

// printTable puts a table into a part of its own that scrolls, by keyboard too.
func printTable(p *proseWriter, _ []byte, _ ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		p.WriteString("</table>\n</div>\n")
		return ast.WalkContinue
	}
	p.tables++
	label := "table"
	if p.tables > 1 {
		label = fmt.Sprintf("table %d", p.tables) // a reader who jumps between parts must tell them apart
	}
	p.WriteString(`<div class="wide" tabindex="0" role="group" aria-label="` + label + `">` + "\n<table>\n")
	return ast.WalkContinue
}

func printCell(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	tag := "td"
	if n.Parent().Kind() == east.KindTableHeader {
		tag = "th"
	}
	if !entering {
		p.WriteString("</" + tag + ">\n")
		return ast.WalkContinue
	}
	p.WriteString("<" + tag)
	if tag == "th" {
		p.WriteString(` scope="col"`)
	}
	if a := n.(*east.TableCell).Alignment; a != east.AlignNone {
		p.attr("class", a.String())
	}
	p.WriteByte('>')
	return ast.WalkContinue
}

func printFootnotes(p *proseWriter, _ []byte, _ ast.Node, entering bool) ast.WalkStatus {
	if entering {
		p.WriteString(`<section class="footnotes" role="doc-endnotes" aria-label="footnotes">` + "\n<ol>\n")
	} else {
		p.WriteString("</ol>\n</section>\n")
	}
	return ast.WalkContinue
}

func printBacklink(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		return ast.WalkContinue
	}
	back := n.(*east.FootnoteBacklink)
	id, label := fmt.Sprintf("fnref:%d", back.Index), fmt.Sprintf("back to the mark of footnote %d", back.Index)
	if back.RefIndex > 0 {
		id = fmt.Sprintf("fnref%d:%d", back.RefIndex, back.Index)
		label += fmt.Sprintf(", place %d", back.RefIndex+1)
	}
	fmt.Fprintf(p, `&#160;<a href="#%s" class="footnote-backref" role="doc-backlink" aria-label="%s">↩</a>`, id, label)
	return ast.WalkContinue
}

// printItem lets a list item that is a remark from end to end carry the remark's
// class and anchor itself.
func printItem(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		p.WriteString("</li>\n")
		return ast.WalkContinue
	}
	p.WriteString("<li")
	first := n.FirstChild()
	if remark, ok := first.(*prose.RemarkNode); ok && isItem(remark) {
		p.remarkAttrs(remark.Remark)
	}
	p.WriteByte('>')
	if first != nil && first.Kind() != ast.KindTextBlock && first.Kind() != prose.RemarkKind {
		p.WriteByte('\n')
	}
	return ast.WalkContinue
}

func isItem(n *prose.RemarkNode) bool {
	return n.Parent().Kind() == ast.KindListItem && n.Parent().ChildCount() == 1
}

func (p *proseWriter) remarkAttrs(r prose.Remark) {
	p.attr("class", "remark "+strings.ReplaceAll(r.Kind.String(), " ", "-"))
	p.attr("id", r.Anchor)
}

func printRemark(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	node := n.(*prose.RemarkNode)
	if !entering {
		if about := node.Remark.About; len(about) > 0 {
			p.later(func(w *linkWriter) { w.about(about) })
		}
		if anchor := node.Remark.Anchor; anchor != "" {
			p.later(func(w *linkWriter) { w.answer(anchor) })
		}
		if !isItem(node) {
			p.WriteString("</aside>\n")
		}
		return ast.WalkContinue
	}
	if !isItem(node) {
		p.WriteString(`<aside role="note"`)
		p.remarkAttrs(node.Remark)
		p.WriteByte('>')
	}
	if box, ok := n.FirstChild().FirstChild().(*east.TaskCheckBox); ok {
		p.box(box)
	}
	p.WriteString(`<strong class="label">`)
	p.WriteString(map[prose.Kind]string{
		prose.NextTime: "Next time", prose.Decided: "Decided", prose.Private: "Private",
	}[node.Remark.Kind])
	p.WriteString("</strong> ")
	return ast.WalkContinue
}

// printBox prints the box of a task, but for a remark's, which stands before the
// remark's label.
func printBox(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if entering && n.Parent().Parent().Kind() != prose.RemarkKind {
		p.box(n.(*east.TaskCheckBox))
	}
	return ast.WalkContinue
}

func (p *proseWriter) box(n *east.TaskCheckBox) {
	if n.IsChecked {
		p.WriteString(`<input type="checkbox" disabled checked aria-label="done"> `)
	} else {
		p.WriteString(`<input type="checkbox" disabled aria-label="to do"> `)
	}
}
