package fit

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"hussif/content/journal/journaltest"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// altered is the effects of one ledger row on a garment with these seams, as a
// journal would hold them; or the reason why they cannot be told.
func altered(t testing.TB, seams, rows string) string {
	t.Helper()
	j := journaltest.Open(t, `
-- builds/jacket/build.md --
---
seams:
`+seams+`
---
-- builds/jacket/2026-02-14.md --
---
altered:
`+rows+`
---
`)
	var said []string
	for _, e := range Ledger(j, build(t, j, "jacket")).Entries {
		for _, f := range e.Effects {
			said = append(said, f.Point.String()+" "+inches.Signed(f.By))
		}
		if e.Why != "" {
			said = append(said, e.Why)
		}
	}
	return strings.Join(said, "; ")
}

func TestEffect(t *testing.T) {
	const (
		side   = "  - {name: side, count: 2, crosses: {bust girth: {now: 1 in}, natural waist girth: {now: 3/4 in}}}"
		back   = "  - {name: centre back, crosses: {bust girth: {now: 5/8 in}}}"
		sleeve = "  - {name: sleeve, count: 2, crosses: {upper arm girth: {now: 5/8 in}}}"
	)
	for _, test := range []struct{ name, seams, row, want string }{
		// Let-out of one seam, 5/8 to 1/4 in: +3/4 in (common practice).
		{"one seam", back, "  - {seam: centre back, was: 5/8 in, now: 1/4 in}", "bust girth +3/4 in"},
		// Two side seams, each edge +1/2 in: +2 in (common practice).
		{"two seams, each edge", side, "  - {seam: side, at: bust girth, let out: 1/2 in each edge}", "bust girth +2 in"},
		// The whole shared over the seam edges: 3 in over the 8 edges of 4 seams is
		// 3/8 in an edge. R. Robinson, Costume construction text, ch. 17, Central
		// Washington University.
		{"four seams, eight edges", "  - {name: panel, count: 4, crosses: [bust girth]}", "  - {seam: panel, let out: 3/8 in each edge}", "bust girth +3 in"},
		{"two seams, by the seam", side, "  - {seam: side, at: bust girth, let out: 1/2 in each seam}", "bust girth +1 in"},
		{"all round", side, "  - {seam: side, at: bust girth, let out: 1/2 in all round}", "bust girth +1/2 in"},
		{"taken in", side, "  - {seam: side, at: bust girth, taken in: 1/4 in each edge}", "bust girth −1 in"},
		{"a wider allowance takes in", side, "  - {seam: side, at: bust girth, was: 1/2 in, now: 3/4 in}", "bust girth −1 in"},
		{"all that the seam crosses", side, "  - {seam: side, was: 3/4 in, now: 1/2 in}", "bust girth +1 in; natural waist girth +1 in"},
		{"each level its own", side, "  - {seam: side, at: {bust girth: {was: 1 in, now: 1/2 in}, natural waist girth: {was: 3/4 in, now: 5/8 in}}}",
			"bust girth +2 in; natural waist girth +1/2 in"},
		{"a level that differs from the row", side, "  - {seam: side, was: 3/4 in, now: 1/2 in, at: {bust girth: {was: 1 in}, natural waist girth: {}}}",
			"bust girth +2 in; natural waist girth +1 in"},
		{"let out to nothing", side, "  - {seam: side, at: bust girth, was: 1/2 in, now: 0 in}", "bust girth +2 in"},
		{"a measure that the seam is not known to cross", side, "  - {seam: side, at: hip girth, was: 3/4 in, now: 1/2 in}", "hip girth +1 in"},
		{"by another name of the seam's letters", side, "  - {seam: Side, at: bust girth, was: 3/4 in, now: 1/2 in}", "bust girth +1 in"},

		{"one of a pair", sleeve, "  - {seam: sleeve, at: upper arm girth, was: 5/8 in, now: 1/4 in}", "upper arm girth +3/4 in"},
		{"two in each of a pair", "  - {name: sleeve, count: 4, crosses: [upper arm girth]}", "  - {seam: sleeve, was: 5/8 in, now: 1/4 in}", "upper arm girth +1 1/2 in"},
		{"named once for both sides", "  - {name: sleeve, crosses: [upper arm girth]}", "  - {seam: sleeve, was: 5/8 in, now: 1/4 in}", "upper arm girth +3/4 in"},
		{"three on a pair", "  - {name: sleeve, count: 3, crosses: [upper arm girth]}", "  - {seam: sleeve, was: 5/8 in, now: 1/4 in}",
			"3 seams cannot be shared between two sides: say how often they cross one reading with `times`"},
		{"three on a pair, with times", "  - {name: sleeve, count: 3, crosses: {upper arm girth: {times: 1}}}", "  - {seam: sleeve, was: 5/8 in, now: 1/4 in}", "upper arm girth +3/4 in"},
		{"times of the row before that of the crossing", "  - {name: sleeve, count: 3, crosses: {upper arm girth: {times: 1}}}", "  - {seam: sleeve, was: 5/8 in, now: 1/4 in, times: 2}", "upper arm girth +1 1/2 in"},
		{"one side let out", sleeve, "  - {seam: sleeve, at: left upper arm girth, was: 5/8 in, now: 1/4 in}", "left upper arm girth +3/4 in"},
		{"a seam of one side only", "  - {name: sleeve, count: 2, crosses: [left upper arm girth]}", "  - {seam: sleeve, was: 5/8 in, now: 1/4 in}", "left upper arm girth +1 1/2 in"},
		{"sides with allowances of their own", "  - {name: sleeve, count: 2, crosses: [left upper arm girth, right upper arm girth]}", "  - {seam: sleeve, at: upper arm girth, was: 5/8 in, now: 1/4 in}",
			"left upper arm girth +3/4 in; right upper arm girth +3/4 in"},

		{"a panel", side, "  - {panel: gusset, widths: {bust girth: 2 in, natural waist girth: 0 in}}", "bust girth +2 in; natural waist girth 0 in"},
		{"two panels", side, "  - {panel: gusset, count: 2, widths: {bust girth: 2 in}}", "bust girth +4 in"},
		{"a panel in each sleeve", sleeve, "  - {panel: gusset, count: 2, widths: {upper arm girth: 1 in}}", "upper arm girth +1 in"},
		{"a panel in one sleeve", sleeve, "  - {panel: gusset, widths: {left upper arm girth: 1 in}}", "left upper arm girth +1 in"},
		{"a panel and what its seams take", side, "  - {seam: side, at: bust girth, panel: gusset, count: 2, widths: {bust girth: 2 in}, was: 1/2 in, now: 3/4 in}", "bust girth +3 in"},
		{"a panel without widths", side, "  - {panel: gusset}", "it does not give the finished width of the panel"},

		{"said in all", side, "  - {seam: side, was: 3/4 in, now: 1/2 in, changes: {bust girth: 5/8 in}}", "bust girth +5/8 in"},
		{"no such seam", side, "  - {seam: sdie, was: 3/4 in, now: 1/2 in}", `this build has no seam "sdie", and the row names no measure`},
		{"no such seam at a measure", side, "  - {seam: sdie, at: bust girth, was: 3/4 in, now: 1/2 in}", `this build has no seam "sdie"`},
		{"a seam that crosses nothing", "  - {name: hem}", "  - {seam: hem, was: 3/4 in, now: 1/2 in}", `the seam "hem" crosses no measure, and the row names none`},
		{"no allowance before", side, "  - {seam: side, at: bust girth, now: 1/2 in}", "it does not say by how much"},
		{"no seam, but how many", side, "  - {at: bust girth, let out: 1/2 in each edge, times: 2}", "bust girth +2 in"},
		{"no seam, all round", side, "  - {at: bust girth, let out: 1/2 in all round}", "bust girth +1/2 in"},
		{"no seam, and not how many", side, "  - {at: bust girth, let out: 1/2 in each edge}", "it names no seam, and does not say how many there are"},
		{"in words only", side, "  - {what: hem let down}", "it does not say by how much, or at which measures"},
		{"too large to be true", side, "  - {seam: side, at: bust girth, let out: 900 km each edge}", "no allowance is as wide as that"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if test.name == "too large to be true" {
				test.row = strings.Replace(test.row, "900 km", "900000 m", 1)
			}
			if got := altered(t, test.seams, test.row); got != test.want {
				t.Errorf("got  %s\nwant %s", got, test.want)
			}
		})
	}
}

// Two side seams, each of four edges +1.5 cm: 93 cm becomes 99 cm (common
// practice).
func TestLetOutInCentimetres(t *testing.T) {
	j := journaltest.Open(t, `
-- journal.yaml --
unit: cm
-- builds/jacket/build.md --
---
seams: [{name: side, count: 2, crosses: [bust girth]}]
---
-- builds/jacket/2026-02-14.md --
---
measured: {bust girth: 93}
altered: [{seam: side, let out: 1.5 each edge}]
---
`)
	r := row(t, Of(j, build(t, j, "jacket"), day("2026-02-14")), bust)
	if got := j.Settings.Format.Length(r.Garment.Length); got != "99 cm" || !r.Garment.Expected() {
		t.Errorf("got %s, expected %t", got, r.Garment.Expected())
	}
}

// Let out and taken in again by the same, however it is counted, a garment is as
// it was.
func TestLetOutAndTakenIn(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 4))
	for range 30 {
		count := 2 * (1 + random.IntN(4))
		by := quantity.Format{Unit: quantity.Inches, Fraction: 64}.Length(quantity.Length(1+random.IntN(200)) * inch / 64)
		whole := quantity.Whole(1 + random.IntN(3))
		got := altered(t, fmt.Sprintf("  - {name: side, count: %d, crosses: [bust girth, upper arm girth]}", count),
			fmt.Sprintf("  - {seam: side, let out: %s %s}\n  - {seam: side, taken in: %[1]s %s}", by, whole))
		parts := strings.Split(got, "; ")
		if len(parts) != 4 {
			t.Fatalf("%d effects: %s", len(parts), got)
		}
		if undo := strings.ReplaceAll(strings.Join(parts[2:], "; "), "−", "+"); undo != strings.Join(parts[:2], "; ") {
			t.Fatalf("let out and taken in by %s %s: %s", by, whole, got)
		}
	}
}

func TestPerReading(t *testing.T) {
	s := sewing{catalogue: measure.Standard()}
	for count := 1; count <= 12; count++ {
		trunk, ok := s.perReading(count, bust, false)
		if trunk != count || !ok {
			t.Errorf("%d seams of the trunk cross a girth %d times", count, trunk)
		}
		n, ok := s.perReading(count, arm, false)
		if even := count%2 == 0; ok != (even || count == 1) || even && 2*n != count {
			t.Errorf("%d seams of two arms cross one of them %d times, %t", count, n, ok)
		}
	}
}
