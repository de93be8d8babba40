package theme

import (
	"bytes"
	"cmp"
	"fmt"
	"html/template"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"

	"hussif/content/prose"
)

// A Linker knows where the pages and pictures of the site are. Addresses it
// returns are printed as they are, but for the escapes of HTML.
type Linker interface {
	// Tie returns the address of a tie or a relative link, and words for one to
	// which its maker gave none. It is asked for the values of a remark's tail
	// too, as ties. Where there is no such page, ok is false.
	Tie(prose.Link) (href, text string, ok bool)

	// Picture returns the picture of the site made from one of the journal.
	Picture(prose.Picture) (Photo, bool)
}

// Prose prints a tree of [prose.Tree]; src is the text of its body. Headings
// come out one level lower, since the page's title is the first. Raw HTML is
// shown as typed, without its comments.
func Prose(tree ast.Node, src []byte, l Linker) (template.HTML, error) {
	p := &proseWriter{linker: l}
	if err := proseRenderer.Render(p, src, tree); err != nil {
		return "", fmt.Errorf("printing a note's body: %w", err)
	}
	return template.HTML(p.String()), nil
}

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
	bytes.Buffer
	linker  Linker
	tables  int    // so far
	linkEnd string // the tag that ends the link we are in
}

// Buffered implements [util.BufWriter].
func (*proseWriter) Buffered() int { return 0 }

// Flush implements [util.BufWriter].
func (*proseWriter) Flush() error { return nil }

func (p *proseWriter) escaped(s string) { template.HTMLEscape(p, []byte(s)) }

// attr writes an attribute, or nothing where it has no value.
func (p *proseWriter) attr(name, value string) {
	if value == "" {
		return
	}
	p.WriteString(" " + name + `="`)
	p.escaped(value)
	p.WriteByte('"')
}

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
	p.WriteString(`<div class="wide" tabindex="0" role="region" aria-label="` + label + `">` + "\n<table>\n")
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

func printLink(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		p.endLink()
		return ast.WalkContinue
	}
	link := n.(*prose.LinkNode).Link
	words := cmp.Or(link.Text, link.To, link.Anchor)
	switch link.Form {
	case prose.Tie, prose.Relative:
		href, title, ok := p.linker.Tie(link)
		if link.Text == "" {
			words = cmp.Or(title, words)
		}
		if !ok {
			p.WriteString(`<span class="broken">`)
			p.linkEnd = "</span>"
			break
		}
		p.startLink(href, link.Title, "")
	case prose.Outside:
		p.startOutside(link.To, link.Title)
	}
	if !n.HasChildren() {
		p.escaped(words)
	}
	return ast.WalkContinue
}

func (p *proseWriter) startLink(href, title, rel string) {
	p.WriteString(`<a href="`)
	p.escaped(href)
	p.WriteByte('"')
	p.attr("title", title)
	p.attr("rel", rel)
	p.WriteByte('>')
	p.linkEnd = "</a>"
}

func (p *proseWriter) startOutside(address, title string) {
	p.startLink(string(util.URLEscape([]byte(address), false)), title, "noreferrer noopener")
}

func (p *proseWriter) endLink() {
	p.WriteString(p.linkEnd)
	p.linkEnd = ""
}

// printPicture prints a picture of the journal inside a link to its full size. One
// from elsewhere is never loaded: a link to it stands in its place.
func printPicture(p *proseWriter, _ []byte, n ast.Node, entering bool) ast.WalkStatus {
	if !entering {
		return ast.WalkContinue
	}
	picture := n.(*prose.PictureNode).Picture
	words := cmp.Or(picture.Alt, picture.To)
	linked := p.linkEnd == "</a>" // links do not nest
	switch picture.Form {
	case prose.Relative:
		if photo, ok := p.linker.Picture(picture); ok {
			p.photo(photo, linked)
			break
		}
		p.WriteString(`<span class="broken">`)
		p.escaped(words)
		p.WriteString("</span>")
	case prose.Outside:
		if linked {
			p.escaped(words)
			break
		}
		p.startOutside(picture.To, picture.Title)
		p.escaped(words)
		p.endLink()
	default:
		p.escaped(words)
	}
	return ast.WalkContinue
}

func (p *proseWriter) photo(photo Photo, linked bool) {
	if linked = linked || photo.Full == ""; !linked {
		p.WriteString("<a")
		p.attr("href", photo.Full)
		if photo.Alt == "" {
			p.attr("aria-label", "the picture in full")
		}
		p.WriteByte('>')
	}
	p.WriteString("<img")
	p.attr("src", photo.Src)
	p.attr("srcset", photo.Srcset)
	p.attr("sizes", photo.Sizes)
	if photo.Width > 0 && photo.Height > 0 {
		fmt.Fprintf(p, ` width="%d" height="%d"`, photo.Width, photo.Height)
	}
	p.WriteString(` alt="`) // also where it is empty: the picture says nothing then
	p.escaped(photo.Alt)
	p.WriteByte('"')
	p.attr("title", photo.Title)
	p.WriteString(` loading="lazy" decoding="async">`)
	if !linked {
		p.WriteString("</a>")
	}
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
		p.about(node.Remark.About)
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

// about prints what a remark is about, a word for each kind of thing before its
// values.
func (p *proseWriter) about(all []prose.About) {
	if len(all) == 0 {
		return
	}
	p.WriteString(`<p class="about">`)
	for i, a := range all {
		switch {
		case i > 0 && a.Key == all[i-1].Key:
			p.WriteString(", ")
		case i > 0:
			p.WriteString("; ")
			fallthrough
		default:
			p.WriteString(a.Key + ": ")
		}
		// Not every value has a page: a kind of garment need not.
		href, title, ok := p.linker.Tie(prose.Link{To: a.Value, Form: prose.Tie, Span: a.Span})
		if ok {
			p.startLink(href, "", "")
		}
		p.escaped(cmp.Or(title, a.Value))
		p.endLink()
	}
	p.WriteString("</p>\n")
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
