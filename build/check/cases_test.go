package check

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"hussif/content/source"
)

var update = flag.Bool("update", false, "write what is found into the goldens of testdata/cases")

// golden is the file of a case that shows how its findings are printed.
const golden = "out/check"

// TestCases checks the journals in testdata/cases. A fault is expected where a
// comment says so, `# want "pattern"` in the front matter and
// `<!-- want "pattern" -->` in the text; the pattern is a regular expression for
// the finding's text with its rule in brackets. Nothing else may be found.
func TestCases(t *testing.T) {
	names, err := filepath.Glob("../../testdata/cases/*.txtar")
	if err != nil || len(names) < 20 {
		t.Fatalf("%d cases, %v", len(names), err)
	}
	known := knownRules()
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if len(bytes.TrimSpace(archive.Comment)) == 0 {
				t.Error("nothing says what a maker learns here")
			}
			fsys := files(archive)
			delete(fsys, golden)
			findings := checked(t, fsys)
			for _, f := range findings {
				if !known[f.Rule] {
					t.Errorf("%s: the rule %q is not explained", f.Span, f.Rule)
				}
			}
			compareWants(t, archive, findings)
			compareGolden(t, name, archive, findings)
		})
	}
}

type line struct {
	file   string
	number int
}

var (
	want    = regexp.MustCompile(`(?:#|<!--) want ((?:"(?:[^"\\]|\\.)*" ?)+)`)
	pattern = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
)

// wants returns what a case expects, by line.
func wants(t *testing.T, archive *txtar.Archive) map[line][]*regexp.Regexp {
	t.Helper()
	out := make(map[line][]*regexp.Regexp)
	for _, f := range archive.Files {
		if f.Name == golden {
			continue
		}
		number := 0
		for text := range strings.Lines(string(f.Data)) {
			number++
			m := want.FindStringSubmatch(text)
			if m == nil {
				continue
			}
			for _, quoted := range pattern.FindAllString(m[1], -1) {
				s, err := strconv.Unquote(quoted)
				if err != nil {
					t.Fatalf("%s:%d: %v", f.Name, number, err)
				}
				at := line{f.Name, number}
				out[at] = append(out[at], regexp.MustCompile(s))
			}
		}
	}
	return out
}

func compareWants(t *testing.T, archive *txtar.Archive, findings []source.Finding) {
	t.Helper()
	expected := wants(t, archive)
	for _, f := range findings {
		number, _ := f.Span.Position()
		at := line{number: number}
		if !f.Span.IsZero() {
			at.file = f.Span.File.Name
		}
		said := f.Text + " [" + f.Rule + "]"
		if !take(expected, at, said) {
			t.Errorf("%s: unexpected: %s", f.Span, said)
		}
	}
	for at, patterns := range expected {
		for _, p := range patterns {
			t.Errorf("%s:%d: not found: %s", at.file, at.number, p)
		}
	}
}

// take crosses off the pattern of a line that a finding answers to.
func take(expected map[line][]*regexp.Regexp, at line, said string) bool {
	for i, p := range expected[at] {
		if p.MatchString(said) {
			expected[at] = append(expected[at][:i:i], expected[at][i+1:]...)
			return true
		}
	}
	return false
}

func compareGolden(t *testing.T, name string, archive *txtar.Archive, findings []source.Finding) {
	t.Helper()
	for i := range archive.Files {
		f := &archive.Files[i]
		if f.Name != golden {
			continue
		}
		var got bytes.Buffer
		if err := source.Print(&got, findings, source.Palette{}); err != nil {
			t.Fatal(err)
		}
		diff := cmp.Diff(string(f.Data), got.String())
		if diff == "" {
			return
		}
		if !*update {
			t.Errorf("printed otherwise than in %s (-update renews it): %s", golden, diff)
			return
		}
		f.Data = got.Bytes()
		if err := os.WriteFile(name, txtar.Format(archive), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}
