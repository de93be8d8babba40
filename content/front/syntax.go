package front

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"hussif/content/source"
)

// controlCharacter finds the first character that YAML 1.2, section 5.1, does not
// count as printable.
func controlCharacter(span source.Span) (source.Span, bool) {
	for i, r := range span.Text() {
		printable := r == '\t' || r == '\n' || r == '\r' || ' ' <= r && r <= '~' || r == '\u0085' ||
			'\u00a0' <= r && r <= '\ufffd' || r >= 0x10000
		if !printable {
			return span.At(i, utf8.RuneLen(r)), true
		}
	}
	return source.Span{}, false
}

var (
	yamlLine    = regexp.MustCompile(`line (\d+)`)
	grammar     = regexp.MustCompile(`^did not find expected (key|node content|<|')`)
	yamlPreface = regexp.MustCompile(`^yaml: (unmarshal errors:\s*)?(line \d+: )?`)
)

// syntax turns the parser's error, which is a plain string with at best a line,
// into a finding. The line is where the parser noticed, which may be after the
// slip, so no column is claimed.
func (p *parser) syntax(err error) source.Finding {
	text := yamlPreface.ReplaceAllString(err.Error(), "")
	line := 1
	if m := yamlLine.FindStringSubmatch(err.Error()); m != nil {
		line, _ = strconv.Atoi(m[1])
		// The library counts lines from 0 in what its grammar refuses, and from 1
		// in what its scanner does.
		if grammar.MatchString(text) {
			line++
		}
	}
	start := p.offset(line, 1)
	for line > 1 && len(bytes.TrimSpace(p.span.File.Data[start:p.span.End])) == 0 {
		line--
		start = p.offset(line, 1)
	}
	at := firstLine(p.span.File.Span(start, start))
	f := source.Found(at, source.Error, NotYAML, "the fields cannot be read from about here: %s", text)
	f.Help = yamlHelp(text)
	return f
}

// yamlHelp says what a maker most often wrote when the parser says this.
func yamlHelp(text string) string {
	switch {
	case strings.Contains(text, "mapping values are not allowed"):
		return "a colon followed by a blank starts a field: put the whole value in quotes"
	case strings.Contains(text, "did not find expected ',' or '}'"), strings.Contains(text, "did not find expected ',' or ']'"):
		return "a bracket is not closed, or a value with a comma, bracket or question mark in it needs quotes"
	case strings.Contains(text, "tab character"), strings.Contains(text, "found character that cannot start any token"):
		return "indent with blanks, not tabs, and put a value that begins with @, % or ` in quotes"
	case strings.Contains(text, "did not find expected key"), strings.Contains(text, "did not find expected '-' indicator"):
		return "fields of one group start in one column, and nothing follows a closing quotation mark or bracket"
	case strings.Contains(text, "did not find expected <document start>"):
		return "fields of one group start in one column, and no line of three dots or hyphens stands among them"
	case strings.Contains(text, "block sequence entries are not allowed"):
		return "a list begins on the line below its field, or stands in [ ]"
	case strings.Contains(text, "did not find expected node content"), strings.Contains(text, "did not find expected alphabetic"):
		return "put a value that begins with a bracket, & or * in quotes"
	case strings.Contains(text, "unexpected end of stream"):
		return "a quotation mark is not closed"
	}
	return "each field is `name: value`, with the fields of one group in one column"
}
