package wayin

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"hussif/content/journal/journaltest"
	"hussif/content/measure"
	"hussif/content/quantity"
)

const inch = quantity.Inch

var inches = quantity.Format{Unit: quantity.Inches, Fraction: 16}

const jacket = `
-- journal.yaml --
unit: in
-- builds/jacket/build.md --
---
seams:
  - {name: side, count: 2, joins: [back, side front], length: 8, sewn: "Backstitch, linen thread",
     caught by: [armhole, {seam: waist binding, at: ends}]}
  - {name: sleeve, count: 2, joins: [sleeve], length: 18, sewn: backstitch, caught by: [{seam: armhole, at: ends}]}
  - {name: armhole, count: 2, joins: [sleeve, back, side front], length: 17, sewn: backstitch}
  - {name: waist binding, joins: [back, side front, skirts], length: 29, sewn: "fell stitch, silk", caught by: [hook tape]}
  - {name: hook tape, joins: [side front], sewn: fell stitch}
pieces:
  - {name: back}
  - {name: side front, cut: 2, front: the edge with the notch, right side: the glazed one}
  - {name: sleeve, cut: 2, marks: [two notches to the back, thread cross on the right side]}
  - {name: skirts, cut: 2, marks: [L chalked on the left one]}
---
`

// The ways in are worked out by hand (common practice: what was sewn last is
// unpicked first).
func TestFind(t *testing.T) {
	b := journaltest.Open(t, jacket).Builds()[0]
	for _, test := range []struct {
		seams  string
		out    string
		length string
	}{
		// Two side seams meet the waist binding at two places, 4 in each, and the
		// tape lies over both of these.
		{"side", "armhole 34 in, hook tape 8 in across waist binding, waist binding 8 in across side, side 16 in", "66 in"},
		{"Sleeve", "armhole 8 in across sleeve, sleeve 36 in", "44 in"},
		{"armhole", "armhole 34 in", "34 in"},
		{"side, sleeve", "armhole 34 in, hook tape 8 in across waist binding, sleeve 36 in, waist binding 8 in across side, side 16 in", "102 in"},
		{"waist binding", "hook tape unknown, waist binding 29 in", "29 in"},
		{"side, waist binding", "armhole 34 in, hook tape unknown, waist binding 29 in, side 16 in", "79 in"},
		{"", "", "0 in"},
	} {
		t.Run(test.seams, func(t *testing.T) {
			w := Find(b, Rates{}, strings.FieldsFunc(test.seams, func(r rune) bool { return r == ',' })...)
			if got := said(w.Out); got != test.out {
				t.Errorf("got  %s\nwant %s", got, test.out)
			}
			if got := inches.Length(w.Length); got != test.length {
				t.Errorf("got %s in all, want %s", got, test.length)
			}
			slices.Reverse(w.Back)
			if got := said(w.Back); got != test.out {
				t.Errorf("the way back, reversed, is %s", got)
			}
			if w.Unknown != len(w.LengthUnknown) || (w.Unknown > 0) != strings.Contains(test.out, "unknown") {
				t.Errorf("%d unknown lengths, %q", w.Unknown, w.LengthUnknown)
			}
			if len(w.Faults) > 0 {
				t.Errorf("faults: %v", w.Faults)
			}
		})
	}
}

func said(steps []Step) string {
	var out []string
	for _, s := range steps {
		text := s.Seam.Name.Text + " unknown"
		if s.Known {
			text = s.Seam.Name.Text + " " + inches.Length(s.Length)
		}
		if !s.Whole {
			text += " across " + strings.Join(s.Across, " and ")
		}
		out = append(out, text)
	}
	return strings.Join(out, ", ")
}

func TestAsked(t *testing.T) {
	for _, s := range Find(journaltest.Open(t, jacket).Builds()[0], Rates{}, "side").Out {
		if s.Asked != (s.Seam.Name.Text == "side") {
			t.Errorf("%s asked for: %t", s.Seam.Name.Text, s.Asked)
		}
	}
}

// A short seam is not opened further than it is long.
func TestNoLongerThanTheSeam(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/stays/build.md --
---
seams:
  - {name: side, count: 2, length: 9 in, caught by: {seam: tab binding, at: ends}}
  - {name: tab binding, length: 5 in}
---
`)
	if w := Find(j.Builds()[0], Rates{}, "side"); w.Length != 23*inch {
		t.Errorf("got %s", inches.Length(w.Length))
	}
}

// A centre back that ends where a left and a right waist seam meet crosses them in
// one place, and the left sleeve is got at through the left armhole.
func TestOneCrossingAndOneSide(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/jacket/build.md --
---
seams:
  - {name: centre back, length: 15 in, caught by: {seam: waist seam, at: ends}}
  - {name: waist seam, count: 2, length: 13 in}
  - {name: sleeve, count: 2, length: 16 in, piped: yes, caught by: [armhole, {seam: cuff band, at: ends}]}
  - {name: armhole, count: 2, length: 17 in, caught by: facing}
  - {name: cuff band, count: 2, length: 9 in}
  - {name: facing, length: 20 in}
---
`)
	g := Read(j.Builds()[0], Rates{})
	for _, test := range []struct {
		way  Way
		want string
	}{
		{g.Way("centre back"), "waist seam: where it crosses centre back, 4 in; centre back: whole, 15 in; 19 in to open"},
		{g.Way("sleeve"), "cuff band: where it crosses sleeve, 8 in; facing: whole, 20 in; armhole: whole, 17 in each, 34 in in all; " +
			"sleeve: whole, 16 in each, 32 in in all, piped; 94 in to open"},
		{g.WayTo(Target{2, measure.Left}), "cuff band: left side only, where it crosses sleeve, 4 in; facing: whole, 20 in; " +
			"armhole: left side only, whole, 17 in; sleeve: left side only, whole, 16 in, piped; 57 in to open"},
		{g.WayTo(Target{2, measure.Left}, Target{3, measure.Right}), "cuff band: left side only, where it crosses sleeve, 4 in; facing: whole, 20 in; " +
			"armhole: whole, 17 in each, 34 in in all; sleeve: left side only, whole, 16 in, piped; 74 in to open"},
	} {
		var got []string
		for _, s := range test.way.Out {
			got = append(got, s.Seam.Name.Text+": "+s.Words(inches))
		}
		if got := strings.Join(append(got, test.way.Load.Words(inches)), "; "); got != test.want {
			t.Errorf("got  %s\nwant %s", got, test.want)
		}
	}
}

func TestLoadWords(t *testing.T) {
	hour := Time{time.Hour, true}
	for want, l := range map[string]Load{
		"3 in to open": {Length: 3 * inch},
		"3 in to open, and 1 seam of unknown length":     {Length: 3 * inch, Unknown: 1},
		"2 seams of unknown length to open":              {Unknown: 2},
		"3 in to open, 1 h to open and 1 h to sew again": {Length: 3 * inch, Opening: hour, Sewing: hour},
		"3 in to open, 1 h to sew again":                 {Length: 3 * inch, Sewing: hour},
	} {
		if got := l.Words(inches); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestSlips(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/stays/build.md --
---
seams:
  - {name: side, length: 900000 m, caught by: [binding, {seam: binding, at: ends}, {seam: tape, at: ends}, tape]}
  - {name: binding, length: 30 in}
  - {name: tape, length: 20 in}
---
`)
	// The whole of both is opened, in whatever order the two are written.
	if w := Find(j.Builds()[0], Rates{}, "side"); w.Length != 50*inch || w.Unknown != 1 {
		t.Errorf("got %s, %d unknown", inches.Length(w.Length), w.Unknown)
	}
}

func TestFaults(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/jacket/build.md --
---
seams:
  - {name: lining, joins: [back, frunt], caught by: [collar, lining fell]}
  - {name: collar, caught by: [facing, facing]}
  - {name: facing, caught by: [lining, hem]}
  - {name: hem, caught by: [hem]}
  - {name: cuff, caught by: [collar]}
pieces: [back, front]
---
`)
	var got []string
	for _, f := range Find(j.Builds()[0], Rates{}, "cuff", "yoke").Faults {
		got = append(got, f.Text())
		if f.Kind != UnknownSeam && f.Word.Span.Text() != f.Word.Text || f.Word.Text == "" {
			t.Errorf("%s: about %q at %q", f.Text(), f.Word.Text, f.Word.Span.Text())
		}
	}
	want := []string{
		`no seam is called "lining fell"`,
		"each of these is said to be sewn later than the one before: collar, facing, lining, collar",
		"each of these is said to be sewn later than the one before: hem, hem",
		`no piece is called "frunt"`,
		`no seam joins the piece "front"`,
		`no seam is called "yoke"`,
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if Find(j.Builds()[0], Rates{}, "hem").Circular() != true || Find(journaltest.Open(t, jacket).Builds()[0], Rates{}, "side").Circular() {
		t.Error("a circle is not told from none")
	}
	if w := Find(j.Builds()[0], Rates{}, "cuff"); len(w.Out) != 5 || w.Out[1].Seam.Name.Text != "cuff" {
		t.Errorf("in a circle, all are opened in some order: %s", said(w.Out))
	}
}

func TestLoose(t *testing.T) {
	b := journaltest.Open(t, jacket).Builds()[0]
	for _, test := range []struct{ seams, want string }{
		// The sleeves are two parts of 18 in, the body one of 29.
		{"side", "sleeve: recorded edge cloth, missing body"},
		{"sleeve", ""},
		// Nothing stays sewn but the sleeves, each of which has 18 in.
		{"side, waist binding", "back: recorded, missing edge cloth; side front: recorded edge cloth, missing body; skirts: recorded body, missing edge cloth"},
	} {
		w := Find(b, Rates{}, strings.Split(test.seams, ", ")...)
		if got := looseSaid(w.Loose); got != test.want {
			t.Errorf("%s\ngot  %s\nwant %s", test.seams, got, test.want)
		}
	}
}

func looseSaid(loose []Loose) string {
	short := map[Mark]string{FrontEdge: " edge", RightSide: " cloth", BodySide: " body"}
	var out []string
	for _, l := range loose {
		text := l.Name + ": recorded"
		for _, m := range l.Recorded {
			text += short[m]
		}
		text += ", missing"
		for _, m := range l.Missing {
			text += short[m]
		}
		out = append(out, text)
	}
	return strings.Join(out, "; ")
}

func TestMarksInWords(t *testing.T) {
	for words, want := range map[string]string{
		"two notches to the back":        " edge",
		"thread cross on the right side": " cloth",
		"tailor's tack, wrong side":      " cloth",
		"the right one has a knot":       " body",
		"L":                              " body",
		"chalk line 2 in from the hem":   "",
		"left, front edge":               " edge body",
	} {
		j := journaltest.Open(t, "-- builds/a/build.md --\n---\npieces: [{name: p, cut: 2, marks: [\""+words+"\"]}]\n---\n")
		l := Read(j.Builds()[0], Rates{}).marks("p")
		if got := strings.TrimPrefix(strings.Split(looseSaid([]Loose{l}), ",")[0], "p: recorded"); got != want {
			t.Errorf("%q tells%s, want%s", words, got, want)
		}
	}
}

// What is cut double is two parts, unless a seam joins the two or they are sewn to
// what is cut once.
func TestPartsOfPairs(t *testing.T) {
	const sleeves = "\n  - {name: sleeve, count: 2, joins: [sleeve], length: 18 in}\n  - {name: armhole, count: 2, joins: [front, sleeve], length: 17 in}\n" +
		"pieces: [{name: front, cut: 2}, {name: back}, {name: sleeve, cut: 2}]\n---\n"
	for _, seam := range []string{
		"{name: centre front, joins: [front, back], length: 20 in}",
		"{name: side, count: 2, joins: [back, front], length: 10 in}",
	} {
		j := journaltest.Open(t, "-- builds/jacket/build.md --\n---\nseams:\n  - "+seam+sleeves)
		if got := looseSaid(Find(j.Builds()[0], Rates{}, "armhole").Loose); got != "sleeve: recorded, missing edge cloth body" {
			t.Errorf("%s: %s", seam, got)
		}
	}
	j := journaltest.Open(t, "-- builds/jacket/build.md --\n---\nseams:\n  - {name: centre front, joins: [front], length: 20 in}"+strings.Replace(sleeves, ", {name: back}", "", 1))
	if got := looseSaid(Find(j.Builds()[0], Rates{}, "armhole").Loose); got != "sleeve: recorded, missing edge cloth body" {
		t.Errorf("a seam down the front: %s", got)
	}
}

func TestMarkWords(t *testing.T) {
	want := "which edge faces the front, which side of the cloth is the right one, which side of the body it is of, "
	got := ""
	for m := FrontEdge; m <= BodySide+1; m++ {
		got += m.String() + ", "
	}
	if got != want+", " {
		t.Error(got)
	}
}

// Nothing that was never sewn to the rest comes loose.
func TestPartsOfTheirOwn(t *testing.T) {
	j := journaltest.Open(t, `
-- builds/suit/build.md --
---
seams:
  - {name: back, joins: [left back, right back], length: 10 in}
  - {name: pocket, joins: [pocket bag, pocket mouth], length: 3 in}
---
`)
	if got := looseSaid(Find(j.Builds()[0], Rates{}, "pocket").Loose); got != "pocket mouth: recorded, missing edge cloth" {
		t.Error(got)
	}
}

func TestRates(t *testing.T) {
	note := func(day, fields string) string {
		return fmt.Sprintf("-- builds/jacket/2026-03-%s.md --\n---\n%s\n---\n", day, fields)
	}
	j := journaltest.Open(t, jacket+
		note("01", "{stage: unpicking, hours: 1, opened: [side]}")+ // 16 in an hour
		note("02", "{stage: unpicking, hours: 2, opened: [armhole, side, Side]}")+ // 25
		note("03", "{stage: unpicking, hours: 1, opened: [armhole]}")+ // 34
		note("04", "{stage: unpicking, hours: 1, opened: [armhole, waist binding]}")+ // two kinds of stitch
		note("05", "{stage: unpicking, hours: 1, opened: [hook tape]}")+ // of unknown length
		note("06", "{stage: unpicking, opened: [side]}")+ // in unknown time
		note("07", "{stage: unpicking, hours: 1, opened: [side], sewed: [sleeve]}")+ // two kinds of work
		note("13", "{stage: altering, hours: 1, opened: [side], sewed: [sleeve]}")+
		note("14", "{stage: unpicking, hours: 1, opened: [side, saide]}")+
		note("08", "{stage: worn, hours: 9, sewed: [side]}")+
		note("09", "{stage: sewing, hours: 4, sewed: [side]}")+ // 4
		note("10", "{stage: altering, hours: 4, sewed: [side]}")+ // 4
		note("11", "{stage: finishing, hours: 6, sewed: [sleeve]}")+ // 6
		note("12", "{stage: altering, hours: 2, sewed: [sleeve]}")) // 18
	r := RatesOf(j)
	if got := r.Opening["backstitch"]; got != (Rate{25 * inch, 3}) || len(r.Opening) != 1 {
		t.Errorf("opening %+v", r.Opening)
	}
	if got := r.Sewing["backstitch"]; got != (Rate{5 * inch, 4}) || len(r.Sewing) != 1 {
		t.Errorf("sewing %+v", r.Sewing)
	}
	b := j.Builds()[0]
	if w := Find(b, r, "sleeve"); w.Opening != (Time{44 * time.Hour / 25, true}) || w.Sewing != (Time{44 * time.Hour / 5, true}) {
		t.Errorf("the sleeve: %+v", w.Load)
	}
	if w := Find(b, r, "side"); w.Opening.Known || w.Sewing.Known || w.Opening.For != 0 {
		t.Errorf("nobody knows how fast a fell stitch is: %+v", w.Load)
	}
	r.Opening["backstitch"] = Rate{Hourly: 1}
	if w := Find(b, r, "armhole"); w.Opening.Known || !w.Sewing.Known {
		t.Errorf("nobody unpicks a nanometre an hour: %+v", w.Load)
	}
	if w := Find(b, r, "waist binding"); w.Opening.Known {
		t.Errorf("nor how long the hook tape is: %+v", w.Load)
	}
}
