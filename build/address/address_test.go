package address

import (
	"path"
	"strings"
	"testing"
	"unicode/utf8"

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
		"builds/tail./2026-03-01":       "builds/tail-/2026-03-01.html",
		"notes/zoe\u0301":               "notes/zo\u00e9.html", // two ways to write the same letter (UAX #15)
		"notes/\u202egpj.exe":           "notes/-gpj.exe.html",
	} {
		if got := Of(id); got != want {
			t.Errorf("Of(%q) is %q, want %q", id, got, want)
		}
	}
}

// A disk holds names of 255 bytes (Linux's NAME_MAX), and so long a name of a file
// still has a page, and sheets, of its own.
func TestLongNamesStayApart(t *testing.T) {
	seen := make(map[string]string)
	for _, name := range []string{strings.Repeat("l", 251), strings.Repeat("l", 250), strings.Repeat("é", 125), strings.Repeat("l.", 125)} {
		for _, page := range []string{Of(journal.ID("builds/" + name)), Under(journal.ID("builds/"+name), Remake)} {
			if base := path.Base(page); len(base) > 255 || !utf8.ValidString(base) {
				t.Errorf("%.20s… makes a name of %d bytes: %q", name, len(base), base)
			}
			if seen[page] != "" {
				t.Errorf("%.20s… has the page of another name", name)
			}
			seen[page] = name
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
