package prose

import (
	"strings"
	"testing"
	"time"

	"hussif/content/source"
)

var longText = strings.Repeat("abcdefghij", 150)

func TestTooMuch(t *testing.T) {
	repeat := strings.Repeat
	for _, c := range []struct{ name, body, rule string }{
		{"quotes", repeat(">", 100_000) + "a", TooDeep},
		{"quotes with blanks", repeat("> ", 100_000) + "a", TooDeep},
		{"lists", repeat("- ", 100_000) + "a", TooDeep},
		{"numbered lists", repeat("1. ", 100_000) + "a", TooDeep},
		{"quotes and lists", repeat("> + ", 30_000) + "a", TooDeep},
		{"lists by indent", func() string {
			var b strings.Builder
			for i := range 300 {
				b.WriteString(repeat("  ", i) + "- a\n")
			}
			return b.String()
		}(), TooDeep},
		{"lists a little too deep", repeat("- ", 55) + "a", TooDeep},
		{"stars", repeat("*", 30_000) + "a" + repeat("*", 30_000), TooDeep},
		{"pairs of marks", repeat("*a _b ", 200) + repeat("b_ a* ", 200), TooDeep},
		{"brackets", repeat("[", 100_000), TooLong},
		{"one piece", repeat("word ", 100_000), TooLong},
		{"all of it", repeat("word\n\n", 100_000), TooLong},
		{"a table", repeat("a|", 300) + "\n" + repeat("-|", 300) + "\n" + repeat("b\n", 300), TooLong},
		{"a table in a quote", "> " + repeat("a|", 300) + "\n> " + repeat("-|", 300) + "\n" + repeat("> b\n", 300), TooLong},

		{"a few levels", repeat("> ", 10) + repeat("- ", 10) + "*a **b** c*", ""},
		{"a long rule", repeat("- ", 1000), ""},
		{"a long rule of stars in a quote", "> " + repeat("*", 1000), ""},
		{"indented code", repeat(" ", 500) + "a", ""},
		{"a long note", repeat(repeat("word ", 100)+"\n\n", 1000), ""},
		{"a large table", "|a|b|c|\n|-|-|-|\n" + repeat("|1|2|3|\n", 3000), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, span := load(t, c.body)
			doc := Read(f, span, Start{})
			switch {
			case c.rule == "" && len(doc.Findings) > 0:
				t.Errorf("refused: %v", doc.Findings[0])
			case c.rule != "" && (len(doc.Findings) != 1 || doc.Findings[0].Rule != c.rule):
				t.Errorf("findings %v, want one of rule %q", doc.Findings, c.rule)
			case c.rule != "":
				if doc.Findings[0].Level != source.Error || doc.Findings[0].Span.Start < span.Start {
					t.Errorf("finding %+v", doc.Findings[0])
				}
				if Tree(f, span, Start{}).HasChildren() {
					t.Error("a refused body has a tree")
				}
			}
		})
	}
}

// TestHostileInputEnds feeds a quarter of what the limits let through of each
// construct for which goldmark's time grows with the square of it.
func TestHostileInputEnds(t *testing.T) {
	piece := func(s string) string { return strings.Repeat(s, maxPiece/4/len(s)) }
	for name, body := range map[string]string{
		"open brackets":     piece("["),
		"ties":              piece("[["),
		"ties with a bar":   piece("[[a|"),
		"images":            piece("!["),
		"bracket pairs":     piece("[") + "a" + piece("]"),
		"definitions":       piece("[a]: b\n"),
		"open titles":       piece("[a]: b '\n"),
		"pointed targets":   piece("[a](<b"),
		"unequal marks":     piece("*a_ "),
		"backticks":         piece("a`b``c```"),
		"tags":              piece("<a "),
		"references":        "[a]: " + piece("x") + "\n\n" + piece("[a] "),
		"escaped bars":      "|a|\n|-|\n" + piece("|`\\|`|\n"),
		"remarks":           piece("Next time: a\n"),
		"tails":             "Next time: " + piece("(pattern: a"),
		"headings":          piece("# a\n"),
		"footnotes":         "[^1]: x\n\n" + piece("[^1]"),
		"private footnotes": strings.Repeat("[^1]: Private: x[^1]\n\n", 1000),
		"empty cells":       strings.Repeat("a|", 200) + "\n" + strings.Repeat("-|", 200) + "\n" + strings.Repeat("b\n", 200),
	} {
		t.Run(name, func(t *testing.T) {
			f, span := load(t, body)
			start := time.Now()
			doc := Read(f, span, Start{})
			if len(doc.Findings) > 0 && doc.Findings[0].Rule == TooLong {
				t.Errorf("not let through: %v", doc.Findings[0])
			}
			if took := time.Since(start); took > time.Minute {
				t.Errorf("%d bytes took %v", len(body), took)
			}
		})
	}
}
