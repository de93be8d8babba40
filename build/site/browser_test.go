package site_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"hussif/testdata/demo"
	"hussif/theme/browsertest"
)

// onePageOfEach is a page of the demo of every kind.
var onePageOfEach = []string{
	"index.html", "builds/index.html", "builds/grey-wool-jacket.html", "builds/oat-linen-stays.html",
	"builds/grey-wool-jacket/2024-04-13-waist-still-tight.html", "builds/grey-wool-jacket.before-a-remake.html",
	"builds/grey-wool-jacket.take-down.html", "builds/madder-jacket.documentation.html", "people/hester.wardrobe.html",
	"to-do.html", "decisions.html", "evidence/index.html", "evidence/piped-seams.feature.html", "materials/on.hand.html", "people/hester.html", "patterns/kestrel-jacket-draft.html",
	"references/index.html", "references/moss-green-jacket.html", "materials/grey-broadcloth.html", "techniques/index.html",
	"occasions/index.html", "notes/index.html", "next-time.html", "tags.html", "found.html",
	"search.html", "people/index.html", "patterns/index.html", "materials/index.html", "occasions/promenade-2027.html", "techniques/pressing-wool.html", "builds/grey-wool-jacket.panel-1-a4.html",
	"patterns/kestrel-jacket-draft.before-a-remake.html", "people/hester.before-a-remake.html",
}

// TestInBrowser opens pages of the demo from the disk, as a maker would: they have
// all their pictures, nothing is refused, and nothing runs off the side.
func TestInBrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("opens every kind of page in a browser")
	}
	dir := makeSite(t, demo.Journal())
	b := browsertest.Open(t)
	for _, name := range onePageOfEach {
		address := browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name)))
		for _, width := range []int{360, 1280} {
			b.Visit(address, width, width == 360)
			if wide := browsertest.Ask[int](b, `document.scrollingElement.scrollWidth`); wide > width {
				t.Errorf("%s is %d px wide in a window of %d", name, wide, width)
			}
			b.Shot() // fetches the pictures further down
			if missing := browsertest.Ask[int](b, `[...document.images].filter(i => !i.naturalWidth).length`); missing > 0 {
				t.Errorf("%s lacks %d of its pictures", name, missing)
			}
			if heading := browsertest.Ask[string](b, `document.querySelector("h1").textContent`); heading == "" {
				t.Errorf("%s has no heading", name)
			}
		}
		if said := b.Said(); len(said) > 0 {
			t.Errorf("%s: the browser says %q", name, said)
		}
	}
}

// TestLinkIsFollowed clicks its way from the first page to a note and back.
func TestLinkIsFollowed(t *testing.T) {
	if testing.Short() {
		t.Skip("opens every kind of page in a browser")
	}
	dir := makeSite(t, demo.Journal())
	b := browsertest.Open(t)
	b.Visit(browsertest.File(t, filepath.Join(dir, "index.html")), 1280, false)
	for _, step := range []struct{ link, title string }{
		{`nav a[href$="builds/index.html"]`, "Builds"},
		{`a[href$="builds/grey-wool-jacket.html"]`, "Grey broadcloth jacket"},
		{`#section-log a`, "Tried on"},
		{`.crumbs a[href$="grey-wool-jacket.html"]`, "Grey broadcloth jacket"},
	} {
		address := browsertest.Ask[string](b, `document.querySelector('`+step.link+`').href`)
		b.Visit(address, 1280, false)
		if title := browsertest.Ask[string](b, `document.querySelector("h1").textContent`); !strings.Contains(title, step.title) {
			t.Fatalf("%s leads to %q, want %q", step.link, title, step.title)
		}
	}
}

// TestValidHTML has the Nu Html Checker of the W3C look at every page of the demo.
// HUSSIF_VNU names its jar.
func TestValidHTML(t *testing.T) {
	jar := os.Getenv("HUSSIF_VNU")
	if jar == "" {
		if os.Getenv("HUSSIF_OUTSIDE") == "required" {
			t.Fatal("HUSSIF_VNU does not name the jar of the Nu Html Checker")
		}
		t.Skip("the Nu Html Checker is not here: set HUSSIF_VNU to its jar")
	}
	dir := makeSite(t, demo.Journal())
	var out bytes.Buffer
	check := exec.Command("java", "-jar", jar, "--errors-only", "--skip-non-html", "--format", "gnu", dir)
	check.Stdout, check.Stderr = &out, &out
	if err := check.Run(); err != nil {
		t.Errorf("%v\n%s", err, out.String())
	}
}
