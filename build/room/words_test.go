package room

import (
	"fmt"
	"strings"
	"testing"

	"hussif/content/measure"
	"hussif/content/quantity"
)

func TestWhy(t *testing.T) {
	const (
		sewn     = "-- builds/jacket/2026-03-01.md --\n---\n{stage: sewing, hours: 1, sewed: [side]}\n---\n"
		unpicked = "-- builds/jacket/2026-03-02.md --\n---\n{stage: unpicking, hours: 1, opened: [side]}\n---\n"
		whipped  = "{name: side, length: 16, sewn: whip, crosses: {bust: 1}}, {name: back, length: 18, sewn: whip, crosses: {bust: 1}}"
	)
	for _, test := range []struct{ seams, notes, want string }{
		{"{name: side, count: 2, length: 8, crosses: {bust: 1}}, {name: back, length: 18, crosses: {bust: 1}}", "",
			"opens 2 in less than the next / opens 2 in more than the first"},
		{"{name: side, count: 2, length: 8, crosses: {bust: 1}}, {name: back, length: 16.001, crosses: {bust: 1}}", "",
			"opens a little less than the next / opens a little more than the first"},
		{"{name: side, count: 2, length: 8, crosses: {bust: 1}}, {name: back, length: 16, crosses: {bust: 1}}", "",
			"opens 1 fewer seam than the next / opens 1 more seam than the first"},
		{"{name: side, count: 3, length: 8, crosses: {bust: 1}}, {name: back, length: 24, crosses: {bust: 1}}", "",
			"opens 2 fewer seams than the next / opens 2 more seams than the first"},
		{"{name: side, length: 16, crosses: {bust: 1}}, {name: back, length: 16, crosses: {bust: 1}}", "",
			"comes to the same as side and stands first by name"},
		{"{name: side, length: 16, crosses: {bust: {now: 1, times: 2}}}, {name: back, length: 16, crosses: {bust: 1}}", "",
			"lets edges out 1/4 in less than the next / lets edges out 1/4 in more than the first"},
		{whipped, sewn + unpicked, "takes 15 min less than the next / takes 15 min more than the first"},
		{whipped, sewn, "opens 2 in less than the next / opens 2 in more than the first"},
		{whipped, unpicked, "opens 2 in less than the next / opens 2 in more than the first"},
		{"{name: side, length: 16, crosses: {bust: 1}}, {name: back, crosses: {bust: 1}}", "",
			"opens 1 fewer seam of unknown length than the next best way, by back"},
		{"{name: side, length: 16, crosses: {bust: 1}}, {name: back, length: 22, crosses: {bust: 1}}", "",
			"opens 6 in less than the next best way, by back"},
		{"{name: side, length: 16, crosses: {bust: 1}}", "", "no other seam gives enough"},
		{"{name: side, length: 16, crosses: {bust: 1/2}}, {name: back, length: 16, crosses: {bust: 1/2}}", "", "no fewer seams give enough"},
		{"{name: side, length: 16, crosses: {bust: 5/8}}", "",
			"a panel is needed, for all the seams together give 1/4 in too little at bust girth; there is no other way with as few panels"},
		{"{name: side, length: 16, crosses: {bust: 3/8}}, {name: back, length: 16, crosses: {bust: 3/8}}", "",
			"a panel is needed, for all the seams together give 1/2 in too little at bust girth; " +
				"comes to the same as side, with panels in side and stands first by name"},
	} {
		p := plan(t, garment("bust: 36", "bust: 35", "seams: ["+test.seams+"]")+test.notes)
		var got []string
		for i := range p.Options {
			got = append(got, p.Why(i, inches))
		}
		if got := strings.Join(got, " / "); got != test.want {
			t.Errorf("%s\ngot  %s\nwant %s", test.seams, got, test.want)
		}
	}
}

// What is shown of an edge adds up: the old allowance less what is let out is the new
// one, and so many edges give so much.
func TestWords(t *testing.T) {
	eighths := quantity.Format{Unit: quantity.Inches}
	for _, test := range []struct{ body, has, fields, want string }{
		{"bust: 36, waist: 28", "bust: 35 3/8, waist: 26 7/8",
			"closures: [{name: front pins, kind: pins, overlap: 1, keep: 1/2, crosses: [bust, waist]}]\n" +
				"seams: [{name: side, count: 2, piped: yes, crosses: {bust: {now: 1, at: 0}, waist: {now: 5/8, at: 7 1/2}}}]",
			"move front pins by 1/2 in at bust girth and natural waist girth, leaving a lap of 1/2 in; " +
				"let out side: at bust girth 1/16 in on each edge, from 1 in to 15/16 in, gives 1/4 in; " +
				"at natural waist girth 3/16 in on each edge, from 5/8 in to 7/16 in, gives 3/4 in; take out its piping and lay it in again"},
		{"bust: 36, waist: 28", "bust: 35 3/4, waist: 27",
			"closures: [{name: hooks, kind: hooks, overlap: 2, crosses: [bust, waist]}]", "move hooks by 1 in at natural waist girth, leaving a lap of 1 in"},
		{"bust: 36, waist: 28", "bust: 35, waist: 27 1/2",
			"closures: [{name: hooks, kind: hooks, overlap: 2, crosses: [bust, waist]}]",
			"move hooks by 1 in at bust girth, leaving a lap of 1 in; by 1/2 in at natural waist girth, leaving a lap of 1 1/2 in"},
		{"left upper arm: 12, right upper arm: 12", "left upper arm: 12, right upper arm: 11",
			"seams: [{name: sleeve, count: 2, now: 1/4, crosses: {upper arm: {at: 3}, wrist: {at: 16}, elbow: {at: 10}}}]",
			"open sleeve (right side only) for the panel; let a panel into sleeve (right side only), finished 1 in at right upper arm girth, coming to a point at elbow girth"},
		{"bust: 36", "bust: 34 7/8", "seams: [{name: side, count: 2, crosses: {bust: 1/2}}]",
			"let out side: at bust girth 1/4 in on each edge, from 1/2 in to 1/4 in, gives 1 in; " +
				"let 2 panels into side, finished 1/16 in at bust girth; that is no more than the error of measuring: try the garment on before cutting it"},
		{"bust: 36, back width: 14", "bust: 36, back width: 13", "",
			"across back width stays short by 1 in: no seam crosses the across back width"},
	} {
		p := plan(t, garment(test.body, test.has, test.fields))
		var got []string
		for _, m := range p.Moves {
			got = append(got, m.Words(eighths))
		}
		for _, o := range p.Options {
			for _, c := range o.Seams {
				got = append(got, c.Words(eighths))
			}
			for _, panel := range o.Panels {
				got = append(got, panel.Words(eighths))
			}
		}
		for _, u := range p.Unmet {
			got = append(got, u.Words(eighths))
		}
		if got := strings.Join(got, "; "); got != test.want {
			t.Errorf("%s\ngot  %s\nwant %s", test.fields, got, test.want)
		}
	}
}

func TestHoldings(t *testing.T) {
	p := plan(t, garment("bust: 36, waist: 28", "bust: 34, waist: 26", `
closures:
  - {name: front, kind: pins, overlap: 1, keep: 1/2, crosses: [bust, waist]}
  - {name: waist tie, kind: ties, where: waist, crosses: waist, overlap: 2}
  - {name: apron, kind: hooks, crosses: waist}
adjusts: [{how: ties, where: waist, lap: 1 to 2, measured at: 2, changes: bust}]
seams:
  - {name: side, count: 2, crosses: {bust: 1, waist: 5/8}}
  - {name: back, crosses: {bust: 1/4, waist: 9/32}}
  - {name: front seam, clipped: yes, crosses: {bust: 1}}
  - {name: yoke, crosses: bust}
`))
	var got []string
	for _, h := range p.Holdings() {
		for _, s := range h.From {
			got = append(got, fmt.Sprintf("%s, %s: %s", h.Point, s.Name, s.Words(inches)))
		}
	}
	want := `bust girth, front: 1/2 in (a lap of 1 in, of which 1/2 in stays)
bust girth, side: 3 in: 3/4 in on each of 4 edges (1 in, of which 1/4 in stays)
bust girth, back: nothing: all there is has to stay
bust girth, front seam: nothing: it is clipped
bust girth, yoke: nothing: its allowance there is not known
natural waist girth, front: 1/2 in (a lap of 1 in, of which 1/2 in stays)
natural waist girth, waist tie: 1 1/2 in (a lap of 2 in, of which 1/2 in stays)
natural waist girth, apron: nothing: its overlap is not noted
natural waist girth, side: 1 1/2 in: 3/8 in on each of 4 edges (5/8 in, of which 1/4 in stays)
natural waist girth, back: nothing: all there is has to stay`
	if got := strings.Join(got, "\n"); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	laced := Input{Needs: []Need{{Point: waist, By: inch}}, Closures: []Closure{{Name: "lacing", Overlap: 2 * inch, Crosses: []measure.Point{waist, bust}, InFit: []measure.Point{waist}}}}
	if got := laced.Holdings()[0].From[0].Words(inches); got != "nothing: "+adjustedAlready {
		t.Error(got)
	}
}
