package prose

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestLink(t *testing.T) {
	for _, c := range []struct {
		name, body string
		want       Link
		span       string
	}{
		{"relative", "[a *b*](../x/y.md)", Link{To: "../x/y.md", Text: "a b", Form: Relative}, "../x/y.md"},
		{"place", "[a](y.md#Second%20Fitting)", Link{To: "y.md", Anchor: "second-fitting", Text: "a", Form: Relative}, "y.md#Second%20Fitting"},
		{"place of this note", "[a](#b)", Link{Anchor: "b", Text: "a", Form: Relative}, "#b"},
		{"nowhere", "[a]()", Link{Text: "a", Form: Relative}, ""},
		{"title", "[a](y.md 'the \\'b\\'')", Link{To: "y.md", Text: "a", Title: "the 'b'", Form: Relative}, "y.md"},
		{"percent signs", "[a](my%20n%C3%B6te.md)", Link{To: "my nöte.md", Text: "a", Form: Relative}, "my%20n%C3%B6te.md"},
		{"a percent sign of its own", "[a](100%.md)", Link{To: "100%.md", Text: "a", Form: Relative}, "100%.md"},
		{"pointed brackets", "[a](<my note.md>)", Link{To: "my note.md", Text: "a", Form: Relative}, "my note.md"},
		{"escapes", `[a](x\_y&amp;z.md)`, Link{To: "x_y&z.md", Text: "a", Form: Relative}, `x\_y&amp;z.md`},
		{"reference", "ü [a][B]\n\n> [b]: ü.md 'T'", Link{To: "ü.md", Text: "a", Title: "T", Form: Relative}, "ü.md"},
		{"collapsed reference", "[b][]\r\n\r\n[b]:\r\n  y.md\r\n", Link{To: "y.md", Text: "b", Form: Relative}, "y.md"},
		{"the first of two definitions", "[b]\n\n[b]: y.md\n[b]: z.md", Link{To: "y.md", Text: "b", Form: Relative}, "y.md"},
		{"over two lines", "> [a](\n> y.md)", Link{To: "y.md", Text: "a", Form: Relative}, "y.md"},
		{"in a nested list after tabs", "- x\n\t- y\n\n\t\t[a](y.md)", Link{To: "y.md", Text: "a", Form: Relative}, "y.md"},
		{"in a table", "| x |\n|---|\n|\t[a](y.md) |", Link{To: "y.md", Text: "a", Form: Relative}, "y.md"},

		{"web", "[a](https://example.org/x#y)", Link{To: "https://example.org/x#y", Text: "a", Form: Outside}, "https://example.org/x#y"},
		{"web in capitals", "[a](HTTP://example.org)", Link{To: "HTTP://example.org", Text: "a", Form: Outside}, "HTTP://example.org"},
		{"mail", "[a](mailto:a@example.org)", Link{To: "mailto:a@example.org", Text: "a", Form: Outside}, "mailto:a@example.org"},
		{"address in brackets", "<https://example.org/?a=1&amp;b>", Link{To: "https://example.org/?a=1&amp;b", Text: "https://example.org/?a=1&amp;b", Form: Outside}, "https://example.org/?a=1&amp;b"},
		{"mail in brackets", "<a@example.org>", Link{To: "mailto:a@example.org", Text: "a@example.org", Form: Outside}, "a@example.org"},
		{"bare address", "at https://example.org/x.", Link{To: "https://example.org/x", Text: "https://example.org/x", Form: Outside}, "https://example.org/x"},
		{"bare www", "(www.example.org)", Link{To: "http://www.example.org", Text: "www.example.org", Form: Outside}, "www.example.org"},

		{"script", "[a](javascript:alert(1))", Link{To: "javascript:alert(1)", Text: "a", Form: Refused}, "javascript:alert(1)"},
		{"script by a reference", "[a](java&#115;cript:x)", Link{To: "javascript:x", Text: "a", Form: Refused}, "java&#115;cript:x"},
		{"script over a tab", "[a](java&Tab;script:x)", Link{To: "java\tscript:x", Text: "a", Form: Refused}, "java&Tab;script:x"},
		{"script after a line end", "[a](&#10;javascript:x)", Link{To: "\njavascript:x", Text: "a", Form: Refused}, "&#10;javascript:x"},
		{"script after a blank", "[a](< javascript:x>)", Link{To: " javascript:x", Text: "a", Form: Refused}, " javascript:x"},
		{"script behind percent signs", "[a](javascript%3Ax)", Link{To: "javascript%3Ax", Text: "a", Form: Refused}, "javascript%3Ax"},
		{"script behind a zero byte", "[a](&#1;javascript:x)", Link{To: "\x01javascript:x", Text: "a", Form: Refused}, "&#1;javascript:x"},
		{"script as an address", "<javascript:alert(1)>", Link{To: "javascript:alert(1)", Text: "javascript:alert(1)", Form: Refused}, "javascript:alert(1)"},
		{"script by a definition", "[a]\n\n[a]: JavaScript:x", Link{To: "JavaScript:x", Text: "a", Form: Refused}, "JavaScript:x"},
		{"data", "[a](data:text/html,x)", Link{To: "data:text/html,x", Text: "a", Form: Refused}, "data:text/html,x"},
		{"file", "[a](file:///etc/x)", Link{To: "file:///etc/x", Text: "a", Form: Refused}, "file:///etc/x"},
		{"drive", `[a](C:\x.md)`, Link{To: `C:\x.md`, Text: "a", Form: Refused}, `C:\x.md`},
		{"bare ftp", "ftp://example.org/x", Link{To: "ftp://example.org/x", Text: "ftp://example.org/x", Form: Refused}, "ftp://example.org/x"},
		{"absolute", "[a](/x.md)", Link{To: "/x.md", Text: "a", Form: Refused}, "/x.md"},
		{"absolute behind percent signs", "[a](%2Fx.md)", Link{To: "%2Fx.md", Text: "a", Form: Refused}, "%2Fx.md"},
		{"host", "[a](//example.org/x)", Link{To: "//example.org/x", Text: "a", Form: Refused}, "//example.org/x"},
		{"host by backslashes", `[a](\\\\example.org)`, Link{To: `\\example.org`, Text: "a", Form: Refused}, `\\\\example.org`},
		{"without end", "[a](" + longText + longText + ")", Link{Text: "a", Form: Refused}, longText + longText},
	} {
		t.Run(c.name, func(t *testing.T) {
			doc := readBody(t, c.body)
			if diff := cmp.Diff([]Link{c.want}, doc.Links, noSpans); diff != "" {
				t.Fatal(diff)
			}
			if got := doc.Links[0].Span.Text(); got != c.span {
				t.Errorf("points at %q, want %q", got, c.span)
			}
		})
	}
}

func TestPicture(t *testing.T) {
	for _, c := range []struct {
		body string
		want Picture
	}{
		{"![the *back*](photos/back%201.jpg \"Back\")", Picture{To: "photos/back 1.jpg", Alt: "the back", Title: "Back", Form: Relative}},
		{"![](a.jpg)", Picture{To: "a.jpg", Form: Relative}},
		{"![see [[b|the b]] and [c](d.md)](a.jpg)", Picture{To: "a.jpg", Alt: "see the b and c", Form: Relative}},
		{"[![x](a.jpg)](https://example.org)", Picture{To: "a.jpg", Alt: "x", Form: Relative}},
		{"![x](https://example.org/a.jpg)", Picture{To: "https://example.org/a.jpg", Alt: "x", Form: Outside}},
		{"![x](data:image/png;base64,AA)", Picture{To: "data:image/png;base64,AA", Alt: "x", Form: Refused}},
		{"Private: ![x](a.jpg)", Picture{To: "a.jpg", Alt: "x", Form: Relative, Private: true}},
	} {
		if diff := cmp.Diff([]Picture{c.want}, readBody(t, c.body).Pictures, noSpans); diff != "" {
			t.Errorf("%q: %s", c.body, diff)
		}
	}
	if got := readBody(t, "![x](<a b.jpg>)").Pictures[0].Span.Text(); got != "a b.jpg" {
		t.Errorf("points at %q", got)
	}
}

// A link in a link would be two targets for one click.
func TestLinksDoNotNest(t *testing.T) {
	for body, want := range map[string]Link{
		"[x [[a]] y](b.md)":           {To: "b.md", Text: "x a y", Form: Relative},
		"[x [[a|c]] y](b.md)":         {To: "b.md", Text: "x c y", Form: Relative},
		"[<https://a.example>](b.md)": {To: "b.md", Text: "https://a.example", Form: Relative},
		"[x[^1]](b.md)\n\n[^1]: y":    {To: "b.md", Text: "x", Form: Relative},
	} {
		if diff := cmp.Diff([]Link{want}, readBody(t, body).Links, noSpans); diff != "" {
			t.Errorf("%q: %s", body, diff)
		}
	}
}

func TestLinksAreInOrderOfTheFile(t *testing.T) {
	var got []string
	for _, l := range readBody(t, "[[a]][^1]\n\n[^1]: [[b]]\n\n[[c]]\n").Links {
		got = append(got, l.To)
	}
	if diff := cmp.Diff([]string{"a", "b", "c"}, got); diff != "" {
		t.Error(diff)
	}
}
