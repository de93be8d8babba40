package audience

import (
	"bytes"
	"path"
	"regexp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/content/source"
)

// Elsewhere is what is read in the place of a link to what the audience may not see.
const Elsewhere = "something not shown here"

// text returns a page's text as the audience may read it. What is private in it is cut
// out of the Markdown; the outcome is read again and must say just what is left of the
// tree when that is hidden in it. Where it does not, all blocks with something private
// in them are left out, and where not even that can be, the whole text; then whole is
// false.
func (s *sight) text(r journal.Record) (text []byte, whole bool) {
	head := r.Head()
	body := head.Text.Body
	if body.File == nil || body.Start == body.End {
		return nil, true
	}
	written := bytes.Clone(body.File.Data[body.Start:body.End])
	if s.who == journal.Public {
		written = forCircle(head.File.Name, written)
	}
	for _, coarse := range []bool{false, true} {
		k := &knife{sight: s, record: r, src: written}
		file, _ := source.Load(head.File.Name, written)
		k.tree = prose.Tree(file, file.Whole(), prose.Start{})
		if !k.mark() {
			return body.File.Data[body.Start:body.End], true
		}
		if coarse {
			k.coarsen()
		}
		cut := k.cut()
		file, findings := source.Load(head.File.Name, cut)
		if len(findings) > 0 {
			continue
		}
		if after := prose.Tree(file, file.Whole(), prose.Start{}); outline(after, cut) == k.left() {
			return cut, !coarse
		}
	}
	return nil, false
}

var circleOpening = regexp.MustCompile(`(?im)^([\s>*+\-_~\d.)\[\]]*)(circle)(\s*:)`)

// forCircle makes private what begins with "Circle:" where "Private:" would be.
func forCircle(name string, written []byte) []byte {
	found := circleOpening.FindAllSubmatchIndex(written, -1)
	for _, at := range slices.Backward(found) {
		tried := slices.Concat(written[:at[4]], []byte("Private"), written[at[5]:])
		file, findings := source.Load(name, tried)
		if len(findings) > 0 {
			continue
		}
		for _, remark := range prose.Read(file, file.Whole(), prose.Start{}).Remarks {
			if remark.Kind == prose.Private && remark.Span.Start <= at[4] && at[4] < remark.Span.End {
				written = tried
				break
			}
		}
	}
	return written
}

// A knife cuts what is hidden out of one text.
type knife struct {
	*sight
	record journal.Record
	src    []byte
	tree   ast.Node
	blocks []ast.Node // hidden with all that is in them
	edits  []edit     // within blocks that stay
}

// An edit puts words in the place of some bytes.
type edit struct {
	start, end int
	words      string
	in         ast.Node // the node that it changes
}

// mark finds what is hidden and changes the tree to what is left, but for the hidden
// blocks; it reports whether there is anything.
func (k *knife) mark() bool {
	called := prose.OpenFootnotes(k.tree)
	visit(k.tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *prose.RemarkNode:
			if n.Remark.Kind == prose.Private {
				k.blocks = append(k.blocks, n)
				return false
			}
			k.about(n)
		case *east.Footnote:
			if !called[n.Index] {
				k.blocks = append(k.blocks, n)
				return false
			}
		case *prose.WorkNode:
			if !k.mayWork(n.Work) {
				k.blocks = append(k.blocks, n)
			}
		case *prose.LinkNode:
			k.link(n)
		case *prose.PictureNode:
			k.picture(n)
		}
		return true
	})
	return len(k.blocks)+len(k.edits) > 0
}

// about finds out whether a remark says that it is about what is hidden.
func (k *knife) about(n *prose.RemarkNode) {
	all := n.Remark.About
	for _, about := range all {
		if about.Key == "garment" {
			continue
		}
		var kinds []journal.Kind
		if kind := journal.Kind(about.Key); slices.Contains(journal.Kinds(), kind) {
			kinds = append(kinds, kind)
		}
		if r, ok := k.full.Find(about.Value, kinds...); ok && k.seen[r] {
			continue
		}
		start := bytes.LastIndexByte(k.src[:all[0].Span.Start], '(')
		end := bytes.IndexByte(k.src[all[len(all)-1].Span.End:], ')')
		if start >= 0 && end >= 0 {
			start = len(bytes.TrimRight(k.src[:start], " \t"))
			k.edits = append(k.edits, edit{start, all[len(all)-1].Span.End + end + 1, "", n})
		} else {
			k.blocks = append(k.blocks, n)
		}
		n.Remark.About = nil
		return
	}
}

// link finds out whether a link leads to what is hidden, or by a number to a part that
// has another one now.
func (k *knife) link(n *prose.LinkNode) {
	l := n.Link
	to := k.record
	switch {
	case l.Form == prose.Outside:
		return
	case l.To == "":
	case l.Form == prose.Tie:
		to, _ = k.full.Find(l.To)
	case l.Form == prose.Relative:
		to, _ = k.full.FileOf(k.record.Head().File, l.To)
	}
	if l.Form != prose.Refused && to != nil && k.seen[to] {
		name, ok := k.part(to, l.Anchor)
		if ok && name == l.Anchor {
			return
		}
		if ok && l.Form == prose.Tie {
			n.Link.Anchor = name
			k.edits = append(k.edits, edit{l.Span.Start, l.Span.End, l.To + "#" + name, nil})
			return
		}
	}
	start, end := l.Span.Start, l.Span.End
	if l.Form == prose.Tie {
		start, end = bytes.LastIndex(k.src[:start], []byte("[[")), end+bytes.Index(k.src[end:], []byte("]]"))+2
	} else {
		start, end = openingBracket(k.src, start), closing(k.src, end)
	}
	if start < 0 || end <= l.Span.End {
		k.blocks = append(k.blocks, block(n)) // a link by reference, with its target elsewhere
		return
	}
	k.edits = append(k.edits, edit{start, end, Elsewhere, n})
}

func (k *knife) picture(n *prose.PictureNode) {
	p := n.Picture
	if p.Form == prose.Relative && k.photos.shown(path.Join(path.Dir(k.record.Head().File.Name), p.To)) {
		return
	}
	start, end := bytes.LastIndex(k.src[:p.Span.Start], []byte("![")), closing(k.src, p.Span.End)
	if start < 0 || end < 0 {
		k.blocks = append(k.blocks, block(n))
		return
	}
	k.edits = append(k.edits, edit{start, end, "", n})
}

// openingBracket returns where the words of a link begin whose target does at an
// offset, or -1.
func openingBracket(src []byte, target int) int {
	at := bytes.LastIndex(src[:target], []byte("]("))
	if at < 0 || len(bytes.Trim(src[at+2:target], " \t\r\n<")) > 0 {
		return -1
	}
	depth := 0
	for ; at >= 0; at-- {
		switch {
		case at > 0 && src[at-1] == '\\':
		case src[at] == ']':
			depth++
		case src[at] == '[':
			if depth--; depth == 0 {
				return at
			}
		}
	}
	return -1
}

var afterTarget = regexp.MustCompile(`^>?(?:\s+(?:"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'|\((?:\\.|[^()\\])*\)))?\s*\)`)

// closing returns the end of a link or picture whose target ends at an offset, or -1.
func closing(src []byte, target int) int {
	if m := afterTarget.FindIndex(src[target:]); m != nil {
		return target + m[1]
	}
	return -1
}

// coarsen hides the outermost blocks round everything that is hidden.
func (k *knife) coarsen() {
	var outer []ast.Node
	add := func(n ast.Node) {
		for n.Parent() != nil && n.Parent().Kind() != ast.KindDocument && n.Parent().Kind() != east.KindFootnoteList {
			n = n.Parent()
		}
		if !slices.Contains(outer, n) {
			outer = append(outer, n)
		}
	}
	for _, n := range k.blocks {
		add(n)
	}
	for _, e := range k.edits {
		if e.in != nil {
			add(e.in)
		}
	}
	k.blocks = outer
	k.edits = slices.DeleteFunc(k.edits, func(e edit) bool { return e.in != nil })
}

func block(n ast.Node) ast.Node {
	for n.Type() == ast.TypeInline {
		n = n.Parent()
	}
	return n
}

func visit(n ast.Node, f func(ast.Node) bool) {
	if !f(n) {
		return
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		visit(c, f)
	}
}

func plain(words string) string { return strings.Join(strings.Fields(words), " ") }
