package prose_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/prose"
	"hussif/content/source"
)

func worksOf(t testing.TB, text string) (*source.File, prose.Doc) {
	t.Helper()
	f, findings := source.Load("notes/2026-03-01.md", []byte(text))
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	return f, prose.Read(f, f.Whole(), prose.Start{})
}

func TestWork(t *testing.T) {
	type want struct{ name, anchor, lines, at string }
	for _, c := range []struct {
		name, text string
		want       []want
	}{
		{"plain", "Pleats.\n\n```work knife pleats\nshown: 1 in\ndepth: 1 in\n```\n", []want{{"knife pleats", "work-knife-pleats", "shown: 1 in\ndepth: 1 in\n", "work knife pleats"}}},
		{"tildes and blanks", "~~~  work   Knife  pleats  \nshown: 1\n~~~", []want{{"Knife pleats", "work-knife-pleats", "shown: 1\n", "work   Knife  pleats"}}},
		{"no name", "```work\n```\n", []want{{"", "work", "", "work"}}},
		{"no lines", "```work gathers\n```\n", []want{{"gathers", "work-gathers", "", "work gathers"}}},
		{"not closed", "```work gathers\nratio: 2", []want{{"gathers", "work-gathers", "ratio: 2", "work gathers"}}},
		{"line ends of Windows", "```work gathers\r\nratio: 2\r\n```\r\n", []want{{"gathers", "work-gathers", "ratio: 2\r\n", "work gathers"}}},
		{"two of one name", "```work gathers\n```\n\n```work gathers\n```\n", []want{{"gathers", "work-gathers", "", "work gathers"}, {"gathers", "work-gathers-2", "", "work gathers"}}},
		{"in a list", "- Pleats:\n\n  ```work gathers\n  ratio: 2\n  finished: 3 in\n  ```\n", []want{{"gathers", "work-gathers", "  ratio: 2\n  finished: 3 in\n", "work gathers"}}},
		{"another language", "```workshop\n```\n\n```go\nwork\n```\n\n    work gathers\n", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, doc := worksOf(t, c.text)
			var got []want
			for _, w := range doc.Works {
				if w.Private || w.Quoted {
					t.Errorf("private %v, quoted %v", w.Private, w.Quoted)
				}
				got = append(got, want{w.Name, w.Anchor, w.Lines.Text(), w.Span.Text()})
			}
			if diff := cmp.Diff(c.want, got, cmp.AllowUnexported(want{})); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestWorkInAQuoteSaysSo(t *testing.T) {
	_, doc := worksOf(t, "> ```work gathers\n> ratio: 2\n> ```\n")
	if len(doc.Works) != 1 || !doc.Works[0].Quoted {
		t.Errorf("got %+v", doc.Works)
	}
}

func TestWorkInAPrivateRemarkIsPrivate(t *testing.T) {
	f, doc := worksOf(t, "Private: her pleats\n```work gathers\nratio: 2\n```\n\nAnd on.\n")
	if len(doc.Works) != 1 || !doc.Works[0].Private || doc.Works[0].Anchor != "" {
		t.Fatalf("got %+v", doc.Works)
	}
	tree := prose.Tree(f, f.Whole(), prose.Start{})
	prose.HidePrivate(tree)
	var b strings.Builder
	for n := tree.FirstChild(); n != nil; n = n.NextSibling() {
		b.WriteString(n.Kind().String() + " ")
	}
	if b.String() != "Paragraph " {
		t.Errorf("left is %s", b.String())
	}
}
