package front

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// Whatever fills front matter to its limit is read or refused in a time that a maker
// waits for, and tells no more faults than she reads.
func TestHostileFrontMatterEnds(t *testing.T) {
	full := func(line string) string {
		var b strings.Builder
		for i := 0; b.Len() < maxFront-200; i++ {
			if strings.Contains(line, "%") {
				fmt.Fprintf(&b, line, i)
			} else {
				b.WriteString(line)
			}
		}
		return b.String()
	}
	for name, text := range map[string]string{
		"unknown fields":       full("f%d: 1\n"),
		"unknown in brackets":  "{" + full("f%d: 1, ") + "z: 1}",
		"one field again":      full("title: a\n"),
		"one name, many parts": "pieces:\n" + full("  - {name: a, name: a}\n"),
		"wrong shapes":         "pieces:\n" + full("  - [a]\n"),
		"anchors":              full("f%d: &f%[1]d x\n"),
		"aliases":              "a: &a x\n" + full("f%d: *a\n"),
		"tags":                 full("f%d: !t x\n"),
		"a long word":          "title: " + full("x"),
		"a long quoted word":   `title: "` + full(`\u0041`) + `"`,
		"a folded text":        "title: >\n" + full("  a\n"),
		"many marks":           "marks: [" + full("m%d, ") + "z]",
		"deep brackets":        "title: " + full("["),
		"deep groups":          "title: " + full("{a: "),
		"dashes":               full("- "),
		"questions":            full("? "),
		"colons":               "a" + full(": a"),
	} {
		t.Run(name, func(t *testing.T) {
			begun := time.Now()
			n, findings := Parse(load(t, text).Whole())
			if CanDecode(findings) {
				var c coat
				findings = append(findings, coats.Decode(n, &c)...)
			}
			if took := time.Since(begun); took > 10*time.Second {
				t.Errorf("took %v", took)
			}
			if len(findings) > 2*mostFindings {
				t.Errorf("%d findings", len(findings))
			}
		})
	}
	if _, findings := Parse(load(t, full("f%d: 1\n")+strings.Repeat("\n", 300)).Whole()); len(findings) != 1 || findings[0].Rule != NotYAML {
		t.Errorf("what is too long: %v", said(findings))
	}
	var c coat
	if findings := decode(t, "marks: ["+strings.Repeat("m, ", mostItems)+"m]\n", &c); len(findings) != 1 || findings[0].Rule != WrongShape {
		t.Errorf("too many entries: %v", said(findings))
	}
	c = coat{}
	if findings := decode(t, "marks: ["+strings.Repeat("m, ", mostItems-1)+"m]\n", &c); len(findings) > 0 || len(c.Marks) != mostItems {
		t.Errorf("many entries: %v, %d", said(findings), len(c.Marks))
	}
}
