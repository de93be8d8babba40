package prose

import (
	"bytes"
	"regexp"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// ties is the extension for [[id]], [[id|words]], [[id#place]], [[#place]] and
// [[id#place|words]]. In a table the bar has to be written \|, because a bare one
// ends the cell before ties are looked for.
type ties struct{}

// Extend implements [goldmark.Extender].
func (ties) Extend(m goldmark.Markdown) {
	// Before goldmark's links, which would take the inner brackets.
	m.Parser().AddOptions(parser.WithInlineParsers(util.Prioritized(tieParser{}, 150)))
}

// longestTie is the longest tie in bytes, the limit CommonMark sets for a link
// label. It also keeps a page full of brackets from being searched to its end at
// each of them.
const longestTie = 999

var tie = regexp.MustCompile(`^\[\[` +
	`[ \t]*([\pL\pN][\pL\pM\pN \t_./-]*)?` + // id; none means the note itself
	`(?:#([\pL\pM\pN \t_.-]+))?` + // place
	`(?:\\?\|((?s:.*?)))?` + // words
	`\]\]`)

type tieParser struct{}

// Trigger implements [parser.InlineParser].
func (tieParser) Trigger() []byte { return []byte{'['} }

// Parse implements [parser.InlineParser].
func (tieParser) Parse(_ ast.Node, block text.Reader, pc parser.Context) ast.Node {
	line, segment := block.PeekLine()
	if !bytes.HasPrefix(line, []byte("[[")) {
		return nil
	}
	written := untilClosed(line, block)
	m := tie.FindSubmatchIndex(written)
	if m == nil || m[2] < 0 && m[4] < 0 || startsLinkTarget(written[m[1]:]) {
		return nil
	}
	for rest := m[1]; ; {
		line, _ := block.PeekLine()
		if rest <= len(line) {
			block.Advance(rest)
			break
		}
		rest -= len(line)
		block.AdvanceLine()
	}
	group := func(n int) []byte {
		if m[2*n] < 0 {
			return nil
		}
		return written[m[2*n]:m[2*n+1]]
	}
	id, place := bytes.TrimRight(group(1), " \t"), group(2)
	start, end := m[2], m[2]+len(id)
	if place != nil {
		end = m[5]
		if id == nil {
			start = m[4] - len("#")
		}
	}
	return &LinkNode{Link: Link{
		To:     string(id),
		Anchor: slug(string(place)),
		Text:   strings.Join(strings.Fields(unescape(group(3))), " "),
		Form:   Tie,
		Span:   bodyOf(pc).At(segment.Start+start, end-start),
	}}
}

// untilClosed returns what could be a tie at the start of the line, up to and
// past the brackets that close it, or nil. It looks on in the lines after it,
// because editors break lines between words, and leaves the block where it was.
func untilClosed(line []byte, block text.Reader) []byte {
	closes := func(s []byte) bool { return bytes.Contains(s[:min(len(s), longestTie)], []byte("]]")) }
	if closes(line) {
		return line
	}
	n, at := block.Position()
	defer block.SetPosition(n, at)
	written := bytes.Clone(line[:min(len(line), longestTie)])
	for len(written) < longestTie {
		block.AdvanceLine()
		next, _ := block.PeekLine()
		if next == nil {
			break
		}
		if written = append(written, next...); closes(written) {
			return written
		}
	}
	return nil
}

// startsLinkTarget reports whether the target of an ordinary link follows, as in
// [[1]](https://example.org/), which stays CommonMark's.
func startsLinkTarget(after []byte) bool {
	if len(after) == 0 || after[0] != '(' {
		return false
	}
	end := bytes.IndexAny(after, ") \t\n")
	return end > 0 && after[end] == ')'
}
