package prose

import (
	"iter"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
)

// An opener is the start of a line that opens a remark.
type opener struct {
	kind   Kind
	line   ast.Node // the first inline node of the line
	at     int      // where the line begins
	length int      // of the opening, in bytes of its texts
}

var opening = regexp.MustCompile(`(?i)^[\s\x{a0}]*(next[\s\x{a0}]+time|decided|private)[\s\x{a0}]*:`)

// longestOpening is how much of a line is looked at. It leaves room for blanks.
const longestOpening = 64

// opener reports whether the line that begins with an inline node opens a remark.
func (m remarkMaker) opener(line ast.Node) (opener, bool) {
	if line == nil {
		return opener{}, false
	}
	var start strings.Builder
	for t := range texts(line) {
		from := t.Segment.Start
		start.Write(m.src[from:min(t.Segment.Stop, from+longestOpening)])
		if start.Len() >= longestOpening {
			break
		}
	}
	if !strings.Contains(start.String(), ":") { // nearly every line; it spares the search
		return opener{}, false
	}
	found := opening.FindStringSubmatchIndex(start.String())
	if found == nil {
		return opener{}, false
	}
	o := opener{line: line, at: line.Pos(), length: found[1]}
	switch start.String()[found[2]] | 0x20 {
	case 'n':
		o.kind = NextTime
	case 'd':
		o.kind = Decided
	case 'p':
		o.kind = Private
	}
	// What was struck out is no longer to be done. A secret stays one.
	if line.Kind() == east.KindStrikethrough && o.kind != Private {
		return opener{}, false
	}
	return o, true
}

// cut takes the opening out of the tree, and the blanks after it.
func (o opener) cut(src []byte) {
	rest := o.length
	var emptied []ast.Node
	for t := range texts(o.line) {
		cut := min(rest, t.Segment.Stop-t.Segment.Start)
		rest -= cut
		t.Segment = t.Segment.WithStart(t.Segment.Start + cut)
		if rest == 0 {
			t.Segment = t.Segment.TrimLeftSpace(src)
		}
		if t.Segment.Start < t.Segment.Stop {
			break
		}
		if !endsLine(t) {
			emptied = append(emptied, t)
		}
	}
	for _, n := range emptied {
		removeEmpty(n)
	}
}

// removeEmpty removes an inline node, and the emphasis that held only that.
func removeEmpty(n ast.Node) {
	parent := n.Parent()
	parent.RemoveChild(parent, n)
	if isEmphasis(parent) && !parent.HasChildren() {
		removeEmpty(parent)
	}
}

// texts goes through the texts of one line from an inline node on, those in
// emphasis included, up to the first node of another sort.
func texts(line ast.Node) iter.Seq[*ast.Text] {
	return func(yield func(*ast.Text) bool) {
		for n := line; n != nil; {
			next := n.NextSibling()
			if !textsIn(n, yield) {
				return
			}
			n = next
		}
	}
}

func textsIn(n ast.Node, yield func(*ast.Text) bool) bool {
	if t, ok := n.(*ast.Text); ok {
		return yield(t) && !endsLine(t)
	}
	if !isEmphasis(n) {
		return false
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if !textsIn(c, yield) {
			return false
		}
	}
	return true
}

func isEmphasis(n ast.Node) bool {
	return n.Kind() == ast.KindEmphasis || n.Kind() == east.KindStrikethrough
}

func endsLine(n ast.Node) bool {
	t, ok := n.(*ast.Text)
	return ok && (t.SoftLineBreak() || t.HardLineBreak())
}

// lines goes through the inline nodes that begin a line of a block.
func lines(block ast.Node) iter.Seq[ast.Node] {
	return func(yield func(ast.Node) bool) {
		for line := firstWords(block); line != nil; {
			next := line
			for next != nil && !endsLine(next) {
				next = next.NextSibling()
			}
			if !yield(line) || next == nil {
				return
			}
			line = next.NextSibling()
		}
	}
}

// firstWords returns a block's first inline node after the box of a task.
func firstWords(block ast.Node) ast.Node {
	first := block.FirstChild()
	if first != nil && first.Kind() == east.KindTaskCheckBox {
		return first.NextSibling()
	}
	return first
}

// splitOff moves the inline nodes from one on into a block of their own, which
// follows the block they were in.
func splitOff(block, from ast.Node) ast.Node {
	if last, ok := from.PreviousSibling().(*ast.Text); ok {
		endLine(last)
	}
	var words ast.Node = ast.NewTextBlock()
	if block.Kind() == ast.KindParagraph {
		words = ast.NewParagraph()
	}
	line := 0
	for line < block.Lines().Len() && block.Lines().At(line).Stop <= from.Pos() {
		line++
	}
	words.Lines().AppendAll(block.Lines().Sliced(line, block.Lines().Len()))
	block.Lines().SetSliced(0, line)
	for n := from; n != nil; {
		next := n.NextSibling()
		words.AppendChild(words, n)
		n = next
	}
	parent := block.Parent()
	parent.InsertAfter(parent, block, words)
	return words
}
