package site_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"hussif/build/site/sitetest"
	"hussif/testdata/demo"
	"hussif/theme/browsertest"
)

// TestReadByEverybody has axe-core look at a page of every kind, by day and by night,
// and at the search page with something found.
func TestReadByEverybody(t *testing.T) {
	source := sitetest.Axe(t)
	dir := makeSite(t, demo.Journal())
	b := browsertest.Open(t)
	b.Visit(browsertest.File(t, dir)+"/index.html", 1280, false)
	browsertest.Ask[bool](b, source+`; document.querySelector("h1").replaceWith(document.createElement("img")); true`)
	if found := browsertest.Ask[[]string](b, sitetest.Violations); len(found) == 0 {
		t.Fatal("a page with a picture for a heading, and no words for it, is well by axe-core")
	}
	for _, dark := range []bool{false, true} {
		sitetest.ReadByEverybody(t, dir, append([]string{"search.html?q=sleeve"}, onePageOfEach...), dark)
	}
}

const (
	// reachable counts what a reader should come to with the Tab key.
	reachable = `[...document.querySelectorAll("a[href], input, button, summary, [tabindex='0']")].filter(e => e.checkVisibility()).length`

	// here says what has the focus, as long as it is not the page itself: a number of its
	// own, and what of it is not to be seen.
	here = `(() => {
		const e = document.activeElement;
		if (e === document.body) return "";
		window.walked ??= [];
		if (!walked.includes(e)) walked.push(e);
		const style = getComputedStyle(e), box = e.getBoundingClientRect();
		let unseen = "";
		if (style.outlineStyle === "none" || parseFloat(style.outlineWidth) < 2) unseen += " has no outline";
		if (box.bottom < 1 || box.top > innerHeight - 1 || box.right < 1 || box.left > innerWidth - 1) unseen += " is out of sight";
		return walked.indexOf(e) + (unseen && " " + e.outerHTML.slice(0, 80) + unseen);
	})()`
)

// TestWalkByKeyboard goes through pages with the Tab key alone: it leads to all there
// is, in sight each time, first of all to the link past the menu.
func TestWalkByKeyboard(t *testing.T) {
	if testing.Short() {
		t.Skip("presses a key many times")
	}
	dir := makeSite(t, demo.Journal())
	for name, width := range map[string]int{
		"index.html": 1280, "builds/grey-wool-jacket.html": 360, "people/hester.html": 640,
		"builds/grey-wool-jacket.take-down.html": 1280, "to-do.html": 360, "tags.html": 640,
	} {
		b := browsertest.Open(t)
		press := func(key string) {
			if err := chromedp.Do(b.Context(), chromedp.KeyEvent(key)); err != nil {
				t.Fatal(err)
			}
		}
		b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), width, false)
		want := browsertest.Ask[int](b, reachable)
		// Gliding to what has the focus would take a while.
		browsertest.Ask[bool](b, `document.documentElement.style.scrollBehavior = "auto", true`)
		if want < 15 {
			t.Fatalf("%s has only %d things to come to", name, want)
		}
		for i := range want {
			press("\t")
			if got := browsertest.Ask[string](b, here); got != fmt.Sprint(i) {
				t.Errorf("%s, %d px wide: thing %d of %d: %s", name, width, i, want, got)
				break
			}
		}
		b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), width, false)
		press("\t")
		press(kb.Enter)
		press("\t")
		if past := browsertest.Ask[bool](b, `document.activeElement.matches("main *, footer *")`); !past {
			t.Errorf("%s: the first link does not lead past the menu", name)
		}
	}
}

// cut lists what is cut off at the side of its box, but for what is only read aloud.
const cut = `[...document.querySelectorAll("main *, header *")].filter(e => {
	const style = getComputedStyle(e);
	return style.overflowX === "hidden" && style.clipPath === "none" && e.scrollWidth > e.clientWidth + 1;
}).map(e => e.outerHTML.slice(0, 80))`

// TestLargeLetters: pages hold with letters twice as large, and in a window enlarged
// to 400 %, which makes 320 px of one of 1280 (WCAG 2.2, success criteria 1.4.4 and
// 1.4.10).
func TestLargeLetters(t *testing.T) {
	if testing.Short() {
		t.Skip("opens every kind of page in a browser")
	}
	dir := makeSite(t, demo.Journal())
	for width, size := range map[int]string{320: "100%", 640: "100%", 1280: "200%", 360: "200%"} {
		b := browsertest.Open(t)
		for _, name := range onePageOfEach {
			b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), width, false)
			browsertest.Ask[bool](b, `(() => {
				const root = document.documentElement;
				root.style.fontSize = "calc(" + getComputedStyle(root).fontSize + " * `+strings.TrimSuffix(size, "%")+` / 100)";
				return true;
			})()`)
			if wide := browsertest.Ask[int](b, `document.scrollingElement.scrollWidth`); wide > width {
				t.Errorf("%s, letters of %s: %d px wide in a window of %d", name, size, wide, width)
			}
			if off := browsertest.Ask[[]string](b, cut); len(off) > 0 {
				t.Errorf("%s, letters of %s, %d px wide: cut off: %q", name, size, width, off)
			}
		}
	}
}

// marked puts a word of its own at the end of each cell of the tables, and returns how
// many cells there are.
const marked = `(() => {
	const cells = [...document.querySelectorAll("th, td")].filter(cell => !cell.closest(".unprinted"));
	cells.forEach((cell, i) => cell.append(" zq" + i + "qz"));
	return cells.length;
})()`

// TestNoTableIsCutOffOnPaper prints pages on A4 and Letter: the end of each cell of
// their tables is there, within the margins. Poppler's pdftotext reads the PDF.
func TestNoTableIsCutOffOnPaper(t *testing.T) {
	if testing.Short() {
		t.Skip("prints every kind of page")
	}
	if _, err := exec.LookPath("pdftotext"); err != nil {
		sitetest.Outside(t, "the program pdftotext is missing")
	}
	dir := makeSite(t, demo.Journal())
	cells := 0
	for paper, size := range map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter} {
		b := browsertest.Open(t)
		for _, name := range onePageOfEach {
			b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), 1280, false)
			n := browsertest.Ask[int](b, marked)
			cells += n
			there := make(map[string]bool)
			for _, page := range printed(t, b.Print(size)) {
				const margin = 10 / 25.4 * 72 // 10 mm in points, less than any page has
				for _, word := range page.Words {
					there[word.Text] = true
					if word.Left < margin || word.Right > page.Width-margin || word.Bottom > page.Height-margin {
						t.Errorf("%s on %s: %q runs into the margin", name, paper, word.Text)
					}
				}
			}
			for i := range n {
				if word := fmt.Sprintf("zq%dqz", i); !there[word] {
					t.Errorf("%s on %s: the end of cell %d is not there", name, paper, i)
				}
			}
		}
	}
	if cells < 1000 {
		t.Errorf("only %d cells of tables were looked at", cells)
	}
}

// A leaf is a printed page with the words on it, their places in points.
type leaf struct {
	Width  float64 `xml:"width,attr"`
	Height float64 `xml:"height,attr"`
	Words  []struct {
		Left   float64 `xml:"xMin,attr"`
		Right  float64 `xml:"xMax,attr"`
		Bottom float64 `xml:"yMax,attr"`
		Text   string  `xml:",chardata"`
	} `xml:"word"`
}

func printed(t *testing.T, pdf []byte) []leaf {
	t.Helper()
	read := exec.CommandContext(t.Context(), "pdftotext", "-bbox", "-", "-")
	read.Stdin = bytes.NewReader(pdf)
	out, err := read.Output()
	if err != nil {
		t.Fatal(err)
	}
	var document struct {
		Pages []leaf `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal(out, &document); err != nil {
		t.Fatal(err)
	}
	return document.Pages
}
