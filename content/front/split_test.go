package front

import (
	"strings"
	"testing"

	"hussif/content/source"
)

func load(t testing.TB, text string) *source.File {
	t.Helper()
	f, findings := source.Load("n.md", []byte(text))
	if len(findings) > 0 {
		t.Fatalf("%q: %s", text, findings[0].Text)
	}
	return f
}

func TestSplit(t *testing.T) {
	for _, c := range []struct{ name, text, front, body string }{
		{"both", "---\na: b\n---\nCut.\n", "a: b\n", "Cut.\n"},
		{"no front matter", "Cut.\n", "", "Cut.\n"},
		{"an empty file", "", "", ""},
		{"blank lines only", "\n \n", "", "\n \n"},
		{"front matter alone", "---\na: b\n---", "a: b\n", ""},
		{"empty front matter", "---\n---\nCut.\n", "", "Cut.\n"},
		{"CR LF", "---\r\na: b\r\n---\r\nCut.\r\n", "a: b\r\n", "Cut.\r\n"},
		{"a byte order mark", "\xef\xbb\xbf---\na: b\n---\nCut.\n", "a: b\n", "Cut.\n"},
		{"blank lines first", "\n \t\n---\na: b\n---\nCut.\n", "a: b\n", "Cut.\n"},
		{"blanks after the fences", "--- \na: b\n---\t\nCut.\n", "a: b\n", "Cut.\n"},
		{"a rule in the body", "---\na: b\n---\nCut.\n\n---\n\nSewn.\n", "a: b\n", "Cut.\n\n---\n\nSewn.\n"},
		{"a rule after words", "Cut.\n\n---\n\nSewn.\n", "", "Cut.\n\n---\n\nSewn.\n"},
		{"four hyphens", "----\na: b\n", "", "----\na: b\n"},
		{"hyphens within a value", "---\na: |\n  x --- y\n---\nCut.\n", "a: |\n  x --- y\n", "Cut.\n"},
		{"blank body lines stay", "---\na: b\n---\n\n\nCut.\n", "a: b\n", "\n\nCut.\n"},
		{"other front matter", "+++\na = 'b'\n+++\n", "", "+++\na = 'b'\n+++\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			parts, findings := Split(load(t, c.text))
			if len(findings) > 0 {
				t.Fatal(findings[0].Text)
			}
			if parts.Front.Text() != c.front || parts.Body.Text() != c.body {
				t.Errorf("front %q, body %q", parts.Front.Text(), parts.Body.Text())
			}
		})
	}
}

func TestSplitRefuses(t *testing.T) {
	for _, c := range []struct{ name, text, place, said string }{
		{"never closed", "---\na: b\n\nCut.\n", "n.md:1:1", "never closed"},
		{"never closed, later rule of four", "---\na: b\n----\nCut.\n", "n.md:1:1", "never closed"},
		{"closed by an indented fence only", "---\na: b\n ---\nCut.\n", "n.md:1:1", "never closed"},
		// The library ends the front matter at any line that trims to the fence.
		{"indented in a block of text", "---\na: |\n  x\n  ---\n  y\nb: c\n---\nCut.\n", "n.md:4:1", "would end it here"},
		{"after blank lines", "\n\n---\na: |\n  ---\n---\nCut.\n", "n.md:5:1", "would end it here"},
		{"with CR LF", "---\r\na: |\r\n  ---\r\n---\r\nCut.\r\n", "n.md:3:1", "would end it here"},
		{"a no-break space", "---\na: b\n---\u00a0\nc: d\n---\n", "n.md:3:1", "would end it here"},
		{"an indented opener", " ---\na: b\n---\nCut.\n", "n.md:1:1", "very left"},
		{"an opener with a no-break space", "---\u00a0\na: b\n---\nCut.\n", "n.md:1:1", "very left"},
	} {
		t.Run(c.name, func(t *testing.T) {
			parts, findings := Split(load(t, c.text))
			if len(findings) != 1 {
				t.Fatalf("found %d: front %q", len(findings), parts.Front.Text())
			}
			got := findings[0]
			if got.Rule != FrontMatter || got.Level != source.Error || got.Span.String() != c.place ||
				!strings.Contains(got.Text, c.said) || got.Help == "" {
				t.Errorf("got %s: %s [%s] %s", got.Span, got.Text, got.Rule, got.Help)
			}
			if parts.Front.Text() != "" || parts.Body.Text() != "" {
				t.Error("something is read all the same")
			}
		})
	}
}
