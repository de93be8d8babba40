package prose

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
)

// hidden returns the words left of a body when its private remarks are out.
func hidden(t testing.TB, body string) (ast.Node, string) {
	f, span := load(t, body)
	tree := Tree(f, span, Start{})
	HidePrivate(tree)
	var words strings.Builder
	visit(tree, func(n ast.Node) bool {
		if n, ok := n.(*RemarkNode); ok {
			words.WriteString(plainText(n, f.Data[span.Start:]) + "|")
		}
		return true
	})
	return tree, plainText(tree, f.Data[span.Start:]) + "|" + words.String()
}

func TestHidePrivate(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"paragraph", "a\n\nPrivate: x\n\nb", "a; b|"},
		{"line", "a\nPrivate: x\nNext time: b", "a|b|"},
		{"item", "- a\n- Private: x\n  - y\n- b", "a; b|"},
		{"list of nothing else", "a\n\n> - Private: x\n", "a|"},
		{"in an open remark", "- Next time: a\n  - Private: x\n", "|a|"},
		{"open in a private one", "- Private: x\n  - Next time: y\n", "|"},
		{"all of it", "Private: x", "|"},
		{"footnote of a private remark", "a\n\nPrivate: x[^1]\n\n[^1]: y", "a|"},
		{"footnote of a footnote of one", "a\n\nPrivate: x[^1]\n\n[^1]: y[^2]\n\n[^2]: z", "a|"},
		{"footnote called from both", "a[^1]\n\nPrivate: x[^1]\n\n[^1]: b", "a; b|"},
		{"private footnote", "a[^1]\n\n[^1]: Private: x", "a|"},
		{"private line of a footnote", "a[^1]\n\n[^1]: b\n    Private: x", "a; b|"},
	} {
		t.Run(c.name, func(t *testing.T) {
			tree, got := hidden(t, c.body)
			if got != c.want {
				t.Errorf("left %q, want %q", got, c.want)
			}
			visit(tree, func(n ast.Node) bool {
				switch n.Kind() {
				case ast.KindList, ast.KindListItem, ast.KindBlockquote, ast.KindParagraph, east.KindFootnoteList:
					if !n.HasChildren() {
						t.Errorf("an empty %v is left", n.Kind())
					}
				}
				return true
			})
		})
	}
}

// What is left must not tell by a gap in the numbers that something is missing.
func TestHidePrivateCountsFootnotesAnew(t *testing.T) {
	tree, _ := hidden(t, "Private: x[^s] y[^b] z[^s]\n\na[^a] b[^b] a[^a]\n\n[^s]: secret\n\n[^b]: bee\n\n[^a]: ay")
	var got [][3]int
	visit(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *east.FootnoteLink:
			got = append(got, [3]int{n.Index, n.RefIndex, n.RefCount})
		case *east.Footnote:
			got = append(got, [3]int{n.Index})
		case *east.FootnoteBacklink:
			got = append(got, [3]int{n.Index, n.RefIndex, n.RefCount})
		}
		return true
	})
	want := [][3]int{
		{1, 0, 2}, {2, 0, 1}, {1, 1, 2}, // the calls
		{1}, {1, 0, 2}, {1, 1, 2}, // ay
		{2}, {2, 0, 1}, // bee
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestPrivateLinksAreMarked(t *testing.T) {
	doc := readBody(t, "[[a]][^1]\n\nPrivate: [[b]][^2]\n- [c](c.md)\n\n[^1]: [[d]]\n\n[^2]: [[e]][^3]\n\n[^3]: <https://f.example>\n")
	got := map[string]bool{}
	for _, l := range doc.Links {
		got[l.To] = l.Private
	}
	want := map[string]bool{"a": false, "b": true, "c.md": true, "d": false, "e": true, "https://f.example": true}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestPrivateWhereNothingIsHidden(t *testing.T) {
	for body, want := range map[string]string{
		"# Private: a\n": "Private: a",
		"x\n\n| **Private :** a | b |\n|---|---|\n": "**Private :** a",
		"|a|\n|-|\n| private: b |\n":                "private: b",
		"Private: a\n===\n":                         "Private: a",
		"- Private: a\n\n  # Private: b\n":          "",
		"# Next time: a":                            "",
	} {
		got := ""
		for _, f := range readBody(t, body).Findings {
			got += f.Span.Text()
			if f.Rule != OpenSecret {
				t.Errorf("%q: %v", body, f)
			}
		}
		if got != want {
			t.Errorf("%q: points at %q, want %q", body, got, want)
		}
	}
}
