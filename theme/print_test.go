package theme

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"hussif/theme/browsertest"
	"hussif/theme/draw"
)

// What is printed is read by Poppler's programs, which know nothing of browsers.
// Where they are missing the test is skipped, or fails where HUSSIF_OUTSIDE is
// "required".
func poppler(t *testing.T, pdf []byte, program string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		if os.Getenv("HUSSIF_OUTSIDE") == "required" {
			t.Fatalf("the program %s is missing", program)
		}
		t.Skipf("the program %s is missing; set HUSSIF_OUTSIDE=required to make this a failure", program)
	}
	read := exec.CommandContext(t.Context(), program, args...)
	read.Stdin = bytes.NewReader(pdf)
	out, err := read.Output()
	if err != nil {
		t.Fatalf("%s: %v", program, err)
	}
	return out
}

// leaves returns the text of each page.
func leaves(t *testing.T, pdf []byte) []string {
	t.Helper()
	pages := strings.Split(string(poppler(t, pdf, "pdftotext", "-layout", "-", "-")), "\f")
	return pages[:len(pages)-1] // a form feed ends each
}

var papers = map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter}

func TestSheetsTakeFewPages(t *testing.T) {
	b := browsertest.Open(t)
	dir := hang(t)
	for name, most := range map[string]int{
		"builds/striped-jacket/before.html":        3,
		"builds/striped-jacket/take-down.html":     2,
		"patterns/short-jacket-before.html":        1,
		"people/wren-before.html":                  2,
		"people/wren-wardrobe.html":                2,
		"builds/striped-jacket/documentation.html": 2,
		"to-do.html":          1,
		"bare/sheet.html":     1,
		"bare/take-down.html": 1,
		"bare/wardrobe.html":  1,
	} {
		b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), 1280, false)
		for paper, size := range papers {
			if got := len(leaves(t, b.Print(size))); got > most {
				t.Errorf("%s takes %d pages of %s, want at most %d", name, got, paper, most)
			}
		}
	}
}

// ends puts a word of its own at both ends of each cell and returns how many rows
// there are: row 3 then begins and ends with words that begin "row3x".
const ends = `(() => {
	const rows = [...document.querySelectorAll("tbody tr")];
	rows.forEach((row, i) => [...row.cells].forEach(cell => {
		cell.prepend("row" + i + "x ");
		cell.append(" row" + i + "x");
	}));
	return rows.length;
})()`

func TestNoRowIsSplitBetweenPages(t *testing.T) {
	b := browsertest.Open(t)
	dir := hang(t)
	for _, name := range []string{"builds/striped-jacket/before.html", "builds/striped-jacket/index.html", "people/wren.html", "materials/stash.html"} {
		b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), 1280, false)
		rows := browsertest.Ask[int](b, ends)
		for paper, size := range papers {
			pages := leaves(t, b.Print(size))
			for row := range rows {
				var on []int
				for i, page := range pages {
					if strings.Contains(page, fmt.Sprintf("row%dx", row)) {
						on = append(on, i+1)
					}
				}
				if len(on) != 1 {
					t.Errorf("%s on %s: row %d is on the pages %v", name, paper, row, on)
				}
			}
		}
	}
}

// boxes lists what of the things to tick has no empty box of at least 3 mm, in
// CSS pixels of 1/96 in.
const boxes = `[...document.querySelectorAll(".ticked :is(.chores, .steps, .to-mark, .next) > li:not(.answered)")].filter(li => {
	const box = getComputedStyle(li, li.parentElement.className === "next" ? "::before" : "::after");
	return parseFloat(box.width) < 3 / 25.4 * 96 || parseFloat(box.borderTopWidth) < 1 || box.borderTopStyle !== "solid" || box.backgroundColor !== "rgba(0, 0, 0, 0)";
}).map(li => li.textContent)`

func TestWhatIsToTickHasABoxOnPaper(t *testing.T) {
	b := browsertest.Open(t)
	dir := hang(t)
	for name, want := range map[string]int{
		"builds/striped-jacket/before.html":    6,  // 2 to do, 2 next time that are open, 2 not known
		"to-do.html":                           5,  // 4 hold up, 1 next time
		"builds/striped-jacket/take-down.html": 13, // 4 to mark, 3 before, 3 to open, 3 to sew
	} {
		b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), 1280, false)
		asPrinted := chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
			_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
			return err
		})
		if err := chromedp.Do(b.Context(), asPrinted); err != nil {
			t.Fatal(err)
		}
		if got := browsertest.Ask[int](b, `document.querySelectorAll(".ticked :is(.chores, .steps, .to-mark, .next) > li:not(.answered)").length`); got != want {
			t.Errorf("%s has %d things to tick, want %d", name, got, want)
		}
		if without := browsertest.Ask[[]string](b, boxes); len(without) > 0 {
			t.Errorf("%s: no box for %q", name, without)
		}
	}
}

// A panel that is printed a little too small does not fit the garment: the test
// squares of the first sheet are measured on the printed page.
func TestFullSizeIsFullSize(t *testing.T) {
	const perMM, perInch = 20, 20 * 25.4 // pixels; 508 of them to the inch
	b := browsertest.Open(t)
	dir := hang(t)
	for _, paper := range []struct {
		name       string
		view       *Tiles
		wide, high float64 // in millimetres, by ISO 216 and by ANSI/ASME Y14.1
	}{
		{"side-gore-a4.html", fullSize("", draw.A4()), 210, 297},
		{"side-gore-letter.html", fullSize("", draw.Letter()), 215.9, 279.4},
	} {
		b.Visit(browsertest.File(t, filepath.Join(dir, "builds", "striped-jacket", paper.name)), 1280, false)
		for other, size := range papers {
			pdf := b.Print(size)
			pages := leaves(t, pdf)
			if got, want := len(pages), 1+len(paper.view.Pages); got != want {
				t.Errorf("%s with %s in the printer: %d pages, want the words and %d sheets", paper.name, other, got, want-1)
			}
			sheet, err := png.Decode(bytes.NewReader(poppler(t, pdf, "pdftoppm", "-r", fmt.Sprint(perInch), "-f", "2", "-l", "2", "-gray", "-png", "-")))
			if err != nil {
				t.Fatal(err)
			}
			const off = perMM / 2.0
			if got := sheet.Bounds(); math.Abs(float64(got.Dx())-paper.wide*perMM) > off || math.Abs(float64(got.Dy())-paper.high*perMM) > off {
				t.Errorf("%s with %s in the printer: the page is %d by %d twentieths of a millimetre", paper.name, other, got.Dx(), got.Dy())
			}
			for _, side := range []float64{50, 50.8} {
				if !hasLine(sheet, side*perMM) {
					t.Errorf("%s with %s in the printer: no line is as long as the square of %v mm", paper.name, other, side)
				}
			}
		}
	}
}

// hasLine reports whether a level line of a length is on the page, give or take
// its own breadth and a fifth of a millimetre at 20 pixels to it.
func hasLine(page image.Image, long float64) bool {
	const breadth, give = 5, 4
	for y := page.Bounds().Min.Y; y < page.Bounds().Max.Y; y++ {
		run := 0
		for x := page.Bounds().Min.X; x < page.Bounds().Max.X; x++ {
			if r, _, _, _ := page.At(x, y).RGBA(); r < 0x8000 {
				run++
				continue
			}
			if math.Abs(float64(run)-long-breadth) <= give {
				return true
			}
			run = 0
		}
	}
	return false
}
