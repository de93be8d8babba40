package address

import (
	"testing"

	"hussif/content/journal"
)

func TestOf(t *testing.T) {
	for id, want := range map[journal.ID]string{
		"builds/grey-jacket":            "builds/grey-jacket.html",
		"builds/grey-jacket/2026-03-01": "builds/grey-jacket/2026-03-01.html",
		"materials/Blue Linen & Wool":   "materials/blue-linen---wool.html",
		"notes/étamine":                 "notes/étamine.html",
		"notes/con":                     "notes/-con.html",
		"notes/com1.x":                  "notes/-com1.x.html",
		"index":                         "pages/index.html",
	} {
		if got := Of(id); got != want {
			t.Errorf("Of(%q) is %q, want %q", id, got, want)
		}
	}
}

func TestUnder(t *testing.T) {
	if got, want := Under("people/ada", "wardrobe"), "people/ada.wardrobe.html"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestRoot(t *testing.T) {
	for path, want := range map[string]string{"index.html": "", "builds/a.html": "../", "builds/a/b.html": "../../"} {
		if got := Root(path); got != want {
			t.Errorf("Root(%q) is %q, want %q", path, got, want)
		}
	}
}
