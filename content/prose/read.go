package prose

import (
	"cmp"
	"slices"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"hussif/content/source"
)

// A Doc is what a body says. Links and pictures are in the order of the file,
// headings and remarks in that of the page, where footnotes come last. It holds
// no part of the tree it was read from.
type Doc struct {
	Body     source.Span
	Headings []Heading // without those inside a private remark
	Links    []Link
	Pictures []Picture
	Remarks  []Remark
	Works    []Work

	// Opening is the plain text of the first ordinary paragraph, for summaries:
	// whole words, about 200 characters at the most. It is never private.
	Opening string

	// Findings are about the writing itself, not about where links lead. A body
	// with an Error among them has no other facts and an empty tree.
	Findings []source.Finding
}

// A Heading is a place in the body that its maker gave a title.
type Heading struct {
	Level  int // 1 to 6, as written
	Text   string
	Anchor string // unlike that of any other place in the body
	Span   source.Span
}

// A Picture is an image of the body.
type Picture struct {
	To      string // the path as written, without escapes
	Alt     string
	Title   string
	Form    LinkForm    // where To points; only a Relative picture can be shown
	Private bool        // stands in a private remark
	Span    source.Span // of the path as written
}

// Start is what the page has before its body: the anchors of the notes and
// decisions of its front matter.
type Start struct{ Taken []string }

// Read returns what a body says.
func Read(f *source.File, body source.Span, from Start) Doc {
	_, doc := ReadTree(f, body, from)
	return doc
}

// Tree returns a body's syntax tree. Headings carry their anchor as the attribute
// "id"; links, pictures, remarks and worksheets are a [LinkNode], [PictureNode],
// [RemarkNode] and [WorkNode]. Offsets in goldmark's own nodes count from the start of the body.
func Tree(f *source.File, body source.Span, from Start) ast.Node {
	tree, _ := ReadTree(f, body, from)
	return tree
}

// ReadTree returns a body's syntax tree and what it says.
func ReadTree(f *source.File, body source.Span, from Start) (ast.Node, Doc) {
	// The capacity ends where the body ends: goldmark may append a line end to a
	// slice of its source, and [place] counts capacities.
	src := f.Data[body.Start:body.End:body.End]
	if finding, bad := tooMuch(body, src); bad {
		return ast.NewDocument(), Doc{Body: body, Findings: []source.Finding{finding}}
	}
	context := parser.NewContext()
	context.Set(bodyKey, body)
	tree := markdown.Parse(text.NewReader(src), parser.WithContext(context))

	g := gatherer{src: src, doc: Doc{Body: body}, open: OpenFootnotes(tree)}
	g.anchors.take(from.Taken)
	if deep := g.walk(tree, 0, false); deep != nil {
		at := max(deep.Pos(), 0)
		return ast.NewDocument(), Doc{Body: body, Findings: []source.Finding{tooDeep(body.At(at, 1))}}
	}
	if finding, bad := tooMany(g.doc); bad {
		return ast.NewDocument(), Doc{Body: body, Findings: []source.Finding{finding}}
	}
	// Footnotes are gathered where they are printed, at the end.
	slices.SortStableFunc(g.doc.Links, func(a, b Link) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	slices.SortStableFunc(g.doc.Works, func(a, b Work) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	slices.SortStableFunc(g.doc.Pictures, func(a, b Picture) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	return tree, g.doc
}

// markdown holds no state of a single parse and is shared by all workers.
var markdown = goldmark.New(goldmark.WithExtensions(
	extension.Table, extension.Strikethrough, extension.TaskList, extension.Linkify, extension.Footnote,
	ties{}, remarks{}, links{}, works{},
)).Parser()

// bodyKey is where a parse keeps the span of the body, for places in the file.
var bodyKey = parser.NewContextKey()

func bodyOf(pc parser.Context) source.Span { return pc.Get(bodyKey).(source.Span) }
