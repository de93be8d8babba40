package audience

import (
	"bytes"
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"hussif/content/prose"
)

// cut returns the text without what is hidden. It removes hidden blocks by whole lines.
func (k *knife) cut() []byte {
	edits := slices.DeleteFunc(slices.Clone(k.edits), func(e edit) bool {
		return e.in != nil && slices.ContainsFunc(k.blocks, func(b ast.Node) bool { return within(e.in, b) })
	})
	for _, b := range k.blocks {
		if start, end, ok := k.lines(b); ok {
			edits = append(edits, edit{start: start, end: end})
		}
	}
	edits = append(edits, k.renumber()...)
	slices.SortStableFunc(edits, func(a, b edit) int { return cmp.Or(a.start-b.start, b.end-a.end) })
	var out []byte
	done := 0
	for _, e := range edits {
		if e.end <= done {
			continue // within one that has been cut
		}
		start := max(e.start, done)
		out = append(append(out, k.src[done:start]...), e.words...)
		done = e.end
		if e.words == "" && e.in != nil {
			out = k.emptied(out, &done)
		}
	}
	return append(out, k.src[done:]...)
}

var onlyMarks = regexp.MustCompile(`^[ \t>]*(?:(?:[*+-]|\d{1,9}[.)])[ \t]*(?:\[[ xX]\][ \t]*)?)?$`)

// emptied takes away the rest of a line of which an edit has left only the marks of
// what it stood in.
func (k *knife) emptied(out []byte, done *int) []byte {
	line := out[bytes.LastIndexByte(out, '\n')+1:]
	rest := k.src[*done:]
	if i := bytes.IndexByte(rest, '\n'); i >= 0 {
		rest = rest[:i+1]
	}
	if !onlyMarks.Match(line) || len(bytes.TrimSpace(rest)) > 0 {
		return out
	}
	*done += len(rest)
	return out[:len(out)-len(line)]
}

func within(n, outer ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if n == outer {
			return true
		}
	}
	return false
}

// lines returns from where to where the lines of a block reach.
func (k *knife) lines(n ast.Node) (start, end int, ok bool) {
	start, end = len(k.src), 0
	fenced := false
	visit(n, func(n ast.Node) bool {
		if n.Type() == ast.TypeInline {
			return false
		}
		if w, ok := n.(*prose.WorkNode); ok {
			start, end, fenced = min(start, w.Work.Span.Start), max(end, w.Work.Span.End, w.Work.Lines.End), true
		}
		if at := n.Pos(); at >= 0 && n.Kind() != prose.RemarkKind {
			start = min(start, at)
		}
		lines := n.Lines()
		for i := range lines.Len() {
			start, end = min(start, lines.At(i).Start), max(end, lines.At(i).Stop)
		}
		if lines.Len() > 0 {
			fenced = n.Kind() == ast.KindFencedCodeBlock || n.Kind() == ast.KindHeading
		}
		return true
	})
	if start > end || end == 0 {
		return 0, 0, false
	}
	start = bytes.LastIndexByte(k.src[:start], '\n') + 1
	if k.src[end-1] != '\n' {
		end = k.lineAfter(end)
	}
	if fenced { // the line that closes it is none of its own
		next := k.lineAfter(end)
		if marks := strings.Trim(string(k.src[end:next]), " \t>\r\n"); marks != "" && (strings.Trim(marks, "`") == "" || strings.Trim(marks, "~") == "" || strings.Trim(marks, "=") == "" || strings.Trim(marks, "-") == "") {
			end = next
		}
	}
	return start, end, true
}

func (k *knife) lineAfter(at int) int {
	if i := bytes.IndexByte(k.src[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(k.src)
}

var itemNumber = regexp.MustCompile(`\d{1,9}`)

// renumber gives the first item that is left of a list the number of the first: what
// follows is counted from it.
func (k *knife) renumber() []edit {
	var edits []edit
	visit(k.tree, func(n ast.Node) bool {
		list, ok := n.(*ast.List)
		if !ok || !list.IsOrdered() {
			return true
		}
		for item := list.FirstChild(); item != nil; item = item.NextSibling() {
			if k.empties(item) {
				continue
			}
			if start, end, ok := k.lines(item); ok && item != list.FirstChild() {
				if m := itemNumber.FindIndex(k.src[start:end]); m != nil {
					edits = append(edits, edit{start: start + m[0], end: start + m[1], words: fmt.Sprint(list.Start)})
				}
			}
			break
		}
		return true
	})
	return edits
}

// empties reports whether nothing is left of a block.
func (k *knife) empties(n ast.Node) bool {
	if slices.Contains(k.blocks, n) {
		return true
	}
	if n.Type() == ast.TypeInline || !n.HasChildren() || n.Kind() == ast.KindParagraph || n.Kind() == ast.KindTextBlock {
		return false
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if !k.empties(c) {
			return false
		}
	}
	return true
}

// left hides in the tree what is hidden and returns the outline of the rest.
func (k *knife) left() string {
	for _, e := range k.edits {
		if e.in == nil || e.in.Type() != ast.TypeInline || e.in.Parent() == nil {
			continue
		}
		parent := e.in.Parent()
		if e.words != "" {
			words := ast.NewString([]byte(e.words))
			parent.ReplaceChild(parent, e.in, words)
			continue
		}
		parent.RemoveChild(parent, e.in)
		for parent.Kind() != ast.KindDocument && parent.Parent() != nil && plain(wordsIn(parent, k.src)) == "" && !hasPicture(parent) && parent.Type() == ast.TypeBlock {
			above := parent.Parent()
			above.RemoveChild(above, parent)
			if parent = above; parent.HasChildren() {
				break
			}
		}
	}
	for _, b := range k.blocks {
		if _, isRemark := b.(*prose.RemarkNode); isRemark {
			continue // as HidePrivate does
		}
		if _, isFootnote := b.(*east.Footnote); isFootnote {
			continue
		}
		remove(b)
	}
	for _, b := range k.blocks {
		if r, ok := b.(*prose.RemarkNode); ok {
			r.Remark.Kind = prose.Private
		}
	}
	prose.HidePrivate(k.tree)
	return outline(k.tree, k.src)
}

func remove(n ast.Node) {
	parent := n.Parent()
	if parent == nil {
		return
	}
	parent.RemoveChild(parent, n)
	if parent.Kind() != ast.KindDocument && parent.Kind() != east.KindFootnote && !parent.HasChildren() {
		remove(parent)
	}
}
