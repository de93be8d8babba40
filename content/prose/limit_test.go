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
		{"stars", repeat("*", 2_000) + "a" + repeat("*", 2_000), TooDeep},
		{"pairs of marks", repeat("*a _b ", 200) + repeat("b_ a* ", 200), TooDeep},
		{"brackets", repeat("[", 100_000), TooLong},
		{"one piece", repeat("word ", 100_000), TooLong},
		{"all of it", repeat("word\n\n", 100_000), TooLong},
		{"a table", repeat("a|", 300) + "\n" + repeat("-|", 300) + "\n" + repeat("b\n", 300), TooLong},
		{"tables", repeat(repeat("a|", 100)+"\n"+repeat("-|", 100)+"\n"+repeat("b\n", 100)+"\n", 6), TooLong},
		{"signs", repeat("a_b ", 6000), TooLong},
		{"signs in many pieces", repeat("a_b ", 4000) + repeat("\n\n"+repeat("a*b ", 4000), 5), TooLong},
		{"footnotes", repeat("[^a]: b\n\n", 3000), TooLong},
		{"remarks", repeat("Next time: a\n\n", 3000), TooLong},
		{"headings", repeat("# a\n", 6000), TooLong},
		{"a table in a quote", "> " + repeat("a|", 300) + "\n> " + repeat("-|", 300) + "\n" + repeat("> b\n", 300), TooLong},

		{"a few levels", repeat("> ", 10) + repeat("- ", 10) + "*a **b** c*", ""},
		{"a long rule", repeat("- ", 1000), ""},
		{"a long rule of stars in a quote", "> " + repeat("*", 1000), ""},
		{"indented code", repeat(" ", 500) + "a", ""},
		{"a long note", repeat(repeat("word ", 100)+"\n\n", 1000), ""},
		{"a long list with links", repeat("- the [[grey-jacket]] with **all** of its `seams`\n", 1000), ""},
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

// TestHostileInputEnds feeds as much as the limits let through of each construct for
// which goldmark's time grows with the square of it.
func TestHostileInputEnds(t *testing.T) {
	piece := func(s string) string {
		signs := 0
		for _, c := range []byte(s) {
			if isSign[c] {
				signs++
			}
		}
		return strings.Repeat(s, min((maxPiece-100)/len(s), (pieceSigns-100)/max(signs, 1)))
	}
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
		"remarks":           strings.Repeat("Next time: a\n", maxRemarks),
		"tails":             "Next time: " + piece("(pattern: a"),
		"headings":          piece("# a\n"),
		"footnotes":         "[^1]: x\n\n" + piece("[^1]"),
		"private footnotes": strings.Repeat("[^1]: Private: x[^1]\n\n", 1000),
		"empty cells":       strings.Repeat("a|", 200) + "\n" + strings.Repeat("-|", 200) + "\n" + strings.Repeat("b\n", 200),
		"many footnotes":    strings.Repeat("[^a]: b\n\n", maxFootnotes),
	} {
		t.Run(name, func(t *testing.T) {
			f, span := load(t, body)
			start := time.Now()
			doc := Read(f, span, Start{})
			if len(doc.Findings) > 0 && doc.Findings[0].Rule == TooLong {
				t.Errorf("not let through: %v", doc.Findings[0])
			}
			if took := time.Since(start); took > 10*time.Second {
				t.Errorf("%d bytes took %v", len(body), took)
			}
		})
	}
}
