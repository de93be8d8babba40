package agenda

import (
	"bytes"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/prose"
)

// A Stopped is where the work on a build was left; zero where it was not begun.
type Stopped struct {
	Note  journal.ID
	Day   edtf.Day
	Stage journal.Stage
	Words string   // the note's opening
	Open  []string // its list items that are not ticked off
	Done  int      // those that are
}

// lastNote returns a build's last dated note by a day; nil where there is none.
func lastNote(b *journal.Build, day edtf.Day) *journal.Note {
	var last *journal.Note
	for _, n := range b.Notes {
		if n.Date != 0 && n.Date <= day {
			last = n
		}
	}
	return last
}

func stopped(j *journal.Journal, b *journal.Build, day edtf.Day) Stopped {
	n := lastNote(b, day)
	if n == nil {
		return Stopped{}
	}
	s := Stopped{Note: n.ID, Day: n.Date, Stage: n.Stage, Words: n.Text.Opening}
	body := n.Text.Body
	if body.IsZero() || !bytes.Contains(body.File.Data[body.Start:body.End], []byte("[")) {
		return s // no list to tick off, and reading a text again takes time
	}
	tree := prose.Tree(n.File, body, journal.Start(n))
	prose.HidePrivate(tree)
	// Parsing cannot fail, and a walk fails only where its function does.
	_ = ast.Walk(tree, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		box, ok := node.(*east.TaskCheckBox)
		switch {
		case !ok || !entering:
		case box.IsChecked:
			s.Done++
		default:
			s.Open = append(s.Open, itemWords(j, box, body.File.Data[body.Start:body.End]))
		}
		return ast.WalkContinue, nil
	})
	return s
}

// itemWords returns the words that stand beside a box to tick, without markup.
func itemWords(j *journal.Journal, box ast.Node, src []byte) string {
	var words strings.Builder
	var gather func(ast.Node)
	gather = func(n ast.Node) {
		switch n := n.(type) {
		case *ast.Text:
			words.Write(n.Segment.Value(src))
			if n.SoftLineBreak() || n.HardLineBreak() {
				words.WriteByte(' ')
			}
		case *ast.String:
			words.Write(n.Value)
		case *prose.LinkNode:
			if !n.HasChildren() {
				words.WriteString(linkWords(j, n.Link))
			}
		case *prose.PictureNode:
			words.WriteString(n.Picture.Alt)
		}
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			gather(c)
		}
	}
	for n := box.NextSibling(); n != nil; n = n.NextSibling() {
		gather(n)
	}
	return strings.Join(strings.Fields(words.String()), " ")
}

// linkWords returns what a link without words of its own is called.
func linkWords(j *journal.Journal, l prose.Link) string {
	if l.Text != "" {
		return l.Text
	}
	if r, ok := j.Find(l.To); ok {
		return r.Head().Title
	}
	return l.To
}
