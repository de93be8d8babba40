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
		{"next time", "Next time: cut it wider.", []Remark{next("cut it wider.", "next-1")}},
		{"decided", "Decided: plain wrist", []Remark{{Kind: Decided, Text: "plain wrist", Anchor: "decided-1"}}},
		{"private", "Private: 29 in", []Remark{private("29 in")}},
		{"any case", "NEXT TIME: a\n\nprivate: b", []Remark{next("a", "next-1"), private("b")}},
		{"blanks", "  Next \t time : a", []Remark{next("a", "next-1")}},
		{"without a blank after", "Next time:a", []Remark{next("a", "next-1")}},
		{"bold", "**Next time:** a", []Remark{next("a", "next-1")}},
		{"bold words", "**Next time**: a", []Remark{next("a", "next-1")}},
		{"slanted", "_Private_ : a", []Remark{private("a")}},
		{"bold and slanted", "***Next time:*** a", []Remark{next("a", "next-1")}},
		{"slanted to the end", "*Next time: a* b", []Remark{next("a b", "next-1")}},
		{"markup within", "Next time: *a* `b` [[c|d]] [e](f.md) 1\\*2", []Remark{next("a b d e 1*2", "next-1")}},
		{"wrapped", "Next time: a\nb  \nc", []Remark{next("a b c", "next-1")}},
		{"CR LF", "Next time: a\r\nb\r\n\r\nPrivate: c\r\n", []Remark{next("a b", "next-1"), private("c")}},
		{"opening alone on its line", "Next time:\na", []Remark{next("a", "next-1")}},
		{"nothing said", "Next time:", []Remark{next("", "next-1")}},
		{"two lines", "Next time: a\nNext time: b\nand c", []Remark{next("a", "next-1"), next("b and c", "next-2")}},
		{"two lines with hard breaks", "Next time: a  \n**Private:** b\\\nDecided: c", []Remark{
			next("a", "next-1"), private("b"), {Kind: Decided, Text: "c", Anchor: "decided-1"}}},
		{"after ordinary words", "We fitted it.\nPrivate: b", []Remark{private("b")}},
		{"item", "- x\n- Next time: a\n- y", []Remark{next("a", "next-1")}},
		{"item with all in it", "1. Next time: a\n   b\n\n   more\n   - c\n   - d\n\n   ```\n   e\n   ```\n2. y",
			[]Remark{next("a b; more; c; d", "next-1")}},
		{"two in one item", "- Next time: a\n  Next time: b\n  - c", []Remark{next("a", "next-1"), next("b; c", "next-2")}},
		{"two paragraphs of one item", "- Next time: a\n\n  Next time: b", []Remark{next("a", "next-1"), next("b", "next-2")}},
		{"task", "- [ ] Next time: a\n- [x] **Next time:** b", []Remark{next("a", "next-1"), next("b", "next-2")}},
		{"quote", "> Private: a\n> b", []Remark{private("a b")}},
		{"list right below", "Private: her measures\n- waist 29\n- bust 36\n\nopen", []Remark{private("her measures; waist 29; bust 36")}},
		{"table right below", "Private: table\n| a |\n|---|\n| b |\n\nopen", []Remark{private("table; a; b")}},
		{"quote and code right below", "Private: a\n> b\n```\nc\n```\nd\n", []Remark{private("a; b; d")}},
		{"list after the opening alone", "Private:\n\n- waist 29\n\nopen", []Remark{private("waist 29")}},
		{"list after a blank line", "Private: a\n\n- open", []Remark{private("a")}},
		{"table after a blank line", "Private: a\n\n| open |\n|---|\n", []Remark{private("a")}},
		{"heading right below", "Private: a\n# open\n", []Remark{private("a")}},
		{"within a private item", "- Private: a\n  - Next time: b\n  - Decided: c\n- Next time: d", []Remark{
			private("a"), {Kind: NextTime, Text: "b", Private: true}, {Kind: Decided, Text: "c", Private: true}, next("d", "next-1")}},
		{"private within an open item", "- Next time: a\n  - Private: b\n  - c", []Remark{next("a; c", "next-1"), private("b")}},
		{"footnote", "x[^1]\n\n[^1]: Private: a", []Remark{private("a")}},
		{"struck secret", "~~Private: a~~", []Remark{private("a")}},
		{"after an image", "![x](y.jpg)\nNext time: a", []Remark{next("a", "next-1")}},

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

func TestRemarksGoOnFromFrontMatter(t *testing.T) {
	f, span := load(t, "Next time: a\n\nDecided: b\n\nNext time: c")
	var got []string
	for _, r := range Read(f, span, Start{Next: 2, Decided: 1}).Remarks {
		got = append(got, r.Anchor)
	}
	if diff := cmp.Diff([]string{"next-3", "decided-2", "next-4"}, got); diff != "" {
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
