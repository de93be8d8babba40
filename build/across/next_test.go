package across

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"

	"hussif/build/fit"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/testdata/demo"
)

// one is a journal with one finished build of a draft, measured at the waist.
func one(garment, build string) string {
	return wren + `
-- patterns/draft.md --
-- builds/jacket/build.md --
---
for: wren
pattern: draft
over: [shift]
finished: 2025-03-01
` + build + `
---
-- builds/jacket/2025-03-01.md --
---
stage: finishing
measured: {waist: ` + garment + `}
---
`
}

func TestNextTime(t *testing.T) {
	for _, test := range []struct {
		name, garment, build string
		words                string
	}{
		// The whole shared over the seam edges: R. Robinson, Costume construction text,
		// ch. 17, Central Washington University. 3 in over 4 seams are 3/8 in an edge
		// (common practice).
		{"3 in over 4 seams", "26 in", "fit: {waist: 1 in}\nseams: [{name: side, count: 4, crosses: [waist]}]", "add 3/8 in to each edge, by one build only"},
		{"2 in off 2 seams", "31 in", "fit: {waist: 1 in}\nseams: [{name: side, count: 2, crosses: [waist]}]", "take 1/2 in off each edge, by one build only"},
		{"several seams", "26 in", "fit: {waist: 1 in}\nseams: [{name: side, count: 2, crosses: [waist]}, {name: centre back, crosses: [waist]}, {name: hem, count: 9}]", "add 1/2 in to each edge, by one build only"},
		{"to the middle of the ease wanted", "26 in", "fit: {waist: 0 to 2 in}\nseams: [{name: side, crosses: [waist]}]", "add 1 1/2 in to each edge, by one build only"},
		{"as wanted", "29 in", "fit: {waist: 1 in}", "leave it, by one build only"},
		// 9 mm for the body and 6 mm for the garment are 10.8 mm together (JCGM
		// 100:2008, 5.1.2): 3/8 in is less, 7/16 in more.
		{"within the error", "28 5/8 in", "fit: {waist: 1 in}", "leave it: too close to call (+3/8 in, error 7/16 in), by one build only"},
		{"outside of it", "28 9/16 in", "fit: {waist: 1 in}", "add 7/16 in in all: how many seam edges share it is not noted, by one build only"},
		{"more than can be taken off where no seam is", "30 in", "fit: {waist: 1 in}", "take 1 in off in all: how many seam edges share it is not noted, by one build only"},
		{"too little for one edge", "28 1/2 in", "fit: {waist: 1 in}\nseams: [{name: gore, count: 12, crosses: [waist]}]", "add 1/2 in in all over 24 edges, too little to mark on one, by one build only"},
		{"no ease named", "28 in", "", "no ease is named as wanted"},
		{"another layer", "28 in", "fit: {waist: 1 in}\nover: [shift, stays]", "no body measure over shift and stays"},
		// Measured with a 1 in gap, to be worn with 2 to 4 in: in the middle of that it
		// is 2 in larger, and so 1 in ample.
		{"laced", "28 in", "fit: {waist: 1 in}\nadjusts: [{how: lacing, gap: 2 to 4 in, measured at: 1 in, changes: [waist]}]\nseams: [{name: side, count: 2, crosses: [waist]}]", "take 1/4 in off each edge, by one build only"},
	} {
		t.Run(test.name, func(t *testing.T) {
			text := one(test.garment, test.build)
			if strings.Contains(test.build, "over:") {
				text = strings.Replace(text, "over: [shift]\nfinished", "finished", 1)
			}
			r := row(t, sheet(journaltest.Open(t, text), "2026-07-01"), waist)
			got := r.Words(inches)
			if r.Lacks == fit.NoEase {
				_, got, _ = strings.Cut(got, "and ")
			}
			if got != test.words {
				t.Errorf("got %q, want %q", got, test.words)
			}
		})
	}
}

// How often seams cross one reading is tested in package fit; here, that they cross
// it at all.
func TestCrossed(t *testing.T) {
	crossing := func(points ...measure.Point) journal.Crossings {
		var out journal.Crossings
		for _, p := range points {
			out = append(out, journal.Crossing{Point: p})
		}
		return out
	}
	for _, test := range []struct {
		name string
		seam journal.Seam
		at   measure.Point
		want int
	}{
		{"two side seams at the bust", journal.Seam{Count: 2, Crosses: crossing(waist, bust)}, bust, 2},
		{"one where no number is given", journal.Seam{Crosses: crossing(bust)}, bust, 1},
		{"a seam elsewhere", journal.Seam{Count: 2, Crosses: crossing(waist)}, bust, 0},
		{"two sleeves, one on either side", journal.Seam{Count: 2, Crosses: crossing(arm)}, left, 1},
		{"both sides named", journal.Seam{Count: 2, Crosses: crossing(left, right)}, right, 1},
		{"two seams of the left sleeve", journal.Seam{Count: 2, Crosses: crossing(left)}, left, 2},
		{"none of those on the right", journal.Seam{Count: 2, Crosses: crossing(left)}, right, 0},
		{"three that two sides cannot share", journal.Seam{Count: 3, Crosses: crossing(arm)}, left, 0},
		{"as it says", journal.Seam{Count: 3, Crosses: journal.Crossings{{Point: arm, Times: 2}}}, left, 2},
	} {
		if got := crossed(measure.Standard(), &test.seam, test.at); got != test.want {
			t.Errorf("%s: %d, want %d", test.name, got, test.want)
		}
	}
}

const several = wren + `
-- people/ottilie.md --
---
measured: [{date: 2025-01-01, over: [shift], waist: 30 in}]
---
-- patterns/draft.md --
-- builds/first/build.md --
---
for: wren
pattern: draft
garment: Jacket
over: [shift]
finished: 2025-03-01
fit: {waist: 3 in, bust girth: 2 in}
seams: [{name: side, count: 2, crosses: [waist]}]
adjusts: [{how: lacing, gap: 0 to 2 in, measured at: 2 in, changes: [waist]}]
---
-- builds/first/2025-03-01.md --
---
measured: {waist: 30 in, bust girth: 37 in, left upper arm girth: 12 in}
---
-- builds/second/build.md --
---
for: ottilie
pattern: draft
garment: jacket
over: [shift]
finished: 2025-06-01
fit: {waist: 1 in}
---
-- builds/second/2025-06-01.md --
---
measured: {waist: 29 in}
---
-- builds/third/build.md --
---
for: wren
pattern: draft
garment: jacket
state: planned
over: [shift]
fit: {waist: 1 in, bust girth: {accepts: ample}}
adjusts: [{how: lacing, gap: 0 to 2 in, measured at: 1 in, changes: [waist]}]
---
-- builds/other/build.md --
---
for: wren
garment: gown
finished: 2025-06-01
---
`

func TestReckonedByTheNewest(t *testing.T) {
	j := journaltest.Open(t, several)
	s := sheet(j, "2026-07-01")
	if s.Like != "builds/third" {
		t.Fatalf("reckoned by %s", s.Like)
	}
	r := row(t, s, waist)
	// The first was taped 1 in wider open than the third will be; nobody knows of the
	// second. (29 + 29)/2, the ease of the third, and the seams of the first.
	if r.Pattern != (Figure{29 * inch, 0}) || r.Builds[0].Closed != -inch || r.Change != 28*inch+inch-29*inch || r.Edges != 4 {
		t.Errorf("waist: %+v", r)
	}
	if r := row(t, s, bust); r.Wanted == nil || r.Wanted.From.Record != "builds/first" || r.Change != 36*inch+2*inch-37*inch {
		t.Errorf("the ease of the bust is named by the first: %+v", r)
	}
	if r := row(t, s, right); len(r.Builds) != 0 || r.Words(inches) != "no build was measured here at its first finish" {
		t.Errorf("right arm: %q, %+v", r.Words(inches), r)
	}
	ottilie := Pattern(j, j.Pattern(journal.Ref{To: "draft"}), j.Person(journal.Ref{To: "ottilie"}), day("2026-07-01"))
	if r := row(t, ottilie, waist); ottilie.Like != "builds/second" || r.Change != 30*inch+inch-(29*inch+inch/2) || r.Pattern.Spread != inch || r.Error != measure.RootSumSquares(6*mm, inch/2, 9*mm) {
		t.Errorf("for Ottilie, like %s: %+v", ottilie.Like, r)
	}
	if early := sheet(j, "2025-04-01"); len(early.NotCounted) != 2 || len(row(t, early, waist).Builds) != 1 {
		t.Errorf("in April the second was not finished: %+v", early)
	}
}

func TestNotCounted(t *testing.T) {
	j := journaltest.Open(t, wren+`
-- patterns/draft.md --
---
changed: [{what: fuller, measures: {bust girth: 1 in}}]
---
-- builds/a-under-way/build.md --
---
pattern: draft
---
-- builds/b-taped-later/build.md --
---
pattern: draft
finished: 2025-03-01
---
-- builds/b-taped-later/2025-04-01.md --
---
measured: {waist: 28 in}
---
-- builds/c-mock-up/build.md --
---
pattern: draft
finished: 2025-03-01
---
-- builds/c-mock-up/2025-02-01.md --
---
stage: mock-up
measured: {waist: 28 in}
---
-- builds/d-altered/build.md --
---
pattern: draft
finished: 2025-03-01
---
-- builds/d-altered/2025-02-01.md --
---
stage: mock-up
measured: {bust girth: 36 in}
---
-- builds/d-altered/2025-02-15.md --
---
measured: {waist: 28 in, upper arm girth: 12 in, wrist girth: 7 in}
altered: [{what: taken in somewhat, at: [waist, wrist girth]}]
---
-- builds/d-altered/2025-03-01.md --
---
measured: {wrist girth: 6 3/4 in}
---
`)
	s := sheet(j, "2026-07-01")
	var said []string
	for _, n := range s.NotCounted {
		said = append(said, fmt.Sprintf("%s%s %v: %s", n.Build.Name(), n.From.Field, n.Points, n.Words()))
	}
	want := []string{
		"a-under-way []: not finished by then, or nobody noted the day",
		"b-taped-later []: never measured by its first finish",
		"c-mock-up []: only its mock-up was measured",
		".changed [bust girth]: changed on the pattern, on a day that is not noted",
		"d-altered [natural waist girth wrist girth]: altered before it was finished, by how much is not known",
		"d-altered [bust girth]: only its mock-up was measured",
	}
	slices.Sort(said)
	slices.Sort(want)
	if !slices.Equal(said, want) {
		t.Errorf("got  %s\nwant %s", strings.Join(said, "\n     "), strings.Join(want, "\n     "))
	}
}

func TestGarment(t *testing.T) {
	j := journaltest.Open(t, several)
	s := Garment(j, "jacket", j.Person(journal.Ref{To: "wren"}), day("2026-07-01"))
	r := row(t, s, bust)
	// The body was first measured in 2026, so nothing could be judged in 2025.
	if s.Pattern != "" || len(r.Builds) != 1 || r.Judged != 0 || r.Words(inches) != "" || r.OffWords(inches) != "no build could be judged here" {
		t.Errorf("%q, %q: %+v", r.Words(inches), r.OffWords(inches), r)
	}
	for _, test := range []struct {
		delta, words string
	}{
		{"-1", "short by 1 in"}, {"1", "ample by 1 in"}, {"0", "as wanted"}, {"1/8", "too close to call"},
	} {
		r := Row{Judged: 1, Off: Figure{Median: length(t, test.delta+" in")}, OffError: inch / 2}
		if got := r.OffWords(inches); got != test.words+", one build only" {
			t.Errorf("got %q", got)
		}
		r.Judged = 3
		if got := r.OffWords(inches); got != test.words+", the middle of 3 builds" {
			t.Errorf("got %q", got)
		}
	}
	if s := Garment(j, "jacket", nil, day("2026-07-01")); len(s.Rows) != 0 {
		t.Errorf("of nobody: %+v", s.Rows)
	}
}

func TestGarmentOfTheDemo(t *testing.T) {
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	s := Garment(j, "jacket", j.Person(journal.Ref{To: "hester"}), day("2026-11-25"))
	if got := row(t, s, bust).OffWords(inches); got != "as wanted, the middle of 2 builds" {
		t.Errorf("bust: %q", got)
	}
	// 8 1/4 - 6 1/4 = 2 in, wanted at most 1 in.
	if got := row(t, s, wrist).OffWords(inches); got != "ample by 1 in, one build only" {
		t.Errorf("wrist: %q", got)
	}
}

// The median is compared with a general-purpose library's: halfway between its
// lower and its upper empirical quantile.
func TestFigure(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	for range 500 {
		values := make([]quantity.Length, 1+random.IntN(12))
		for i := range values {
			values[i] = quantity.Length(random.IntN(40)) * mm
		}
		f := figure(values)
		up := make([]float64, len(values))
		down := make([]float64, len(values))
		for i, v := range values {
			up[i], down[i] = float64(v), -float64(v)
		}
		slices.Sort(up)
		slices.Sort(down)
		want := (stat.Quantile(0.5, stat.Empirical, up, nil) - stat.Quantile(0.5, stat.Empirical, down, nil)) / 2
		if float64(f.Median) != want || float64(f.Spread) != up[len(up)-1]-up[0] {
			t.Fatalf("%v: %+v, want a median of %v", values, f, want)
		}
	}
}

// many is a journal of builds of one draft that were cut, changed, altered and
// drawn on at random; amended holds more changes on the pattern's page.
func many(builds int, seed uint64, amended string) string {
	random := rand.New(rand.NewPCG(seed, 1))
	some := func(n int) string { return fmt.Sprintf("%d mm", 2*(random.IntN(n)-n/2)) }
	var b strings.Builder
	b.WriteString(wren + "-- patterns/draft.md --\n---\nchanged:\n")
	for m := range 4 {
		fmt.Fprintf(&b, "  - {date: 2024-0%d-15, what: redrawn, measures: {bust girth: %s}}\n", 2+2*m, some(10))
	}
	b.WriteString(amended + "---\n")
	for i := range builds {
		fmt.Fprintf(&b, `-- builds/b%02d/build.md --
---
for: wren
pattern: draft
over: [shift]
fit: {bust girth: 2 to 4 cm, waist: 2 cm, upper arm girth: 4 cm}
seams: [{name: side, count: 2, crosses: [bust girth, waist]}, {name: sleeve, count: 2, crosses: [upper arm girth]}]
---
`, i)
		month := 1 + random.IntN(8)
		note := func(month, day int, text string, args ...any) {
			fmt.Fprintf(&b, "-- builds/b%02d/2024-%02d-%02d.md --\n---\n", i, month, day)
			fmt.Fprintf(&b, text+"\n---\n", args...)
		}
		note(month, 1+random.IntN(20), "stage: cutting\npattern changed: {bust girth: %s, waist: %s}\non the pattern: %s", some(10), some(10), []string{"yes", "no"}[random.IntN(2)])
		note(month+1, 1, "stage: fitting\nmeasured: {bust girth: %s, waist: 70 cm}\naltered: [{seam: side, was: 20 mm, now: %d mm}]", fmt.Sprint(900+random.IntN(40), " mm"), 16+random.IntN(8))
		note(month+2, 1, "stage: finishing\nmeasured: {bust girth: %d mm, waist: %d mm, left upper arm girth: 30 cm}", 900+2*random.IntN(40), 700+2*random.IntN(40))
	}
	return b.String()
}

func TestACorrectedPatternIsLeft(t *testing.T) {
	for seed := range uint64(20) {
		before := sheet(journaltest.Open(t, many(5, seed, "")), "2026-07-01")
		var measures []string
		for _, r := range before.Rows {
			if r.Verdict != Untold {
				measures = append(measures, fmt.Sprintf("%s: %v mm", r.Point, float64(r.Change)/float64(mm)))
			}
		}
		amended := "  - {date: 2026-06-15, what: corrected, measures: {" + strings.Join(measures, ", ") + "}, on the pattern: yes}\n"
		after := sheet(journaltest.Open(t, many(5, seed, amended)), "2026-07-01")
		if len(measures) < 3 {
			t.Fatalf("only %v", measures)
		}
		for i, r := range after.Rows {
			if r.Verdict == Untold {
				continue
			}
			if r.Change != 0 || r.Words(inches) != "leave it" || r.Pattern.Spread != before.Rows[i].Pattern.Spread {
				t.Fatalf("%s: %+v after %+v", r.Point, r.Pattern, before.Rows[i].Pattern)
			}
		}
	}
}

func BenchmarkPatternOf50Builds(b *testing.B) {
	j := journaltest.Open(b, many(50, 1, ""))
	b.ReportAllocs()
	for b.Loop() {
		if s := sheet(j, "2026-07-01"); len(s.Rows) != 4 || len(s.Rows[0].Builds) != 50 {
			b.Fatalf("%+v", s.Rows)
		}
	}
}
