package front

import (
	"strings"
	"unicode/utf8"

	"hussif/content/source"
)

// plainly reads front matter that uses no more of YAML than nearly all does: fields
// and lists in block form, lists and groups in brackets on one line, values on one
// line with or without quotation marks, and comments. It gives what [Parse] makes of
// the YAML library's answer in a small part of the time. Whatever else stands there,
// all faults among it, is left to the library.
func plainly(span source.Span) (Node, bool) {
	p := plainParser{file: span.File, base: span.Start, text: span.Text()}
	if !plainText(p.text) || !p.next() || p.dash() {
		return Node{}, false
	}
	n := p.fields(p.indent, 0)
	return n, !p.left && p.at == len(p.text)
}

// plainText reports whether the only line ends are those that YAML and we agree on,
// and all else is what YAML takes for a letter or a mark.
func plainText(text string) bool {
	for i := 0; i < len(text); i++ {
		c := text[i]
		if c >= utf8.RuneSelf {
			return plainLetters(text[i:])
		}
		if c != '\n' && (c < ' ' || c > '~') {
			return false
		}
	}
	return true
}

func plainLetters(text string) bool {
	for _, r := range text {
		ascii := r == '\n' || ' ' <= r && r <= '~'
		letter := '\u00a0' <= r && r < '\ufffd' && r != '\u2028' && r != '\u2029' && r != '\ufeff'
		if !ascii && !letter && r < 0x10000 {
			return false
		}
	}
	return true
}

// Nothing in a journal comes near these. The library takes names of up to 1024
// characters.
const (
	plainDepth  = 20
	plainName   = 250 // bytes
	plainFields = 200 // of one group, which are gone through one by one
)

// A plainParser stands in front of the first mark of a line that is neither empty nor
// a comment, or within such a line, or at the end.
type plainParser struct {
	file   *source.File
	base   int    // where the text begins in the file
	text   string // of all front matter; values are parts of it
	at     int
	line   int  // where the line begins
	indent int  // of the line
	left   bool // to the library
}

func (p *plainParser) leave() Node {
	p.left = true
	return Node{}
}

func (p *plainParser) span(start, end int) source.Span {
	return p.file.Span(p.base+start, p.base+end)
}

// peek returns the character here; at the end, a line end.
func (p *plainParser) peek(ahead int) byte {
	if p.at+ahead < len(p.text) {
		return p.text[p.at+ahead]
	}
	return '\n'
}

func (p *plainParser) blanks() (some bool) {
	start := p.at
	for p.peek(0) == ' ' {
		p.at++
	}
	return p.at > start
}

// next goes from the beginning of a line to the next one that says something. It
// reports whether there is one.
func (p *plainParser) next() bool {
	for p.at < len(p.text) {
		p.line = p.at
		p.blanks()
		p.indent = p.at - p.line
		if p.at == len(p.text) {
			break
		}
		switch c := p.text[p.at]; {
		case c == '\n':
			p.at++
		case c == '#':
			p.skipLine()
		default:
			// A line of three hyphens or dots ends a document.
			p.left = p.left || p.indent == 0 && (strings.HasPrefix(p.text[p.at:], "---") || strings.HasPrefix(p.text[p.at:], "..."))
			return true
		}
	}
	return false
}

func (p *plainParser) skipLine() {
	if i := strings.IndexByte(p.text[p.at:], '\n'); i >= 0 {
		p.at += i + 1
	} else {
		p.at = len(p.text)
	}
}

// endLine goes to the next line that says something. Nothing but a comment may
// follow on this one.
func (p *plainParser) endLine() {
	some := p.blanks()
	if c := p.peek(0); c != '\n' && !(c == '#' && some) {
		p.left = true
		return
	}
	p.skipLine()
	p.next()
}

// over reports whether what stands in a column has come to its end.
func (p *plainParser) over(column int) bool {
	if p.left || p.at == len(p.text) {
		return true
	}
	if p.indent > column {
		p.left = true // a value goes on in the next line, or stands askew
	}
	return p.left || p.indent < column
}

// dash reports whether an item of a list begins here.
func (p *plainParser) dash() bool { return p.peek(0) == '-' && (p.peek(1) == ' ' || p.peek(1) == '\n') }

// fields reads a group whose names stand in one column.
func (p *plainParser) fields(column, depth int) Node {
	n := Node{Kind: Map, Fields: make([]Field, 0, 4)}
	for {
		if p.dash() || depth > plainDepth {
			return p.leave()
		}
		end, colon := p.plain("")
		key := p.text[p.at:end]
		if !colon || !p.name(&n, key) {
			return p.leave()
		}
		at := p.span(p.at, end)
		p.at = end + 1
		value := p.fieldValue(column, depth)
		n.Fields = append(n.Fields, Field{Key: key, KeySpan: at, Value: value})
		if p.over(column) {
			n.Span = n.Fields[0].KeySpan
			return n
		}
	}
}

// name reports whether a key is a plain one that a group does not have yet, and there
// is room for it.
func (p *plainParser) name(n *Node, key string) bool {
	if key == "" || len(key) > plainName || isNull(key) || len(n.Fields) >= plainFields {
		return false
	}
	for i := range n.Fields {
		if n.Fields[i].Key == key {
			return false
		}
	}
	return true
}

// fieldValue reads what follows the colon of a field in a column.
func (p *plainParser) fieldValue(column, depth int) Node {
	after := p.at
	some := p.blanks()
	if c := p.peek(0); c != '\n' && !(c == '#' && some) {
		n := p.value("", depth)
		p.endLine()
		return n
	}
	p.skipLine()
	p.next()
	switch {
	case p.left:
	case p.at < len(p.text) && p.indent >= column && p.dash():
		return p.items(p.indent, p.indent == column, depth+1)
	case p.at < len(p.text) && p.indent > column:
		return p.fields(p.indent, depth+1)
	}
	return Node{Span: p.span(after, after)}
}

// items reads a list whose dashes stand in one column. That may be the column of the
// field it belongs to; then another field may follow there.
func (p *plainParser) items(column int, shared bool, depth int) Node {
	n := Node{Kind: List, Items: make([]Node, 0, 4), Span: p.span(p.at, p.at+1)}
	for {
		p.at++
		after := p.at
		p.blanks()
		end, colon := p.at, false
		if c := p.peek(0); c != '\n' && c != '[' && c != '{' && c != '\'' && c != '"' {
			if end, colon = p.plain(""); end == p.at {
				return p.leave()
			}
		}
		switch {
		case p.peek(0) == '\n':
			p.endLine()
			n.Items = append(n.Items, Node{Span: p.span(after, after)})
		case colon:
			n.Items = append(n.Items, p.fields(p.at-p.line, depth+1))
		default:
			n.Items = append(n.Items, p.value("", depth))
			p.endLine()
		}
		if p.over(column) {
			return n
		}
		if !p.dash() {
			p.left = p.left || !shared
			return n
		}
	}
}

// value reads a value that begins here and ends on this line. Inside brackets, marks
// end it.
func (p *plainParser) value(marks string, depth int) Node {
	start := p.at
	switch c := p.peek(0); c {
	case '[':
		return p.list(depth + 1)
	case '{':
		return p.group(depth + 1)
	case '\'', '"':
		return p.quoted(c)
	}
	end, colon := p.plain(marks)
	if colon || end == start {
		return p.leave()
	}
	p.at = end
	n := Node{Kind: Text, Text: p.text[start:end], Span: p.span(start, end)}
	if isNull(n.Text) {
		n.Kind, n.Text = None, ""
	}
	return n
}

// isNull reports whether YAML takes a plain value for no value.
func isNull(text string) bool {
	return text == "~" || text == "null" || text == "Null" || text == "NULL"
}

// inBrackets are the marks that end a plain value inside brackets.
const inBrackets = ",[]{}?"

// plain returns the end of a plain value or name that begins here, without the
// blanks after it, and whether a colon stands there.
func (p *plainParser) plain(marks string) (end int, colon bool) {
	if strings.IndexByte("?:,[]{}#&*!|>'\"%@`", p.peek(0)) >= 0 || p.dash() {
		return p.at, false
	}
	end = p.at
	for i := p.at; i < len(p.text); i++ {
		switch c := p.text[i]; c {
		case '\n':
			return end, false
		case ' ':
			if i+1 < len(p.text) && p.text[i+1] == '#' {
				return end, false
			}
		case ':':
			if i+1 == len(p.text) || p.text[i+1] == ' ' || p.text[i+1] == '\n' {
				return end, end == i
			}
			end = i + 1
		default:
			if marks != "" && strings.IndexByte(marks, c) >= 0 {
				return end, false
			}
			end = i + 1
		}
	}
	return end, false
}

// quoted reads a value between quotation marks that ends on this line and has nothing
// written by a backslash.
func (p *plainParser) quoted(mark byte) Node {
	start := p.at
	doubled := false
	for p.at++; ; p.at++ {
		switch c := p.peek(0); {
		case c == '\n' || c == '\\' && mark == '"':
			return p.leave()
		case c == mark && mark == '\'' && p.peek(1) == mark:
			doubled = true
			p.at++
		case c == mark:
			text := p.text[start+1 : p.at]
			if doubled {
				text = strings.ReplaceAll(text, "''", "'")
			}
			p.at++
			return Node{Kind: Text, Text: text, Span: p.span(start, p.at), quoted: true}
		}
	}
}

// list reads a list in brackets.
func (p *plainParser) list(depth int) Node {
	n := Node{Kind: List, Items: make([]Node, 0, 4), Span: p.span(p.at, p.at+1)}
	p.inside(']', depth, func() { n.Items = append(n.Items, p.value(inBrackets, depth)) })
	return n
}

// group reads a group in brackets.
func (p *plainParser) group(depth int) Node {
	n := Node{Kind: Map, Fields: make([]Field, 0, 4), Span: p.span(p.at, p.at+1)}
	p.inside('}', depth, func() {
		end, colon := p.plain(inBrackets)
		key := p.text[p.at:end]
		if !colon || !p.name(&n, key) {
			p.left = true
			return
		}
		at := p.span(p.at, end)
		p.at = end + 1
		if !p.blanks() {
			p.left = true
			return
		}
		n.Fields = append(n.Fields, Field{Key: key, KeySpan: at, Value: p.value(inBrackets, depth)})
	})
	return n
}

// inside reads what stands between brackets, with commas between.
func (p *plainParser) inside(closing byte, depth int, read func()) {
	p.left = p.left || depth > plainDepth
	p.at++
	p.blanks()
	if p.peek(0) == closing {
		p.at++
		return
	}
	for !p.left {
		read()
		p.blanks()
		switch p.peek(0) {
		case closing:
			p.at++
			return
		case ',':
			p.at++
			p.blanks()
		default:
			p.left = true
		}
	}
}
