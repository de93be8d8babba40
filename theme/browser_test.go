package theme

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"hussif/theme/browsertest"
)

// sideways is how far a page is wider than its window, in CSS pixels.
const sideways = `document.scrollingElement.scrollWidth - innerWidth`

// small lists the links of the page's menus that are under 24 px high, the least
// size of a target (WCAG 2.2, success criterion 2.5.8).
const small = `[...document.querySelectorAll("nav a")].filter(a => a.getBoundingClientRect().height < 24).map(a => a.textContent)`

// faint lists the texts whose contrast with the nearest solid background is under
// 4.5 to 1 (WCAG 2.2, success criterion 1.4.3, with its definition of relative
// luminance). Large letters might have less; we ask the same of all.
const faint = `(() => {
	const channels = css => css.match(/[\d.]+/g).map(Number);
	const luminance = css => {
		const [r, g, b] = channels(css).map(c => c / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
		return 0.2126 * r + 0.7152 * g + 0.0722 * b;
	};
	const solid = css => { const c = channels(css); return c.length < 4 || c[3] === 1; };
	const ground = e => {
		for (; e; e = e.parentElement) {
			const css = getComputedStyle(e).backgroundColor;
			if (solid(css)) return css;
		}
		return "rgb(255, 255, 255)";
	};
	const found = [];
	const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	while (texts.nextNode()) {
		const words = texts.currentNode.data.trim(), e = texts.currentNode.parentElement;
		if (!words) continue;
		const [dark, light] = [luminance(getComputedStyle(e).color), luminance(ground(e))].sort((a, b) => a - b);
		const contrast = (light + 0.05) / (dark + 0.05);
		if (contrast < 4.5) found.push(contrast.toFixed(2) + " " + words);
	}
	return found;
})()`

// loaded lists the fonts that have come, by family and slope.
const loaded = `[...document.fonts].filter(f => f.status === "loaded").map(f => f.family.replaceAll('"', "") + " " + f.style).sort()`

// From a disk, at the width of a telephone and of a desk, by day and by night.
func TestGalleryInABrowser(t *testing.T) {
	b := browsertest.Open(t)
	dir := hang(t)
	for name := range gallery() {
		address := browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name)))
		for _, width := range []int{360, 1280} {
			for _, dark := range []bool{false, true} {
				b.Visit(address, width, dark)
				if said := b.Said(); len(said) > 0 {
					t.Errorf("%s: the browser says %q", name, said)
				}
				if far := browsertest.Ask[int](b, sideways); far > 0 {
					t.Errorf("%s at %d px scrolls sideways by %d px", name, width, far)
				}
				if texts := browsertest.Ask[[]string](b, faint); len(texts) > 0 {
					t.Errorf("%s, dark %v: too faint: %q", name, dark, texts)
				}
				if links := browsertest.Ask[[]string](b, small); len(links) > 0 {
					t.Errorf("%s at %d px: too small to touch: %q", name, width, links)
				}
			}
		}
	}
}

func TestFontsLoadFromADisk(t *testing.T) {
	b := browsertest.Open(t)
	dir := hang(t)
	b.Visit(browsertest.File(t, filepath.Join(dir, "builds", "striped-jacket", "index.html")), 1280, false)
	want := []string{"Encode Sans normal", "Vollkorn italic", "Vollkorn normal"}
	if got := browsertest.Ask[[]string](b, loaded); !slices.Equal(got, want) {
		t.Errorf("the fonts %q have come, want %q", got, want)
	}
}

func TestFirstTabLeadsToTheSkipLink(t *testing.T) {
	b := browsertest.Open(t)
	dir := hang(t)
	b.Visit(browsertest.File(t, filepath.Join(dir, "index.html")), 360, false)
	const top = `document.querySelector(".skip").getBoundingClientRect().top`
	if at := browsertest.Ask[float64](b, top); at >= 0 {
		t.Errorf("before, it stands at %v px", at)
	}
	if err := chromedp.Do(b.Context(), chromedp.KeyEvent("\t")); err != nil {
		t.Fatal(err)
	}
	if at := browsertest.Ask[float64](b, top); at < 0 {
		t.Errorf("with the focus, it stands at %v px", at)
	}
	if width := browsertest.Ask[string](b, `getComputedStyle(document.activeElement).outlineWidth`); width != "2px" {
		t.Errorf("the outline of what has the focus is %s wide", width)
	}
}

// shapes lists each mark of a page with the shape that stands for it.
const shapes = `[...new Set([...document.querySelectorAll("[data-mark]")].map(e => e.dataset.mark + " " + getComputedStyle(e, "::before").maskImage))]`

// Marks of one kind are told apart without their colours.
func TestMarksDifferInShape(t *testing.T) {
	b := browsertest.Open(t)
	dir := hang(t)
	for name, want := range map[string]int{
		"builds/striped-jacket/documentation.html": 9, // 7 of evidence, 2 outcomes
		"decisions.html": 3,
		"to-do.html":     4,
	} {
		b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), 1280, false)
		marks := map[string]string{} // by shape
		for _, mark := range browsertest.Ask[[]string](b, shapes) {
			word, shape, _ := strings.Cut(mark, " url(")
			if other, ok := marks[shape]; ok || shape == "" {
				t.Errorf("%s: %s and %s have the shape %.40q", name, word, other, shape)
			}
			marks[shape] = word
		}
		if len(marks) != want {
			t.Errorf("%s has the marks %v, want %d", name, marks, want)
		}
	}
}
