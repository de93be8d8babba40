package site_test

import (
	"path/filepath"
	"strings"
	"testing"

	"hussif/build/site/sitetest"
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
	sitetest.Look(t, dir, onePageOfEach)
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

// TestValidHTML has the Nu Html Checker look at every page of the demo.
func TestValidHTML(t *testing.T) { sitetest.Valid(t, makeSite(t, demo.Journal())) }
