package fit

import (
	"testing"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/measure"
)

const altering = `
-- builds/jacket/build.md --
---
seams:
  - {name: side, count: 2, crosses: [bust girth]}
  - {name: sleeve, count: 2, crosses: [upper arm girth]}
---
-- builds/jacket/2026-01-01-mock-up.md --
---
stage: mock-up
measured: {bust girth: 30 in}
---
-- builds/jacket/2026-02-01-fitting.md --
---
stage: fitting
measured: {bust girth: 34 in, upper arm girth: 12 in}
altered:
  - {seam: side, let out: 1/2 in each edge}
  - {seam: sleeve, at: left upper arm girth, was: 5/8 in, now: 1/4 in}
---
-- builds/jacket/2026-02-08-fitting.md --
---
stage: fitting
measured: {bust girth: 35 in, left upper arm girth: 12 3/4 in, right upper arm girth: 12 in}
altered:
  - {seam: side, at: bust girth}
---
-- builds/jacket/2026-02-15-fitting.md --
---
stage: fitting
measured: {bust girth: 36 in, upper arm girth: 12 3/4 in}
---
`

func TestChecks(t *testing.T) {
	j := journaltest.Open(t, altering)
	book := Ledger(j, build(t, j, "jacket"))
	type said struct {
		on       string
		point    measure.Point
		expected string
		off      string
		held     bool
		rows     int
	}
	want := []said{
		{"2026-02-08", bust, "36 in", "−1 in", false, 1},
		{"2026-02-08", left, "12 3/4 in", "0 in", true, 1},
		{"2026-02-15", right, "12 in", "+3/4 in", false, 0}, // by itself: nothing is noted of it
	}
	if len(book.Checks) != len(want) {
		t.Fatalf("%d checks: %+v", len(book.Checks), book.Checks)
	}
	for i, w := range want {
		c := book.Checks[i]
		got := said{c.Day.String(), c.Point, inches.Length(c.Expected), inches.Signed(c.Off), c.Held(), len(c.Rows)}
		if got != w {
			t.Errorf("got %+v, want %+v", got, w)
		}
	}
	if c := book.Checks[0]; c.Rows[0] != (Reason{"builds/jacket/2026-02-01-fitting", "altered", 0}) || c.Error != measure.RootSumSquares(6*mm, 6*mm) {
		t.Errorf("rests on %+v, error %d", c.Rows, c.Error)
	}
}

func TestEntryWords(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/jacket/2026-02-14.md --
---
altered:
  - {seam: sleeve, was: 5/8 in, now: 1/4 in}
  - {seam: sleeve, was: 1/4 in, now: 5/8 in}
  - {seam: side, let out: 1/2 in each edge}
  - {seam: side, taken in: 1/2 in all round}
  - {panel: gusset, count: 2}
  - {panel: gusset}
  - {what: hem let down, seam: hem}
  - {seam: side}
  - {at: bust girth}
---
-- builds/jacket/build.md --
`)
	want := []string{
		"sleeve seam let out: allowance 5/8 in to 1/4 in", "sleeve seam taken in: allowance 1/4 in to 5/8 in",
		"side seam let out 1/2 in each edge", "side seam taken in 1/2 in all round",
		"gusset let in, 2 of them", "gusset let in", "hem let down", "side seam re-sewn", "re-sewn",
	}
	for i, e := range Ledger(j, build(t, j, "jacket")).Entries {
		if got := e.Words(inches); got != want[i] {
			t.Errorf("got %q, want %q", got, want[i])
		}
	}
}

func TestBodyChange(t *testing.T) {
	j := journaltest.Open(t, `
-- people/wren.md --
---
measured:
  - {date: 2024-01-10, over: [shift, stays], bust girth: 36 in, upper arm girth: 11 in}
  - {date: 2025-01-10, over: [stays, shift], bust girth: unknown, left upper arm girth: 11 1/8 in}
  - {date: 2026-01-10, over: [shift, stays], bust girth: 37 in}
  - {date: 2026-05-10, waist: 28 in}
---
`)
	series := BodyChange(j, j.Person(journal.Ref{To: "wren"}))
	if len(series) != 2 || len(series[0].Sessions) != 1 || len(series[1].Sessions) != 3 {
		t.Fatalf("got %d series", len(series))
	}
	rows := series[1].Rows
	if len(rows) != 3 || rows[0].Point != bust || rows[1].Point != left || rows[2].Point != right {
		t.Fatalf("got rows %+v", rows)
	}
	last := rows[0].Steps[2]
	if last.Since != day("2024-01-10") || last.By != inch || !last.Larger || last.Error != measure.RootSumSquares(9*mm, 9*mm) {
		t.Errorf("bust: %+v", last)
	}
	if unknown := rows[0].Steps[1]; unknown.Value.Known() || unknown.Since != 0 || unknown.Larger {
		t.Errorf("an unknown value shows no change: %+v", unknown)
	}
	if arm := rows[1].Steps[1]; arm.By != inch/8 || arm.Larger {
		t.Errorf("an eighth is within the error: %+v", arm)
	}
	if arm := rows[2].Steps[1]; arm.Value.Known() {
		t.Errorf("the right arm was not measured: %+v", arm)
	}
}
