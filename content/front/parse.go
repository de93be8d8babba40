package front

import (
	"bytes"
	"io"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"

	"hussif/content/source"
)

// Rules for front matter that is no plain YAML.
const (
	NotYAML    = "not YAML"
	NotPlain   = "anchor, alias or tag"
	GivenTwice = "given twice"
)

// maxFront is how many bytes of front matter are read. A person measured every week
// for ten years has not a third of it.
const maxFront = 512 << 10

// mostFindings is how many faults of one file are told at once. What is wrong more
// often is wrong in one way, and nobody reads on.
const mostFindings = 100

// Parse reads a span of a file as YAML. Faults in the YAML itself give a node of
// kind None.
func Parse(span source.Span) (Node, []source.Finding) {
	if len(span.Text()) > maxFront {
		p := parser{span: span}
		p.report(span.At(0, 0), NotYAML, "this front matter is longer than 512 kB", "split the file into several")
		return Node{Span: span.At(0, 0)}, p.findings
	}
	if n, ok := plainly(span); ok {
		return n, nil
	}
	return parseAny(span)
}

// parseAny reads all of YAML that a journal may hold, and says what is wrong with the
// rest.
func parseAny(span source.Span) (Node, []source.Finding) {
	p := parser{span: span, lines: yamlLines(span), line: 1, column: 1, at: span.Start}
	if at, bad := controlCharacter(span); bad {
		p.report(at, NotYAML, "a character that cannot be seen stands here", "delete it and type the line again")
		return Node{Span: span.At(0, 0)}, p.findings
	}
	var doc, more yaml.Node
	decoder := yaml.NewDecoder(bytes.NewReader(span.File.Data[span.Start:span.End]))
	switch err := decoder.Decode(&doc); {
	case err == io.EOF:
		return Node{Span: span.At(0, 0)}, nil
	case err != nil:
		return Node{Span: span.At(0, 0)}, []source.Finding{p.syntax(err)}
	}
	// What follows a line of three dots, or of three hyphens in a file that is
	// YAML throughout, is another document to YAML.
	switch err := decoder.Decode(&more); {
	case err == nil:
		p.report(p.place(&more, 0), NotYAML, "what follows a line of three dots or hyphens is not read",
			"take that line out")
	case err != io.EOF:
		return Node{Span: span.At(0, 0)}, []source.Finding{p.syntax(err)}
	}
	return p.node(doc.Content[0]), p.findings
}

type parser struct {
	span     source.Span
	lines    []int // where YAML starts a new line, from the span's start
	findings []source.Finding

	// The place last worked out, from which the next one on a line is not far.
	line, column, at int
}

// yamlLines returns where each line starts as YAML 1.1 counts them: the
// separators U+0085, U+2028 and U+2029 end a line for it too.
func yamlLines(span source.Span) []int {
	text := span.Text()
	starts := make([]int, 1, 2+strings.Count(text, "\n"))
	for i, r := range text {
		switch r {
		case '\n', '\u0085', '\u2028', '\u2029':
			starts = append(starts, i+utf8.RuneLen(r))
		}
	}
	return starts
}

// offset turns YAML's line and column, which count characters, into bytes of the
// file.
func (p *parser) offset(line, column int) int {
	line = min(max(line, 1), len(p.lines))
	if line != p.line || column < p.column {
		p.line, p.column, p.at = line, 1, p.span.Start+p.lines[line-1]
	}
	for ; p.column < column && p.at < p.span.End; p.column++ {
		_, size := utf8.DecodeRune(p.span.File.Data[p.at:])
		p.at += size
	}
	return p.at
}

func (p *parser) place(n *yaml.Node, length int) source.Span {
	start := p.offset(n.Line, n.Column)
	return p.span.File.Span(start, min(start+length, p.span.End))
}

func (p *parser) report(span source.Span, rule, text, help string) {
	if len(p.findings) >= mostFindings && rule == p.findings[mostFindings-1].Rule {
		return
	}
	f := source.Found(span, source.Error, rule, "%s", text)
	f.Help = help
	p.findings = append(p.findings, f)
}

func (p *parser) node(n *yaml.Node) Node {
	if n.Anchor != "" || n.Kind == yaml.AliasNode {
		p.report(p.place(n, 1), NotPlain, "anchors (&) and aliases (*) are not read here",
			"write the value out, or put it in quotes if it begins with that mark")
		return Node{Span: p.place(n, 1)}
	}
	if n.Style&yaml.TaggedStyle != 0 {
		p.report(p.place(n, 1), NotPlain, "tags (!) are not read here",
			"leave it out, or put the value in quotes if it begins with that mark")
		return Node{Span: p.place(n, 1)}
	}
	switch n.Kind {
	case yaml.SequenceNode:
		out := Node{Kind: List, Span: p.place(n, 1), Items: make([]Node, 0, len(n.Content))}
		for _, item := range n.Content {
			out.Items = append(out.Items, p.node(item))
		}
		return out
	case yaml.MappingNode:
		return p.mapping(n)
	}
	return p.scalar(n)
}

func (p *parser) mapping(n *yaml.Node) Node {
	out := Node{Kind: Map, Span: p.place(n, 1), Fields: make([]Field, 0, len(n.Content)/2)}
	seen := make(map[string]int, len(n.Content)/2) // places in Fields
	for i := 0; i+1 < len(n.Content); i += 2 {
		before := len(p.findings)
		key := p.node(n.Content[i])
		if key.Kind != Text {
			if len(p.findings) == before {
				p.report(key.Span, NotYAML, "this field has no plain name", "write `name: value`")
			}
			continue
		}
		if first, ok := seen[key.Text]; ok {
			if len(p.findings) >= mostFindings {
				continue
			}
			f := source.Found(key.Span, source.Error, GivenTwice, "%q is given twice", key.Text)
			f.Help = "keep one of the two"
			f.Related = []source.Place{{Span: out.Fields[first].KeySpan, Text: "first given here"}}
			p.findings = append(p.findings, f)
			continue
		}
		seen[key.Text] = len(out.Fields)
		out.Fields = append(out.Fields, Field{Key: key.Text, KeySpan: key.Span, Value: p.node(n.Content[i+1])})
	}
	if n.Style&yaml.FlowStyle == 0 && len(out.Fields) > 0 {
		out.Span = out.Fields[0].KeySpan
	}
	return out
}

func (p *parser) scalar(n *yaml.Node) Node {
	quoted := n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
	if n.Tag == "!!null" && !quoted {
		return Node{Span: p.place(n, len(n.Value))}
	}
	out := Node{Kind: Text, Text: n.Value, Span: p.place(n, len(n.Value)), quoted: quoted}
	if !quoted && out.Span.Text() != n.Value {
		out.quoted = true // a plain value folded over several lines
	}
	if n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 {
		out.Span = closeQuote(out.Span)
	} else if quoted || out.quoted {
		out.Span = firstLine(out.Span)
	}
	return out
}

// closeQuote stretches a span that starts at a quotation mark to its partner on
// the same line.
func closeQuote(s source.Span) source.Span {
	data := s.File.Data
	mark := data[s.Start]
	for i := s.Start + 1; i < len(data) && data[i] != '\n'; i++ {
		switch {
		case data[i] == '\\' && mark == '"':
			i++
		case data[i] == mark && mark == '\'' && i+1 < len(data) && data[i+1] == mark:
			i++
		case data[i] == mark:
			return s.File.Span(s.Start, i+1)
		}
	}
	return firstLine(s)
}

func firstLine(s source.Span) source.Span {
	line, _ := s.Position()
	return s.File.Span(s.Start, max(s.Start, lineSpan(s.File, line).End))
}
