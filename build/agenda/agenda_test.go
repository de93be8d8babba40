package agenda

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/build/effort"
	"hussif/build/stock"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/quantity"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
)

var inches = quantity.Format{Unit: quantity.Inches, Fraction: 8}

func day(text string) edtf.Day {
	d, err := edtf.ParseDay(text)
	if err != nil {
		panic(err)
	}
	return d
}

var today = day("2026-11-25")

func openDemo(t *testing.T) *journal.Journal {
	t.Helper()
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func agendaOf(j *journal.Journal) Agenda { return Of(j, stock.Gather(j), effort.Gather(j, today)) }

func outing(t *testing.T, j *journal.Journal, name string) Outing {
	t.Helper()
	o := j.Occasion(journal.Ref{To: name})
	if o == nil {
		t.Fatalf("no occasion %s", name)
	}
	return For(j, o, effort.Gather(j, today))
}

func heldBy(tasks []Task) []string {
	var out []string
	for _, task := range tasks {
		out = append(out, fmt.Sprintf("%s, %s", task.Build.Name(), task.State))
		for _, h := range task.Holds {
			out = append(out, "  "+h.Words(inches))
		}
	}
	return out
}

func layers(w Wearer) []string {
	var out []string
	for _, l := range w.Layers {
		name := l.Name
		if l.Build != "" {
			name += " = " + l.Build.Name()
		}
		out = append(out, name)
	}
	return out
}

// The shortages were worked by hand by somebody else: 14 - 6 1/2 - 3 1/2 yd of bone, and
// one of two reels used and none on hand; waist 28 3/4 - 30 wants 1 1/4 in more, and the
// right arm 1 in. The jacket's back was never taped over its layers.
func TestDemo(t *testing.T) {
	j := openDemo(t)
	tasks := agendaOf(j).Tasks
	if diff := cmp.Diff([]string{
		"oat-linen-stays, under way",
		"  synthetic-whalebone: 4 yd short: needs 14 yd, 6 1/2 yd used, 3 1/2 yd on hand",
		"  linen-thread: 1 reel short: needs 2 reels, 1 reel used, none on hand",
		"grey-wool-jacket, waiting for repair",
		"  measure across back width over shift, stays and two petticoats",
		"  short by 1 1/4 in with a 1/2 in lap at natural waist girth",
		"  short by 1 in at right upper arm girth",
	}, heldBy(tasks)); diff != "" {
		t.Error(diff)
	}
	stopped := tasks[0].Stopped
	if stopped.Note != "builds/oat-linen-stays/2026-11-21-right-side-begun" || stopped.Done != 1 ||
		!strings.HasPrefix(stopped.Words, "Three channels of twenty on the right front.") {
		t.Errorf("stopped at %+v", stopped)
	}
	if diff := cmp.Diff([]string{
		"right side, channels (3 of 20)", "join the pieces", "eyelets, 26 of them", "bind the top, then the tabs",
	}, stopped.Open); diff != "" {
		t.Error(diff)
	}
}

func TestDemoOutings(t *testing.T) {
	j := openDemo(t)
	for _, test := range []struct {
		occasion      string
		layers        []string
		garments      []string
		help          []string
		day           string
		trouble, worn []string
	}{
		{"market-day-2024",
			[]string{"shift", "stays", "petticoat", "Blue twill petticoat = blue-petticoat", "Grey broadcloth jacket = grey-wool-jacket"},
			[]string{"blue-petticoat", "grey-wool-jacket"}, nil, "2024-06-15",
			[]string{"blue-petticoat"}, []string{"blue-petticoat", "grey-wool-jacket"}},
		{"market-day-2027",
			[]string{"shift", "Oat linen stays = oat-linen-stays", "petticoat", "petticoat", "Madder jacket = madder-jacket"},
			[]string{"oat-linen-stays", "madder-jacket"}, []string{"oat-linen-stays: cannot be put on alone"}, "2026-11-25",
			[]string{"oat-linen-stays", "madder-jacket"}, nil},
		{"promenade-2025",
			[]string{"chemise", "corset", "petticoat", "Blue walking skirt = walking-skirt"}, []string{"walking-skirt"}, nil, "2025-08-30",
			nil, []string{"walking-skirt"}},
	} {
		t.Run(test.occasion, func(t *testing.T) {
			o := outing(t, j, test.occasion)
			if len(o.Wearers) != 1 || o.Day != day(test.day) {
				t.Fatalf("%d wearers on %s", len(o.Wearers), o.Day)
			}
			w := o.Wearers[0]
			if diff := cmp.Diff(test.layers, layers(w)); diff != "" || w.Contradicts {
				t.Error(diff)
			}
			var garments, help, trouble, worn []string
			for _, g := range w.Garments {
				garments = append(garments, g.Build.Name())
				if g.Trouble() {
					trouble = append(trouble, g.Build.Name())
				}
				if g.Worn {
					worn = append(worn, g.Build.Name())
				}
			}
			for _, h := range w.Help {
				help = append(help, h.Build.Name()+": "+h.Words())
			}
			for _, d := range []string{
				cmp.Diff(test.garments, garments), cmp.Diff(test.help, help), cmp.Diff(test.trouble, trouble), cmp.Diff(test.worn, worn),
			} {
				if d != "" {
					t.Error(d)
				}
			}
		})
	}
}

const wren = `
-- people/wren.md --
---
measured: [{date: 2026-01-10, over: [shift], bust: 36 in}]
---
`

func TestHolds(t *testing.T) {
	for _, test := range []struct {
		name, build, notes string
		want               []string
	}{
		{"nothing known", "state: planned", "", nil},
		{"no wearer", "fit: {bust: 1 in}", "", []string{"no wearer is named"}},
		{"a wearer, and measured", "for: wren\nover: [shift]\nfit: {bust: 1 in}", "", nil},
		{"not measured there, or not over that", "for: wren\nover: [shift, stays]\nfit: {bust: 1 in, hip: 2 in}", "",
			[]string{"measure bust girth and hip girth over shift and stays"}},
		{"what nobody asked for is not missed", "for: wren\nover: [shift]", "", nil},
		{"a question", "", "decided: [{question: 'Keep the  cuffs?'}]", []string{"to be decided: Keep the  cuffs?"}},
		{"an answer", "", "decided: [{question: 'Keep the cuffs?', chose: no}]", nil},
		{"a decision in a word is no question", "", "decided: [plain wrist]", nil},
		{"answered elsewhere", "", "decided: [{question: 'Keep the cuffs?'}, {question: 'keep the cuffs?', chose: no}]", nil},
		{"asked twice", "", "decided: [{question: 'Keep the cuffs?'}, {question: 'keep the cuffs?'}]", []string{"to be decided: Keep the cuffs?"}},
		{"turned out by itself", "", "decided: [{question: 'Keep the cuffs?'}]\nturned out: [{decision: 2026-02-01#decided-1, how: kept}]", nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			j := journaltest.Open(t, wren+"-- builds/gown/build.md --\n---\ngarment: gown\n"+test.build+"\n---\n"+
				"-- builds/gown/2026-02-01.md --\n---\nstage: planning\n"+test.notes+"\n---\n")
			var got []string
			for _, h := range agendaOf(j).Tasks[0].Holds {
				got = append(got, h.Words(inches))
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// The cloth goes to the build whose occasion comes first, wherever it stands in the
// journal.
func TestOrder(t *testing.T) {
	j := journaltest.Open(t, `
-- materials/twill.md --
---
---
-- notes/2026-01-01.md --
---
bought: [{material: twill, amount: 3 yd}]
---
-- occasions/fair.md --
---
date: 2027-05-01
---
-- occasions/ball.md --
---
date: 2027-01-01
---
-- occasions/over.md --
---
date: 2026-01-01
---
-- builds/a/build.md --
---
needs: [{material: twill, amount: 2 yd}]
---
-- builds/a/2026-03-01.md --
---
---
-- builds/b/build.md --
---
occasion: [fair, over]
needs: [{material: twill, amount: 2 yd}]
---
-- builds/c/build.md --
---
occasion: [fair, ball]
needs: [{material: twill, amount: 2 yd}]
---
-- builds/d/build.md --
---
occasion: over
---
-- builds/d/2026-04-01.md --
---
---
-- builds/e/build.md --
---
state: finished
occasion: ball
needs: [{material: twill, amount: 2 yd}]
---
-- builds/f/build.md --
---
state: waiting for repair
occasion: ball
needs: [{material: twill, amount: 2 yd}]
---
`)
	if diff := cmp.Diff([]string{
		"c, planned",
		"f, waiting for repair",
		"b, planned",
		"  twill: 1 yd short: needs 2 yd, 3 yd on hand, 2 yd of it for c",
		"d, under way",
		"  its occasion of 2026-01-01 is over",
		"a, under way",
		"  twill: 2 yd short: needs 2 yd, 3 yd on hand, 2 yd of it for c, 1 yd of it for b",
	}, heldBy(agendaOf(j).Tasks)); diff != "" {
		t.Error(diff)
	}
}

func TestLate(t *testing.T) {
	j := journaltest.Open(t, `
-- occasions/ball.md --
---
date: 2026-12-01
---
-- builds/gown/build.md --
---
occasion: ball
planned: {hours: 40}
---
-- builds/gown/2026-11-20.md --
---
hours: 8
---
`) // 32 h left at 2 h a week are 112 days, to the 17th of March
	if diff := cmp.Diff([]string{
		"gown, under way",
		"  late by 106 days for 2026-12-01: ready about 2027-03-17; it takes 37 h 20 min a week",
	}, heldBy(agendaOf(j).Tasks)); diff != "" {
		t.Error(diff)
	}
}

// What is private is not said, and what is open is said without its marks.
func TestStopped(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/gown/build.md --
---
---
-- builds/gown/2026-02-01.md --
---
---
- [ ] long done
-- builds/gown/2026-02-02.md --
---
stage: sewing
---
Sleeves are in.

- [ ] fell the *lining* of [[gown]]
- [x] press
- [ ] ask [[gown|her]] twice
- [ ] Private: hide the stain
- [ ] hem
  by lamplight

Private: not for others
- [ ] cry
-- builds/gown/2027-02-02.md --
---
---
To come.
`)
	got := agendaOf(j).Tasks[0].Stopped
	want := Stopped{
		Note: "builds/gown/2026-02-02", Day: day("2026-02-02"), Stage: "sewing", Words: "Sleeves are in.", Done: 1,
		Open: []string{"fell the lining of Gown", "ask her twice", "hem by lamplight"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestDress(t *testing.T) {
	for _, test := range []struct {
		name        string
		garments    []string // kind: layers
		want        []string
		contradicts bool
	}{
		{"one", []string{"jacket: shift, stays, two petticoats"}, []string{"shift", "stays", "petticoat", "petticoat", "B0 = b0"}, false},
		{"a garment that is a layer", []string{"jacket: shift, stays, petticoat", "petticoat: shift, stays", "stays: shift"},
			[]string{"shift", "B2 = b2", "B1 = b1", "B0 = b0"}, false},
		{"a second petticoat", []string{"jacket: shift, petticoat, petticoat", "petticoat: shift, petticoat"},
			[]string{"shift", "petticoat", "B1 = b1", "B0 = b0"}, false},
		{"two of a kind", []string{"jacket: shift", "jacket: shift"}, []string{"shift", "B0 = b0", "B1 = b1"}, false},
		{"layers of several", []string{"skirt: chemise, corset, petticoat", "blouse: chemise, corset, corset cover"},
			[]string{"chemise", "corset", "petticoat", "B0 = b0", "corset cover", "B1 = b1"}, false},
		{"layers in between", []string{"gown: shift, pocket, petticoat", "apron: shift, stays, petticoat, gown"},
			[]string{"shift", "pocket", "stays", "petticoat", "B0 = b0", "B1 = b1"}, false},
		{"they contradict each other", []string{"jacket: shift, stays", "gown: stays, shift"}, []string{"shift", "stays", "B0 = b0", "B1 = b1"}, true},
		{"unclothed, and of no kind", []string{": nothing"}, []string{"B0 = b0"}, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			var b strings.Builder
			b.WriteString(wren + "-- occasions/ball.md --\n---\ndate: 2027-01-01\n---\n")
			for i, g := range test.garments {
				kind, over, _ := strings.Cut(g, ": ")
				fmt.Fprintf(&b, "-- builds/b%d/build.md --\n---\nfor: wren\noccasion: ball\ngarment: %q\nover: [%s]\n---\n", i, kind, over)
			}
			w := outing(t, journaltest.Open(t, b.String()), "ball").Wearers[0]
			if diff := cmp.Diff(test.want, layers(w)); diff != "" || w.Contradicts != test.contradicts {
				t.Errorf("contradicts: %v\n%s", w.Contradicts, diff)
			}
		})
	}
}

// However layers are shared out among garments that agree, the list keeps the order of
// each and names nothing twice.
func TestDressKeepsEachOrder(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	all := []string{"shift", "stays", "pocket", "hoop", "petticoat", "apron"}
	for range 300 {
		var garments []*journal.Build
		for i := range 1 + random.IntN(5) {
			b := &journal.Build{Garment: fmt.Sprintf("kind %c", 'a'+i)}
			b.ID, b.Title = journal.ID(fmt.Sprint("builds/", i)), b.Garment
			for _, layer := range all {
				if random.IntN(2) == 0 {
					b.Over = append(b.Over, journal.Word{Text: layer})
				}
			}
			garments = append(garments, b)
		}
		layers, contradicts := dress(garments)
		at := make(map[string]int)
		for i, l := range layers {
			if _, twice := at[l.Name]; twice {
				t.Fatalf("%s twice", l.Name)
			}
			at[l.Name] = i
		}
		for _, b := range garments {
			order := []int{}
			for _, w := range b.Over {
				order = append(order, at[w.Text])
			}
			if order = append(order, at[b.Title]); contradicts || !slices.IsSorted(order) {
				t.Fatalf("%v of %s is out of order", b.Over, b.Title)
			}
		}
	}
}

func TestHelp(t *testing.T) {
	j := journaltest.Open(t, wren+`
-- occasions/ball.md --
---
date: 2027-01-01
---
-- builds/gown/build.md --
---
for: wren
occasion: ball
closures:
  - {name: back, kind: lacing, where: centre back, alone: no}
  - {name: front pins, kind: pins, alone: yes}
  - {name: cuffs, kind: buttons}
---
-- builds/gown/2026-02-01.md --
---
moves: {dress alone: no}
---
-- builds/stays/build.md --
---
for: wren
occasion: ball
---
-- builds/stays/2026-02-01.md --
---
moves: {dress alone: no}
---
-- builds/stays/2026-03-01.md --
---
moves: {dress alone: yes, sit: no}
---
-- builds/stays/2026-04-01.md --
---
moves: {sit: yes}
---
`)
	var got []string
	for _, h := range outing(t, j, "ball").Wearers[0].Help {
		got = append(got, h.Build.Name()+": "+h.Words())
	}
	if diff := cmp.Diff([]string{
		"gown: cannot be closed alone: back, lacing, at centre back",
		"gown: cannot be put on alone",
	}, got); diff != "" {
		t.Error(diff)
	}
}

// A garment of nobody comes last, and says what is to be done.
func TestGarmentOfNobody(t *testing.T) {
	o := outing(t, journaltest.Open(t, wren+`
-- occasions/ball.md --
---
date: 2027-01-01
worn: gown
---
-- builds/gown/build.md --
---
fit: {bust: 1 in}
---
-- builds/cap/build.md --
---
for: wren
occasion: ball
---
-- builds/mittens/build.md --
---
---
Not for the [[ball]].
`), "ball")
	if len(o.Wearers) != 2 || o.Wearers[0].Person != "people/wren" || o.Wearers[1].Person != "" {
		t.Fatalf("wearers %+v", o.Wearers)
	}
	gown := o.Wearers[1].Garments[0]
	if got := gown.Fits.Words(inches); got != "not begun; cannot be told: name the wearer" || !gown.Trouble() || !gown.Worn {
		t.Errorf("%s; worn %v", got, gown.Worn)
	}
}

func BenchmarkAll(b *testing.B) {
	j, _, err := journal.Open(generate.Journal(10_000, 1))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		agendaOf(j)
	}
}

// All builds are under way, so that every one has its fit, its shortages and its last
// note read.
func BenchmarkAllUnderWay(b *testing.B) {
	j, _, err := journal.Open(generate.Journal(10_000, 1))
	if err != nil {
		b.Fatal(err)
	}
	for _, build := range j.Builds() {
		build.State = journal.StateUnderWay
	}
	for b.Loop() {
		agendaOf(j)
	}
}
