package prose

import (
	"bytes"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"hussif/content/source"
)

// A Work is a worksheet that stands in the body: a fenced block of code whose info
// string is "work" and the name of the sheet. What its lines mean is not known here.
type Work struct {
	Name   string // of the sheet, as written; "" where none is
	Anchor string // unlike that of any other place in the body; "" for a private one

	Private bool        // stands in a private remark
	Quoted  bool        // stands in a quote, whose marks stand within its lines
	Span    source.Span // of "work" and the name
	Lines   source.Span // between the fences, whole lines
	Typed   string      // the same, as text
}

// A WorkNode is a worksheet in the tree. It has no children.
type WorkNode struct {
	ast.BaseBlock
	Work Work
}

// WorkKind is the kind of node of a worksheet.
var WorkKind = ast.NewNodeKind("Worksheet")

// Kind implements [ast.Node].
func (*WorkNode) Kind() ast.NodeKind { return WorkKind }

// IsRaw implements [ast.Node]: there is no text to be read in it.
func (*WorkNode) IsRaw() bool { return true }

// Dump implements [ast.Node].
func (n *WorkNode) Dump(src []byte, level int) {
	ast.DumpHelper(n, src, level, map[string]string{"Name": n.Work.Name}, nil)
}

// works is the extension that puts a WorkNode in the place of each block of code
// that is a worksheet.
type works struct{}

// Extend implements [goldmark.Extender].
func (works) Extend(m goldmark.Markdown) {
	// After remarks (1000), which know blocks of code.
	m.Parser().AddOptions(parser.WithASTTransformers(util.Prioritized(works{}, 1200)))
}

// workWord is what the info string of a worksheet begins with.
const workWord = "work"

// Transform implements [parser.ASTTransformer].
func (works) Transform(doc *ast.Document, reader text.Reader, pc parser.Context) {
	src, body := reader.Source(), bodyOf(pc)
	var blocks []*ast.FencedCodeBlock
	visit(doc, func(n ast.Node) bool {
		if block, ok := n.(*ast.FencedCodeBlock); ok {
			blocks = append(blocks, block)
		}
		return true
	})
	for _, block := range blocks {
		if made, ok := workOf(block, src, body); ok {
			node := &WorkNode{Work: made}
			node.SetBlankPreviousLines(block.HasBlankPreviousLines())
			block.Parent().ReplaceChild(block.Parent(), block, node)
		}
	}
}

// workOf reads a block of code as a worksheet, where it is one.
func workOf(block *ast.FencedCodeBlock, src []byte, body source.Span) (Work, bool) {
	if block.Info == nil {
		return Work{}, false
	}
	info := block.Info.Segment
	said := string(bytes.TrimRight(info.Value(src), " \t\r\n"))
	word, name, _ := strings.Cut(said, " ")
	if word != workWord {
		return Work{}, false
	}
	w := Work{Name: strings.Join(strings.Fields(unescape([]byte(name))), " "), Span: body.At(info.Start, len(said))}
	lines := block.Lines()
	if lines.Len() == 0 {
		after := info.Stop + bytes.IndexByte(src[info.Stop:], '\n') + 1
		w.Lines = body.At(max(after, info.Stop), 0)
		return w, true
	}
	// Lines are taken with what they are indented by in a list, all alike: what
	// lies between two of them is the same for YAML as before the first.
	start := bytes.LastIndexByte(src[:lines.At(0).Start], '\n') + 1
	w.Lines = body.At(start, lines.At(lines.Len()-1).Stop-start)
	w.Typed = w.Lines.Text()
	for i := range lines.Len() {
		at := lines.At(i).Start
		w.Quoted = w.Quoted || len(bytes.TrimSpace(src[bytes.LastIndexByte(src[:at], '\n')+1:at])) > 0
	}
	return w, true
}

// workAnchor is what the anchor of a worksheet begins with.
const workAnchor = "work"

// work gathers a worksheet.
func (g *gatherer) work(n *WorkNode, private bool) {
	n.Work.Private = private
	if !private {
		n.Work.Anchor = g.anchors.claim(strings.TrimSuffix(workAnchor+"-"+slug(n.Work.Name), "-"), true)
	}
	g.doc.Works = append(g.doc.Works, n.Work)
}
