package effort

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/stat"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/quantity"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
)

func day(text string) edtf.Day {
	d, err := edtf.ParseDay(text)
	if err != nil {
		panic(err)
	}
	return d
}

var today = day("2026-11-25")

// build writes a build and its notes, each "DAY FIELDS" with "; " between fields.
func build(name, fields string, notes ...string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "-- builds/%s/build.md --\n---\n%s\n---\n", name, strings.ReplaceAll(fields, "; ", "\n"))
	for i, n := range notes {
		on, rest, _ := strings.Cut(n, " ")
		fmt.Fprintf(&b, "-- builds/%s/note-%c.md --\n---\ndate: %s\n%s\n---\n", name, 'a'+i, on, strings.ReplaceAll(rest, "; ", "\n"))
	}
	return b.String()
}

func work(t testing.TB, archive, build string) Work {
	t.Helper()
	return Gather(journaltest.Open(t, archive), today).Of(journal.ID("builds/" + build))
}

// The numbers of the demo were worked by hand: by somebody else the hours of the making,
// the pace of 12 1/2 h in four weeks and the 9th of February; the others here. The ratios of the
// four finished builds are 31.75/45 = 0.7056, 23.5/28 = 0.8393, 37/40 = 0.9250 and
// 16/16 = 1, so the quartiles are 0.7056 + 3/4 × 0.1337 = 0.8059, 0.8821 and
// 0.9250 + 1/4 × 0.0750 = 0.9438; less 26 h, of 60 h: 22.35, 26.93 and 30.63 h. At 3 1/8
// h a week those are 50.1, 60.3 and 68.6 days, and 34 h are 76.2.
func TestDemo(t *testing.T) {
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	book := Gather(j, today)
	stays := book.Of("builds/oat-linen-stays")
	if stays.Made != 26*time.Hour || stays.Rest != 34*time.Hour || stays.Pace != 3*time.Hour+7*time.Minute+30*time.Second {
		t.Errorf("the stays took %v, %v left, %v a week", stays.Made, stays.Rest, stays.Pace)
	}
	o := stays.Outlook
	if got := fmt.Sprint(o.AsPlanned, o.First, o.Middle, o.Last); got != "2027-02-09 2027-01-14 2027-01-24 2027-02-01" {
		t.Errorf("ready %s", got)
	}
	for _, test := range []struct{ got, want string }{
		{stays.HoursWords(), "26 h of 60 h planned, 34 h left"},
		{stays.PaceWords(), "3 h 8 min a week: 12 h 30 min in the last 28 days"},
		{stays.Forecast.Words(), "22 h 21 min to 30 h 38 min more: 4 past builds of all kinds took 0.71 to 1.00 of what was planned, the middle half of them 0.81 to 0.94"},
		{stays.OutlookWords(), "in time for 2027-04-24: ready 2027-01-14 to 2027-02-01"},
		{stays.Cost.Words(), "49.25 GBP of 85.00 GBP planned"},
		{book.Of("builds/grey-wool-jacket").HoursWords(), "31 h 45 min of 45 h planned, and 10 h 30 min since"},
		{book.Of("builds/grey-wool-jacket").Cost.Words(), "55.20 GBP of 90.00 GBP planned, and 14.00 GBP since"},
		{book.Of("builds/grey-wool-jacket").WearingWords(), "worn once, at 42 h 15 min and 69.20 GBP"},
		{book.Of("builds/madder-jacket").HoursWords(), "37 h of 40 h planned"},
		{book.Of("builds/walking-skirt").HoursWords(), "23 h 30 min of 28 h planned, and 2 h 30 min since"},
		{book.Of("builds/walking-skirt").WearingWords(), "worn once, at 26 h and 6.80 GBP"},
		{book.Of("builds/blue-petticoat").HoursWords(), "16 h of 16 h planned, and 2 h since"},
	} {
		if test.got != test.want {
			t.Errorf("%s\nwanted %s", test.got, test.want)
		}
	}
}

// gonum's LinInterp is definition 4 of Hyndman and Fan. On n values its quantile at
// ((n-1)p+1)/n is definition 7 at p. The example is that of a common spreadsheet's
// manual for its inclusive quartile, from memory.
func TestQuantile(t *testing.T) {
	past := func(ratios ...float64) []Past {
		var out []Past
		for _, r := range ratios {
			out = append(out, Past{Ratio: r})
		}
		return out
	}
	if got := quantile(past(1, 2, 4, 7, 8, 9, 10, 12), 0.25); got != 3.5 {
		t.Errorf("lower quartile %v", got)
	}
	random := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		n := 1 + random.IntN(20)
		ratios := make([]float64, n)
		for i := range ratios {
			ratios[i] = 0.2 + 2*random.Float64()
		}
		slices.Sort(ratios)
		for _, p := range []float64{0.25, 0.5, 0.75} {
			want := stat.Quantile((float64(n-1)*p+1)/float64(n), stat.LinInterp, ratios, nil)
			if got := quantile(past(ratios...), p); math.Abs(got-want) > 1e-9 {
				t.Fatalf("%v of %v: %v, gonum %v", p, ratios, got, want)
			}
		}
	}
}

const fair = "-- occasions/fair.md --\n---\ndate: 2027-01-20\n---\n" // 56 days on

// past writes finished builds of a kind that took so many hours of ten.
func past(kind string, hours ...int) string {
	var b strings.Builder
	for i, h := range hours {
		b.WriteString(build(fmt.Sprintf("%s-%d", kind, i), "garment: "+kind+"; planned: {hours: 10}; state: finished",
			fmt.Sprintf("2025-01-01 stage: sewing; hours: %d", h)))
	}
	return b.String()
}

// Worked by hand: 8 h in the last 28 days are 2 h a week, so 16 h take 56 days.
func TestOutlook(t *testing.T) {
	const gown = "garment: gown; occasion: fair; planned: {hours: 24}; state: under way"
	for _, test := range []struct {
		name    string
		archive string
		want    string
	}{
		{"on the day itself is in time", build("b", gown, "2026-11-01 hours: 8"),
			"in time for 2027-01-20: ready about 2027-01-20"},
		{"one hour more is late", build("b", strings.Replace(gown, "24", "25", 1), "2026-11-01 hours: 8"),
			"late by 3 days for 2027-01-20: ready about 2027-01-23; it takes 2 h 8 min a week"},
		{"the range decides", past("gown", 5, 10, 15) + build("b", gown, "2026-11-01 hours: 8"), // 0.75, 1, 1.25: 10, 16, 22 h
			"tight for 2027-01-20: ready 2026-12-30 to 2027-02-10; it takes 2 h a week"},
		{"all past builds took long", past("gown", 20, 20, 22) + build("b", gown, "2026-11-01 hours: 8"), // 2, 2, 2.1: 40, 40, 42.4 h
			"late by 84 days for 2027-01-20: ready 2027-04-14 to 2027-04-22; it takes 5 h a week"},
		{"no pace", build("b", gown, "2026-10-28 hours: 8"), "no pace yet for 2027-01-20; it takes 2 h a week"},
		{"the 28th day counts", build("b", gown, "2026-10-29 hours: 8"), "in time for 2027-01-20: ready about 2027-01-20"},
		{"not begun", build("b", "occasion: fair; planned: {hours: 24}"), "no pace yet for 2027-01-20; it takes 3 h a week"},
		{"no plan", build("b", "occasion: fair; state: under way", "2026-11-01 hours: 8"),
			"no hours are planned, so nothing can be said for 2027-01-20"},
		{"plan used up", build("b", gown, "2026-11-01 hours: 30"), "the planned hours are used up, so nothing can be said for 2027-01-20"},
		{"no occasion", build("b", "planned: {hours: 24}", "2026-11-01 stage: sewing; hours: 8"), "for no occasion: ready about 2027-01-20"},
		{"over", "-- occasions/old.md --\n---\ndate: 2026-01-01\n---\n" + build("b", "occasion: old; planned: {hours: 24}"),
			"its occasion of 2026-01-01 is over"},
		{"it lasts until today", "-- occasions/old.md --\n---\ndate: 2026-11-24\nuntil: 2026-11-25\n---\n" + build("b", "occasion: [fair, old]"),
			"no hours are planned, so nothing can be said for 2026-11-24"},
		{"finished", build("b", "occasion: fair; planned: {hours: 24}", "2026-11-01 stage: finishing; hours: 8"), ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			w := work(t, fair+test.archive, "b")
			if got := w.OutlookWords(); got != test.want {
				t.Errorf("%s\nwanted %s", got, test.want)
			}
			late := Gather(journaltest.Open(t, fair+test.archive), today).Late()
			if (len(late) == 1) != strings.HasPrefix(test.want, "late") {
				t.Errorf("late are %v", late)
			}
		})
	}
}

func TestRatios(t *testing.T) {
	const gown = "garment: Gown; planned: {hours: 10}"
	for _, test := range []struct{ name, archive, want string }{
		{"none", build("b", gown), "10 h more: as planned, for no finished build can tell how long things take"},
		{"one", past("cap", 8) + build("b", gown), "8 h more: the only past build, of all kinds, took 0.80 of what was planned"},
		{"two of the kind are too few", past("gown", 10, 10) + past("cap", 5) + build("b", gown),
			"7 h 30 min to 10 h more: 3 past builds of all kinds took 0.50 to 1.00 of what was planned, the middle half of them 0.75 to 1.00"},
		{"three of the kind", past("gown", 10, 10, 12) + past("cap", 5) + build("b", gown),
			"10 h to 11 h more: 3 past builds of the kind gown took 1.00 to 1.20 of what was planned, the middle half of them 1.00 to 1.10"},
		{"no hours, or no plan, tells nothing", build("c", "planned: {hours: 10}; state: finished") + build("d", "state: finished", "2025-01-01 hours: 3") + build("b", gown),
			"10 h more: as planned, for no finished build can tell how long things take"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := work(t, test.archive, "b").Forecast.Words(); got != test.want {
				t.Errorf("%s\nwanted %s", got, test.want)
			}
		})
	}
}

func TestHours(t *testing.T) {
	for _, test := range []struct {
		name, build, want string
		state             journal.State
	}{
		{"finishing goes on for days", build("b", "planned: {hours: 10}",
			"2026-01-01 stage: sewing; hours: 4", "2026-01-02 stage: finishing; hours: 2", "2026-01-03 stage: finishing; hours: 3",
			"2026-02-01 stage: altering; hours: 1", "2026-02-02 stage: finishing; hours: 1"),
			"9 h of 10 h planned, and 2 h since", journal.StateFinished},
		{"its page names the day", build("b", "finished: 2026-01-02", "2026-01-02 hours: 2", "2026-01-03 hours: 1"),
			"2 h, and 1 h since", journal.StateFinished},
		{"worn before anybody wrote of finishing", build("b", "planned: {hours: 10}",
			"2026-01-01 hours: 4", "2026-01-02 stage: worn; hours: 11", "2026-01-03 stage: altering; hours: 1"),
			"4 h of 10 h planned, and 1 h since", journal.StateFinished},
		{"its page says it is under way", build("b", "planned: {hours: 10}; state: under way",
			"2026-01-01 hours: 4", "2026-01-02 stage: finishing; hours: 2"),
			"6 h of 10 h planned, 4 h left", journal.StateUnderWay},
		{"finished, nobody knows how", build("b", "state: gone; planned: {hours: 10}", "2026-01-01 hours: 4"),
			"4 h of 10 h planned", journal.StateGone},
		{"days to come are left out", build("b", "planned: {hours: 10}", "2026-01-01 hours: 4", "2026-11-26 hours: 1"),
			"4 h of 10 h planned, 6 h left", journal.StateUnderWay},
		{"never below nothing", build("b", "planned: {hours: 10}", "2026-01-01 hours: 14"),
			"14 h of 10 h planned, none left", journal.StateUnderWay},
	} {
		t.Run(test.name, func(t *testing.T) {
			w := work(t, test.build, "b")
			if got := w.HoursWords(); got != test.want || w.State != test.state {
				t.Errorf("%s: %s\nwanted %s: %s", w.State, got, test.state, test.want)
			}
		})
	}
	w := work(t, build("b", "", "2026-01-01 stage: worn; hours: 9", "2026-01-02 stage: sewing; hours: 2", "2026-01-03 hours: 1",
		"2026-01-04 stage: cutting; hours: 3"), "b")
	var stages []string
	for _, s := range w.Stages {
		stages = append(stages, fmt.Sprint(s.Stage, " ", s.Made+s.Since))
	}
	if diff := cmp.Diff([]string{"cutting 3h0m0s", "sewing 2h0m0s", "worn 9h0m0s", " 1h0m0s"}, stages); diff != "" {
		t.Error(diff)
	}
}

func TestCost(t *testing.T) {
	const cloth = "-- materials/twill.md --\n---\n---\n"
	w := work(t, cloth+build("b", "planned: {cost: 20 EUR}; finished: 2026-01-02",
		"2026-01-01 spent: [{amount: 3.25 EUR}]; bought: [{material: twill, amount: 3 yd, cost: 20 EUR}, {material: twill, amount: 1 yd}]",
		"2026-02-01 stage: cleaned; spent: [4 GBP]",
		"2026-02-02 stage: worn", "2026-02-02 stage: worn", "2026-02-03 stage: worn", "2026-02-05 stage: worn"), "b")
	if got, want := w.Cost.Words(), "at least 23.25 EUR of 20.00 EUR planned, and 4.00 GBP since; 1 bought without a cost"; got != want {
		t.Errorf("%s\nwanted %s", got, want)
	}
	if over, ok := w.Cost.OverPlan(); !ok || over != (quantity.Money{Minor: 325, Currency: "EUR"}) {
		t.Errorf("over the plan by %v", over)
	}
	if got, want := w.WearingWords(), "worn 3 times, at 0 min and 7.75 EUR and 1.33 GBP each time"; got != want {
		t.Errorf("%s\nwanted %s", got, want)
	}
}

func TestOverPlan(t *testing.T) {
	for _, test := range []struct {
		fields, spent string
		over          int64
		ok            bool
	}{
		{"planned: {cost: 20 EUR}", "spent: [15 EUR]", -500, true},
		{"planned: {cost: 20 EUR}", "stage: sewing", -2000, true},
		{"planned: {cost: 20 EUR}", "spent: [15 EUR, 3 GBP]", 0, false},
		{"planned: {cost: 20 EUR}", "spent: [15 GBP]", 0, false},
		{"planned: {hours: 2}", "spent: [15 EUR]", 0, false},
	} {
		over, ok := work(t, build("b", test.fields, "2026-01-01 "+test.spent), "b").Cost.OverPlan()
		if ok != test.ok || ok && over.Minor != test.over {
			t.Errorf("%s, %s: %v, %v", test.fields, test.spent, over, ok)
		}
	}
}

func TestWords(t *testing.T) {
	for _, test := range []struct{ got, want string }{
		{work(t, build("b", ""), "b").WearingWords(), "not worn yet, as far as the journal tells"},
		{work(t, build("b", "", "2026-01-01 hours: 3; stage: finishing", "2026-01-02 stage: worn", "2026-01-03 stage: worn"), "b").WearingWords(),
			"worn twice, at 1 h 30 min each time"},
		{work(t, build("b", ""), "b").Cost.Words(), "nothing"},
		{work(t, build("b", ""), "b").PaceWords(), "no pace yet: no hours in the last 28 days"},
		{work(t, build("b", ""), "b").Forecast.Words(), ""},
		{work(t, build("b", ""), "b").OutlookWords(), "for no occasion"},
	} {
		if test.got != test.want {
			t.Errorf("%s\nwanted %s", test.got, test.want)
		}
	}
}

func TestWearings(t *testing.T) {
	const occasions = `
-- occasions/one.md --
---
date: 2026-01-01
until: 2026-01-02
worn: [b, b]
---
-- occasions/two.md --
---
date: 2026-02-01
worn: b
---
-- occasions/to-come.md --
---
date: 2027-02-01
worn: b
---
`
	for _, test := range []struct {
		name  string
		notes []string
		want  int
	}{
		{"as the occasions list it", nil, 2},
		{"a note of the second day", []string{"2026-01-02 stage: worn"}, 2},
		{"notes of both days", []string{"2026-01-01 stage: worn", "2026-01-02 stage: worn"}, 3},
		{"a note written later that names the occasion", []string{"2026-02-03 stage: worn; occasion: two"}, 2},
		{"on another day", []string{"2026-03-01 stage: worn"}, 3},
		{"a day to come", []string{"2027-03-01 stage: worn"}, 2},
	} {
		if got := work(t, occasions+build("b", "", test.notes...), "b").Wearings; got != test.want {
			t.Errorf("%s: %d", test.name, got)
		}
	}
}

// The more is logged, or the less is planned, the less is to come; the quartiles keep
// their order; and nothing is ever less than nothing.
func TestForecastIsMonotone(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for range 500 {
		var of []Past
		for range random.IntN(8) {
			of = append(of, Past{Ratio: 3 * random.Float64()})
		}
		r := pastRatios(of).of("")
		w := Work{Planned: time.Duration(1 + random.Int64N(int64(500*time.Hour))), Made: time.Duration(random.Int64N(int64(500 * time.Hour)))}
		f := forecast(&w, r)
		if f.Least < 0 || f.Least > f.Middle || f.Middle > f.Most {
			t.Fatalf("out of order: %+v", f)
		}
		more := Work{Planned: w.Planned, Made: w.Made + time.Duration(random.Int64N(int64(time.Hour)))}
		if g := forecast(&more, r); g.Least > f.Least || g.Middle > f.Middle || g.Most > f.Most {
			t.Fatalf("more done, more to come: %+v after %+v", g, f)
		}
		w.Pace, w.Day = 1+time.Duration(random.Int64N(int64(40*time.Hour))), today
		slower := w
		slower.Pace = 1 + w.Pace/2
		if w.readyAfter(f.Middle) > slower.readyAfter(f.Middle) && slower.Pace < w.Pace {
			t.Fatalf("slower and sooner at %v", w.Pace)
		}
	}
}

func BenchmarkGather(b *testing.B) {
	j, _, err := journal.Open(generate.Journal(10_000, 1))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		Gather(j, today)
	}
}
