package draw_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"hussif/build/worksheet"
	"hussif/content/quantity"
	"hussif/theme/browsertest"
	"hussif/theme/draw"
)

// printOf works a sheet out and returns its full-size sheets.
func printOf(t *testing.T, sheet string, paper draw.Paper, given ...worksheet.Entry) draw.Sheets {
	t.Helper()
	s, _ := worksheet.Find(sheet)
	p := worksheet.Work(s, given, quantity.Format{Unit: quantity.Inches})
	for _, f := range p.Faults {
		t.Fatal(f.Text)
	}
	sheets, err := p.Prints[0].Sheet(words("sheet", p.Prints[0].Title, p.Prints[0].Desc), paper)
	if err != nil {
		t.Fatal(err)
	}
	return sheets
}

// onPaper prints the first of some sheets by Chromium to PDF, and sets it in dots by
// poppler's pdftoppm.
func onPaper(t *testing.T, b *browsertest.Browser, sheets draw.Sheets, paper draw.Paper) dots {
	t.Helper()
	pdftoppm := need(t, "pdftoppm")
	b.Visit(site(t, fmt.Sprintf(`<div class="sheets-%s">%s</div>`, strings.ToLower(paper.Name), join(sheets.Pages))), 900, false)
	name := filepath.Join(t.TempDir(), "sheets")
	write(t, name+".pdf", printed(t, b))
	const dpi = 600
	if out, err := exec.Command(pdftoppm, "-r", fmt.Sprint(dpi), "-gray", "-png", name+".pdf", name).CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm: %v: %s", err, out)
	}
	pictures, err := filepath.Glob(name + "-*.png")
	if err != nil || len(pictures) != len(sheets.Pages) {
		t.Fatalf("%d pages were printed for %d sheets: %v", len(pictures), len(sheets.Pages), err)
	}
	return dots{decode(t, pictures[0]), dpi}
}

// Dots are a page as it was printed.
type dots struct {
	picture image.Image
	dpi     float64
}

func (d dots) dark(x, y float64) bool {
	at := func(mm float64) int { return int(math.Round((mm + draw.Margin) / 25.4 * d.dpi)) }
	return color.GrayModel.Convert(d.picture.At(at(x), at(y))).(color.Gray).Y < 140
}

// lines returns the middles of the dark stretches along a way of so many millimetres.
func (d dots) lines(from, to float64, dark func(float64) bool) []float64 {
	step := 25.4 / d.dpi
	var found []float64
	start := math.NaN()
	for at := from; at <= to; at += step {
		switch on := dark(at); {
		case on && math.IsNaN(start):
			start = at
		case !on && !math.IsNaN(start):
			found = append(found, (start+at)/2)
			start = math.NaN()
		}
	}
	return found
}

// The marks of a strip stand on paper where the worksheet says, to 0.3 mm.
func TestStripsPrintAtFullSize(t *testing.T) {
	b := browsertest.Open(t)
	for _, paper := range []draw.Paper{draw.A4(), draw.Letter()} {
		t.Run(paper.Name, func(t *testing.T) {
			// Seven in 6 in with ends of 1/2 in: every 5/6 in, by arithmetic.
			sheets := printOf(t, "spacing", paper, worksheet.Say("length", "6 in"), worksheet.Say("number", "7"), worksheet.Say("first end", "1/2 in"), worksheet.Say("last end", "1/2 in"))
			page := onPaper(t, b, sheets, paper)
			for _, s := range squares(t, string(sheets.Pages[0])) {
				if wide, high := measured(page.picture, page.dpi, s); math.Abs(wide-s.side) > 0.3 || math.Abs(high-s.side) > 0.3 {
					t.Errorf("a square of %.1f mm is printed %.2f by %.2f mm", s.side, wide, high)
				}
			}
			const left, y = 8.0, 66 + 13 // of the first length, below its words
			found := page.lines(left-3, left+6*25.4+3, func(x float64) bool { return page.dark(x, y) })
			want := []float64{0} // the strip's own end
			for i := range 7 {
				want = append(want, 12.7+float64(i)*5*25.4/6)
			}
			want = append(want, 6*25.4)
			if len(found) != len(want) {
				t.Fatalf("lines at %v, want %d", found, len(want))
			}
			for i := range want {
				if off := found[i] - found[0] - want[i]; math.Abs(off) > 0.3 {
					t.Errorf("line %d is printed %.2f mm from the end, want %.2f", i, found[i]-found[0], want[i])
				}
			}
		})
	}
}

// A doll's quarter-circle skirt fits on a page: its arcs lie as far from one another
// as circles of their radii do, beside the middle, to 0.3 mm.
func TestSkirtsPrintAtFullSize(t *testing.T) {
	b := browsertest.Open(t)
	for _, paper := range []draw.Paper{draw.A4(), draw.Letter()} {
		t.Run(paper.Name, func(t *testing.T) {
			sheets := printOf(t, "circle skirt", paper, worksheet.Say("part", "quarter"), worksheet.Say("waist", "2 1/2 in"), worksheet.Say("length", "2 1/2 in"), worksheet.Say("hem", "1/2 in"), worksheet.Say("allowance", "1/4 in"))
			if len(sheets.Pages) != 1 {
				t.Fatalf("%d pages", len(sheets.Pages))
			}
			page := onPaper(t, b, sheets, paper)
			// 2 1/2 in round a quarter: radius 5/π in. The centre lies over the middle.
			seam := 5 / math.Pi * 25.4
			const aside = 18.0 // within the quarter also at the waist
			at := func(r float64) float64 { return math.Sqrt(r*r - aside*aside) }
			want := []float64{at(seam - 6.35), at(seam), at(seam + 2.5*25.4), at(seam + 3*25.4)}
			middle := paper.Wide/2 - draw.Margin - 0.5
			f := page.lines(0, paper.High-2*draw.Margin-30, func(y float64) bool { return page.dark(middle-aside, y) || page.dark(middle-aside, y+0.1) })
			// The seams are dashed and may have a gap there; the cuts are solid.
			inner, outer := want[0], want[3]
			for i := range f {
				for j := i + 1; j < len(f); j++ {
					if math.Abs(f[j]-f[i]-(outer-inner)) <= 0.3 {
						t.Logf("%s: the cuts are printed %.2f mm apart, want %.2f", paper.Name, f[j]-f[i], outer-inner)
						return
					}
				}
			}
			t.Errorf("lines at %.2f; none are %.2f mm apart", f, outer-inner)
		})
	}
}

// A strip of many lengths takes as many pages as it needs, and says which is which.
func TestStripsTakeSeveralLengths(t *testing.T) {
	sheets := printOf(t, "gauging", draw.A4(), worksheet.Say("cloth", "120 in"), worksheet.Say("spacing", "1/4 in"))
	all := join(sheets.Pages)
	if len(sheets.Pages) != 1 || !strings.Contains(all, "length 4 of 4") || strings.Contains(all, "length 5") {
		t.Errorf("60 cm of dots take %d pages", len(sheets.Pages))
	}
}
