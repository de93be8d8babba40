package fit

import (
	"strings"
	"testing"

	"hussif/content/journal/journaltest"
	"hussif/content/measure"
)

func TestAllowance(t *testing.T) {
	const unknown = "unknown"
	for _, test := range []struct{ name, seam, rows, want string }{
		{"of the crossing", "now: 1/2 in, crosses: {bust girth: {now: 1 in}}", "", "1 in"},
		{"of the seam", "now: 1/2 in, crosses: [bust girth]", "", "1/2 in"},
		{"nothing left", "now: 1/2 in, crosses: {bust girth: {now: 0 in}}", "", "0 in"},
		{"not given", "crosses: [bust girth]", "", unknown},
		{"another measure", "now: 1/2 in, crosses: [hip girth]", "", unknown},
		{"trimmed", "now: 1 in, trimmed to: 3/8 in, crosses: [bust girth]", "", "3/8 in"},
		{"trimmed, and no more is known", "trimmed to: 3/8 in, crosses: [bust girth]", "", "3/8 in"},
		{"narrower than it was trimmed to", "now: 1/4 in, trimmed to: 3/8 in, crosses: [bust girth]", "", "1/4 in"},
		{"re-sewn", "now: 1 in, crosses: [bust girth]", "{was: 1 in, now: 1/2 in}", "1/2 in"},
		{"re-sewn, and that is all that is known", "crosses: [bust girth]", "{now: 1/2 in}", "1/2 in"},
		{"re-sewn twice", "now: 1 in, crosses: [bust girth]", "{was: 1 in, now: 1/2 in}, {was: 1/2 in, now: 3/8 in}", "3/8 in"},
		{"re-sewn elsewhere", "now: 1 in, crosses: [bust girth, hip girth]", "{at: hip girth, was: 1 in, now: 1/2 in}", "1 in"},
		{"each level its own", "now: 1 in, crosses: [bust girth, hip girth]", "{at: {bust girth: {now: 3/4 in}}, was: 1 in, now: 1/2 in}", "3/4 in"},
		{"let out, and that is in what the page says", "now: 1 in, crosses: [bust girth]", "{let out: 1/4 in each edge}", "1 in"},
		{"let out by the seam, from what a row says", "now: 1 in, crosses: [bust girth]", "{now: 1 in}, {let out: 1/4 in each seam}", "7/8 in"},
		// Two seams have four edges (common practice).
		{"let out all round, from what a row says", "crosses: [bust girth]", "{now: 1 in}, {let out: 1 in all round}", "3/4 in"},
		{"taken in, from what a row says", "now: 2 in, crosses: [bust girth]", "{now: 1 in}, {taken in: 1/4 in each edge}", "1 1/4 in"},
		{"let out of what nobody noted", "crosses: [bust girth]", "{let out: 1/4 in each edge}", unknown},
		{"let out further than it goes", "now: 1 in, crosses: [bust girth]", "{now: 1 in}, {let out: 2 in each edge}", "0 in"},
		{"nobody knows how far, but what is left", "now: 1 in, crosses: [bust girth]", "{what: let out}", "1 in"},
		{"nobody knows how far", "now: 1 in, crosses: [bust girth]", "{now: 1 in}, {what: let out}", unknown},
		{"re-sewn, and trimmed", "trimmed to: 3/8 in, crosses: [bust girth]", "{was: 1 in, now: 1/2 in}", "3/8 in"},
		{"nobody knew how far", "now: 1 in, crosses: [bust girth]", "{what: let out}, {now: 1/2 in}", "1/2 in"},
		{"with a panel", "now: 1 in, crosses: [bust girth]", "{panel: gusset, widths: {bust girth: 2 in}}", "1 in"},
		{"with a panel, and re-sewn", "now: 1 in, crosses: [bust girth]", "{panel: gusset, widths: {bust girth: 2 in}, was: 1 in, now: 1/2 in}", "1/2 in"},
	} {
		t.Run(test.name, func(t *testing.T) {
			archive := "\n-- builds/jacket/build.md --\n---\nseams: [{name: side, count: 2, " + test.seam + "}, {name: other, now: 2 in}]\n---\n"
			if test.rows != "" {
				rows := "[{seam: Side, " + test.rows[1:] + "]"
				archive += "-- builds/jacket/2026-02-14.md --\n---\naltered: " + strings.ReplaceAll(rows, "}, {", "}, {seam: side, ") + "\n---\n"
			}
			archive += "-- builds/jacket/2026-02-15.md --\n---\naltered: [{seam: other, now: 1/16 in}]\n---\n"
			j := journaltest.Open(t, archive)
			b := build(t, j, "jacket")
			got := unknown
			if width, ok := Allowance(b, j.Settings.Catalogue, &b.Seams[0], bust, day("2026-02-15")); ok {
				got = inches.Length(width)
			}
			if got != test.want {
				t.Errorf("got %s, want %s", got, test.want)
			}
		})
	}
}

// What was altered after a day is undone for that day.
func TestAllowanceOfAnEarlierDay(t *testing.T) {
	const unknown = "unknown"
	for _, test := range []struct{ name, seam, rows, want string }{
		{"let out since", "now: 5/8 in", "{let out: 3/8 in each edge}", "1 in"},
		{"let out by the seam since", "now: 5/8 in", "{let out: 3/4 in each seam}", "1 in"},
		{"let out all round since", "now: 5/8 in", "{let out: 1 1/2 in all round}", "1 in"},
		{"taken in since", "now: 5/8 in", "{taken in: 1/8 in each edge}", "1/2 in"},
		{"twice", "now: 5/8 in", "{let out: 3/8 in each edge}, {taken in: 1/8 in each edge}", "7/8 in"},
		{"re-sewn since", "now: 5/8 in", "{was: 1 in, now: 5/8 in}", "1 in"},
		{"let out since, and then re-sewn", "now: 1/4 in", "{let out: 1/8 in each edge}, {was: 1/2 in, now: 1/4 in}", "5/8 in"},
		{"re-sewn since from nobody knows what", "now: 5/8 in", "{now: 5/8 in}", unknown},
		{"let out since by nobody knows how much", "now: 5/8 in", "{what: let out}", unknown},
		{"nothing on the page", "", "{let out: 3/8 in each edge}", unknown},
		{"nothing on the page, but in the ledger", "", "{was: 1 in, now: 5/8 in}", "1 in"},
		{"nothing since", "now: 5/8 in", "", "5/8 in"},
	} {
		rows := ""
		for row := range strings.SplitSeq(test.rows, "}, {") {
			if row = strings.Trim(row, "{}"); row != "" {
				rows += "{seam: side, " + row + "}, "
			}
		}
		j := journaltest.Open(t, "\n-- builds/jacket/build.md --\n---\nseams: [{name: side, count: 2, crosses: [bust girth], "+test.seam+"}]\n---\n"+
			"-- builds/jacket/2026-02-14.md --\n---\naltered: ["+rows+"]\n---\n")
		b := build(t, j, "jacket")
		got := unknown
		if width, ok := Allowance(b, j.Settings.Catalogue, &b.Seams[0], bust, day("2026-02-13")); ok {
			got = inches.Length(width)
		}
		if got != test.want {
			t.Errorf("%s: got %s, want %s", test.name, got, test.want)
		}
	}
}

// Of two sleeves of which one was let out, the narrower counts for both.
func TestAllowanceOfSides(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/jacket/build.md --
---
seams: [{name: sleeve, count: 2, crosses: {upper arm girth: {now: 5/8 in}}}]
---
-- builds/jacket/2026-02-14.md --
---
altered: [{seam: sleeve, at: left upper arm girth, was: 5/8 in, now: 1/4 in}]
---
`)
	b := build(t, j, "jacket")
	for p, want := range map[measure.Point]string{left: "1/4 in", right: "5/8 in", arm: "1/4 in"} {
		width, ok := Allowance(b, j.Settings.Catalogue, &b.Seams[0], p, day("2026-02-14"))
		if got := inches.Length(width); !ok || got != want {
			t.Errorf("%s: %s, %t, want %s", p, got, ok, want)
		}
	}
	if n, why := Times(j.Settings.Catalogue, &b.Seams[0], left); n != 1 || why != "" {
		t.Errorf("crossed %d times, %s", n, why)
	}
}
