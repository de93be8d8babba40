package leaf

import (
	"fmt"
	"io/fs"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"hussif/build/check"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
)

var day = edtf.DayOf(2026, 11, 25)

// notes returns the demo's notes without its pictures.
func notes(t testing.TB) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(demo.Journal(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.Contains(name, "/photos/") {
			return err
		}
		data, err := fs.ReadFile(demo.Journal(), name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func open(t testing.TB, files fs.FS) (*journal.Journal, []source.Finding) {
	t.Helper()
	j, read, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	return j, check.Run(j, files, read)
}

func said(findings []source.Finding) map[string]int {
	out := make(map[string]int)
	for _, f := range findings {
		out[fmt.Sprintf("%s: %s [%s]", f.Span, f.Text, f.Rule)]++
	}
	return out
}

// A leaf that is left as it is must add nothing to a journal, neither a fault nor a
// fact.
func TestAnUntouchedLeaf(t *testing.T) {
	files := notes(t)
	j, before := open(t, files)
	for _, b := range j.Builds() {
		for _, stage := range journal.Stages {
			leaf := Leaf{Journal: j, Build: b, Day: day, Stage: stage, Title: "What: else?"}
			name := string(b.ID) + "/2026-11-25-leaf.md"
			files[name] = &fstest.MapFile{Data: []byte(leaf.Text())}
			with, after := open(t, files)
			delete(files, name)
			for text, n := range said(after) {
				if n > said(before)[text] {
					t.Errorf("%s, %s: %s", b.ID, stage, text)
				}
			}
			r, ok := with.Find(string(b.ID) + "/2026-11-25-leaf")
			if !ok {
				t.Fatalf("%s, %s: no note", b.ID, stage)
			}
			got := *r.(*journal.Note)
			empty := journal.Note{Page: got.Page, Date: day, Stage: stage, Of: got.Of}
			if diff := cmp.Diff(fmt.Sprintf("%+v", empty), fmt.Sprintf("%+v", got)); diff != "" || got.Title != "What: else?" || len(got.Next) > 0 {
				t.Errorf("%s, %s: says something: %s", b.ID, stage, diff)
			}
		}
	}
}

var (
	marked = regexp.MustCompile(`(?m)^# (.*)$`)
	// What somebody fills in where a line cannot stay blank.
	fill = strings.NewReplacer(
		"fault: ", "fault: gapes", "now: }", "now: 1/8 in}", "amount: ,", "amount: 1,", "amount: }", "amount: 1}",
		"file: ,", "file: photos/a.jpg,", "size: ,", "size: 9 in x 31 in,", "amount: , what", "amount: 3 GBP, what",
	)
	money = strings.NewReplacer("- {amount: 1, what: }", "- {amount: 3 GBP, what: pins}")
)

// With the marks taken away, and what cannot stay blank filled in, every field is
// one that a note has, and every name one that the journal knows.
func TestALeafWithoutItsMarks(t *testing.T) {
	files := notes(t)
	j, _ := open(t, files)
	for _, b := range j.Builds() {
		for _, stage := range journal.Stages {
			text := Leaf{Journal: j, Build: b, Day: day, Stage: stage}.Text()
			if !marked.MatchString(text) {
				t.Fatalf("%s: no field\n%s", stage, text)
			}
			text = money.Replace(fill.Replace(marked.ReplaceAllString(text, "$1")))
			name := string(b.ID) + "/2026-11-25-leaf.md"
			files[name] = &fstest.MapFile{Data: []byte(text)}
			_, after := open(t, files)
			delete(files, name)
			for _, f := range after {
				if f.Span.File != nil && f.Span.File.Name == name && (f.Level == source.Error || strings.HasPrefix(f.Rule, "unknown")) && f.Rule != "missing picture" {
					t.Errorf("%s, %s: %s: %s, %s\n%s", b.ID, stage, f.Span, f.Text, f.Advice(), f.Span.Line())
				}
			}
		}
	}
}

var example = regexp.MustCompile(`as in (\{.*\})$`)

// What is shown as an example can be written like that.
func TestExamples(t *testing.T) {
	files := notes(t)
	j, _ := open(t, files)
	shown := 0
	for _, stage := range journal.Stages {
		for line := range strings.Lines(Leaf{Journal: j, Build: j.Builds()[0], Day: day, Stage: stage}.Text()) {
			m := example.FindStringSubmatch(strings.TrimSpace(line))
			if m == nil {
				continue
			}
			field, _, _ := strings.Cut(strings.TrimPrefix(line, "# "), ":")
			note := string(j.Builds()[0].ID) + "/2026-11-25-leaf.md"
			files[note] = &fstest.MapFile{Data: []byte("---\n" + field + ": [" + m[1] + "]\n---\n")}
			_, found := open(t, files)
			for _, f := range found {
				if f.Span.File != nil && f.Span.File.Name == note && f.Rule != "missing picture" {
					t.Errorf("%s: %s", line, f.Text)
				}
			}
			shown++
		}
	}
	if shown < 10 {
		t.Errorf("%d examples", shown)
	}
}

// Lines are those of the build, and no question is wider than a terminal.
func TestText(t *testing.T) {
	j, _ := open(t, notes(t))
	want := `---
date: 2026-11-25
title: 'Sides, again'
stage: altering
## Take the one mark away from each line that you fill in, and write what else there is to tell
## below.
# hours:   # as in 3.5 or 3h 20m
## How wide the allowance was on each edge and is now, and at which measure: nobody can tell a
## let-out seam afterwards.
# altered:   # now: the allowance on each edge, as in 3/8 in
#   - {seam: side, at: bust, was: 1 in, now: }
#   - {seam: side, at: waist, was: 5/8 in, now: }
#   - {seam: centre back, at: waist, was: 1/2 in, now: }
# opened: [side, centre back, shoulder]
# sewed: [side, centre back, shoulder]
## Measured when it was done, to see whether it did what it should.
# measured:
#   bust:   # 36 in on 2025-09-06
#   waist:   # 28 7/8 in on 2025-09-06
#   upper arm girth:
#   wrist girth:   # 8 1/4 in on 2025-09-06
# photos:   # as in {file: photos/back.jpg, caption: After letting out, alt: Back view}
#   - {file: , caption: , alt: }
---

`
	b, _ := j.Find("madder-jacket", journal.KindBuild)
	got := Leaf{Journal: j, Build: b.(*journal.Build), Day: day, Stage: "altering", Title: "Sides, again"}.Text()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	for _, stage := range journal.Stages {
		for line := range strings.Lines(Leaf{Journal: j, Build: b.(*journal.Build), Day: day, Stage: stage}.Text()) {
			if len([]rune(line)) > widest+1 && !marked.MatchString(line) {
				t.Errorf("%s: %d wide: %s", stage, len(line), line)
			}
		}
	}
}

// What is asked is what the page does not say yet; whatever a name holds, it stays
// within its comment.
func TestAsksForWhatIsMissing(t *testing.T) {
	j, found := open(t, archive(`
-- journal.yaml --
unit: cm
-- builds/odd/build.md --
---
pieces:
  - {name: "front\n---\nx: y", front: the selvedge, grain: straight}
  - {name: sleeve, front: notched, right side: smooth, grain: bias, marks: [one notch]}
seams:
  - {name: "side: 'left'\n", crosses: {bust: 1 cm}}
  - {name: hem, sewn: felled, piped: no, now: 1 cm}
---
`))
	for _, f := range found {
		if f.Level == source.Error {
			t.Fatal(f.Text)
		}
	}
	b := j.Builds()[0]
	cutting := Leaf{Journal: j, Build: b, Day: day, Stage: "cutting"}.Text()
	if want := "## Not yet on the page: front --- x: y (right side, marks).\n"; !strings.Contains(cutting, want) {
		t.Errorf("not asked: %q in\n%s", want, cutting)
	}
	sewing := Leaf{Journal: j, Build: b, Day: day, Stage: "sewing"}.Text()
	if want := "## Not yet on the page: side: 'left' (sewn, piped"; !strings.Contains(sewing, want) || strings.Contains(sewing, "hem (") {
		t.Errorf("not asked: %q in\n%s", want, sewing)
	}
	if strings.Contains(sewing, "used:") {
		t.Errorf("a journal without materials has some:\n%s", sewing)
	}
	for _, stage := range journal.Stages {
		for line := range strings.Lines(Leaf{Journal: j, Build: b, Day: day, Stage: stage}.Text()) {
			if line != "\n" && !strings.HasPrefix(line, "#") && !strings.HasPrefix(line, "---") && !strings.HasPrefix(line, "date: ") && !strings.HasPrefix(line, "stage: ") {
				t.Errorf("%s: out of its comment: %s", stage, line)
			}
		}
	}
}

func archive(text string) fstest.MapFS {
	files := fstest.MapFS{}
	for _, f := range txtar.Parse([]byte(text)).Files {
		files[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return files
}

func TestFollow(t *testing.T) {
	for _, c := range []struct{ page, stages, want string }{
		{"", "", "planning"},
		{"fit: {bust: 1 in}", "planning", "mock-up"},
		{"", "planning", "cutting"},
		{"fit: {bust: 1 in}", "mock-up planning", "cutting"},
		{"", "mock-up", "cutting"},
		{"", "cutting", "sewing"},
		{"", "cutting sewing sewing", "sewing"},
		{"", "cutting -", "sewing"},
		{"", "fitting", "sewing"},
		{"", "finishing fitting", "altering"},
		{"finished: 2025-12-01", "fitting", "altering"},
		{"finished: 2027-12-01", "fitting", "sewing"},
		{"", "unpicking", "altering"},
		{"", "altering", "fitting"},
		{"", "finishing", "worn"},
		{"", "worn", "cleaned"},
		{"", "worn cleaned", "worn"},
	} {
		text := "-- builds/coat/build.md --\n---\n" + c.page + "\n---\n"
		for i, stage := range strings.Fields(c.stages) {
			text += fmt.Sprintf("-- builds/coat/2026-01-%02d.md --\n---\n", i+1)
			if stage != "-" {
				text += "stage: " + stage + "\n"
			}
			text += "---\n"
		}
		text += "-- builds/coat/2027-01-01.md --\n---\nstage: cutting\n---\n"
		j, _ := open(t, archive(text))
		if got, _ := Follow(j.Builds()[0], day); string(got) != c.want {
			t.Errorf("after %s with %q: %s, want %s", c.stages, c.page, got, c.want)
		}
	}
}

func TestLastWorked(t *testing.T) {
	const text = `
-- builds/apron/build.md --
-- builds/apron/2026-03-01.md --
-- builds/apron/2026-03-01-more.md --
-- builds/coat/build.md --
-- builds/coat/2026-03-01.md --
-- builds/coat/2027-01-01.md --
-- builds/hood/2026-01-01.md --
-- builds/hood/build.md --
`
	j, _ := open(t, archive(text))
	for _, c := range []struct {
		day  edtf.Day
		want string
	}{
		{edtf.DayOf(2025, 1, 1), ""},
		{edtf.DayOf(2026, 2, 1), "hood"},
		{edtf.DayOf(2026, 3, 1), "apron coat"},
		{edtf.DayOf(2028, 1, 1), "coat"},
	} {
		var got []string
		builds, _ := LastWorked(j, c.day)
		for _, b := range builds {
			got = append(got, b.ID.Name())
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: %v, want %s", c.day, got, c.want)
		}
	}
}
