package room

import (
	"fmt"
	"strings"
	"testing"

	"hussif/build/fit"
	"hussif/build/wayin"
	"hussif/content/edtf"
	"hussif/content/journal/journaltest"
	"hussif/content/measure"
	"hussif/content/quantity"
)

const inch = quantity.Inch

var (
	inches = quantity.Format{Unit: quantity.Inches, Fraction: 16}
	bust   = measure.Point{Measure: "bust girth"}
	waist  = measure.Point{Measure: "natural waist girth"}
)

func day(text string) edtf.Day {
	d, err := edtf.ParseDay(text)
	if err != nil {
		panic(err)
	}
	return d
}

// plan is the plan for the only build of a journal.
func plan(t testing.TB, archive string) Plan {
	t.Helper()
	j := journaltest.Open(t, archive)
	b := j.Builds()[0]
	return For(j, b, fit.Of(j, b, day("2026-12-31")), wayin.RatesOf(j))
}

// garment is a journal of one build with these fields, which is to measure as
// much as the body, and of which a note says what it measures.
func garment(body, has, fields string) string {
	var wants []string
	for pair := range strings.SplitSeq(body, ", ") {
		name, _, _ := strings.Cut(pair, ":")
		wants = append(wants, name+": 0")
	}
	return `
-- journal.yaml --
unit: in
-- people/wren.md --
---
measured: [{date: 2026-01-10, ` + body + `}]
---
-- builds/jacket/build.md --
---
for: wren
fit: {` + strings.Join(wants, ", ") + `}
` + fields + `
---
-- builds/jacket/2026-02-14.md --
---
stage: finishing
measured: {` + has + `}
---
`
}

// said tells a plan in a line or a few.
func said(p Plan) string {
	var out []string
	for _, m := range p.Moves {
		for _, l := range m.Levels {
			out = append(out, fmt.Sprintf("move %s at %s by %s to %s", m.Closure, l.Point, inches.Length(l.By), inches.Length(l.Now)))
		}
	}
	for _, o := range p.Options {
		out = append(out, saidOption(o))
	}
	for _, u := range p.Unmet {
		out = append(out, fmt.Sprintf("%s stays short by %s: %s", u.Point, inches.Length(u.By), u.Why))
	}
	return strings.Join(out, "\n")
}

func saidOption(o Option) string {
	var out []string
	for _, s := range o.Seams {
		text := "open " + s.Seam + onSide(s.Side)
		for _, e := range s.Levels {
			text += fmt.Sprintf(", %s: %d edges give %s each, %s to %s", e.Point, e.Edges, inches.Length(e.By), inches.Length(e.Was), inches.Length(e.Now))
		}
		out = append(out, text)
	}
	for _, p := range o.Panels {
		text := fmt.Sprintf("%d panels in %s", p.Count, p.Seam+onSide(p.Side))
		for _, w := range p.Widths {
			text += fmt.Sprintf(", %s wide at %s", inches.Length(w.Width), w.Point)
		}
		if p.Slight {
			text += ", hardly worth it"
		}
		out = append(out, text)
	}
	for _, w := range o.Warnings {
		out = append(out, "steep: "+w.Words(inches))
	}
	return strings.Join(out, "; ")
}

// Worked examples, by hand. In each the garment is to measure what the body does.
func TestFor(t *testing.T) {
	for _, test := range []struct{ name, body, has, fields, want string }{
		// One seam from 5/8 to 1/4 in adds 3/4 in (common practice).
		{"one seam", "bust: 36", "bust: 35.25",
			"seams: [{name: centre back, crosses: {bust: 5/8}}]",
			"open centre back, bust girth: 2 edges give 3/8 in each, 5/8 in to 1/4 in"},
		// Two side seams, each edge 1/2 in: 2 in in all (common practice).
		{"two seams", "bust: 36", "bust: 34",
			"seams: [{name: side, count: 2, crosses: {bust: 1}}]",
			"open side, bust girth: 4 edges give 1/2 in each, 1 in to 1/2 in"},
		// 3 in over four seams is 3/4 in a seam, 3/8 in on each of its edges: divide
		// what is to be added by the number of seams (R. Robinson, Costume construction
		// text, ch. 17, Central Washington University).
		{"four seams", "bust: 36", "bust: 33",
			"seams: [{name: panel, count: 4, crosses: {bust: 5/8}}]",
			"open panel, bust girth: 8 edges give 3/8 in each, 5/8 in to 1/4 in"},
		// Two side seams, each of four edges 1.5 cm: 93 cm becomes 99 cm (common
		// practice).
		{"in centimetres", "bust: 99 cm", "bust: 93 cm",
			"seams: [{name: side, count: 2, crosses: {bust: {now: 2 cm, keep: 5 mm}}}]",
			"open side, bust girth: 4 edges give 9/16 in each, 13/16 in to 3/16 in"},
		// 3 in over two kinds of seam, which only together can give as much.
		{"two kinds of seam", "bust: 36", "bust: 33",
			"seams: [{name: side, count: 2, crosses: {bust: 3/4}}, {name: back, count: 2, crosses: {bust: 3/4}}]",
			"open back, bust girth: 4 edges give 3/8 in each, 3/4 in to 3/8 in; open side, bust girth: 4 edges give 3/8 in each, 3/4 in to 3/8 in"},
		// 3 in: the four back edges have 1/4 in each, the side edges give the other
		// 2 in, 1/2 in each (the same rule, as far as each can give).
		{"one gives less", "bust: 36", "bust: 33",
			"seams: [{name: side, count: 2, crosses: {bust: 3/4}}, {name: back, count: 2, crosses: {bust: 1/2}}]",
			"open back, bust girth: 4 edges give 1/4 in each, 1/2 in to 1/4 in; open side, bust girth: 4 edges give 1/2 in each, 3/4 in to 1/4 in"},
		// A sleeve seam is one of a pair: 5/8 to 1/4 in gives each arm 3/4 in (common
		// practice).
		{"a pair", "upper arm: 12", "upper arm: 11.25",
			"seams: [{name: sleeve, count: 2, crosses: {upper arm: 5/8}}]",
			"open sleeve, upper arm girth: 2 edges give 3/8 in each, 5/8 in to 1/4 in"},
		{"one arm only", "left upper arm: 12, right upper arm: 12", "left upper arm: 11, right upper arm: 12",
			"seams: [{name: sleeve, count: 2, crosses: {upper arm: 1}}]",
			"open sleeve (left side only), left upper arm girth: 2 edges give 1/2 in each, 1 in to 1/2 in"},
		{"a panel in one sleeve", "left upper arm: 12, right upper arm: 12", "left upper arm: 10, right upper arm: 12",
			"seams: [{name: sleeve, count: 2, trimmed to: 1/4, crosses: [upper arm, wrist]}]",
			"open sleeve (left side only); 1 panels in sleeve (left side only), 2 in wide at left upper arm girth, 0 in wide at wrist girth"},
		{"both arms", "left upper arm: 12, right upper arm: 12", "left upper arm: 11, right upper arm: 11.5",
			"seams: [{name: sleeve, count: 2, crosses: {upper arm: 1}}]",
			"open sleeve, left upper arm girth: 2 edges give 1/2 in each, 1 in to 1/2 in, right upper arm girth: 2 edges give 1/4 in each, 1 in to 3/4 in"},
		// 5/8 in over four edges is 5/32 in on each, which nobody can mark.
		{"marked in sixteenths", "bust: 36", "bust: 35 3/8", "seams: [{name: side, count: 2, crosses: {bust: 1}}]",
			"open side, bust girth: 4 edges give 3/16 in each, 1 in to 13/16 in"},
		// An edge with 9/32 in to give is let out by 1/4 in.
		{"no finer than sixteenths", "bust: 36", "bust: 34", "seams: [{name: side, count: 2, crosses: {bust: 17/32}}, {name: back, crosses: {bust: 1}}]",
			"open back, bust girth: 2 edges give 1/2 in each, 1 in to 1/2 in; open side, bust girth: 4 edges give 1/4 in each, 9/16 in to 5/16 in"},
		{"only what is short", "bust: 36, waist: 28", "bust: 35, waist: 28",
			"seams: [{name: side, count: 2, crosses: {bust: 1, waist: 1}}]",
			"open side, bust girth: 4 edges give 1/4 in each, 1 in to 3/4 in"},
		{"too close to call", "bust: 36", "bust: 35 3/4", "seams: [{name: side, count: 2, crosses: {bust: 1}}]", ""},
		{"ample", "bust: 36", "bust: 38", "seams: [{name: side, count: 2, crosses: {bust: 1}}]", ""},
		{"nothing there", "bust: 36, back width: 14", "bust: 36, back width: 13", "seams: [{name: side, count: 2, crosses: {bust: 1}}]",
			"across back width stays short by 1 in: no seam crosses the across back width"},
		{"unclear how many", "upper arm: 12", "upper arm: 11", "seams: [{name: sleeve, count: 3, crosses: {upper arm: 1}}]",
			"upper arm girth stays short by 1 in: of the seam sleeve: 3 seams cannot be shared between two sides: say how often they cross one reading with `times`"},

		// Hooks are moved before a seam is opened (common practice), and give once.
		{"hooks", "waist: 28", "waist: 27", "closures: [{name: front, kind: hooks, overlap: 2, keep: 1, crosses: waist}]\nseams: [{name: side, count: 2, crosses: {waist: 1}}]",
			"move front at natural waist girth by 1 in to 1 in"},
		{"hooks and seams", "waist: 28", "waist: 26", "closures: [{name: front, kind: hooks, overlap: 1 1/2, crosses: waist}]\nseams: [{name: side, count: 2, crosses: {waist: 1}}]",
			"move front at natural waist girth by 1 in to 1/2 in\nopen side, natural waist girth: 4 edges give 1/4 in each, 1 in to 3/4 in"},
		{"hooks, and no seam", "waist: 28", "waist: 26", "closures: [{name: front, kind: hooks, overlap: 1 1/2, crosses: waist}]",
			"move front at natural waist girth by 1 in to 1/2 in\nnatural waist girth stays short by 1 in: no seam crosses the natural waist girth"},
		{"one closing rather than two", "waist: 28, bust: 36", "waist: 27, bust: 35", "closures: [{name: band, kind: hooks, overlap: 1, crosses: waist}, {name: front, kind: hooks, overlap: 2, crosses: [waist, bust]}]",
			"move front at natural waist girth by 1 in to 1 in\nmove front at bust girth by 1 in to 1 in"},
		{"one closing rather than two that give more", "bust: 36, waist: 28", "bust: 35, waist: 27", "closures: [{name: band, kind: hooks, overlap: 3, crosses: waist}, {name: front, kind: hooks, overlap: 2, crosses: [waist, bust]}]",
			"move front at bust girth by 1 in to 1 in\nmove front at natural waist girth by 1 in to 1 in"},

		// A gusset: the seam gives all it has where it is not enough, and the panel
		// the rest; at the waist the seam is enough and the panel comes to a point.
		{"a gusset", "bust: 36, waist: 28", "bust: 32, waist: 27", "seams: [{name: side, count: 2, crosses: {bust: {now: 1/2, at: 0}, waist: {now: 1, at: 8}}}]",
			"open side, bust girth: 4 edges give 1/4 in each, 1/2 in to 1/4 in, natural waist girth: 4 edges give 1/4 in each, 1 in to 3/4 in; 2 panels in side, 1 1/2 in wide at bust girth, 0 in wide at natural waist girth"},
		{"a slight panel", "bust: 36", "bust: 34 7/8", "seams: [{name: side, count: 2, crosses: {bust: 1/2}}]",
			"open side, bust girth: 4 edges give 1/4 in each, 1/2 in to 1/4 in; 2 panels in side, 1/16 in wide at bust girth, hardly worth it"},
		{"a panel in each sleeve", "upper arm: 12", "upper arm: 10", "seams: [{name: sleeve, count: 2, trimmed to: 1/4, crosses: upper arm}]",
			"open sleeve; 2 panels in sleeve, 2 in wide at upper arm girth"},
		{"one panel rather than two", "bust: 36", "bust: 32", "seams: [{name: side, count: 2, crosses: {bust: 1/4}}, {name: back, crosses: {bust: 1/4}}]",
			"open back; 1 panels in back, 4 in wide at bust girth"},

		{"clipped", "bust: 36", "bust: 35", "seams: [{name: side, count: 2, clipped: yes, crosses: {bust: 1}}, {name: back, crosses: {bust: 1}}]",
			"open back, bust girth: 2 edges give 1/2 in each, 1 in to 1/2 in"},
		{"clipped, but not so far", "bust: 36", "bust: 35", "seams: [{name: side, count: 2, clipped: yes, crosses: {bust: {now: 1, keep: 3/4}}}]",
			"open side, bust girth: 4 edges give 1/4 in each, 1 in to 3/4 in"},
		{"kept by the seam", "bust: 36", "bust: 35", "seams: [{name: side, count: 2, keep: 3/4, crosses: {bust: 1}}]",
			"open side, bust girth: 4 edges give 1/4 in each, 1 in to 3/4 in"},
		{"steep", "bust: 36, waist: 28", "bust: 34, waist: 28", "seams: [{name: side, count: 2, crosses: {bust: {now: 1, at: 0}, waist: {now: 1, at: 3}}}]",
			"open side, bust girth: 4 edges give 1/2 in each, 1 in to 1/2 in; steep: side seam: 1/2 in between bust girth and natural waist girth, which are 3 in apart; 1 in 8 lies flat"},
		{"just flat", "bust: 36, waist: 28", "bust: 34, waist: 28", "seams: [{name: side, count: 2, crosses: {bust: {now: 1, at: 0}, waist: {now: 1, at: 4}}}]",
			"open side, bust girth: 4 edges give 1/2 in each, 1 in to 1/2 in"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := said(plan(t, garment(test.body, test.has, test.fields))); got != test.want {
				t.Errorf("got\n%s\nwant\n%s", got, test.want)
			}
		})
	}
}

func TestBlends(t *testing.T) {
	hip := measure.Point{Measure: "hip girth"}
	thigh := measure.Point{Measure: "thigh girth"}
	left, right := thigh, thigh
	left.Side, right.Side = measure.Left, measure.Right
	at := func(p measure.Point, height quantity.Length) Level { return Level{Point: p, At: height, Placed: true} }
	out := func(p measure.Point, by quantity.Length) Edge { return Edge{Point: p, By: by} }
	for _, test := range []struct {
		name   string
		levels []Level
		out    []Edge
		want   string
	}{
		{"in whatever order they are listed", []Level{at(hip, 8*inch), at(bust, 0), at(waist, 4*inch)}, []Edge{out(waist, inch)}, "bust girth to natural waist girth 1 in; natural waist girth to hip girth 1 in"},
		{"both let out the same", []Level{at(bust, 0), at(waist, inch)}, []Edge{out(bust, inch), out(waist, inch)}, ""},
		{"two measures at one height", []Level{at(bust, 0), at(waist, 0)}, []Edge{out(bust, inch)}, "bust girth to natural waist girth 1 in"},
		{"at an unknown height", []Level{at(bust, 0), {Point: waist}}, []Edge{out(bust, inch)}, ""},
		{"each leg by itself", []Level{at(hip, 0), at(left, 8*inch), at(right, 8*inch)}, []Edge{out(left, inch)}, ""},
		{"a leg too steep", []Level{at(hip, 0), at(left, 7*inch), at(right, 7*inch)}, []Edge{out(left, inch)}, "hip girth to left thigh girth 1 in"},
		{"what both legs have is told once", []Level{at(waist, 0), at(hip, inch), at(left, 20*inch), at(right, 20*inch)}, []Edge{out(waist, inch)}, "natural waist girth to hip girth 1 in"},
	} {
		var got []string
		for _, b := range blends(&Seam{Name: "side", Levels: test.levels}, test.out) {
			got = append(got, fmt.Sprintf("%s to %s %s", b.From, b.To, inches.Length(b.By)))
		}
		if got := strings.Join(got, "; "); got != test.want {
			t.Errorf("%s: %q, want %q", test.name, got, test.want)
		}
	}
}
