package prose

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"

	"hussif/content/source"
)

// An About is one thing that a remark is about, named in its tail:
//
//	Next time: cut the sleeve wider. (pattern: short-jacket-draft; garment: jacket)
type About struct {
	Key   string // pattern, technique, material, garment, person or about
	Value string
	Span  source.Span // of the value
}

var aboutKey = regexp.MustCompile(`(?i)^\s*(pattern|technique|material|garment|person|about)\s*:`)

// cutTail takes the tail off the end of a block of words. A parenthesis that does
// not read as a tail from end to end is part of the words and stays. A full stop
// behind it is theirs too.
func (m remarkMaker) cutTail(words ast.Node) []About {
	t := m.trailing(words)
	end := len(bytes.TrimRight(t.text, " "))
	stop := end
	if bytes.HasSuffix(t.text[:end], []byte(").")) {
		end--
	}
	start := openBracket(t.text[:end])
	if start < 0 {
		return nil
	}
	about, ok := m.readTail(t, start+1, end-1)
	if !ok {
		return nil
	}
	t.truncate(start, m.src)
	if end < stop && t.before != nil {
		words.InsertAfter(words, t.before, ast.NewTextSegment(text.NewSegment(t.at[end], t.at[end]+1)))
	}
	return about
}

// readTail reads what stands between the brackets of a tail.
func (m remarkMaker) readTail(t trailing, from, to int) ([]About, bool) {
	var all []About
	key, parted := "", byte(';')
	for start, i := from, from; i <= to; i++ {
		if i < to && t.text[i] != ',' && (t.text[i] != ';' || endsEntity(t.text[start:i+1])) {
			continue
		}
		first, last := start, i
		if found := aboutKey.FindSubmatchIndex(t.text[start:i]); found != nil {
			key = strings.ToLower(string(t.text[start+found[2] : start+found[3]]))
			first += found[1]
		} else if parted == ';' {
			return nil, false
		}
		for first < last && t.text[first] == ' ' {
			first++
		}
		for first < last && t.text[last-1] == ' ' {
			last--
		}
		value := strings.Join(strings.Fields(unescape(t.text[first:last])), " ")
		if value == "" {
			return nil, false
		}
		all = append(all, About{Key: key, Value: value, Span: m.body.At(t.at[first], t.at[last-1]+1-t.at[first])})
		start, parted = i+1, t.text[i]
	}
	return all, true
}

// endsEntity reports whether the semicolon at the end of text is that of a
// character reference.
func endsEntity(text []byte) bool {
	at := bytes.LastIndexByte(text, '&')
	return at >= 0 && len(entity.Find(text[at:])) == len(text)-at
}

// openBracket returns where the bracket opens that the text ends by closing, or -1.
func openBracket(text []byte) int {
	if !bytes.HasSuffix(text, []byte(")")) || bytes.HasSuffix(text, []byte(`\)`)) {
		return -1
	}
	depth := 0
	for i := len(text) - 1; i >= 0; i-- {
		switch text[i] {
		case ')':
			depth++
		case '(':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return -1
}

// trailing is the end of a block as far as it is made of bare text and ties. A
// tie is there as its id.
type trailing struct {
	text   []byte
	at     []int // where each byte of text stands in the body
	runs   []run
	before ast.Node // the last node that is left of them
}

type run struct {
	node  ast.Node
	start int // in text
}

func (m remarkMaker) trailing(words ast.Node) trailing {
	last := words.LastChild()
	for last != nil && last.Kind() == east.KindFootnoteBacklink {
		last = last.PreviousSibling()
	}
	first := last
	for first != nil && isTrailing(first) {
		first = first.PreviousSibling()
	}
	t := trailing{before: first}
	n := words.FirstChild()
	if first != nil {
		n = first.NextSibling()
	}
	for ; n != nil && isTrailing(n); n = n.NextSibling() {
		t.runs = append(t.runs, run{n, len(t.text)})
		switch n := n.(type) {
		case *ast.Text:
			t.add(m.src[n.Segment.Start:n.Segment.Stop], n.Segment.Start)
			if endsLine(n) {
				t.add([]byte(" "), n.Segment.Stop)
			}
		case *LinkNode:
			t.add([]byte(n.Link.To), n.Link.Span.Start-m.body.Start)
		}
	}
	return t
}

func isTrailing(n ast.Node) bool {
	return n.Kind() == ast.KindText || n.Kind() == LinkKind
}

func (t *trailing) add(text []byte, at int) {
	for i := range text {
		t.at = append(t.at, at+i)
	}
	t.text = append(t.text, text...)
}

// truncate takes all from an offset in the text out of the tree, and the blanks
// and the line break before it.
func (t *trailing) truncate(from int, src []byte) {
	for _, r := range t.runs {
		if r.start >= from {
			r.node.Parent().RemoveChild(r.node.Parent(), r.node)
			continue
		}
		t.before = r.node
		if words, ok := r.node.(*ast.Text); ok && t.at[from] >= words.Segment.Start && t.at[from] <= words.Segment.Stop {
			words.Segment = words.Segment.WithStop(t.at[from])
		}
	}
	if last, ok := t.before.(*ast.Text); ok {
		last.Segment = last.Segment.TrimRightSpace(src)
		endLine(last)
	}
}

// endLine makes a text the last of its block.
func endLine(t *ast.Text) {
	t.SetSoftLineBreak(false)
	t.SetHardLineBreak(false)
}
