package prose

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/yuin/goldmark/ast"

	"hussif/content/source"
)

func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		note, "[[a#b|c]]", "| [[a\\|b]] |\n|---|\n", "Next time: a\nPrivate: b (pattern: [[c]], d; about: e).\n- f\n",
		"- [ ] **Next time:** a[^1]\n\n  # b\n\n[^1]: Private: c\n", "[a][b] ![c](d 'e')\r\n\r\n[b]: <f g>\r\n",
		"[x [[y]] <a@b.cd> z[^1]](w)\n\n[^1]: v", "<!-- a -->b\n\n<div>\n[[c]]\n</div>\n", "> > - \t1. *a **b* c** ~~d~~ `e`\n",
		"[a](java&#115;cript:b) <javascript:c> www.d.ef https://g.hi", "Private:\n\n|a|\n|-|\n|b|\n", "a\n=\n\n# next 1\n# next 1\n",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, body string) {
		if !utf8.ValidString(body) || strings.ContainsAny(body, "\x00") || len(body) > 20_000 {
			t.Skip("is refused when the file is loaded")
		}
		file := &source.File{Name: "a.md", Data: []byte(front + body)}
		span := file.Span(len(front), len(file.Data))
		doc := Read(file, span, Start{Taken: []string{"next-a"}})
		within := func(s source.Span) {
			if s.File != file || s.Start < span.Start || s.End > span.End || s.Start > s.End {
				t.Errorf("span %d..%d of a body %d..%d", s.Start, s.End, span.Start, span.End)
			}
		}
		places := map[string]bool{}
		place := func(anchor string) {
			if anchor == "" || places[anchor] {
				t.Errorf("anchor %q", anchor)
			}
			places[anchor] = true
		}
		for _, h := range doc.Headings {
			within(h.Span)
			place(h.Anchor)
		}
		for _, r := range doc.Remarks {
			within(r.Span)
			if !r.Private {
				place(r.Anchor)
			}
			for _, a := range r.About {
				within(a.Span)
				if strings.Join(strings.Fields(a.Value), " ") != a.Value || a.Value == "" {
					t.Errorf("about %q as %q", a.Span.Text(), a.Value)
				}
			}
		}
		open := 0
		for _, l := range doc.Links {
			within(l.Span)
			if !l.Private {
				open++
			}
			if written := l.Span.Text(); l.Form == Tie && !strings.HasPrefix(written, l.To) {
				t.Errorf("tie to %q points at %q", l.To, written)
			}
		}
		for _, p := range doc.Pictures {
			within(p.Span)
		}
		for _, f := range doc.Findings {
			within(f.Span)
		}

		tree := Tree(file, span, Start{Taken: []string{"next-a"}})
		HidePrivate(tree)
		left := 0
		visit(tree, func(n ast.Node) bool {
			switch n := n.(type) {
			case *RemarkNode:
				if n.Remark.Private {
					t.Errorf("left: %q", n.Remark.Text)
				}
			case *LinkNode:
				left++
				if n.Link.Private {
					t.Errorf("left: %+v", n.Link)
				}
			}
			return true
		})
		if left != open {
			t.Errorf("%d links are not private, %d are left", open, left)
		}
		if diff := cmp.Diff(doc, Read(file, span, Start{Taken: []string{"next-a"}}), cmp.Comparer(sameSpan)); diff != "" {
			t.Error("two readings differ:", diff)
		}
	})
}
