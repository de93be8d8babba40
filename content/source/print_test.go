package source

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// about makes a finding about the one place in text that stands between guillemets.
func about(t testing.TB, text string) Finding {
	t.Helper()
	before, rest, ok := strings.Cut(text, "«")
	marked, after, closed := strings.Cut(rest, "»")
	if !ok || !closed {
		t.Fatalf("%q marks no place", text)
	}
	f, _ := Load("n.md", []byte(before+marked+after))
	return Found(f.Span(len(before), len(before)+len(marked)), Error, "a rule", "wrong")
}

func printed(findings ...Finding) string {
	var b strings.Builder
	if err := Print(&b, findings, Palette{}); err != nil {
		panic(err)
	}
	return b.String()
}

func TestPrint(t *testing.T) {
	long := strings.Repeat("backstitch ", 30)
	for _, c := range []struct{ name, text, want string }{
		{"plain", "one\n  «wast girth»: 29 in\nthree\n", `
n.md:2:3: error: wrong [a rule]
  2 |   wast girth: 29 in
    |   ^^^^^^^^^^
`},
		{"no line end at the end", "«one»", `
n.md:1:1: error: wrong [a rule]
  1 | one
    | ^^^
`},
		{"CR LF", "one\r\ntwo «x»\r\n", `
n.md:2:5: error: wrong [a rule]
  2 | two x
    |     ^
`},
		{"a number of two digits", strings.Repeat("\n", 11) + "«x»", `
n.md:12:1: error: wrong [a rule]
  12 | x
     | ^
`},
		{"tabs", "a\t\t«b»\n", `
n.md:1:4: error: wrong [a rule]
  1 | a		b
    |  		^
`},
		{"wide letters before and under", "裁縫: «裁縫»\n", `
n.md:1:5: error: wrong [a rule]
  1 | 裁縫: 裁縫
    |       ^^^^
`},
		{"combining marks", "re\u0301veil: «x\u0301y»\n", `
n.md:1:10: error: wrong [a rule]
  1 | ` + "re\u0301veil: x\u0301y" + `
    |         ^^
`},
		{"nothing marked", "one «»two\n", `
n.md:1:5: error: wrong [a rule]
  1 | one two
    |     ^
`},
		{"the end of the file", "one\n«»", `
n.md:2:1: error: wrong [a rule]
`},
		{"over several lines", "a: «one\ntwo»\n", `
n.md:1:4: error: wrong [a rule]
  1 | a: one
    |    ^^^
`},
		{"start of a long line", "«" + long[:10] + "»" + long[10:], `
n.md:1:1: error: wrong [a rule]
  1 | ` + long[:100] + `…
    | ^^^^^^^^^^
`},
		{"inside a long line", long + "«x» " + long, `
n.md:1:331: error: wrong [a rule]
  1 | …` + long[280:] + "x " + long[:48] + `…
    |  ` + strings.Repeat(" ", 50) + `^
`},
		{"all of a long line", "«" + long + "»", `
n.md:1:1: error: wrong [a rule]
  1 | ` + long[:100] + `…
    | ` + strings.Repeat("^", 100) + `
`},
		{"control characters", "a\x1b[2J\x07\u202e «b»\n", `
n.md:1:9: error: wrong [a rule]
  1 | a�[2J�� b
    |         ^
`},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := printed(about(t, c.text)); "\n"+got != c.want {
				t.Errorf("got\n%swant%s", got, c.want)
			}
		})
	}
}

// Bytes that are no text are shown one by one, so that the caret stands right.
func TestPrintBadBytes(t *testing.T) {
	_, findings := Load("n.md", []byte("caf\xe9\xe8\n"))
	want := `n.md:1:4: error: byte 0xe9 is not UTF-8 [not plain text]
  1 | caf��
    |    ^
    | save the file again as UTF-8
`
	if diff := cmp.Diff(want, printed(findings...)); diff != "" {
		t.Error(diff)
	}
}

func TestPrintAdviceAndRelated(t *testing.T) {
	f := about(t, "one\n«two»\n")
	f.Instead = []string{"ten"}
	f.Related = []Place{{Span: f.Span.File.Span(0, 3), Text: "first given here"}}
	want := `n.md:2:1: error: wrong [a rule]
  2 | two
    | ^^^
    | did you mean "ten"?
  n.md:1:1: first given here
`
	if diff := cmp.Diff(want, printed(f)); diff != "" {
		t.Error(diff)
	}
}

func TestPrintAboutTheWholeJournal(t *testing.T) {
	f := Found(Span{}, Hint, "a rule", "there are no people")
	f.Help = "add one"
	want := "hint: there are no people [a rule]\n    | add one\n"
	if got := printed(f); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestAdvice(t *testing.T) {
	for _, c := range []struct {
		instead []string
		help    string
		want    string
	}{
		{nil, "", ""},
		{nil, "move it", "move it"},
		{[]string{"a"}, "move it", `did you mean "a"?`},
		{[]string{"a", "b"}, "", `did you mean "a" or "b"?`},
		{[]string{"a", "b", "c"}, "", `did you mean "a", "b" or "c"?`},
		{[]string{`37 1/2"`}, "", `did you mean "37 1/2""?`},
	} {
		if got := (Finding{Instead: c.instead, Help: c.help}).Advice(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// Nothing that a maker wrote, or a stranger slipped in, may steer the terminal.
func TestPrintSteersNoTerminal(t *testing.T) {
	const evil = "\x1b]0;gone\x07\x1b[31m\u009b2J\r\n\u202e\u2028"
	file := &File{Name: "a" + evil + ".md", Data: []byte(evil), lines: lineStarts([]byte(evil))}
	f := Finding{
		Span: file.Span(0, 3), Rule: "a rule", Text: evil, Help: evil,
		Related: []Place{{Span: file.Span(0, 0), Text: evil}},
	}
	g := f
	g.Instead = []string{evil}
	for _, out := range []string{printed(f), printed(g)} {
		for _, bad := range []string{"\x1b", "\x07", "\u009b", "\r", "\u202e", "\u2028"} {
			if strings.Contains(out, bad) {
				t.Errorf("%q reaches the terminal in %q", bad, out)
			}
		}
		if lines := strings.Count(out, "\n"); lines != 5 {
			t.Errorf("%d lines instead of 5: %q", lines, out)
		}
	}
}

func TestPrintColours(t *testing.T) {
	in := func(name string) func(string) string {
		return func(s string) string { return "<" + name + ">" + s + "</" + name + ">" }
	}
	f := about(t, "«x»\n")
	f.Level = Warning
	var b strings.Builder
	Print(&b, []Finding{f}, Palette{Error: in("e"), Warning: in("w"), Hint: in("h"), Place: in("p"), Margin: in("m")})
	want := `<p>n.md:1:1</p>: <w>warning</w>: wrong [a rule]
<m>  1 |</m> x
<m>    |</m> <w>^</w>
`
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Error(diff)
	}
}

// A line may be as long as a file. It must be cut at its place without being
// looked through once for each of its characters.
func TestPrintEndOfAHugeLine(t *testing.T) {
	for _, unit := range []string{"a", "\u0301", "裁"} {
		f, _ := Load("n.md", []byte(strings.Repeat(unit, (MaxSize-1)/len(unit))))
		begun := time.Now()
		out := printed(Found(f.Span(len(f.Data)-len(unit), len(f.Data)), Error, "a rule", "wrong"))
		if took := time.Since(begun); took > 5*time.Second {
			t.Errorf("printing took %v", took)
		}
		if len(out) > 10_000 {
			t.Errorf("%d bytes were printed", len(out))
		}
	}
}

type fullDisk struct{}

var errFull = errors.New("no space left")

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestPrintTellsOfAFullDisk(t *testing.T) {
	f := []Finding{about(t, "«x»")}
	if err := Print(fullDisk{}, f, Palette{}); !errors.Is(err, errFull) {
		t.Errorf("Print: %v", err)
	}
	if err := PrintJSON(fullDisk{}, f); !errors.Is(err, errFull) {
		t.Errorf("PrintJSON: %v", err)
	}
}

func TestPrintJSON(t *testing.T) {
	f := about(t, "é\nab «cd»\n")
	f.Instead = []string{"<x>"}
	f.Related = []Place{{Span: f.Span.File.Span(0, 2), Text: "here"}}
	var b strings.Builder
	if err := PrintJSON(&b, []Finding{f, Found(Span{}, Hint, "r", "t")}); err != nil {
		t.Fatal(err)
	}
	want := `[
  {
    "path": "n.md",
    "line": 2,
    "column": 4,
    "start": 6,
    "end": 8,
    "text": "wrong",
    "level": "error",
    "rule": "a rule",
    "instead": [
      "<x>"
    ],
    "related": [
      {
        "path": "n.md",
        "line": 1,
        "column": 1,
        "start": 0,
        "end": 2,
        "text": "here"
      }
    ]
  },
  {
    "start": 0,
    "end": 0,
    "text": "t",
    "level": "hint",
    "rule": "r"
  }
]
`
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Error(diff)
	}
	b.Reset()
	PrintJSON(&b, nil)
	if b.String() != "[]\n" {
		t.Errorf("no findings are %q", b.String())
	}
}

func TestSort(t *testing.T) {
	a, _ := Load("a.md", []byte("0123456789"))
	b, _ := Load("b.md", []byte("0123456789"))
	at := func(f *File, start, end int, l Level, rule, text string) Finding {
		return Found(f.Span(start, end), l, rule, "%s", text)
	}
	got := Sort([]Finding{
		at(b, 0, 1, Error, "r", "x"),
		at(a, 5, 6, Hint, "r", "x"),
		at(a, 5, 6, Error, "s", "x"),
		at(a, 5, 6, Error, "r", "y"),
		at(a, 5, 6, Error, "r", "x"),
		at(a, 2, 3, Hint, "r", "x"),
		at(a, 2, 4, Hint, "r", "x"),
		at(a, 2, 3, Hint, "r", "x"), // said twice
		Found(Span{}, Hint, "r", "of the whole journal"),
	})
	var lines []string
	for _, f := range got {
		lines = append(lines, fmt.Sprintf("%s %d-%d %v %s %s", f.Span.name(), f.Span.Start, f.Span.End, f.Level, f.Rule, f.Text))
	}
	want := []string{
		" 0-0 hint r of the whole journal",
		"a.md 2-3 hint r x",
		"a.md 2-4 hint r x",
		"a.md 5-6 error r x",
		"a.md 5-6 error r y",
		"a.md 5-6 error s x",
		"a.md 5-6 hint r x",
		"b.md 0-1 error r x",
	}
	if diff := cmp.Diff(want, lines); diff != "" {
		t.Error(diff)
	}
	if Count(got, Hint) != 4 || Count(got, Error) != 4 || Count(got, Warning) != 0 {
		t.Error("counted wrong")
	}
}

func FuzzLoadAndPrint(f *testing.F) {
	f.Add([]byte("---\nbust girth: 36 in\n---\nCut.\n"), 4, 9)
	f.Add([]byte("\xef\xbb\xbfé\r\n裁\t\x1b[2J\u202e"), 2, 5)
	f.Add([]byte("\xff\xfea\x00"), 0, 1)
	f.Add([]byte(strings.Repeat("x\u0301", 300)), 400, 401)
	f.Fuzz(func(t *testing.T, data []byte, start, length int) {
		file, findings := Load("n.md", data)
		start = min(max(start, 0), len(file.Data))
		span := file.Span(start, min(start+max(length, 0), len(file.Data)))
		if span.End < span.Start {
			span.End = span.Start
		}
		findings = append(findings, Found(span, Hint, "a rule", "%s", span.Text()))
		for _, f := range findings {
			if s := f.Span; s.Start < 0 || s.Start > s.End || s.End > len(file.Data) {
				t.Fatalf("%v lies outside the file", s)
			}
			if line, column := f.Span.Position(); line < 1 || line > file.Lines() || column < 1 {
				t.Fatalf("at %d:%d of %d lines", line, column, file.Lines())
			}
		}
		for _, r := range printed(findings...) {
			if r != '\n' && r != '\t' && (r < ' ' || r == 0x7f || 0x80 <= r && r < 0xa0) {
				t.Fatalf("%q is printed", r)
			}
		}
		var b strings.Builder
		if err := PrintJSON(&b, findings); err != nil || !json.Valid([]byte(b.String())) {
			t.Fatalf("no JSON: %v", err)
		}
	})
}
