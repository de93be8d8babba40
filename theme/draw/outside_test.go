package draw_test

import (
	"context"
	"fmt"
	"html/template"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"hussif/theme/browsertest"
	"hussif/theme/draw"
)

// need returns the path of a program of poppler's, or skips the test.
func need(t *testing.T, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err == nil {
		return path
	}
	if os.Getenv("HUSSIF_OUTSIDE") == "required" {
		t.Fatalf("this test needs %s: %v", program, err)
	}
	t.Skipf("this test needs %s; HUSSIF_OUTSIDE=required makes that a failure", program)
	return ""
}

// site writes a page with the theme's style, as every page of a site has it, and
// returns its address.
func site(t testing.TB, body string) string {
	t.Helper()
	dir := t.TempDir()
	sheets, err := filepath.Glob("../style/*.css")
	if err != nil || len(sheets) == 0 {
		t.Fatalf("the theme has no style: %v", err)
	}
	var style []byte
	for _, name := range append([]string{"../style/tokens.css", "draw.css"}, sheets...) {
		part, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		style = append(style, part...)
	}
	page := `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>drawings</title>
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self' file:; font-src 'self' file:">
<link rel="stylesheet" href="style.css"><body>` + body
	if err := os.Mkdir(filepath.Join(dir, "fonts"), 0o700); err != nil {
		t.Fatal(err)
	}
	fonts, err := filepath.Glob("../fonts/*.woff2")
	if err != nil || len(fonts) == 0 {
		t.Fatalf("the theme has no fonts: %v", err)
	}
	for _, name := range fonts {
		font, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		write(t, filepath.Join(dir, "fonts", filepath.Base(name)), font)
	}
	write(t, filepath.Join(dir, "style.css"), style)
	write(t, filepath.Join(dir, "page.html"), []byte(page))
	return browsertest.File(t, filepath.Join(dir, "page.html"))
}

func write(t testing.TB, name string, data []byte) {
	t.Helper()
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// In Chromium no words run into others or off a drawing, at the width of a narrow
// telephone and of a desk, and nothing breaks the policy against inline styles.
func TestWordsKeepClearOfOneAnother(t *testing.T) {
	b := browsertest.Open(t)
	for name, svg := range samples(t) {
		address := site(t, `<main>`+string(svg)+`</main>`)
		for _, width := range []int{360, 900} {
			b.Visit(address, width, false)
			clashes := browsertest.Ask[[]string](b, `(() => {
				const said = [], svg = document.querySelector("svg"), all = [...svg.querySelectorAll("text")];
				const box = e => e.getBoundingClientRect(), sheet = box(svg);
				if (sheet.left < 0 || sheet.right > innerWidth) said.push("the drawing is wider than the window");
				for (const [i, e] of all.entries()) {
					const a = box(e);
					if (a.left < sheet.left - 1 || a.right > sheet.right + 1 || a.top < sheet.top - 1 || a.bottom > sheet.bottom + 2) said.push(e.textContent + " is off the drawing");
					const size = parseFloat(getComputedStyle(e).fontSize) * sheet.width / svg.viewBox.baseVal.width;
					if (size < 10.9) said.push(e.textContent + " is set in " + size + " px");
					for (const f of all.slice(0, i)) {
						const c = box(f), slack = 3;
						if (a.left < c.right - 1 && c.left < a.right - 1 && a.top < c.bottom - slack && c.top < a.bottom - slack) said.push(e.textContent + " runs into " + f.textContent);
					}
				}
				return said;
			})()`)
			if len(clashes) > 0 {
				t.Errorf("%s at %d px: %q", name, width, clashes)
			}
		}
		if said := b.Said(); len(said) > 0 {
			t.Errorf("%s: Chromium says %q", name, said)
		}
	}
}

// The test squares of both papers, printed by Chromium to PDF and set in dots by
// poppler's pdftoppm, have their size to 0.3 mm; each sheet is one page.
func TestSheetsPrintAtFullSize(t *testing.T) {
	pdftoppm := need(t, "pdftoppm")
	b := browsertest.Open(t)
	for _, c := range []struct {
		paper draw.Paper
		class string
	}{{draw.A4(), "sheets-a4"}, {draw.Letter(), "sheets-letter"}} {
		t.Run(c.paper.Name, func(t *testing.T) {
			sheets := sheetsOf(t, c.paper)
			if want := sheets.Across * sheets.Down; len(sheets.Pages) != want || want < 2 {
				t.Fatalf("%d pages for %d by %d", len(sheets.Pages), sheets.Across, sheets.Down)
			}
			b.Visit(site(t, fmt.Sprintf(`<div class="%s">%s</div>`, c.class, join(sheets.Pages))), 900, false)
			pdf := printed(t, b)
			name := filepath.Join(t.TempDir(), "sheets")
			write(t, name+".pdf", pdf)
			const dpi = 600
			out, err := exec.Command(pdftoppm, "-r", fmt.Sprint(dpi), "-gray", "-png", name+".pdf", name).CombinedOutput()
			if err != nil {
				t.Fatalf("pdftoppm: %v: %s", err, out)
			}
			pictures, err := filepath.Glob(name + "-*.png")
			if err != nil || len(pictures) != len(sheets.Pages) {
				t.Fatalf("%d pages were printed for %d sheets: %v", len(pictures), len(sheets.Pages), err)
			}
			picture := decode(t, pictures[0])
			size := picture.Bounds().Size()
			for _, side := range []struct{ got, want float64 }{
				{float64(size.X) / dpi * 25.4, c.paper.Wide}, {float64(size.Y) / dpi * 25.4, c.paper.High},
			} {
				if math.Abs(side.got-side.want) > 0.3 {
					t.Errorf("a side of the page measures %.2f mm, want %.2f", side.got, side.want)
				}
			}
			for _, square := range squares(t, string(sheets.Pages[0])) {
				wide, high := measured(picture, dpi, square)
				if math.Abs(wide-square.side) > 0.3 || math.Abs(high-square.side) > 0.3 {
					t.Errorf("a square of %.1f mm is printed %.2f by %.2f mm", square.side, wide, high)
				}
				t.Logf("%s: %.1f mm is printed %.3f by %.3f mm", c.paper.Name, square.side, wide, high)
			}
		})
	}
}

func sheetsOf(t testing.TB, paper draw.Paper) draw.Sheets {
	t.Helper()
	v := panelView(t, "full", gusset(t), "", "hem")
	sheets, err := draw.Tiles(draw.FullSize{Words: v.Words, Label: "gusset, cut 2", Finished: v.Finished, Cut: v.Cut, Levels: v.Levels}, paper)
	if err != nil {
		t.Fatal(err)
	}
	return sheets
}

func join(pages []template.HTML) string {
	var b strings.Builder
	for _, page := range pages {
		b.WriteString(string(page))
	}
	return b.String()
}

// printed returns the page as PDF on the paper its style asks for.
func printed(t *testing.T, b *browsertest.Browser) []byte {
	t.Helper()
	var pdf []byte
	err := chromedp.Do(b.Context(), chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		result, err := cdp.Call(ctx, target, cdppage.PrintToPDF, cdppage.PrintToPDFParams{PreferCSSPageSize: new(true)})
		if err == nil {
			pdf = result.Data
		}
		return err
	}))
	if err != nil {
		t.Fatalf("printing: %v", err)
	}
	return pdf
}

func decode(t *testing.T, name string) image.Image {
	t.Helper()
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}

// A square is a test square as the sheet places it, in millimetres.
type square struct{ x, y, side float64 }

func squares(t *testing.T, svg string) []square {
	t.Helper()
	var found []square
	for _, part := range strings.Split(svg, `<rect class="test" `)[1:] {
		var s square
		var high float64
		if _, err := fmt.Sscanf(part, `x="%g" y="%g" width="%g" height="%g"`, &s.x, &s.y, &s.side, &high); err != nil || high != s.side {
			t.Fatalf("no square: %.60s: %v", part, err)
		}
		found = append(found, s)
	}
	if len(found) != 2 || found[0].side != 50 || found[1].side != 50.8 {
		t.Fatalf("test squares %v, want one of 5 cm and one of 2 in", found)
	}
	return found
}

// measured returns the distances between the middles of a square's lines, which
// it looks for within 2 mm of where they should be, a quarter along the sides.
func measured(picture image.Image, dpi float64, s square) (wide, high float64) {
	dots := func(mm float64) int { return int(math.Round(mm / 25.4 * dpi)) }
	line := func(dark func(int) bool, at float64) float64 {
		sum, n := 0, 0
		for i := dots(at - 2); i <= dots(at+2); i++ {
			if dark(i) {
				sum, n = sum+i, n+1
			}
		}
		return float64(sum) / float64(n) / dpi * 25.4
	}
	dark := func(x, y int) bool { return color.GrayModel.Convert(picture.At(x, y)).(color.Gray).Y < 128 }
	left, top := s.x+draw.Margin, s.y+draw.Margin
	across := func(x int) bool { return dark(x, dots(top+s.side/4)) }
	down := func(y int) bool { return dark(dots(left+s.side/4), y) }
	return line(across, left+s.side) - line(across, left), line(down, top+s.side) - line(down, top)
}
