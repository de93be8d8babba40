package prose

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
)

func TestRemark(t *testing.T) {
	next := func(text, anchor string) Remark { return Remark{Kind: NextTime, Text: text, Anchor: anchor} }
	private := func(text string) Remark { return Remark{Kind: Private, Text: text, Private: true} }
	for _, c := range []struct {
		name, body string
		want       []Remark
	}{
		{"next time", "Next time: cut it wider.", []Remark{next("cut it wider.", "next-cut-wider")}},
		{"decided", "Decided: plain wrist", []Remark{{Kind: Decided, Text: "plain wrist", Anchor: "decided-plain-wrist"}}},
		{"private", "Private: 29 in", []Remark{private("29 in")}},
		{"any case", "NEXT TIME: a\n\nprivate: b", []Remark{next("a", "next-a"), private("b")}},
		{"blanks", "  Next \t time : a", []Remark{next("a", "next-a")}},
		{"without a blank after", "Next time:a", []Remark{next("a", "next-a")}},
		{"bold", "**Next time:** a", []Remark{next("a", "next-a")}},
		{"bold words", "**Next time**: a", []Remark{next("a", "next-a")}},
		{"slanted", "_Private_ : a", []Remark{private("a")}},
		{"bold and slanted", "***Next time:*** a", []Remark{next("a", "next-a")}},
		{"slanted to the end", "*Next time: a* b", []Remark{next("a b", "next-b")}},
		{"markup within", "Next time: *a* `b` [[c|d]] [e](f.md) 1\\*2", []Remark{next("a b d e 1*2", "next-b-d-e-12")}},
		{"wrapped", "Next time: a\nb  \nc", []Remark{next("a b c", "next-b-c")}},
		{"CR LF", "Next time: a\r\nb\r\n\r\nPrivate: c\r\n", []Remark{next("a b", "next-b"), private("c")}},
		{"opening alone on its line", "Next time:\na", []Remark{next("a", "next-a")}},
		{"nothing said", "Next time:", []Remark{next("", "next-note")}},
		{"two lines", "Next time: a\nNext time: b\nand c", []Remark{next("a", "next-a"), next("b and c", "next-b-c")}},
		{"two lines with hard breaks", "Next time: a  \n**Private:** b\\\nDecided: c", []Remark{
			next("a", "next-a"), private("b"), {Kind: Decided, Text: "c", Anchor: "decided-c"}}},
		{"after ordinary words", "We fitted it.\nPrivate: b", []Remark{private("b")}},
		{"item", "- x\n- Next time: a\n- y", []Remark{next("a", "next-a")}},
		{"item with all in it", "1. Next time: a\n   b\n\n   more\n   - c\n   - d\n\n   ```\n   e\n   ```\n2. y",
			[]Remark{next("a b; more; c; d", "next-b-more-c-d")}},
		{"two in one item", "- Next time: a\n  Next time: b\n  - c", []Remark{next("a", "next-a"), next("b; c", "next-b-c")}},
		{"two paragraphs of one item", "- Next time: a\n\n  Next time: b", []Remark{next("a", "next-a"), next("b", "next-b")}},
		{"task", "- [ ] Next time: a\n- [x] **Next time:** b", []Remark{next("a", "next-a"), next("b", "next-b")}},
		{"quote", "> Private: a\n> b", []Remark{private("a b")}},
		{"list right below", "Private: her measures\n- waist 29\n- bust 36\n\nopen", []Remark{private("her measures; waist 29; bust 36")}},
		{"table right below", "Private: table\n| a |\n|---|\n| b |\n\nopen", []Remark{private("table; a; b")}},
		{"quote and code right below", "Private: a\n> b\n```\nc\n```\nd\n", []Remark{private("a; b; d")}},
		{"list after the opening alone", "Private:\n\n- waist 29\n\nopen", []Remark{private("waist 29")}},
		{"list after a blank line", "Private: a\n\n- open", []Remark{private("a")}},
		{"table after a blank line", "Private: a\n\n| open |\n|---|\n", []Remark{private("a")}},
		{"heading right below", "Private: a\n# open\n", []Remark{private("a")}},
		{"within a private item", "- Private: a\n  - Next time: b\n  - Decided: c\n- Next time: d", []Remark{
			private("a"), {Kind: NextTime, Text: "b", Private: true}, {Kind: Decided, Text: "c", Private: true}, next("d", "next-d")}},
		{"private within an open item", "- Next time: a\n  - Private: b\n  - c", []Remark{next("a; c", "next-c"), private("b")}},
		{"footnote", "x[^1]\n\n[^1]: Private: a", []Remark{private("a")}},
		{"struck secret", "~~Private: a~~", []Remark{private("a")}},
		{"after an image", "![x](y.jpg)\nNext time: a", []Remark{next("a", "next-a")}},

		{"struck", "~~Next time: a~~", nil},
		{"escaped", `Next time\: a`, nil},
		{"in the middle", "The next time: a", nil},
		{"no colon", "Next time a\n\nPrivate\n", nil},
		{"other words", "Nexttime: a\n\nPrivately: b", nil},
		{"code", "`Next time:` a\n\n    Next time: a\n\n```\nPrivate: a\n```", nil},
		{"heading", "# Next time: a", nil},
		{"cell", "| Next time: a |\n|---|\n", nil},
		{"footnote that is not called", "x\n\n[^1]: Next time: a", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, readBody(t, c.body).Remarks, noSpans); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestRemarksKeepOffTheFrontMatter(t *testing.T) {
	f, span := load(t, "Next time: cut it wider\n\nDecided: no cuffs\n\nNext time: cut it wider")
	var got []string
	for _, r := range Read(f, span, Start{Taken: []string{"next-cut-wider", "decided-cuffs"}}).Remarks {
		got = append(got, r.Anchor)
	}
	if diff := cmp.Diff([]string{"next-cut-wider-2", "decided-no-cuffs", "next-cut-wider-3"}, got); diff != "" {
		t.Error(diff)
	}
}

func TestRemarkSpan(t *testing.T) {
	for body, want := range map[string][]string{
		"ü\n\n**Next time:** ä *b* (pattern: c)\n": {"**Next time:** ä *b* (pattern: c)"},
		"x\nNext time: a\nb\r\nPrivate: c\r\n":     {"Next time: a\nb", "Private: c"},
		"> - [ ] Next time: a\n>   b\n>\n>   more": {"Next time: a\n>   b"},
		"-\tDecided: a\n\t- b":                     {"Decided: a"},
		"x[^1]\n\n[^1]: Next time: a":              {"Next time: a"},
		"Private: a\n| b |\n|---|\n":               {"Private: a"},
	} {
		var got []string
		for _, r := range readBody(t, body).Remarks {
			got = append(got, r.Span.Text())
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%q: %s", body, diff)
		}
	}
}

func TestTail(t *testing.T) {
	about := func(pairs ...string) []About {
		var all []About
		for i := 0; i < len(pairs); i += 2 {
			all = append(all, About{Key: pairs[i], Value: pairs[i+1]})
		}
		return all
	}
	for _, c := range []struct {
		name, body, text string
		want             []About
	}{
		{"one", "Next time: wider. (pattern: short-jacket-draft)", "wider.", about("pattern", "short-jacket-draft")},
		{"several", "Next time: a (pattern: b, c; technique: d; Garment : e f)", "a",
			about("pattern", "b", "pattern", "c", "technique", "d", "garment", "e f")},
		{"every key", "Next time: a (pattern: b; technique: c; material: d; garment: e; person: f; about: g)", "a",
			about("pattern", "b", "technique", "c", "material", "d", "garment", "e", "person", "f", "about", "g")},
		{"a comma for a semicolon", "Next time: a (pattern: b, technique: c)", "a", about("pattern", "b", "technique", "c")},
		{"a full stop after it", "Next time: wider (pattern: b).", "wider.", about("pattern", "b")},
		{"ties", "Next time: a (pattern: [[b/c]], [[d|words]])", "a", about("pattern", "b/c", "pattern", "d")},
		{"wrapped", "Next time: a\n(pattern: b\nc;\ngarment: d)", "a", about("pattern", "b c", "garment", "d")},
		{"after markup", "Next time: *a* (about: b_c_d *x* (left))", "a (about: b_c_d x (left))", nil},
		{"a bracket in it", "Next time: a (about: sleeve (left))", "a", about("about", "sleeve (left)")},
		{"a colon in it", "Next time: a (about: 1:2)", "a", about("about", "1:2")},
		{"escapes", `Next time: a (about: b\_c &amp; d)`, "a", about("about", "b_c & d")},
		{"on an item's first paragraph", "- Next time: a (about: b)\n\n  more (about: c)", "a; more (about: c)", about("about", "b")},
		{"before a list", "Next time: a (about: b)\n- c", "a; c", about("about", "b")},
		{"nothing else", "Next time: (about: b).", "", about("about", "b")},
		{"in a footnote", "x[^1]\n\n[^1]: Next time: a (about: b)", "a", about("about", "b")},

		{"another key", "Next time: a (pattern: b; colour: c)", "a (pattern: b; colour: c)", nil},
		{"no key", "Next time: a (as before)", "a (as before)", nil},
		{"no value", "Next time: a (pattern: )", "a (pattern: )", nil},
		{"a missing value", "Next time: a (pattern: b,; garment: c)", "a (pattern: b,; garment: c)", nil},
		{"not at the end", "Next time: a (pattern: b) c", "a (pattern: b) c", nil},
		{"not closed", "Next time: a (pattern: b", "a (pattern: b", nil},
		{"escaped", `Next time: a (pattern: b\)`, "a (pattern: b)", nil},
		{"not opened", "Next time: pattern: b)", "pattern: b)", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			doc := readBody(t, c.body)
			if len(doc.Remarks) != 1 {
				t.Fatalf("%d remarks", len(doc.Remarks))
			}
			r := doc.Remarks[0]
			if r.Text != c.text {
				t.Errorf("text %q, want %q", r.Text, c.text)
			}
			if diff := cmp.Diff(c.want, r.About, noSpans); diff != "" {
				t.Error(diff)
			}
			if len(c.want) > 0 && len(doc.Links) > 0 {
				t.Errorf("links of the tail among the body's: %v", doc.Links)
			}
		})
	}
}

func TestTailSpan(t *testing.T) {
	var got []string
	var spans []source.Span
	for _, a := range readBody(t, "> Next time: ä (pattern: ü, [[b/c]];\n> about: d\\_e).\n").Remarks[0].About {
		got = append(got, a.Span.Text())
		spans = append(spans, a.Span)
	}
	if diff := cmp.Diff([]string{"ü", "b/c", `d\_e`}, got); diff != "" {
		t.Error(diff, spans)
	}
}
