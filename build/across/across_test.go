package across

import (
	"slices"
	"testing"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/testdata/demo"
)

const (
	inch = quantity.Inch
	mm   = quantity.Millimetre
)

var (
	inches = quantity.Format{Unit: quantity.Inches, Fraction: 16}
	bust   = measure.Point{Measure: "bust girth"}
	waist  = measure.Point{Measure: "natural waist girth"}
	arm    = measure.Point{Measure: "upper arm girth"}
	left   = measure.Point{Measure: "upper arm girth", Side: measure.Left}
	right  = measure.Point{Measure: "upper arm girth", Side: measure.Right}
	wrist  = measure.Point{Measure: "wrist girth"}
)

func day(text string) edtf.Day {
	d, err := edtf.ParseDay(text)
	if err != nil {
		panic(err)
	}
	return d
}

// sheet returns what the pattern called draft teaches for wren.
func sheet(j *journal.Journal, on string) Sheet {
	return Pattern(j, j.Pattern(journal.Ref{To: "draft"}), j.Person(journal.Ref{To: "wren"}), day(on))
}

func row(t testing.TB, s Sheet, p measure.Point) Row {
	t.Helper()
	i := slices.IndexFunc(s.Rows, func(r Row) bool { return r.Point == p })
	if i < 0 {
		t.Fatalf("no row for %s among %d", p, len(s.Rows))
	}
	return s.Rows[i]
}

func length(t testing.TB, text string) quantity.Length {
	t.Helper()
	l, err := quantity.ParseLength(text, quantity.NoUnit)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// The figures were worked by hand by somebody else, from the notes of the two
// jackets, for the pattern as it was first drawn. What reached the paper since
// is no longer to be added.
func TestDemo(t *testing.T) {
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	s := Pattern(j, j.Pattern(journal.Ref{To: "kestrel-jacket-draft"}), j.Person(journal.Ref{To: "hester"}), day("2026-11-25"))
	for _, test := range []struct {
		point                                measure.Point
		first, spread, drawn, change, onward string
		edges                                int
		words                                string
	}{
		{waist, "26 13/16 in", "1/8 in", "2 in", "3 7/16 in", "1 7/16 in", 6, "add 1/4 in to each edge"},
		{bust, "35 1/2 in", "0 in", "1/2 in", "1 1/2 in", "1 in", 4, "add 1/4 in to each edge"},
		{left, "12 1/4 in", "0 in", "1 1/4 in", "1 1/4 in", "0 in", 2, "leave it"},
		{right, "12 1/4 in", "0 in", "1 3/4 in", "2 in", "1/4 in", 2, "leave it: too close to call (+1/4 in, error 3/8 in)"},
		// By the madder jacket's ease of 1/2 to 1 in: 6 1/4 + 3/4 - (8 3/8 + 8 1/4)/2.
		{wrist, "8 5/16 in", "1/8 in", "0 in", "-1 5/16 in", "-1 5/16 in", 2, "take 11/16 in off each edge"},
	} {
		r := row(t, s, test.point)
		if got := r.Pattern.Median - r.Drawn; got != length(t, test.first) || r.Drawn != length(t, test.drawn) || r.Pattern.Spread != length(t, test.spread) {
			t.Errorf("%s: first drawn at %s, %s since, spread %s", test.point, inches.Length(got), inches.Signed(r.Drawn), inches.Length(r.Pattern.Spread))
		}
		if r.Change+r.Drawn != length(t, test.change) || r.Change != length(t, test.onward) {
			t.Errorf("%s: change %s, from the first drawing %s", test.point, inches.Signed(r.Change), inches.Signed(r.Change+r.Drawn))
		}
		if got := r.Words(inches); r.Edges != test.edges || got != test.words {
			t.Errorf("%s: %d edges, %q", test.point, r.Edges, got)
		}
	}
	// The body at the waist is carried over by one day's two readings of 9 mm each.
	if got := row(t, s, waist).Error; got != measure.RootSumSquares(6*mm, inch/16, 9*mm, measure.RootSumSquares(9*mm, 9*mm)) {
		t.Errorf("error at the waist %d", got)
	}
	if s.Like != "builds/madder-jacket" || len(s.NotCounted) != 0 {
		t.Errorf("like %s, not counted %+v", s.Like, s.NotCounted)
	}
}

const wren = `
-- people/wren.md --
---
measured: [{date: 2026-06-01, over: [shift], bust girth: 36 in, waist: 28 in, upper arm girth: 11 in}]
---
`

// A garment that measures 36 in at its finish on 2025-03-01 was cut on 2025-02-01.
func TestWhatCounts(t *testing.T) {
	for _, test := range []struct {
		name, mockUp, cut, fitting, after, pattern string
		want                                       string
		changed, altered, since                    string
	}{
		{name: "cut as drawn", want: "36 in"},
		{name: "changed in cutting", cut: "pattern changed: {bust girth: 1/2 in}\non the pattern: no", want: "35 1/2 in", changed: "1/2 in"},
		{name: "changed in cutting, nothing said of the paper", cut: "pattern changed: {bust girth: 1/2 in}", want: "35 1/2 in", changed: "1/2 in"},
		{name: "changed in cutting and on the paper", cut: "pattern changed: {bust girth: 1/2 in}\non the pattern: yes", want: "36 in", changed: "1/2 in", since: "1/2 in"},
		{name: "let out before it was finished", fitting: "altered: [{seam: side, was: 5/8 in, now: 1/2 in}]", want: "35 1/2 in", altered: "1/2 in"},
		{name: "taken in before it was finished", fitting: "altered: [{seam: side, taken in: 1/8 in each edge}]", want: "36 1/2 in", altered: "-1/2 in"},
		{name: "let out, and told as a change of the pattern too", fitting: "altered: [{seam: side, was: 5/8 in, now: 1/2 in}]\npattern changed: {bust girth: 1/2 in}", want: "35 1/2 in", changed: "1/2 in"},
		{name: "let out by 1/2 in, and more than that drawn", fitting: "altered: [{seam: side, was: 5/8 in, now: 1/2 in}]\npattern changed: {bust girth: 3/4 in}\non the pattern: yes", want: "36 1/4 in", changed: "3/4 in", altered: "-1/4 in", since: "3/4 in"},
		{name: "let out by nobody knows how much, but the change is known", fitting: "altered: [{seam: side, at: bust girth}]\npattern changed: {bust girth: 1/2 in}", want: "35 1/2 in", changed: "1/2 in"},
		{name: "let out, and the tape agrees", fitting: "measured: {bust girth: 35 1/2 in}\naltered: [{seam: side, was: 5/8 in, now: 1/2 in}]", want: "35 1/2 in", altered: "1/2 in"},
		{name: "let out, and the tape agrees within its error", fitting: "measured: {bust girth: 35 5/8 in}\naltered: [{seam: side, was: 5/8 in, now: 1/2 in}]", want: "35 1/2 in", altered: "1/2 in"},
		{name: "let out, and the tape says less", fitting: "measured: {bust girth: 35 1/2 in}\naltered: [{seam: side, was: 5/8 in, now: 1/4 in}]", want: "35 1/2 in", altered: "1/2 in"},
		{name: "two changes on two days", cut: "pattern changed: {bust girth: 1/2 in}", fitting: "pattern changed: {bust girth: 1/2 in}", want: "35 in", changed: "1 in"},
		{name: "the mock-up let out", fitting: "stage: mock-up\naltered: [{seam: side, was: 5/8 in, now: 1/4 in}]", want: "36 in"},
		{name: "the mock-up taped before and after", mockUp: "measured: {bust girth: 34 in}\naltered: [{seam: side, was: 5/8 in, now: 1/4 in}]", fitting: "stage: mock-up\nmeasured: {bust girth: 34 1/2 in}", want: "36 in"},
		{name: "let out afterwards", after: "altered: [{seam: side, was: 5/8 in, now: 1/4 in}]", want: "36 in"},
		{name: "drawn afterwards", after: "pattern changed: {bust girth: 1 in}\non the pattern: yes", want: "37 in", since: "1 in"},
		{name: "wished for afterwards", after: "pattern changed: {bust girth: 1 in}\non the pattern: no", want: "36 in"},
		{name: "drawn before it was cut", pattern: "{date: 2025-01-01, what: fuller, measures: {bust girth: 1 in}}", want: "36 in"},
		{name: "drawn after it was cut", pattern: "{date: 2025-02-02, what: fuller, measures: {bust girth: 1 in}}", want: "37 in", since: "1 in"},
		{name: "drawn twice on one day", pattern: "{date: 2025-02-02, what: fuller, measures: {bust girth: 1 in}}, {date: 2025-02-02, what: and again, measures: {bust girth: 1 in}}", want: "38 in", since: "2 in"},
		{name: "drawn and cut on one day", pattern: "{date: 2025-02-01, what: fuller, measures: {bust girth: 1 in}}", want: "36 in"},
		{name: "drawn and cut on one day, and told by both", cut: "pattern changed: {bust girth: 1 in}\non the pattern: yes", pattern: "{date: 2025-02-01, what: fuller, measures: {bust girth: 1 in}}", want: "36 in", changed: "1 in", since: "1 in"},
		{name: "said of the paper by its page alone", cut: "pattern changed: {bust girth: 1 in}", pattern: "{date: 2025-02-01, what: fuller, measures: {bust girth: 1 in}}", want: "36 in", changed: "1 in", since: "1 in"},
		{name: "not drawn", pattern: "{date: 2025-02-02, what: fuller, measures: {bust girth: 1 in}, on the pattern: no}", want: "36 in"},
		{name: "drawn after the day asked for", pattern: "{date: 2026-08-01, what: fuller, measures: {bust girth: 1 in}}", want: "36 in"},
	} {
		t.Run(test.name, func(t *testing.T) {
			j := journaltest.Open(t, wren+`
-- patterns/draft.md --
---
changed: [`+test.pattern+`]
---
-- builds/jacket/build.md --
---
for: wren
pattern: draft
over: [shift]
finished: 2025-03-01
fit: {bust girth: {ease: 1 in}}
seams: [{name: side, count: 2, crosses: [bust girth]}]
---
-- builds/jacket/2025-01-01.md --
---
stage: mock-up
`+test.mockUp+`
---
-- builds/jacket/2025-02-01.md --
---
stage: cutting
`+test.cut+`
---
-- builds/jacket/2025-02-15.md --
---
`+test.fitting+`
---
-- builds/jacket/2025-03-01.md --
---
stage: finishing
measured: {bust girth: 36 in}
---
-- builds/jacket/2025-04-01.md --
---
`+test.after+`
---
`)
			r := row(t, sheet(j, "2026-07-01"), bust)
			if len(r.Builds) != 1 || r.Pattern.Median != length(t, test.want) {
				t.Fatalf("the pattern measures %s by %+v", inches.Length(r.Pattern.Median), r.Builds)
			}
			b := r.Builds[0]
			for name, part := range map[string]struct {
				got  quantity.Length
				want string
			}{"changed": {b.Changed, test.changed}, "altered": {b.Altered, test.altered}, "since": {b.Since, test.since}} {
				if part.want == "" {
					part.want = "0 in"
				}
				if part.got != length(t, part.want) {
					t.Errorf("%s %s, want %s", name, inches.Signed(part.got), part.want)
				}
			}
			if (b.Changed != 0 || b.Altered != 0 || b.Since != 0) != (len(b.Reasons) > 0) {
				t.Errorf("for the reasons %+v", b.Reasons)
			}
			if b.Then.Garment.Length != 36*inch || b.Pattern != r.Pattern.Median {
				t.Errorf("got %+v", b)
			}
		})
	}
}

func TestDayOfCutting(t *testing.T) {
	for _, test := range []struct {
		name   string
		stages []journal.Stage // of a note each, on the first of each month
		want   string
	}{
		{"as noted", []journal.Stage{"planning", "sewing", "cutting"}, "2025-03-01"},
		{"before the first work", []journal.Stage{"planning", "mock-up", "sewing", "finishing"}, "2025-03-01"},
		{"nothing noted of the work", []journal.Stage{"planning"}, "2025-12-01"},
	} {
		b := &journal.Build{}
		for i, stage := range test.stages {
			b.Notes = append(b.Notes, &journal.Note{Date: edtf.DayOf(2025, 1+i, 1), Stage: stage})
		}
		if got := cut(b, day("2025-12-01")); got != day(test.want) {
			t.Errorf("%s: %s", test.name, got)
		}
	}
}

func TestReasons(t *testing.T) {
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	s := Pattern(j, j.Pattern(journal.Ref{To: "kestrel-jacket-draft"}), nil, day("2026-11-25"))
	want := []fit.Reason{
		{Record: "builds/madder-jacket/2025-01-11-cut", Field: "pattern changed"},
		{Record: "patterns/kestrel-jacket-draft", Field: "changed"},
	}
	r := row(t, s, bust)
	if got := r.Builds[1].Reasons; !slices.Equal(got, want) {
		t.Errorf("got %+v", got)
	}
	if r.Verdict != Untold || r.Lacks != fit.NoWearer || r.Pattern.Median != 36*inch {
		t.Errorf("for nobody: %+v", r)
	}
}
