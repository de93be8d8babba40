package draw_test

import (
	"fmt"
	"html/template"
	"strings"
	"testing"

	"hussif/build/worksheet"
	"hussif/content/quantity"
	"hussif/theme/draw"
)

// figureSamples are the drawings of every worksheet, worked with the examples of its
// inputs and with awkward figures.
func figureSamples(t testing.TB) map[string]template.HTML {
	all := make(map[string]template.HTML)
	add := func(sheet, given string) {
		s, _ := worksheet.Find(sheet)
		if s == nil {
			t.Fatalf("no worksheet %q", sheet)
		}
		var entries []worksheet.Entry
		for _, line := range strings.Split(given, ";") {
			name, value, _ := strings.Cut(line, ":")
			entries = append(entries, worksheet.Say(strings.TrimSpace(name), strings.Split(strings.TrimSpace(value), ", ")...))
			if sheet == "hem level" && len(entries[0].Items) > 1 {
				for i := range entries[0].Items {
					entries[0].Items[i].Name = [...]string{"front", "side front", "side", "back"}[i%4]
				}
			}
		}
		p := worksheet.Work(s, entries, quantity.Format{Unit: quantity.Inches, Fraction: 8})
		for _, fault := range p.Faults {
			t.Fatalf("%s with %s: %s", sheet, given, fault.Text)
		}
		for i, d := range p.Drawings {
			id := fmt.Sprintf("figure-%d-%d", len(all), i)
			all[fmt.Sprintf("%s with %s, %d", sheet, given, i)] = d.Draw(words(id, d.Title, d.Desc))
		}
	}
	add("knife pleats", "finished: 34 in; shown: 1 in; depth: 1 in")
	add("knife pleats", "pleats: 2; shown: 1/2 in; depth: 3 in")
	add("box pleats", "pleats: 6; shown: 4 in; depth: 2 in")
	add("inverted pleats", "pleats: 1; finished: 26 in; depth: 2 1/2 in")
	add("gauging", "cloth: 120 in; spacing: 1/4 in; finished: 30 in")
	add("gauging", "cloth: 120 in; spacing: 3 in; rows: 1")
	add("gathers", "finished: 30 in; ratio: 5")
	add("bias strips", "strip: 1 in; piece: 20 in x 31 in")
	add("bias strips", "strip: 1/8 in; piece: 60 in x 9 in")
	add("straight strips", "strip: 1 1/2 in; cloth width: 54 in; needed: 950 in")
	add("piping", "diameter: 5/32 in; allowance: 1/2 in")
	add("piping", "diameter: 2 in; allowance: 1/8 in")
	add("let-out", "seams: 2; was: 5/8 in; now: 1/4 in")
	add("let-out", "seams: 2; was: 0 in; now: 3 in")
	add("let-in panel", "widths: 0 in at 0 in, 3 in at 7 1/2 in; number: 2; piece: 9 in x 31 in")
	add("spacing", "length: 14 in; number: 7; first end: 3/4 in; last end: 3/4 in")
	add("spacing", "length: 40 in; number: 30; width: 1/2 in")
	add("circle skirt", "part: half; waist: 26 in; length: 27 in")
	add("circle skirt", "part: full; waist: 26 in")
	add("hem level", "lengths: 38 in, 38 1/2 in, 39 in, 40 1/2 in")
	add("yardage", "pieces: 4 of 22 in x 40 in, 2 of 8 in x 12 in; cloth width: 54 in")
	return all
}

// A figure keeps its proportions: a rectangle of 2 to 1 is drawn as one.
func TestFigureIsToScale(t *testing.T) {
	svg := string(draw.DrawFigure(draw.Figure{Words: words("f", "a", "b"), Shapes: []draw.Shape{{
		Kind: "cut-line", Closed: true, Points: []draw.Point{{}, {X: 200}, {X: 200, Y: 100}, {Y: 100}},
	}}}))
	var x [4]float64
	var y [4]float64
	at := strings.Index(svg, `class="cut-line" d="`)
	if _, err := fmt.Sscanf(svg[at:], `class="cut-line" d="M%g %gL%g %gL%g %gL%g %gZ"`, &x[0], &y[0], &x[1], &y[1], &x[2], &y[2], &x[3], &y[3]); err != nil {
		t.Fatal(err)
	}
	if wide, high := x[1]-x[0], y[2]-y[1]; wide < 100 || wide/high < 1.999 || wide/high > 2.001 {
		t.Errorf("drawn %g by %g", wide, high)
	}
}

// Every mark of a strip stands once, at its distance from the beginning whatever
// length it is on.
func TestStripMarksStandWhereTheyShould(t *testing.T) {
	v := draw.MarkStrip{Words: words("s", "Marks", "Marks."), Long: 1000}
	for at := 0.0; at <= 1000; at += 12.5 {
		v.Marks = append(v.Marks, draw.StripMark{At: at})
	}
	for _, paper := range []draw.Paper{draw.A4(), draw.Letter()} {
		sheets, err := draw.Strips(v, paper)
		if err != nil {
			t.Fatal(err)
		}
		one := paper.Wide - 2*draw.Margin - 1 - 2*8 - 10
		var found []float64
		row, last := 0.0, 0.0
		for _, page := range sheets.Pages {
			parsed(t, page, false)
			for _, part := range strings.Split(string(page), `class="strip-mark" d="M`)[1:] {
				var x, y float64
				if _, err := fmt.Sscanf(part, "%g %g", &x, &y); err != nil {
					t.Fatal(err)
				}
				if len(found) > 0 && y != last {
					row++
				}
				last = y
				found = append(found, row*one+x-8)
			}
		}
		if len(found) != len(v.Marks) {
			t.Fatalf("%s: %d marks of %d", paper.Name, len(found), len(v.Marks))
		}
		for i, m := range v.Marks {
			if d := found[i] - m.At; d > 0.002 || d < -0.002 {
				t.Errorf("%s: the mark at %g stands at %g", paper.Name, m.At, found[i])
			}
		}
	}
	if _, err := draw.Strips(draw.MarkStrip{Long: 1e6}, draw.A4()); err == nil {
		t.Error("a strip of a kilometre is printed")
	}
}
