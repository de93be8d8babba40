package prose

import (
	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
)

// HidePrivate takes out of a tree every private remark with all that stands in
// it, and the footnotes that are called from nowhere else. What is left shows
// neither that something was there nor how much: emptied items, lists and quotes
// go too, and footnotes are counted anew.
func HidePrivate(tree ast.Node) {
	open := OpenFootnotes(tree)
	var hidden []ast.Node
	visit(tree, func(n ast.Node) bool {
		remark, isRemark := n.(*RemarkNode)
		footnote, isFootnote := n.(*east.Footnote)
		if isRemark && remark.Remark.Kind == Private || isFootnote && !open[footnote.Index] {
			hidden = append(hidden, n)
			return false
		}
		return true
	})
	for _, n := range hidden {
		keepBacklinks(n)
		removeBlock(n)
	}
	dropEmptyFootnotes(tree)
	recountFootnotes(tree)
}

// keepBacklinks moves the way back from a footnote out of a remark at its end.
func keepBacklinks(remark ast.Node) {
	footnote := remark.Parent()
	if footnote.Kind() != east.KindFootnote {
		return
	}
	var back []ast.Node
	visit(remark, func(n ast.Node) bool {
		if n.Kind() == east.KindFootnoteBacklink {
			back = append(back, n)
		}
		return true
	})
	end := footnote
	if before := remark.PreviousSibling(); before != nil && isWords(before) {
		end = before
	}
	for _, n := range back {
		end.AppendChild(end, n)
	}
}

// removeBlock removes a block and the blocks that held only that.
func removeBlock(n ast.Node) {
	parent := n.Parent()
	parent.RemoveChild(parent, n)
	switch parent.Kind() {
	case ast.KindDocument, east.KindFootnote:
		return
	}
	if !parent.HasChildren() {
		removeBlock(parent)
	}
}

// OpenFootnotes returns the numbers of the footnotes that are called from a place
// outside all private remarks, be it from another such footnote.
func OpenFootnotes(tree ast.Node) map[int]bool {
	list := footnotes(tree)
	if list == nil {
		return nil
	}
	numbered := map[int]ast.Node{}
	for n := list.FirstChild(); n != nil; n = n.NextSibling() {
		numbered[n.(*east.Footnote).Index] = n
	}
	open := map[int]bool{}
	queue := []ast.Node{tree}
	for len(queue) > 0 {
		n := queue[0]
		queue = queue[1:]
		visit(n, func(n ast.Node) bool {
			switch n := n.(type) {
			case *east.FootnoteList:
				return false
			case *RemarkNode:
				return n.Remark.Kind != Private
			case *east.FootnoteLink:
				if called := numbered[n.Index]; called != nil && !open[n.Index] {
					open[n.Index] = true
					queue = append(queue, called)
				}
			}
			return true
		})
	}
	return open
}

// dropEmptyFootnotes removes the footnotes that have lost all their words, and
// the calls to them.
func dropEmptyFootnotes(tree ast.Node) {
	list := footnotes(tree)
	if list == nil {
		return
	}
	empty := map[int]bool{}
	for n := list.FirstChild(); n != nil; {
		next := n.NextSibling()
		if first := n.FirstChild(); first == nil || first.Kind() == east.KindFootnoteBacklink {
			empty[n.(*east.Footnote).Index] = true
			list.RemoveChild(list, n)
		}
		n = next
	}
	for _, call := range calls(tree) {
		if empty[call.Index] {
			call.Parent().RemoveChild(call.Parent(), call)
		}
	}
}

// recountFootnotes numbers footnotes in the order of their first calls.
func recountFootnotes(tree ast.Node) {
	list := footnotes(tree)
	if list == nil {
		return
	}
	number, times := map[int]int{}, map[int]int{}
	for _, call := range calls(tree) {
		if number[call.Index] == 0 {
			number[call.Index] = len(number) + 1
		}
		call.Index = number[call.Index]
		call.RefIndex = times[call.Index]
		times[call.Index]++
	}
	for _, call := range calls(tree) {
		call.RefCount = times[call.Index]
	}
	list.Count = len(number)
	var surplus []ast.Node
	visit(list, func(n ast.Node) bool {
		switch n := n.(type) {
		case *east.Footnote:
			n.Index = number[n.Index]
		case *east.FootnoteBacklink:
			n.Index = number[n.Index]
			n.RefCount = times[n.Index]
			if n.RefIndex >= n.RefCount {
				surplus = append(surplus, n)
			}
		}
		return true
	})
	for _, n := range surplus {
		n.Parent().RemoveChild(n.Parent(), n)
	}
	list.SortChildren(func(a, b ast.Node) int { return a.(*east.Footnote).Index - b.(*east.Footnote).Index })
	if !list.HasChildren() {
		tree.RemoveChild(tree, list)
	}
}

// footnotes returns the list of footnotes, which goldmark puts at the end of a
// tree, or nil.
func footnotes(tree ast.Node) *east.FootnoteList {
	list, _ := tree.LastChild().(*east.FootnoteList)
	return list
}

// calls returns the calls to footnotes in the order in which they are read.
func calls(tree ast.Node) []*east.FootnoteLink {
	var all []*east.FootnoteLink
	visit(tree, func(n ast.Node) bool {
		if call, ok := n.(*east.FootnoteLink); ok {
			all = append(all, call)
		}
		return true
	})
	return all
}

// visit calls f for a node and, where it says so, for all below that.
func visit(n ast.Node, f func(ast.Node) bool) {
	if !f(n) {
		return
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		visit(c, f)
	}
}
