package fit

import (
	"fmt"
	"strings"
	"testing"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/measure"
)

const circle = `
-- journal.yaml --
unit: in
ease:
  jacket: {bust girth: 2 in, hip girth: 1 to 2 in}
-- people/wren.md --
---
measured:
  - {date: 2026-01-10, over: [shift, stays], by: ottilie, bust girth: 36 1/2 in, waist: 27 in, upper arm girth: 11 in}
---
-- people/ottilie.md --
---
measured:
  - {date: 2026-01-10, over: [stays, shift], by: Ottilie, bust girth: 38 in}
---
-- builds/jacket/build.md --
---
for: wren
garment: Jacket
over: [shift, stays]
fit:
  bust girth: {ease: 0 to 1 in}
  waist: {ease: 0 in, accepts: ample}
  upper arm girth: {ease: 1 1/2 to 2 1/2 in}
seams:
  - {name: sleeve, count: 2, crosses: {upper arm girth: {now: 5/8 in}}}
---
-- builds/jacket/2026-02-14-first-fitting.md --
---
stage: fitting
measured: {bust girth: 36 3/4 in, waist: 27 3/4 in, upper arm girth: 12 in}
altered: [{seam: sleeve, at: upper arm girth, was: 5/8 in, now: 1/4 in}]
---
-- builds/jacket/2026-03-01-finished.md --
---
stage: finishing
altered: [{seam: sleeve, was: 1/4 in, now: 1/8 in}]
measured: {upper arm girth: 13 in}
body:
  - {over: [shift, stays], upper arm girth: 10 1/2 in}
  - {of: ottilie, over: [shift, stays], upper arm girth: 12 in}
---
`

func TestOf(t *testing.T) {
	j := journaltest.Open(t, circle)
	b := build(t, j, "jacket")
	fitting := Of(j, b, day("2026-02-14"))
	for _, test := range []struct {
		point measure.Point
		words string
	}{
		{bust, "fits"},
		{waist, "ample by 3/4 in, and that is accepted"},
		{arm, "fits"}, // 12 in as tried on, and 3/4 in let out that day
		{measure.Point{Measure: "hip girth"}, "garment not measured"},
	} {
		if got := row(t, fitting, test.point).Words(inches); got != test.words {
			t.Errorf("%s: %q, want %q", test.point, got, test.words)
		}
	}
	if got := row(t, fitting, arm).Garment; !got.Expected() || got.Length != 12*inch+3*inch/4 ||
		got.Since[0] != (Reason{"builds/jacket/2026-02-14-first-fitting", "altered", 0}) {
		t.Errorf("the sleeve is %+v", got)
	}
	finished := row(t, Of(j, b, day("2026-03-01")), arm)
	if finished.Garment.Expected() || finished.Garment.Length != 13*inch {
		t.Errorf("a finished garment is measured last: %+v", finished.Garment)
	}
	if finished.Body.Length != 10*inch+inch/2 || finished.Body.From != (Reason{"builds/jacket/2026-03-01-finished", "body", 0}) {
		t.Errorf("the body measured in a note is the wearer's: %+v", finished.Body)
	}
	if row(t, fitting, bust).Body.Alone {
		t.Error("Ottilie measured Wren")
	}
}

func TestWhenTheTapeWasTaken(t *testing.T) {
	for _, stage := range journal.Stages {
		j := journaltest.Open(t, `
-- builds/jacket/build.md --
---
seams: [{name: back, crosses: [bust girth]}]
---
-- builds/jacket/2026-02-14.md --
---
stage: `+string(stage)+`
measured: {bust girth: 36 in}
altered: [{seam: back, was: 5/8 in, now: 1/4 in}]
---
`)
		want := 36*inch + 3*inch/4
		if stage == "altering" || stage == "finishing" {
			want = 36 * inch
		}
		got := row(t, Of(j, build(t, j, "jacket"), day("2026-02-14")), bust).Garment
		if got.Length != want || got.Expected() != (want != 36*inch) || got.MockUp != (stage == "mock-up") {
			t.Errorf("%s: %s, expected %t, mock-up %t", stage, inches.Length(got.Length), got.Expected(), got.MockUp)
		}
	}
}

func TestSessions(t *testing.T) {
	j := journaltest.Open(t, `
-- people/wren.md --
---
measured: [{bust girth: 35 in}, {date: 2026-03-01, by: wren, bust girth: 36 in}]
---
-- people/ottilie.md --
-- people/guests/wren.md --
-- notes/2026-02-14.md --
---
body:
  - {of: people/wren, bust girth: 37 in}
  - {of: people/wren, date: 2026-02-01, by: ottilie, bust girth: 38 in}
  - {of: ottilie, bust girth: 39 in}
  - {bust girth: 40 in}
  - {of: people/guests/wren, bust girth: 41 in}
---
`)
	var said []string
	for _, s := range Sessions(j, j.Person(journal.Ref{To: "people/wren"})) {
		said = append(said, fmt.Sprintf("%s %s %d %t %s", s.Day, s.From.Field, s.From.Entry, s.Alone, inches.Length(s.Readings[0].Value.Length)))
	}
	// One without a day cannot be placed, one of nobody is nobody's, and a
	// namesake is somebody else.
	want := "2026-02-01 body 1 false 38 in; 2026-02-14 body 0 false 37 in; 2026-03-01 measured 1 true 36 in"
	if got := strings.Join(said, "; "); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestForSomebodyElse(t *testing.T) {
	j := journaltest.Open(t, circle)
	b := build(t, j, "jacket")
	ottilie := j.Person(journal.Ref{To: "ottilie"})
	table := For(j, b, ottilie, day("2026-03-01"))
	if got := row(t, table, bust); got.Words(inches) != "short by 1 1/4 in" || !got.Body.Alone {
		t.Errorf("bust: %q, alone %t", got.Words(inches), got.Body.Alone)
	}
	if got := row(t, table, arm).Words(inches); got != "short by 1/2 in" {
		t.Errorf("arm: %q", got)
	}
	if got := row(t, table, waist).Verdict; got != NoBody {
		t.Errorf("waist: %v", got)
	}
	if got := row(t, For(j, b, nil, day("2026-03-01")), bust).Verdict; got != NoWearer {
		t.Errorf("of nobody: %v", got)
	}
}

func TestEaseOfTheSettings(t *testing.T) {
	j := journaltest.Open(t, circle)
	table := Of(j, build(t, j, "jacket"), day("2026-03-01"))
	if got := row(t, table, bust).Wanted; got.Ease.Most != inch || got.From.Field != "fit" {
		t.Errorf("what the build says goes first: %+v", got)
	}
	if got := row(t, table, measure.Point{Measure: "hip girth"}).Wanted; got.Ease.Most != 2*inch || got.From != (Reason{Field: "ease", Entry: 1}) {
		t.Errorf("the settings fill in: %+v", got)
	}
}

func TestDays(t *testing.T) {
	j := journaltest.Open(t, circle)
	b := build(t, j, "jacket")
	if got, ok := FirstFinish(b); !ok || got != day("2026-03-01") {
		t.Errorf("first finished %s, %t", got, ok)
	}
	if got := Latest(j, b); got != day("2026-03-01") {
		t.Errorf("latest %s", got)
	}
	if got, ok := FirstFinish(&journal.Build{Finished: day("2026-02-28"), Notes: b.Notes}); !ok || got != day("2026-02-28") {
		t.Errorf("first finished %s, %t", got, ok)
	}
	if got, ok := FirstFinish(&journal.Build{Notes: b.Notes[:1]}); ok {
		t.Errorf("finished %s by a fitting", got)
	}
}

func TestAdjustsOfABuild(t *testing.T) {
	j := journaltest.Open(t, `
-- people/wren.md --
---
measured: [{date: 2026-01-10, over: [shift], waist: 27 in}]
---
-- builds/stays/build.md --
---
for: wren
over: [shift]
fit: {waist: {ease: -2 in}}
adjusts:
  - {how: lacing, where: centre back, gap: 0 to 3 in, measured at: 2 in, changes: [waist]}
  - {how: pins, changes: [waist]}
---
-- builds/stays/2026-02-14.md --
---
measured: {waist: 25 1/2 in}
---
`)
	r := row(t, Of(j, build(t, j, "stays"), day("2026-02-14")), waist)
	if got := r.Words(inches); got != "fits: lace to a 1 1/2 in gap" || r.Caution() == "" {
		t.Errorf("got %q with caution %q", got, r.Caution())
	}
}

// many is a journal of builds, each with a wearer among 20, six notes with five
// measures of the garment, and a body measured in one of them.
func many(t testing.TB, builds int) *journal.Journal {
	var files strings.Builder
	for p := range 20 {
		fmt.Fprintf(&files, "-- people/p%d.md --\n---\nmeasured:\n", p)
		for s := range 6 {
			fmt.Fprintf(&files, "  - {date: 20%d-01-10, over: [shift, stays], bust: 36 in, waist: 28 in, hip: 39 in, bicep: 11 in, wrist: 6 in}\n", 20+s)
		}
		files.WriteString("---\n")
	}
	for b := range builds {
		fmt.Fprintf(&files, `-- builds/b%d/build.md --
---
for: p%d
over: [shift, stays]
fit: {bust: 1 in, waist: 0 in, hip: 2 in, bicep: 1 in, wrist: 1/2 in}
seams: [{name: side, count: 2, crosses: [bust, waist, hip]}, {name: sleeve, count: 2, crosses: [bicep, wrist]}]
---
`, b, b%20)
		for n := range 6 {
			fmt.Fprintf(&files, `-- builds/b%d/2025-0%d-01.md --
---
stage: fitting
measured: {bust: 36 in, waist: 28 in, hip: 40 in, bicep: 12 in, wrist: 7 in}
altered: [{seam: side, was: 1 in, now: 7/8 in}]
`, b, n+1)
			if n == b%6 {
				files.WriteString("body: [{over: [shift], bust: 36 in, waist: 28 in}]\n")
			}
			files.WriteString("---\n")
		}
	}
	return journaltest.Open(t, files.String())
}

func BenchmarkOf500Builds(b *testing.B) {
	j := many(b, 500)
	b.ReportAllocs()
	for b.Loop() {
		for _, garment := range j.Builds() {
			if table := Of(j, garment, day("2025-06-01")); len(table.Rows) != 5 || !table.Rows[0].Verdict.Judged() {
				b.Fatalf("%+v", table)
			}
		}
	}
}
