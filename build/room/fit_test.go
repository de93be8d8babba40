package room

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"hussif/build/fit"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// What a plan says, written in the ledger, leaves the garment short nowhere by
// what package fit makes of it, and ample nowhere by more than rounding; and no
// edge with less than is kept.
func TestPlanInTheLedger(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 1780))
	panels, moves, oneSide := 0, 0, 0
	for range 300 {
		archive := randomJournal(random)
		j := journaltest.Open(t, archive)
		b := j.Builds()[0]
		table := fit.Of(j, b, day("2026-12-31"))
		p := For(j, b, table, wayin.Rates{})
		for _, o := range p.Options {
			b.Notes = append(b.Notes, written(p, o))
			after := fit.Of(j, b, day("2026-12-31"))
			for i, r := range after.Rows {
				before := table.Rows[i]
				if before.Verdict != fit.Short {
					if r.Delta != before.Delta {
						t.Fatalf("%s was %s and is %s\n%s", r.Point, inches.Signed(before.Delta), inches.Signed(r.Delta), archive)
					}
					continue
				}
				if stays := unmet(p, r.Point); stays > 0 {
					if r.Delta != -stays {
						t.Fatalf("%s: %s, to stay short by %s", r.Point, r.Words(inches), inches.Length(stays))
					}
					continue
				}
				if r.Delta < 0 || r.Delta > marked(p, o, r.Point) {
					t.Fatalf("%s: %s, %d\n%s\n%s", r.Point, r.Words(inches), r.Delta, said(p), archive)
				}
			}
			again := InputFor(j, b, after, wayin.Rates{})
			for _, s := range again.Seams {
				for _, l := range s.Levels {
					was := levelOf(p, s.Name, l.Point)
					if was.Edges == 0 {
						continue // short on one side before, and on neither now
					}
					if l.Now < min(was.Now, was.Keep) || l.Now > was.Now {
						t.Fatalf("%s has %s left at %s, to keep %s", s.Name, inches.Length(l.Now), l.Point, inches.Length(l.Keep))
					}
				}
			}
			b.Notes = b.Notes[:len(b.Notes)-1]
			panels += len(o.Panels)
			for _, s := range o.Seams {
				if s.Side != measure.Both {
					oneSide++
				}
			}
		}
		moves += len(p.Moves)
	}
	if panels < 50 || moves < 50 || oneSide < 20 {
		t.Errorf("only %d panels, %d closings and %d seams of one side were tried", panels, moves, oneSide)
	}
}

// marked is the most by which rounding to what can be marked makes a garment larger
// at a measure.
func marked(p Plan, o Option, at measure.Point) quantity.Length {
	edges := 1 // a closing
	for _, s := range o.Seams {
		for _, l := range s.Levels {
			if l.Point == at {
				edges += l.Edges
			}
		}
	}
	for _, panel := range o.Panels {
		for _, w := range panel.Widths {
			if w.Point == at {
				edges += w.Times
			}
		}
	}
	return p.Step * quantity.Length(edges)
}

func unmet(p Plan, at measure.Point) quantity.Length {
	for _, u := range p.Unmet {
		if u.Point == at {
			return u.By
		}
	}
	return 0
}

// written is a note that tells what a plan says was done.
func written(p Plan, o Option) *journal.Note {
	n := &journal.Note{Date: day("2026-12-01"), Stage: "altering"}
	for _, m := range p.Moves {
		for _, l := range m.Levels {
			n.Altered = append(n.Altered, journal.Altered{What: m.Closure, Changes: journal.Changes{{Point: l.Point, By: l.By}}})
		}
	}
	for _, s := range o.Seams {
		for _, e := range s.Levels {
			n.Altered = append(n.Altered, journal.Altered{
				Seam: journal.Word{Text: s.Seam}, At: journal.Levels{{Point: e.Point, Was: e.Was, Now: e.Now}},
				LetOut: quantity.Edges{By: e.By, Of: quantity.EachEdge},
			})
		}
	}
	for _, panel := range o.Panels {
		a := journal.Altered{Panel: "gusset", Seam: journal.Word{Text: panel.Seam}, Count: panel.Count}
		for _, w := range panel.Widths {
			a.Widths = append(a.Widths, journal.Change{Point: w.Point, By: w.Width})
		}
		n.Altered = append(n.Altered, a)
	}
	return n
}

// randomJournal is a garment with seams of the body and of the sleeves, which is
// short at some measures.
func randomJournal(random *rand.Rand) string {
	points := []string{"bust", "waist", "hip", "upper arm", "wrist"}
	eighths := func(least, most int) string { return fmt.Sprintf("%d/8", least+random.IntN(most-least)) }
	var body, has, seams []string
	for k, p := range points {
		body = append(body, p+": 20")
		if k == 3 && random.IntN(2) == 0 {
			has = append(has, "left "+p+": "+eighths(130, 170), "right "+p+": "+eighths(150, 170))
			continue
		}
		has = append(has, p+": "+eighths(130, 170))
	}
	for i := range 2 + random.IntN(4) {
		var crosses []string
		for k, p := range points {
			if k < 3 == (i%3 > 0) && random.IntN(4) > 0 {
				crosses = append(crosses, p+": "+eighths(1, 12))
			}
		}
		count := 2
		if i%3 > 0 {
			count = 1 + random.IntN(3)
		}
		seams = append(seams, fmt.Sprintf("{name: seam %d, count: %d, crosses: {%s}, length: %d}", i, count, strings.Join(crosses, ", "), 5+random.IntN(20)))
	}
	closing := "closures: [{name: front, overlap: 2, crosses: [" + points[random.IntN(3)] + "]}]\n"
	return garment(strings.Join(body, ", "), strings.Join(has, ", "), closing+"seams: ["+strings.Join(seams, ", ")+"]")
}

// A row of the ledger takes away what the seam can give from its day on.
func TestAfterTheLedger(t *testing.T) {
	// 2 in short when measured on 14 February.
	archive := garment("bust: 36", "bust: 34", "seams: [{name: side, count: 2, crosses: {bust: 1}}]")
	for day, want := range map[string]string{
		"2026-02-13": "open side, bust girth: 4 edges give 3/8 in each, 5/8 in to 1/4 in; 2 panels in side, 1/4 in wide at bust girth",
		"2026-02-15": "open side, bust girth: 4 edges give 1/8 in each, 5/8 in to 1/2 in",
		"2027-01-01": "open side, bust girth: 4 edges give 1/2 in each, 1 in to 1/2 in",
	} {
		row := "-- builds/jacket/" + day + ".md --\n---\naltered: [{seam: side, was: 1, now: 5/8}]\n---\n"
		if got := said(plan(t, archive+row)); got != want {
			t.Errorf("re-sewn on %s\ngot\n%s\nwant\n%s", day, got, want)
		}
	}
}

// What an adjustment can do is in the fit and is not given a second time by the
// closing of the same place.
func TestAdjustedIsNotCountedTwice(t *testing.T) {
	const seams = "\nseams: [{name: side, count: 2, crosses: {waist: 1}}]"
	for _, test := range []struct{ fields, why, want string }{
		{"closures: [{name: front, kind: pins, overlap: 1, crosses: waist}]", "",
			"move front at natural waist girth by 1/2 in to 1/2 in\nopen side, natural waist girth: 4 edges give 3/8 in each, 1 in to 5/8 in"},
		{"closures: [{name: edge, kind: pins, overlap: 1, crosses: waist}]\nadjusts: [{how: pins, where: front, lap: 1/2 to 1, measured at: 1, changes: waist}]",
			"its range is among the adjustments, and in the fit already",
			"open side, natural waist girth: 4 edges give 3/8 in each, 1 in to 5/8 in"},
		{"closures: [{name: front, kind: hooks, overlap: 1, crosses: waist}]\nadjusts: [{how: pins, where: front, lap: 1/2 to 1, measured at: 1, changes: waist}]",
			"its range is among the adjustments, and in the fit already",
			"open side, natural waist girth: 4 edges give 3/8 in each, 1 in to 5/8 in"},
		{"closures: [{name: hooked edge, where: Front, overlap: 1, crosses: waist}]\nadjusts: [{how: pins, where: front, lap: 1/2 to 1, measured at: 1, changes: waist}]",
			"its range is among the adjustments, and in the fit already",
			"open side, natural waist girth: 4 edges give 3/8 in each, 1 in to 5/8 in"},
		{"closures: [{name: back, kind: lacing, crosses: waist}]\nadjusts: [{how: lacing, gap: 0 to 1/2, changes: waist}]",
			"its range is among the adjustments, and in the fit already",
			"open side, natural waist girth: 4 edges give 3/8 in each, 1 in to 5/8 in"},
		{"closures: [{name: back, kind: lacing, overlap: 3, crosses: waist}]", "a lacing gives what its gap does, which goes under `adjusts`",
			"open side, natural waist girth: 4 edges give 1/2 in each, 1 in to 1/2 in"},
		{"closures: [{name: front, kind: hooks, overlap: 3}]", "which measures it crosses is not noted",
			"open side, natural waist girth: 4 edges give 1/2 in each, 1 in to 1/2 in"},
		{"closures: [{name: front, kind: hooks, crosses: waist}]", "its overlap is not noted",
			"open side, natural waist girth: 4 edges give 1/2 in each, 1 in to 1/2 in"},
		{"closures: [{name: front, kind: hooks, crosses: waist, overlap: 0}]", "",
			"open side, natural waist girth: 4 edges give 1/2 in each, 1 in to 1/2 in"},
	} {
		p := plan(t, garment("waist: 28", "waist: 26", test.fields+seams))
		if got := said(p); got != test.want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", test.fields, got, test.want)
		}
		if got := p.Closures[0].Why; got != test.why {
			t.Errorf("%s: %q, want %q", test.fields, got, test.why)
		}
	}
}

func TestLevels(t *testing.T) {
	for _, test := range []struct{ seam, settings, want string }{
		{"crosses: {bust: 1}", "", "bust girth: 3 in, keeps 1/4 in"},
		{"crosses: {bust: 1}", "keep: 3/8 in", "bust girth: 2 1/2 in, keeps 3/8 in"},
		{"keep: 1/2, crosses: {bust: 1}", "keep: 3/8 in", "bust girth: 2 in, keeps 1/2 in"},
		{"keep: 1/2, crosses: {bust: {now: 1, keep: 0}}", "", "bust girth: 4 in, keeps 0 in"},
		{"crosses: {bust: 1/8}", "", "bust girth: 0 in, keeps 1/4 in"},
		{"crosses: {bust: 1}, trimmed to: 3/8", "", "bust girth: 1/2 in, keeps 1/4 in"},
		{"crosses: {bust: 1}, piped: yes", "", "bust girth: 3 in, keeps 1/4 in"},
		{"crosses: {bust: 1}, clipped: yes", "", "bust girth: 0 in, keeps 1/4 in, it is clipped"},
		{"crosses: bust", "", "bust girth: 0 in, keeps 1/4 in, its allowance there is not known"},
		{"crosses: {wrist: 1}", "", "wrist girth: 1 1/2 in, keeps 1/4 in"},
		{"crosses: {left wrist: 1, right wrist: 1/2}", "", "left wrist girth: 1 1/2 in, keeps 1/4 in; right wrist girth: 1/2 in, keeps 1/4 in"},
		// Short is the plain upper arm, so the side with less room counts.
		{"crosses: {left upper arm: 1, right upper arm: 1/2}", "", "upper arm girth: 1/2 in, keeps 1/4 in"},
		{"crosses: {left upper arm: {now: 1, keep: 1/2}, right upper arm: {now: 1, keep: 1/4}}", "", "upper arm girth: 1 in, keeps 1/2 in"},
		{"crosses: {left upper arm: 1}", "", ""},
		{"crosses: {bust: {now: 1, times: 5000}}", "", "bust girth: 0 in, keeps 1/4 in, no garment has as many seams as that"},
		{"crosses: {bust: 200 m}", "", "bust girth: 0 in, keeps 1/4 in, no allowance is as wide as that"},
	} {
		archive := garment("upper arm: 12", "upper arm: 10", "seams: [{name: side, count: 2, "+test.seam+"}]")
		archive = strings.Replace(archive, "unit: in\n", "unit: in\n"+test.settings+"\n", 1)
		var got []string
		for _, l := range plan(t, archive).Seams[0].Levels {
			text := fmt.Sprintf("%s: %s, keeps %s", l.Point, inches.Length(l.Room()), inches.Length(l.Keep))
			if l.Why != "" {
				text += ", " + l.Why
			}
			got = append(got, text)
		}
		if got := strings.Join(got, "; "); got != test.want {
			t.Errorf("%s\ngot  %s\nwant %s", test.seam, got, test.want)
		}
	}
}
