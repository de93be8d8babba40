package prose

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestTie(t *testing.T) {
	tie := func(to, anchor, text string) []Link { return []Link{{To: to, Anchor: anchor, Text: text, Form: Tie}} }
	for _, c := range []struct {
		name, body string
		want       []Link
		span       string
	}{
		{"bare", "See [[striped-jacket]].", tie("striped-jacket", "", ""), "striped-jacket"},
		{"words", "See [[striped-jacket|the jacket]].", tie("striped-jacket", "", "the jacket"), "striped-jacket"},
		{"place", "[[striped-jacket#next-2]]", tie("striped-jacket", "next-2", ""), "striped-jacket#next-2"},
		{"place and words", "[[a#b|c d]]", tie("a", "b", "c d"), "a#b"},
		{"a heading as it reads", "[[a#Second Fitting]]", tie("a", "second-fitting", ""), "a#Second Fitting"},
		{"a place of this note", "[[#Ärmel]]", tie("", "ärmel", ""), "#Ärmel"},
		{"every character of an id", "[[builds/1. Größe_2 a-b]]", tie("builds/1. Größe_2 a-b", "", ""), "builds/1. Größe_2 a-b"},
		{"blanks round the id", "[[ a b |  c ]]", tie("a b", "", "c"), "a b"},
		{"no words after the bar", "[[a|]]", tie("a", "", ""), "a"},
		{"escapes in the words", `[[a|1\*2 &amp; 3]]`, tie("a", "", "1*2 & 3"), "a"},
		{"a bracket in the words", "[[a|b]c]]", tie("a", "", "b]c"), "a"},
		{"words over two lines", "> x [[a|the\n> long\n> way]] y", tie("a", "", "the long way"), "a"},
		{"words over two lines with CR LF", "[[a|the\r\nway]]\r\n", tie("a", "", "the way"), "a"},
		{"in emphasis", "**[[a]]**", tie("a", "", ""), "a"},
		{"in a heading", "## [[a]]", tie("a", "", ""), "a"},
		{"in a list in a quote", "> - ünï [[a]]", tie("a", "", ""), "a"},
		{"after a tab", "-\t[[a]]", tie("a", "", ""), "a"},
		{"in a footnote", "x[^1]\n\n[^1]: [[a]]", tie("a", "", ""), "a"},
		{"escaped bar", `[[a\|b]]`, tie("a", "", "b"), "a"},
		{"in a table", "| x | y |\n|---|---|\n| [[a\\|b]] | z |\n", tie("a", "", "b"), "a"},
		{"before a bracket", "[[a]](not this one)", tie("a", "", ""), "a"},
		{"instead of a reference", "[[a]]\n\n[a]: b.md", tie("a", "", ""), "a"},

		{"empty", "[[]] [[ ]] [[|x]] [[#]]", nil, ""},
		{"unclosed", "[[a] [[a", nil, ""},
		{"after the mark of a picture", "![[a]]", nil, ""},
		{"unclosed over lines", "[[a|b\nc\n\nd]]", nil, ""},
		{"an id over two lines", "[[a\nb]]", nil, ""},
		{"escaped", `\[[a]] [\[a]]`, nil, ""},
		{"code", "`[[a]]` ``[[a]]``", nil, ""},
		{"fenced code", "```\n[[a]]\n```", nil, ""},
		{"other characters", "[[a:b]] [[a*b]] [[^a]] [[a(b)]] [[a[b]]]", nil, ""},
		{"raw HTML", "<a title='[[a]]'>", nil, ""},
		{"too long", "[[a|" + longText + "]]", nil, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			doc := readBody(t, c.body)
			if diff := cmp.Diff(c.want, doc.Links, noSpans); diff != "" {
				t.Fatal(diff)
			}
			for _, l := range doc.Links {
				if l.Span.Text() != c.span {
					t.Errorf("points at %q, want %q", l.Span.Text(), c.span)
				}
			}
		})
	}
}

// A link whose words are in brackets stays CommonMark's.
func TestTieLeavesLinksAlone(t *testing.T) {
	want := []Link{{To: "https://example.org/", Text: "[1]", Form: Outside}}
	if diff := cmp.Diff(want, readBody(t, "[[1]](https://example.org/)").Links, noSpans); diff != "" {
		t.Error(diff)
	}
	// CommonMark 0.31.2, example 559.
	want = []Link{{To: "/url", Text: "foo bar", Title: "title", Form: Refused}}
	if diff := cmp.Diff(want, readBody(t, "[[*foo* bar]]\n\n[*foo* bar]: /url \"title\"\n").Links, noSpans); diff != "" {
		t.Error(diff)
	}
}

func TestTieTornByTable(t *testing.T) {
	doc := readBody(t, "| x | y |\n|---|---|\n| see [[a|the b]] | z |\n")
	if len(doc.Links) != 0 || len(doc.Findings) != 1 {
		t.Fatalf("links %v, findings %v", doc.Links, doc.Findings)
	}
	f := doc.Findings[0]
	if f.Rule != BrokenTie || f.Span.Text() != "[[a|the b]]" || !cmp.Equal(f.Instead, []string{`[[a\|the b]]`}) {
		t.Errorf("%+v at %q", f, f.Span.Text())
	}
	for _, fine := range []string{
		"| x | y |\n|---|---|\n| [[a\\|b]] | [[c]] |\n",
		"| [[ | y |\n|---|---|\n| z | ]] |\n",
	} {
		if doc := readBody(t, fine); len(doc.Findings) != 0 {
			t.Errorf("%q: %v", fine, doc.Findings)
		}
	}
}
