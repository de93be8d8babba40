package prose

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
)

func TestHeading(t *testing.T) {
	for _, c := range []struct {
		name, body string
		want       []Heading
		span       string
	}{
		{"plain", "## The second fitting", []Heading{{2, "The second fitting", "the-second-fitting", at}}, "The second fitting"},
		{"closed", "# A & B ##\n", []Heading{{1, "A & B", "a-b", at}}, "A & B"},
		{"markup", "### *Ärmel* `no. 2` of [[a|the jacket]]", []Heading{{3, "Ärmel no. 2 of the jacket", "ärmel-no-2-of-the-jacket", at}}, "*Ärmel* `no. 2` of [[a|the jacket]]"},
		{"underlined", "Two\r\nlines\r\n===\r\n", []Heading{{1, "Two lines", "two-lines", at}}, "Two\r\nlines"},
		{"other scripts", "# Рукав 袖", []Heading{{1, "Рукав 袖", "рукав-袖", at}}, "Рукав 袖"},
		{"no letters", "# ?!", []Heading{{1, "?!", "heading", at}}, "?!"},
		{"empty", "#\n", []Heading{{1, "", "heading", at}}, ""},
		{"like a remark's place", "# Next 1", []Heading{{1, "Next 1", "heading-next-1", at}}, "Next 1"},
		{"like a part of the page", "# Section 2: waist", []Heading{{1, "Section 2: waist", "heading-section-2-waist", at}}, "Section 2: waist"},
	} {
		t.Run(c.name, func(t *testing.T) {
			doc := readBody(t, c.body)
			if diff := cmp.Diff(c.want, doc.Headings, noSpans); diff != "" {
				t.Fatal(diff)
			}
			if got := doc.Headings[0].Span.Text(); got != c.span {
				t.Errorf("points at %q, want %q", got, c.span)
			}
		})
	}
}

func TestEqualHeadingsDiffer(t *testing.T) {
	var got []string
	for _, h := range readBody(t, "# a\n# a\n# a 2\n# A\n# next\n# next\n# next\n").Headings {
		got = append(got, h.Anchor)
	}
	want := []string{"a", "a-2", "a-2-2", "a-3", "next", "heading-next-2", "heading-next-3"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestPrivateHeadingIsNoPlace(t *testing.T) {
	doc := readBody(t, "- Private: x\n\n  # secret\n\n# open\n# secret\n")
	want := []Heading{{1, "open", "open", at}, {1, "secret", "secret", at}}
	if diff := cmp.Diff(want, doc.Headings, noSpans); diff != "" {
		t.Error(diff)
	}
}

// at stands for the span of a heading where it is not compared.
var at source.Span
