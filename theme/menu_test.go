package theme

import (
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// Each entry of the menu leads to a path of its own, and is the current one on the
// pages of its section and on no other.
func TestMenuShowsWhereOneIs(t *testing.T) {
	testMenu(t, Menu(), false)
	testMenu(t, CircleMenu(), true)
}

func testMenu(t *testing.T, menu []Place, circle bool) {
	t.Helper()
	look := newTheme(t)
	paths := map[string]bool{}
	for _, place := range menu {
		if paths[place.Path] {
			t.Errorf("two entries lead to %s", place.Path)
		}
		paths[place.Path] = true
		page := render(t, look, Note{Frame: Frame{Root: "../", Section: place.Section, Circle: circle}})
		var current []string
		for n := range parsed(t, page).Descendants() {
			if has(n, "aria-current") {
				current = append(current, attr(n, "href")+" "+text(n))
			}
		}
		if want := "../" + place.Path + " " + place.Name; len(current) != 1 || current[0] != want {
			t.Errorf("on a page of %s, %q are current, want %q", place.Section, current, want)
		}
	}
}

func TestFeedIsNamedWhereThereIsOne(t *testing.T) {
	look := newTheme(t)
	for _, feed := range []bool{false, true} {
		var named []string
		for n := range parsed(t, render(t, look, Note{Frame: Frame{Root: "../", Feed: feed}})).Descendants() {
			// RFC 4287, section 7, for the type; HTML Living Standard, 4.6.7.1, for the relation.
			if n.Type == html.ElementNode && attr(n, "rel") == "alternate" && attr(n, "type") == "application/atom+xml" {
				named = append(named, attr(n, "href"))
			}
		}
		want := map[bool]string{true: "../notes.atom"}[feed]
		if got := strings.Join(named, " "); got != want {
			t.Errorf("with a feed %v, the page names %q, want %q", feed, got, want)
		}
	}
}
