package worked_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"hussif/build/stock"
	"hussif/build/worked"
	"hussif/build/worksheet"
	"hussif/content/journal"
	"hussif/content/source"
)

// record is a journal of a skirt and what lends figures to it; the lines of a
// worksheet go into its note of March.
const record = `
-- people/wren.md --
---
measured:
  - {date: 2026-01-10, over: [shift, stays], natural waist girth: 26 1/16 in}
  - {date: 2026-01-10, natural waist girth: 27 in}
  - {date: 2026-06-10, over: [shift, stays], natural waist girth: 27 1/2 in}
  - {date: 2026-02-01, over: [corset], bust girth: 36 in}
  - {date: 2026-05-01, over: [shift, stays], hip girth: 40 in}
---
-- materials/striped-linen.md --
---
width: 54 in
---
-- builds/skirt/build.md --
---
for: wren
garment: skirt
over: [shift, stays]
seams:
  - {name: side, count: 2, crosses: {hip girth: {now: 1 in}}}
---
-- builds/skirt/2026-02-01-mock-up.md --
---
measured: {hip girth: 41 in}
left over:
  - {material: striped-linen, size: 4 in x 31 in}
  - {material: striped-linen, size: 9 in x 31 in, grain: straight}
---
-- builds/skirt/2026-02-10-altered.md --
---
altered: [{seam: side, was: 1 in, now: 1/2 in}]
---
-- builds/skirt/2026-03-01-pleats.md --
~~~work %s
~~~
`

func room(t testing.TB, archive string) (worked.Room, []source.Finding) {
	t.Helper()
	files := fstest.MapFS{}
	for _, f := range txtar.Parse([]byte(archive)).Files {
		files[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	j, findings, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	stash := stock.Gather(j)
	return worked.Room{Journal: j, Stock: func(m journal.ID) stock.Sheet {
		sheet, _ := stash.Of(m)
		return sheet
	}}, findings
}

func sheetOf(t testing.TB, lines string) (worked.Room, worked.Sheet) {
	t.Helper()
	r, findings := room(t, fmt.Sprintf(record, lines))
	for _, f := range findings {
		if f.Level == source.Error {
			t.Fatalf("%s: %s", f.Span, f.Text)
		}
	}
	n, ok := r.Journal.Find("2026-03-01-pleats")
	if !ok {
		t.Fatal("the note is gone")
	}
	sheets := r.Sheets(n)
	if len(sheets) != 1 {
		t.Fatalf("%d worksheets", len(sheets))
	}
	return r, sheets[0]
}

// inputOf returns what a sheet was worked with under a name.
func inputOf(s worked.Sheet, name string) worksheet.Fact {
	for _, g := range s.Paper.Given {
		if g.Name == name {
			return g
		}
	}
	return worksheet.Fact{}
}

func TestFiguresFromTheRecord(t *testing.T) {
	for _, c := range []struct{ name, lines, input, value, from, source string }{
		{"of the wearer, over what the build is worn over, to a sixteenth", "circle skirt\npart: half\nwaist: waist of the wearer", "waist", "26 1/16 in", "natural waist girth of Wren over shift and stays, measured on 2026-01-10", "people/wren"},
		{"of a person over layers", "circle skirt\npart: half\nwaist: waist of [[wren]] over stays and shift", "waist", "26 1/16 in", "over stays and shift, measured on 2026-01-10", "people/wren"},
		{"over nothing", "circle skirt\npart: half\nwaist: waist of wren over nothing", "waist", "27 in", "over nothing, measured on 2026-01-10", "people/wren"},
		{"of another day", "circle skirt\npart: half\nwaist: waist of wren over shift, stays on 2026-06-10", "waist", "27 1/2 in", "measured on 2026-06-10", "people/wren"},
		{"of a garment, with its alterations", "let-out\nseams: 2\nwas: 1/2 in\nnow: 1/4 in\ngirth: hip girth of this build", "girth", "43 in", "hip girth of Skirt, expected: measured on 2026-02-01, with the alterations since", "builds/skirt"},
		{"of a garment by name", "let-out\nseams: 2\nwas: 1/2 in\nnow: 1/4 in\ngirth: hip girth of skirt on 2026-02-01", "girth", "41 in", "measured on 2026-02-01", "builds/skirt"},
		{"the largest piece left over", "bias strips\nstrip: 1 in\npiece: left over striped-linen", "piece", "9 × 31 in", "the largest piece left over of Striped linen, of 2026-02-01, grain: straight", "materials/striped-linen"},
		{"the width of a cloth", "gathers\nfinished: 30 in\nratio: 2\ncloth width: width of [[striped-linen]]", "cloth width", "54 in", "width of Striped linen", "materials/striped-linen"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, s := sheetOf(t, c.lines)
			for _, f := range s.Faults {
				t.Fatalf("%s: %s", f.Span, f.Text)
			}
			got := inputOf(s, c.input)
			if got.Value != c.value || !strings.Contains(got.From, c.from) {
				t.Errorf("%s is %q, from %q; want %q from %q", c.input, got.Value, got.From, c.value, c.from)
			}
			if from := s.Sources[c.input]; from == nil || string(from.Head().ID) != c.source {
				t.Errorf("from %v, want %s", from, c.source)
			}
			if c.source != "builds/skirt" {
				linked := false
				for _, tie := range r.Journal.LinkedFrom(journal.ID(c.source)) {
					linked = linked || tie.Field == "work" && tie.From.Head().ID == "builds/skirt/2026-03-01-pleats"
				}
				if named := !strings.Contains(c.lines, "the wearer"); named != linked {
					t.Errorf("%s is linked back: %v", c.source, linked)
				}
			}
		})
	}
}

// The figure is that of the note's day; what was measured since is told and not
// worked with. When the record of that day is another, so is the sheet.
func TestFiguresAreOfTheirDay(t *testing.T) {
	_, s := sheetOf(t, "circle skirt\npart: half\nwaist: waist of the wearer")
	want := "natural waist girth of Wren was measured again on 2026-06-10: 27 1/2 in; this sheet keeps to the figure of its day"
	if len(s.Paper.Cautions) == 0 || s.Paper.Cautions[0] != want {
		t.Errorf("cautions %q, want %q first", s.Paper.Cautions, want)
	}
	before := s.Paper.Answers[0].Length
	r, _ := room(t, strings.Replace(fmt.Sprintf(record, "circle skirt\npart: half\nwaist: waist of the wearer"), "26 1/16 in", "30 in", 1))
	n, _ := r.Journal.Find("2026-03-01-pleats")
	if after := r.Sheets(n)[0].Paper.Answers[0].Length; after <= before {
		t.Errorf("the radius was %d and is %d with a larger waist", before, after)
	}
}

func TestFaultsAtTheirPlace(t *testing.T) {
	const note = "builds/skirt/2026-03-01-pleats.md:"
	for _, c := range []struct{ lines, at, text string }{
		{"knife pleats\nfinished: 34 in\nshown: 1 inn\ndepth: 1 in", "3:8", `no unit of length is called "inn"`},
		{"knife pleats\nfinished: 34 in\nshown: 0\ndepth: 1 in", "3:8", "more than nothing"},
		{"knife pleats\nfinished: 34 in\nshwon: 1 in\ndepth: 1 in", "3:1", `nothing called "shwon"`},
		{"knife pleats\nfinished: 34 in", "1:4", "cannot be told"},
		{"knfie pleats\nfinished: 34 in", "1:4", `no worksheet is called "knfie pleats"`},
		{"\nfinished: 34 in", "1:4", "which worksheet"},
		{"hem level\nlengths: {front: 38 in, back: 45 in}\ncut length: 40 in", "2:31", "too short by 6 in"},
		{"piping\nround: 1/2 in\nallowance: 1/2 in\nseams:\n  - 17 in\n  - 2 of 3 inn", "6:5", `"inn"`},
		{"gathers\nfinished: [34 in", "2:1", "cannot be read"},
		{"gathers\nfinished: {a: {b: 1}}", "2:15", "a group of fields stands where a single value should"},
		{"gathers\n- 3 in", "2:1", "lines of a name and a value"},
		{"gathers\nfinished: 3 in\nfinished: 4 in", "3:1", "given twice"},
		{"gathers\nfinished: waits of wren", "2:11", `no measure is called "waits"`},
		{"gathers\nfinished: bust girth of wren", "2:11", "known over corset, which cannot be compared with shift and stays"},
		{"gathers\nfinished: hip girth of wren", "2:11", "first measured over shift and stays on 2026-05-01"},
		{"gathers\nfinished: knee girth of wren", "2:11", "never measured"},
		{"gathers\nfinished: knee girth of this build", "2:11", "never measured"},
		{"gathers\nfinished: this build", "2:11", "which measure"},
		{"gathers\nfinished: thickness of striped-linen", "2:11", "does not say its thickness"},
		{"gathers\nfinished: 30 in\nratio: 2\ncloth width: 4 in\nallowance: 2 in", "5:12", "whole width"},
	} {
		t.Run(c.lines, func(t *testing.T) {
			_, s := sheetOf(t, c.lines)
			var said []string
			for _, f := range s.Faults {
				if f.Level != source.Warning || f.Rule != worked.Rule {
					t.Errorf("%s of rule %s", f.Level, f.Rule)
				}
				line := f.Span.String() + " " + f.Text
				if strings.HasPrefix(line, note+c.at+" ") && strings.Contains(line, c.text) {
					return
				}
				said = append(said, line)
			}
			t.Errorf("said %q, want %q at %s", said, c.text, c.at)
		})
	}
}

// A name that leads nowhere is an error of the journal, as it is in every field.
func TestBrokenNamesAreBrokenLinks(t *testing.T) {
	r, findings := room(t, fmt.Sprintf(record, "gathers\nratio: 2\nfinished: waist of wern"))
	found := false
	for _, f := range findings {
		found = found || f.Rule == journal.BrokenLink && f.Span.Text() == "wern" && f.Level == source.Error
	}
	if !found {
		t.Errorf("findings %v", findings)
	}
	n, _ := r.Journal.Find("2026-03-01-pleats")
	if s := r.Sheets(n)[0]; len(s.Faults) == 0 {
		t.Error("worked out in spite of it")
	}
}

// Blocks in quotes and private ones.
func TestQuotesAreNotWorkedOut(t *testing.T) {
	r, _ := room(t, "\n-- notes/2026-03-01.md --\n> ```work gathers\n> finished: 3 in\n> ```\n")
	if s := r.Sheets(r.Journal.Notes()[0])[0]; len(s.Faults) != 1 || !strings.Contains(s.Faults[0].Text, "in a quote") {
		t.Errorf("got %+v", s.Faults)
	}
}

// A text without a build, and one without a date.
func TestTextsOfNoBuild(t *testing.T) {
	r, _ := room(t, fmt.Sprintf(record, "gathers")+`
-- notes/2026-03-02.md --
~~~work gathers
ratio: 2
finished: waist of the wearer
~~~
-- techniques/gathering.md --
~~~work gathers
ratio: 2
finished: waist of wren over shift and stays
~~~
`)
	n, _ := r.Journal.Find("notes/2026-03-02")
	if s := r.Sheets(n)[0]; len(s.Faults) != 1 || !strings.Contains(s.Faults[0].Text, "no build here") {
		t.Errorf("got %+v", s.Faults)
	}
	technique, _ := r.Journal.Find("gathering")
	if got := inputOf(r.Sheets(technique)[0], "finished"); got.Value != "27 1/2 in" {
		t.Errorf("without a date it takes %q, want the newest", got.Value)
	}
}

func FuzzSheets(f *testing.F) {
	for _, s := range worksheet.All() {
		f.Add(s.About().Name + "\n" + s.About().Example)
	}
	f.Add("gathers\nratio: 2\nfinished: waist of wren over shift, stays on 2026-06-10")
	f.Add("bias strips\nstrip: 1\npiece: left over [[striped-linen|linen]]")
	f.Add("gathers\nfinished: \"waist of this build\"\nratio: [1, 2]")
	f.Fuzz(func(t *testing.T, lines string) {
		r, _ := room(t, "\n-- people/wren.md --\n---\nmeasured: {date: 2026-01-10, waist: 26 in}\n---\n-- notes/2026-03-01.md --\n~~~work "+lines+"\n~~~\n")
		for _, n := range r.Journal.Notes() {
			for _, s := range r.Sheets(n) {
				if (len(s.Faults) == 0) == (len(s.Paper.Answers) == 0) {
					t.Errorf("%d faults and %d answers", len(s.Faults), len(s.Paper.Answers))
				}
				for _, fault := range s.Faults {
					if fault.Span.File == nil || fault.Span.End < fault.Span.Start || fault.Span.End > len(fault.Span.File.Data) {
						t.Errorf("%q has no place", fault.Text)
					}
				}
			}
		}
	})
}
