package journal

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"hussif/content/edtf"
	"hussif/content/source"
)

func TestDateAndTitleFromTheName(t *testing.T) {
	for _, c := range []struct{ name, front, day, title string }{
		{"2026-03-01-first-fitting.md", "", "2026-03-01", "First fitting"},
		{"2026-03-01.md", "", "2026-03-01", "2026-03-01"},
		{"2026-03-01_sewn_up.md", "", "2026-03-01", "Sewn up"},
		{"2026-03-01 sewn.md", "", "2026-03-01", "Sewn"},
		{"2026-03-01-épaulette.md", "", "2026-03-01", "Épaulette"},
		{"first-fitting.md", "date: 2026-03-02", "2026-03-02", "First fitting"},
		{"2026-03-01-first-fitting.md", "date: 2026-03-02\ntitle: Second", "2026-03-02", "Second"},
		{"2026-03-01.MD", "", "2026-03-01", "2026-03-01"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := sound(t, "-- notes/"+c.name+" --\n---\n"+c.front+"\n---\n")
			if n := j.Notes[0]; n.Date.String() != c.day || n.Title != c.title {
				t.Errorf("got %s, %q", n.Date, n.Title)
			}
		})
	}
}

func TestNoteWithoutADate(t *testing.T) {
	for _, name := range []string{"first-fitting.md", "2026-03-32.md", "2026-03-012.md", "2026-3-1.md"} {
		_, findings := open(t, "-- notes/"+name+" --\nIt binds.\n")
		want := "notes/" + name + ":1:1: error: a note needs a date [needed field] " +
			"add `date: ...` to the front matter, or begin the file's name with it, as in 2026-03-01-" + name
		if diff := cmp.Diff([]string{want}, lines(findings)); diff != "" {
			t.Error(diff)
		}
	}
	// One fault is told once: this note has a date, if a bad one.
	_, findings := open(t, "-- notes/fitting.md --\n---\ndate: yesterday\n---\n")
	if len(findings) != 1 || findings[0].Rule != NotADay {
		t.Errorf("found %v", lines(findings))
	}
}

func TestKinds(t *testing.T) {
	j := sound(t, `
-- people/wren.md --
-- builds/grey-jacket/build.md --
-- builds/grey-jacket/2026-03-01.md --
-- builds/grey-jacket/fittings/2026-03-02.md --
-- builds/cap.md --
-- notes/2026/2026-03-03.md --
-- patterns/draft.md --
-- references/plate.md --
-- materials/linen.md --
-- techniques/piping.md --
-- occasions/fair.md --
---
date: 2026-06-01
---
-- ottilie.md --
---
kind: Person
---
-- notes/how-to-pipe.md --
---
kind: technique
---
-- README.md --
-- builds/grey-jacket/photos/2026-03-01.txt --
`)
	want := map[ID]Kind{
		"people/wren": KindPerson, "builds/grey-jacket": KindBuild, "builds/grey-jacket/2026-03-01": KindNote,
		"builds/grey-jacket/fittings/2026-03-02": KindNote, "builds/cap": KindBuild, "notes/2026/2026-03-03": KindNote,
		"patterns/draft": KindPattern, "references/plate": KindReference, "materials/linen": KindMaterial,
		"techniques/piping": KindTechnique, "occasions/fair": KindOccasion, "ottilie": KindPerson, "notes/how-to-pipe": KindTechnique,
	}
	got := make(map[ID]Kind)
	for _, r := range j.Records() {
		got[r.Head().ID] = r.Head().Kind
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	jacket := record[*Build](t, j, "builds/grey-jacket")
	if len(jacket.Notes) != 2 || jacket.Notes[0].Of != jacket || jacket.Notes[1].ID != "builds/grey-jacket/fittings/2026-03-02" {
		t.Errorf("its notes are %v", jacket.Notes)
	}
	if _, ok := j.Files["README.md"]; !ok {
		t.Error("a file that is no page is forgotten")
	}
}

func TestUnknownKind(t *testing.T) {
	j, findings := open(t, `
-- notes/2026-03-01.md --
---
kind: nite
---
See [[2026-03-02]].
-- notes/2026-03-02.md --
---
kind: letter
---
-- ideas.md --
---
kind: techniqe
---
-- notes/2026-03-03.md --
See [[ideas]] and [[2026-03-01]].
-- letters/aunt.md --
Dear aunt.
`)
	want := []string{
		"ideas.md:2:7: error: a journal has no pages of the kind \"techniqe\" [unknown kind] did you mean \"technique\"?",
		"letters/aunt.md:1:1: hint: this file lies in none of the journal's folders and is left out [unknown kind] move it, or say what it is with `kind: ...`",
		"notes/2026-03-01.md:2:7: error: a journal has no pages of the kind \"nite\" [unknown kind] did you mean \"note\"?",
		"notes/2026-03-02.md:2:7: error: a journal has no pages of the kind \"letter\" [unknown kind] one of: build, note, person, pattern, reference, material, technique, occasion",
		"notes/2026-03-03.md:1:7: error: no page is called \"ideas\" [broken link] a page is called after its file, or its build's folder",
	}
	if diff := cmp.Diff(want, lines(findings)); diff != "" {
		t.Error(diff)
	}
	if len(j.Notes) != 3 {
		t.Errorf("%d notes", len(j.Notes))
	}
}

func TestNotesOfABuild(t *testing.T) {
	j := sound(t, `
-- builds/grey-jacket/build.md --
-- builds/cap/build.md --
-- builds/grey-jacket/2026-03-03.md --
-- builds/grey-jacket/2026-03-02-b.md --
-- builds/grey-jacket/2026-03-02-a.md --
-- builds/grey-jacket/2026-03-04.md --
---
build: cap
---
-- notes/2026-03-01.md --
---
build: Grey-Jacket
---
-- notes/2026-03-05.md --
-- builds/nobody/2026-03-06.md --
`)
	var got []string
	for _, n := range record[*Build](t, j, "builds/grey-jacket").Notes {
		got = append(got, string(n.ID))
	}
	want := []string{"notes/2026-03-01", "builds/grey-jacket/2026-03-02-a", "builds/grey-jacket/2026-03-02-b", "builds/grey-jacket/2026-03-03"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if len(record[*Build](t, j, "builds/cap").Notes) != 1 {
		t.Error("the note that names another build is not with it")
	}
	for _, id := range []ID{"notes/2026-03-05", "builds/nobody/2026-03-06"} {
		if record[*Note](t, j, id).Of != nil {
			t.Errorf("%s belongs to a build", id)
		}
	}
	for i := 1; i < len(j.Notes); i++ {
		if j.Notes[i].Date < j.Notes[i-1].Date {
			t.Error("notes are not oldest first")
		}
	}
}

// Makers create files before they fill them.
func TestEmptyFiles(t *testing.T) {
	for name, want := range map[string]string{
		"people/wren.md": "Wren", "builds/grey-jacket/build.md": "Grey jacket", "builds/grey-jacket/2026-03-01.md": "2026-03-01",
		"patterns/draft.md": "Draft", "references/plate.md": "Plate", "materials/linen.md": "Linen", "techniques/piping.md": "Piping",
	} {
		for _, text := range []string{"", "\n", "---\n---\n", "---\ntitle:\n---\n", "---\n# nothing yet\n---"} {
			j, findings, err := Open(fstest.MapFS{name: {Data: []byte(text)}})
			if err != nil || len(findings) > 0 || len(j.Records()) != 1 {
				t.Errorf("%s holding %q: %v, %v", name, text, err, lines(findings))
				continue
			}
			if got := j.Records()[0].Head(); got.Title != want || j.Faulty(j.Records()[0]) {
				t.Errorf("%s holding %q has the title %q", name, text, got.Title)
			}
		}
	}
	_, findings := open(t, "-- occasions/fair.md --\n")
	if diff := cmp.Diff([]string{"occasions/fair.md:1:1: error: an occasion needs \"date\" [needed field] add `date: ...`"}, lines(findings)); diff != "" {
		t.Error(diff)
	}
	j, findings := open(t, "-- journal.yaml --\n")
	if len(findings) > 0 || len(j.Records()) != 0 {
		t.Errorf("an empty settings file: %v", lines(findings))
	}
}

func TestErrNoJournal(t *testing.T) {
	dir := t.TempDir()
	for _, fsys := range []fs.FS{
		fstest.MapFS{}, fstest.MapFS{"README.md": {}, "src/main.go": {}, "docs/notes.md": {}}, os.DirFS(dir),
		fstest.MapFS{"link": {Mode: fs.ModeSymlink}},
	} {
		if j, findings, err := Open(fsys); !errors.Is(err, ErrNoJournal) || j != nil || findings != nil {
			t.Errorf("got %v", err)
		}
	}
	if _, _, err := Open(os.DirFS(dir + "/gone")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a folder that is not there: %v", err)
	}
}

// Files saved on Windows hold the same journal.
func TestCRLF(t *testing.T) {
	archive, err := os.ReadFile("testdata/every-field.txtar")
	if err != nil {
		t.Fatal(err)
	}
	unix := files(string(archive))
	windows := fstest.MapFS{}
	for name, f := range unix {
		windows[name] = &fstest.MapFile{Data: []byte("\xef\xbb\xbf" + strings.ReplaceAll(string(f.Data), "\n", "\r\n"))}
	}
	a, _, err := Open(unix)
	if err != nil {
		t.Fatal(err)
	}
	b, findings, err := Open(windows)
	if err != nil || len(findings) > 0 {
		t.Fatal(err, lines(findings))
	}
	for i, r := range a.Records() {
		if diff := cmp.Diff(r, b.Records()[i], values); diff != "" {
			t.Errorf("%s: %s", r.Head().ID, diff)
		}
	}
}

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
pattern changed: {bust girth: , hip girth: 1 in}
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
		`1  [wrong shape]`,
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
	if len(j.Builds) != 1 || len(j.People) != 1 {
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
	for _, p := range j.People {
		if !j.Faulty(p) || p.Where.Span.File != p.File {
			t.Errorf("%s: faulty %t, in %v", p.ID, j.Faulty(p), p.Where.Span)
		}
	}
}

func TestPictures(t *testing.T) {
	j := sound(t, `
-- builds/cap/build.md --
-- builds/cap/2026-03-01.md --
---
photos:
  - {file: photos/a.jpg, alt: Seen from above, caption: The cap, piece: crown, face: no}
  - ../shared/b.png
---
![The **back** seam](photos/c%20d.jpg "Back") and ![again](photos/a.jpg)
`)
	note := record[*Note](t, j, "builds/cap/2026-03-01")
	want := []Picture{
		{Path: "builds/cap/photos/a.jpg", Written: "photos/a.jpg", Alt: "Seen from above", Caption: "The cap", Piece: "crown", Face: No},
		{Path: "builds/shared/b.png", Written: "../shared/b.png"},
		{Path: "builds/cap/photos/c d.jpg", Written: "photos/c d.jpg", Alt: "The back seam", Caption: "Back", InText: true},
		{Path: "builds/cap/photos/a.jpg", Written: "photos/a.jpg", Alt: "again", InText: true},
	}
	got := Pictures(note)
	if diff := cmp.Diff(want, got, values); diff != "" {
		t.Error(diff)
	}
	for i, span := range []string{"photos/a.jpg", "../shared/b.png", "photos/c%20d.jpg", "photos/a.jpg"} {
		if got[i].Span.Text() != span {
			t.Errorf("picture %d is at %q", i, got[i].Span.Text())
		}
	}
}

// The same journal gives the same records and findings however many workers read it.
func TestOpenOnAnyNumberOfWorkers(t *testing.T) {
	archive, err := os.ReadFile("testdata/every-field.txtar")
	if err != nil {
		t.Fatal(err)
	}
	fsys := files(string(archive))
	for i := range 40 {
		name := fmt.Sprintf("notes/%s.md", edtf.DayOf(2026, 1, i))
		fsys[name] = &fstest.MapFile{Data: fmt.Appendf(nil, "---\nhours: %dx\nstge: a\n---\n[[note-%d]] [[wren]]\n", i, i)}
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	first, findings, err := Open(fsys)
	if err != nil {
		t.Fatal(err)
	}
	for _, workers := range []int{2, 3, 8} {
		runtime.GOMAXPROCS(workers)
		j, more, err := Open(fsys)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(lines(findings), lines(more)); diff != "" {
			t.Errorf("%d workers: %s", workers, diff)
		}
		for i, r := range first.Records() {
			if diff := cmp.Diff(r, j.Records()[i], values); diff != "" {
				t.Errorf("%d workers: %s", workers, diff)
			}
		}
		if len(first.LinkedFrom("people/wren")) != len(j.LinkedFrom("people/wren")) {
			t.Errorf("%d workers: other links", workers)
		}
	}
}

// brokenDisk fails to read one file.
type brokenDisk struct{ fstest.MapFS }

var errBroken = errors.New("input/output error")

func (b brokenDisk) Open(name string) (fs.File, error) {
	if name == "notes/2026-03-02.md" {
		return nil, errBroken
	}
	return b.MapFS.Open(name)
}

func TestOpenTellsOfTheDisk(t *testing.T) {
	_, _, err := Open(brokenDisk{fstest.MapFS{"notes/2026-03-01.md": {}, "notes/2026-03-02.md": {}}})
	if !errors.Is(err, errBroken) {
		t.Errorf("got %v", err)
	}
}
