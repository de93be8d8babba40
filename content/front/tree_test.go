package front

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
)

// outline writes a tree with the bytes that each part of it claims: keys and
// plain values as `text`, what was unquoted or folded as `bytes → text`.
func outline(n Node) string {
	var b strings.Builder
	var write func(n Node, depth int)
	write = func(n Node, depth int) {
		indent := strings.Repeat("  ", depth)
		switch n.Kind {
		case None:
			fmt.Fprintf(&b, "%snothing %q\n", indent, n.Span.Text())
		case Text:
			if n.Text == n.Span.Text() {
				fmt.Fprintf(&b, "%s%s\n", indent, n.Text)
			} else {
				fmt.Fprintf(&b, "%s%s → %q\n", indent, n.Span.Text(), n.Text)
			}
		case List:
			fmt.Fprintf(&b, "%slist at %s\n", indent, n.Span.Text())
			for _, item := range n.Items {
				write(item, depth+1)
			}
		case Map:
			fmt.Fprintf(&b, "%sgroup at %s\n", indent, n.Span.Text())
			for _, f := range n.Fields {
				key := f.Key
				if f.KeySpan.Text() != key {
					key = f.KeySpan.Text() + " → " + key
				}
				fmt.Fprintf(&b, "%s  %s:\n", indent, key)
				write(f.Value, depth+2)
			}
		}
	}
	write(n, 0)
	return b.String()
}

// Each value must know its own bytes, also after letters of several bytes on the
// same line and with any kind of line end.
func TestParsePlaces(t *testing.T) {
	const text = `größe: {ü: [½ in, 'it''s', "a \"b\""], leer: , "ö x": 1}
list:
- a
- é: b
  ñ: c
-
block: |
  one
  two
folded: >-
  one
  two
plain: one
  two
nothing:
tilde: ~
empty: ''
words: null
end: ½ 裁 🧵 x # a comment
`
	const want = `group at größe
  größe:
    group at {
      ü:
        list at [
          ½ in
          'it''s' → "it's"
          "a \"b\"" → "a \"b\""
      leer:
        nothing ""
      "ö x" → ö x:
        1
  list:
    list at -
      a
      group at é
        é:
          b
        ñ:
          c
      nothing ""
  block:
    | → "one\ntwo\n"
  folded:
    >- → "one two"
  plain:
    one → "one two"
  nothing:
    nothing ""
  tilde:
    nothing "~"
  empty:
    '' → ""
  words:
    nothing "null"
  end:
    ½ 裁 🧵 x
`
	for _, end := range []string{"\n", "\r\n"} {
		for _, before := range []string{"", "\n\n---\n"} {
			f := load(t, strings.ReplaceAll(before+text, "\n", end))
			start := len(strings.ReplaceAll(before, "\n", end))
			n, findings := Parse(f.Span(start, len(f.Data)))
			for _, finding := range findings {
				t.Error(finding.Text)
			}
			if diff := cmp.Diff(want, outline(n)); diff != "" {
				t.Errorf("line end %q after %q: %s", end, before, diff)
			}
		}
	}
}

// YAML 1.1 takes these three for line ends, and so does the library.
func TestParseOtherLineEnds(t *testing.T) {
	for _, end := range []string{"\u0085", "\u2028", "\u2029"} {
		n, findings := Parse(load(t, "é: x"+end+"ñ: y\nlast: z\n").Whole())
		if len(findings) > 0 {
			t.Fatal(findings[0].Text)
		}
		want := "group at é\n  é:\n    x\n  ñ:\n    y\n  last:\n    z\n"
		if diff := cmp.Diff(want, outline(n)); diff != "" {
			t.Errorf("after %q: %s", end, diff)
		}
	}
}

func TestNodeAt(t *testing.T) {
	n, _ := Parse(load(t, "a: ½ inn\nb: '½ inn'\n").Whole())
	plain, quoted := n.Fields[0].Value, n.Fields[1].Value
	if got := plain.At(len("½ "), 3).Text(); got != "inn" {
		t.Errorf("in a plain value: %q", got)
	}
	if got := quoted.At(len("½ "), 3).Text(); got != "'½ inn'" {
		t.Errorf("in a quoted value, whose bytes do not match: %q", got)
	}
}

func TestParseOtherShapes(t *testing.T) {
	for text, want := range map[string]string{
		"":                  "nothing \"\"\n",
		"\n# a comment\n":   "nothing \"\"\n",
		"just words\n":      "just words\n",
		"- a\n- b\n":        "list at -\n  a\n  b\n",
		"[a, b]\n":          "list at [\n  a\n  b\n",
		"{}\n":              "group at {\n",
		"? a\n: b\n":        "group at a\n  a:\n    b\n",
		"---\na: b\n":       "group at a\n  a:\n    b\n",
		"a: 2026-03-01\n":   "group at a\n  a:\n    2026-03-01\n",
		"a: 0x10\nb: yes\n": "group at a\n  a:\n    0x10\n  b:\n    yes\n",
		"a: 1_000\nb: 1e3":  "group at a\n  a:\n    1_000\n  b:\n    1e3\n",
	} {
		n, findings := Parse(load(t, text).Whole())
		if len(findings) > 0 {
			t.Errorf("%q: %s", text, findings[0].Text)
		}
		if diff := cmp.Diff(want, outline(n)); diff != "" {
			t.Errorf("%q: %s", text, diff)
		}
	}
}

// said lists findings as "line:column rule".
func said(findings []source.Finding) []string {
	var out []string
	for _, f := range findings {
		line, column := f.Span.Position()
		out = append(out, fmt.Sprintf("%d:%d %s", line, column, f.Rule))
	}
	return out
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
		help       string // a part of the first advice
	}{
		{"an anchor", "a: &x b\n", []string{"1:4 " + NotPlain}, "quotes"},
		{"an alias", "ä: &x b\nc: *x\n", []string{"1:4 " + NotPlain, "2:4 " + NotPlain}, "quotes"},
		{"a merge", "a: &x {b: c}\nd:\n  <<: *x\n", []string{"1:4 " + NotPlain, "3:7 " + NotPlain}, "quotes"},
		{"an anchored field name", "&x a: b\n", []string{"1:1 " + NotPlain}, "quotes"},
		{"a tag", "a: !!str b\n", []string{"1:4 " + NotPlain}, "quotes"},
		{"a tag of one's own", "- !cloth linen\n", []string{"1:3 " + NotPlain}, "quotes"},
		{"a list for a name", "? [a]\n: b\n", []string{"1:3 " + NotYAML}, "name: value"},
		{"given twice", "a: 1\nb: 2\na: 3\n", []string{"3:1 " + GivenTwice}, "keep one"},
		{"given twice in quotes", "a: 1\n'a': 3\n", []string{"2:1 " + GivenTwice}, "keep one"},
		{"given three times, deep", "a: {b: 1, b: 2, b: 3}\n", []string{"1:11 " + GivenTwice, "1:17 " + GivenTwice}, "keep one"},
		{"a colon in a value", "x: y\na: b: c\n", []string{"2:1 " + NotYAML}, "quotes"},
		{"a tab for indent", "a:\n\tb: c\n", []string{"2:1 " + NotYAML}, "not tabs"},
		{"a tab after fields", "x: y\n\ta: b\n", []string{"2:1 " + NotYAML}, "not tabs"},
		{"a question in brackets", "x: y\na: {b: keep it?, c: d}\n", []string{"2:1 " + NotYAML}, "question mark"},
		{"an open bracket", "x: y\na: {b: c\nd: e\n", []string{"2:1 " + NotYAML}, "bracket"},
		{"an open quote", "a: \"b\nc: d\n", []string{"2:1 " + NotYAML}, "quotation mark"},
		{"uneven indent", "a: b\n c: d\n", []string{"2:1 " + NotYAML}, "quotes"},
		{"an open quote further down", "x: y\na: \"b\nc: d\n", []string{"2:1 " + NotYAML}, "quotation mark"},
		{"words after a quote", "a: 'b' c\n", []string{"1:1 " + NotYAML}, "quotation mark"},
		{"words after a quote further down", "x: y\na: 'b' c\n", []string{"2:1 " + NotYAML}, "quotation mark"},
		{"a field too far left", " a: b\n c: d\ne: f\n", []string{"3:1 " + NotYAML}, "one column"},
		{"a dash among fields", "a: b\nc: d\n- e\n", []string{"3:1 " + NotYAML}, "one column"},
		{"a list on the line of its field", "a: - b\n", []string{"1:1 " + NotYAML}, "list begins"},
		{"a bare asterisk", "a: * b\n", []string{"1:1 " + NotYAML}, "quotes"},
		{"fields after three dots", "a: b\n...\nc: d\n", []string{"3:1 " + NotYAML}, "dots"},
		{"fields after three hyphens", "a: b\n---\nc: d\n", []string{"2:1 " + NotYAML}, "take that line out"},
		{"a control character", "a: b\nc: d\x01e\n", []string{"2:5 " + NotYAML}, "delete it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, findings := Parse(load(t, c.text).Whole())
			if diff := cmp.Diff(c.want, said(findings)); diff != "" {
				t.Fatal(diff)
			}
			if !strings.Contains(findings[0].Help, c.help) {
				t.Errorf("advice is %q", findings[0].Help)
			}
		})
	}
}

func TestGivenTwiceShowsTheFirst(t *testing.T) {
	n, findings := Parse(load(t, "stage: sewing\nhours: 2\nstage: fitting\n").Whole())
	if len(findings) != 1 || len(findings[0].Related) != 1 || findings[0].Related[0].Span.String() != "n.md:1:1" {
		t.Fatalf("got %+v", findings)
	}
	if got := outline(n); got != "group at stage\n  stage:\n    sewing\n  hours:\n    2\n" {
		t.Errorf("got\n%s", got)
	}
}

// Nine levels of nine aliases would make 387 million values ("billion laughs").
func TestParseAliasBomb(t *testing.T) {
	var b strings.Builder
	b.WriteString("a0: &a0 [x, x, x, x, x, x, x, x, x]\n")
	for i := 1; i < 9; i++ {
		all := strings.Repeat(fmt.Sprintf("*a%d, ", i-1), 9)
		fmt.Fprintf(&b, "a%d: &a%d [%s]\n", i, i, strings.TrimSuffix(all, ", "))
	}
	begun := time.Now()
	_, findings := Parse(load(t, b.String()).Whole())
	if took := time.Since(begun); took > time.Second {
		t.Errorf("took %v", took)
	}
	if len(findings) != 9 || findings[0].Rule != NotPlain {
		t.Errorf("found %d", len(findings))
	}
}

// All fields of a note may stand in one line as long as the file.
func TestParseHugeLine(t *testing.T) {
	var b strings.Builder
	b.WriteString("{")
	for i := 0; b.Len() < maxFront-100; i++ {
		fmt.Fprintf(&b, "ä%d: [x, y], ", i)
	}
	b.WriteString("z: end}\n")
	begun := time.Now()
	n, findings := Parse(load(t, b.String()).Whole())
	if took := time.Since(begun); took > 20*time.Second {
		t.Errorf("took %v", took)
	}
	if len(findings) > 0 {
		t.Fatal(findings[0].Text)
	}
	if last := n.Fields[len(n.Fields)-1]; last.KeySpan.Text() != "z" || last.Value.Span.Text() != "end" {
		t.Errorf("last is %q: %q", last.KeySpan.Text(), last.Value.Span.Text())
	}
}

func TestParseDeep(t *testing.T) {
	for _, text := range []string{strings.Repeat("[", 100_000), strings.Repeat("- ", 100_000), strings.Repeat("{a: ", 100_000)} {
		_, findings := Parse(load(t, text).Whole())
		if len(findings) != 1 || findings[0].Rule != NotYAML {
			t.Errorf("%.10s: found %v", text, said(findings))
		}
	}
}
