package amend

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"hussif/content/front"
)

// ways returns the edits that may put the entry in, best first, and the tree that
// must come out.
func (p page) ways(field string, entry front.Node) ([][]edit, front.Node, error) {
	list := front.Node{Kind: front.List, Items: []front.Node{entry}}
	if p.bare() || p.tree.Kind == front.None {
		return [][]edit{p.newField("", field, entry)}, Group(front.Field{Key: field, Value: list}), nil
	}
	if p.tree.Kind != front.Map {
		return nil, front.Node{}, &Refusal{p.tree.Span, "the front matter has no fields", "write it as `name: value`"}
	}
	at := slices.IndexFunc(p.tree.Fields, func(f front.Field) bool { return f.Key == field })
	flow := p.isFlow(p.tree)
	if at < 0 {
		expected := front.Node{Kind: front.Map, Fields: append(slices.Clone(p.tree.Fields), front.Field{Key: field, Value: list})}
		if flow {
			return p.beforeBracket(p.tree, key(field)+": ["+flowText(entry)+"]"), expected, nil
		}
		return [][]edit{p.newField(p.indentOf(p.tree.Span.Start), field, entry)}, expected, nil
	}
	old := p.tree.Fields[at].Value
	var ways [][]edit
	switch {
	case old.Kind == front.None && old.Span.Text() != "":
		return nil, front.Node{}, &Refusal{old.Span, fmt.Sprintf("`%s:` says %q", field, old.Span.Text()), "take that word out"}
	case old.Kind == front.None && flow:
		ways = p.afterColon(p.tree.Fields[at], " ["+flowText(entry)+"]")
	case old.Kind == front.None:
		ways = p.belowKey(p.tree.Fields[at], entry)
	case old.Kind == front.List && p.isFlow(old):
		ways, list.Items = p.inBrackets(old, entry), append(slices.Clone(old.Items), entry)
	case old.Kind == front.List:
		ways, list.Items = p.belowItems(old, p.endOf(at), entry), append(slices.Clone(old.Items), entry)
	case old.Kind == front.Map && p.isFlow(old):
		ways, list.Items = p.roundGroup(old, entry), []front.Node{old, entry}
	case old.Kind == front.Map:
		return nil, front.Node{}, &Refusal{old.Span, fmt.Sprintf("`%s:` holds one entry without a dash", field),
			"put `- ` before its first line and two blanks before the others"}
	default:
		return nil, front.Node{}, &Refusal{old.Span, fmt.Sprintf("`%s:` holds %s where a list should be", field, old.Kind), ""}
	}
	expected := front.Node{Kind: front.Map, Fields: slices.Clone(p.tree.Fields)}
	expected.Fields[at].Value = list
	return ways, expected, nil
}

// isFlow reports whether a list or group stands in brackets.
func (p page) isFlow(n front.Node) bool {
	c := p.file.Data[n.Span.Start]
	return c == '[' || c == '{'
}

// newField makes the field with its first entry, at the end of the front matter, or
// with front matter round it where there is none.
func (p page) newField(indent, field string, entry front.Node) []edit {
	end := p.lineEnd(p.parts.Front.End)
	text := indent + key(field) + ":" + end + blockText(entry, indent+"  ", 1, end)
	if p.bare() {
		return []edit{{0, "---" + end + text + "---" + end}}
	}
	return []edit{{p.parts.Front.End, text}}
}

// belowKey puts a first entry under a key that has none.
func (p page) belowKey(f front.Field, entry front.Node) [][]edit {
	at := p.nextLine(f.KeySpan.End)
	return [][]edit{{{at, blockText(entry, p.indentOf(f.KeySpan.Start)+"  ", 1, p.lineEnd(at))}}}
}

// endOf returns where the lines of a field end: where those of the next one begin,
// or the front matter does.
func (p page) endOf(field int) int {
	if field+1 < len(p.tree.Fields) {
		return p.lineStart(p.tree.Fields[field+1].KeySpan.Start)
	}
	return p.parts.Front.End
}

// belowItems puts an entry below the last of a list whose lines end before limit.
func (p page) belowItems(list front.Node, limit int, entry front.Node) [][]edit {
	indent := p.indentOf(list.Span.Start)
	gap, flow := 1, false
	for _, item := range list.Items {
		if item.Kind == front.Map {
			flow = p.isFlow(item)
			if start := item.Span.Start - p.lineStart(item.Span.Start) - len(indent) - 1; start > 0 {
				gap = start
			}
		}
	}
	var ways [][]edit
	for _, at := range []int{p.lastLine(list.Span.Start, limit, len(indent)), limit} {
		end := p.lineEnd(at)
		text := blockText(entry, indent, gap, end)
		if flow {
			text = indent + "-" + strings.Repeat(" ", gap) + flowText(entry) + end
		}
		ways = append(ways, []edit{{at, text}})
	}
	return ways
}

// lastLine returns where the line after the last one of a list begins: a line that
// starts with a dash in the list's column, or further to the right. A comment as
// far to the right belongs to the last entry.
func (p page) lastLine(start, limit, column int) int {
	end := start
	for at := p.lineStart(start); at < limit; {
		next := p.nextLine(at)
		line := bytes.TrimRight(p.file.Data[at:next], "\r\n \t")
		indent := len(line) - len(bytes.TrimLeft(line, " "))
		if len(line) > 0 && (indent > column || indent == column && line[indent] == '-') {
			end = next
		}
		at = next
	}
	return end
}

func (p page) lineStart(at int) int { return bytes.LastIndexByte(p.file.Data[:at], '\n') + 1 }

// nextLine returns where the line after the one that holds an offset begins.
func (p page) nextLine(at int) int {
	if i := bytes.IndexByte(p.file.Data[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(p.file.Data)
}

// indentOf returns as many blanks as stand before an offset in its line.
func (p page) indentOf(at int) string { return strings.Repeat(" ", at-p.lineStart(at)) }

// lineEnd returns the line end to use at an offset: as the line before it has, or
// else as the first line of the page has.
func (p page) lineEnd(at int) string {
	if at == 0 {
		at = p.nextLine(0)
	}
	if bytes.HasSuffix(p.file.Data[:at], []byte("\r\n")) {
		return "\r\n"
	}
	if !bytes.HasSuffix(p.file.Data[:at], []byte("\n")) && bytes.HasSuffix(p.file.Data[:p.nextLine(0)], []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}
