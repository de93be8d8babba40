package journal

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
)

// What is wrong is told where it is, at the unit as at the name, on Windows too.
func TestPlacesOfFaults(t *testing.T) {
	const text = `---
größe: 3
measured: {wast: ½ in, bust girth: "36 inn", hip girth: 36½ inn}
stage: [sewing]
altered:
  - {seam: a, let out: 3/8 in}
photos:
  - {caption: ü, alt: é}
pattern changed: {bust girth: 1, hip girth: [1 in]}
---
`
	want := []string{
		`1 größe [unknown field]`,
		`1 wast [unknown measure]`,
		`1 "36 inn" [not a length]`,
		`1 inn [not a length]`,
		`1 [ [wrong shape]`,
		`1 3/8 in [not a length]`,
		`1 { [needed field]`,
		`1 [ [wrong shape]`,
	}
	for _, end := range []string{"\n", "\r\n"} {
		_, findings, err := Open(fstest.MapFS{"notes/2026-03-01.md": {Data: []byte(strings.ReplaceAll(text, "\n", end))}})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, f := range findings {
			got = append(got, fmt.Sprintf("%d %s [%s]", 1+int(f.Level), f.Span.Text(), f.Rule))
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("line end %q: %s", end, diff)
		}
	}
}

// Settings that cannot be read are one fault, not one for each measure and amount
// that rests on them.
func TestUnreadableSettings(t *testing.T) {
	_, findings := open(t, `
-- journal.yaml --
currency: EUR
measures: [over busk
-- people/wren.md --
---
measured:
  - {date: 2026-01-10, over busk: 33 in, hours: 3}
---
-- notes/2026-03-01.md --
---
spent: 12
hours: long
---
`)
	var got []string
	for _, f := range findings {
		got = append(got, f.Span.File.Name+" "+f.Rule)
	}
	if diff := cmp.Diff([]string{"journal.yaml not YAML", "notes/2026-03-01.md not a duration"}, got); diff != "" {
		t.Error(diff)
	}
}

func TestTwoOfOneName(t *testing.T) {
	j, findings := open(t, `
-- builds/cap.md --
-- builds/cap/build.md --
-- people/wren.md --
-- people/Wren.md --
-- notes/2026-03-01.md --
[[wren]] wears the [[cap]].
`)
	want := []string{
		"builds/cap/build.md:1:1: error: two files make the page \"builds/cap\" [two of one name] rename one of them; capitals make no difference",
		"people/wren.md:1:1: error: two files make the page \"people/Wren\" [two of one name] rename one of them; capitals make no difference",
	}
	if diff := cmp.Diff(want, lines(findings)); diff != "" {
		t.Error(diff)
	}
	if got := findings[0].Related[0].Span.String(); got != "builds/cap.md:1:1" {
		t.Errorf("the other one is %s", got)
	}
	if len(j.Builds()) != 1 || len(j.People()) != 1 {
		t.Error("both are kept")
	}
}

func TestFaultyFilesAreKept(t *testing.T) {
	j, findings, err := Open(fstest.MapFS{
		"people/wren.md":      {Data: []byte("caf\xe9")},
		"people/ottilie.md":   {Data: []byte("---\nname: [\n---\n")},
		"people/sorrel.md":    {Data: []byte("---\nname: Sorrel\n")},
		"people/tansy.md":     {Data: []byte(strings.Repeat("x", source.MaxSize+1))},
		"notes/2026-03-01.md": {Data: []byte("With [[wren]], [[ottilie#x]], [[sorrel]] and [[tansy]].")},
	})
	if err != nil {
		t.Fatal(err)
	}
	var rules []string
	for _, f := range findings {
		rules = append(rules, f.Span.File.Name+" "+f.Rule)
	}
	want := []string{
		"people/ottilie.md not YAML", "people/sorrel.md front matter", "people/tansy.md not plain text", "people/wren.md not plain text",
	}
	if diff := cmp.Diff(want, rules); diff != "" {
		t.Error(diff)
	}
	for _, p := range j.People() {
		if !j.Faulty(p) || p.Where.Span.File != p.File {
			t.Errorf("%s: faulty %t, in %v", p.ID, j.Faulty(p), p.Where.Span)
		}
	}
}
