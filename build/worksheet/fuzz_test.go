package worksheet_test

import (
	"math"
	"strings"
	"testing"

	"hussif/build/worksheet"
	"hussif/theme/draw"
)

// Whatever is given, a sheet has answers or faults, not both, none beyond all cloth,
// and its drawings are drawn.
func FuzzWork(f *testing.F) {
	for _, s := range worksheet.All() {
		var all, needed []string
		for _, in := range s.Inputs() {
			all = append(all, in.Name+": "+in.Example)
			if in.Need != worksheet.MayBe {
				needed = append(needed, in.Name+": "+in.Example)
			}
		}
		f.Add(s.About().Name, strings.Join(all, "; "))
		f.Add(s.About().Name, strings.Join(needed, "; "))
		for i := range needed {
			f.Add(s.About().Name, strings.Join(append(append([]string{}, needed[:i]...), needed[i+1:]...), "; "))
		}
	}
	f.Add("yardage", "pieces: 2 of 20 x 31, 3 of 1 x 1; cloth width: 54")
	f.Add("gauging", "cloth: 1000 m; spacing: 1 mm")
	f.Add("spacing", "length: 1 mm; number: 400")
	f.Fuzz(func(t *testing.T, name, given string) {
		s, _ := worksheet.Find(name)
		if s == nil {
			return
		}
		p := worksheet.Work(s, entries(given), inches)
		if (len(p.Faults) == 0) == (len(p.Answers) == 0) {
			t.Fatalf("%d answers and %d faults", len(p.Answers), len(p.Faults))
		}
		for _, a := range p.Answers {
			if math.IsNaN(a.Number) || math.IsInf(a.Number, 0) || a.Words == "" {
				t.Fatalf("%s is %v, %q", a.Name, a.Number, a.Words)
			}
		}
		for _, d := range p.Drawings {
			if out := string(d.Draw(draw.Words{ID: "d", Title: d.Title, Desc: d.Desc})); !strings.HasSuffix(out, "</svg>") || strings.Contains(out, "NaN") {
				t.Fatalf("the drawing %q is not whole", d.Title)
			}
		}
		for _, print := range p.Prints {
			if _, err := print.Sheet(draw.Words{ID: "p"}, draw.A4()); err != nil && !strings.Contains(err.Error(), "more than") {
				t.Fatal(err)
			}
		}
	})
}
