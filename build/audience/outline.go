package audience

import (
	"fmt"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"hussif/content/prose"
)

// outline says what a tree shows: its blocks, their words, and where links and
// pictures lead. Two texts of one outline are printed alike but for blanks, also those
// between the items of lists.
func outline(tree ast.Node, src []byte) string {
	var b strings.Builder
	write := func(n ast.Node) {
		kind := n.Kind()
		if kind == ast.KindTextBlock {
			kind = ast.KindParagraph // of a list without blank lines
		}
		b.WriteString("\n<" + kind.String())
		switch n := n.(type) {
		case *ast.Heading:
			fmt.Fprint(&b, n.Level)
		case *ast.List:
			fmt.Fprint(&b, n.IsOrdered(), n.Start)
		case *prose.RemarkNode:
			fmt.Fprint(&b, n.Remark.Kind)
			for _, about := range n.Remark.About {
				fmt.Fprintf(&b, "(%s %s)", about.Key, about.Value)
			}
		case *east.Footnote:
			fmt.Fprint(&b, n.Index)
		case *prose.WorkNode:
			fmt.Fprint(&b, n.Work.Name, n.Work.Typed)
		}
		b.WriteByte('>')
	}
	var blocks func(ast.Node)
	blocks = func(n ast.Node) {
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			if c.Type() == ast.TypeInline {
				b.WriteString(plain(wordsIn(n, src)))
				break
			}
			if c.Kind() == ast.KindParagraph && plain(wordsIn(c, src)) == "" {
				continue // of a picture's own, taken out
			}
			write(c)
			if !c.HasChildren() && c.Type() == ast.TypeBlock {
				for i := range c.Lines().Len() {
					line := c.Lines().At(i)
					b.Write(line.Value(src))
				}
			}
			blocks(c)
			b.WriteString("</>")
		}
	}
	blocks(tree)
	return b.String()
}

// wordsIn returns what the inline nodes of a block say.
func wordsIn(n ast.Node, src []byte) string {
	var b strings.Builder
	var gather func(ast.Node)
	gather = func(n ast.Node) {
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			switch c := c.(type) {
			case *ast.Text:
				b.Write(c.Segment.Value(src))
				if c.SoftLineBreak() || c.HardLineBreak() {
					b.WriteByte('\n')
				}
				continue
			case *ast.String:
				b.Write(c.Value)
				continue
			case *ast.RawHTML:
				b.Write(c.Segments.Value(src))
				continue
			case *east.FootnoteBacklink:
				continue
			case *prose.LinkNode:
				fmt.Fprintf(&b, "<%d %s#%s %q>", c.Link.Form, c.Link.To, c.Link.Anchor, c.Link.Text)
			case *prose.PictureNode:
				fmt.Fprintf(&b, "<picture %s %q>", c.Picture.To, c.Picture.Alt)
			case *east.FootnoteLink:
				fmt.Fprintf(&b, "<note %d>", c.Index)
			case *east.TaskCheckBox:
				fmt.Fprint(&b, "<box ", c.IsChecked, ">")
			default:
				if c.Type() == ast.TypeBlock {
					continue
				}
				b.WriteString("<" + c.Kind().String() + ">")
			}
			gather(c)
		}
	}
	gather(n)
	return b.String()
}

func hasPicture(n ast.Node) bool {
	found := false
	visit(n, func(n ast.Node) bool {
		found = found || n.Kind() == prose.PictureKind
		return !found
	})
	return found
}
