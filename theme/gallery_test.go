package theme

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hussif/theme/draw"
)

// keep names a folder in which the gallery stays, to be looked at by eye:
//
//	go test ./theme -run Gallery -gallery /some/folder
var keep = flag.String("gallery", "", "folder to leave the gallery of sample pages in")

// gallery returns sample pages of each kind, all invented, by their path in the
// site: rich ones, bare ones, and ones with words too long for their place.
func gallery() map[string]any {
	longSheet, longTakeDown, longWardrobe := longSheets("long/sheet.html")
	pages := map[string]any{
		"index.html":                                   start(),
		"builds/index.html":                            buildList(),
		"builds/striped-jacket/index.html":             stripedJacket(),
		"builds/striped-jacket/2026-02-14.html":        firstFitting(),
		"people/wren.html":                             wren(),
		"patterns/short-jacket-draft.html":             shortJacketDraft(),
		"techniques/hot-iron.html":                     pressing(),
		"occasions/market-day.html":                    marketDay(),
		"next-time.html":                               nextTimePage(),
		"tags.html":                                    tagsPage(),
		"found.html":                                   foundPage(),
		"builds/striped-jacket/before.html":            beforeRemake(),
		"builds/striped-jacket/take-down.html":         takeDown(),
		"builds/striped-jacket/side-gore-a4.html":      fullSize("builds/striped-jacket/side-gore-a4.html", draw.A4()),
		"builds/striped-jacket/side-gore-letter.html":  fullSize("builds/striped-jacket/side-gore-letter.html", draw.Letter()),
		"people/wren-before.html":                      wearersSheet(),
		"people/wren-wardrobe.html":                    wardrobe(),
		"patterns/short-jacket-before.html":            patternsSheet(),
		"bare/sheet.html":                              &Sheet{Frame: frame("bare/sheet.html", "Blue apron", "builds")},
		"bare/take-down.html":                          &TakeDown{Frame: frame("bare/take-down.html", "Blue apron", "builds"), Empty: "No seam of it is written down yet."},
		"bare/wardrobe.html":                           &Wardrobe{Frame: frame("bare/wardrobe.html", "Ottilie", "people"), Empty: "Nothing is made for Ottilie yet."},
		"bare/tiles.html":                              &Tiles{Frame: frame("bare/tiles.html", "Nothing", "builds")},
		"long/sheet.html":                              longSheet,
		"long/take-down.html":                          longTakeDown,
		"long/wardrobe.html":                           longWardrobe,
		"bare/start.html":                              &Start{Frame: frame("bare/start.html", "Journal", "")},
		"bare/list.html":                               &List{Frame: frame("bare/list.html", "People", "people"), Empty: "Nobody is measured yet. A file people/wren.md with a first measuring adds the first."},
		"bare/build.html":                              &Build{Frame: frame("bare/build.html", "Blue apron", "builds")},
		"bare/note.html":                               &Note{Frame: frame("bare/note.html", "Cut the lining", "builds"), Day: "3 January 2026", Body: "<p>Cut the lining today.</p>"},
		"bare/person.html":                             &Person{Frame: frame("bare/person.html", "Ottilie", "people")},
		"bare/thing.html":                              &Thing{Frame: frame("bare/thing.html", "Linen tape", "materials")},
		"bare/next-time.html":                          &NextTime{Frame: frame("bare/next-time.html", "Next time", "next time"), Empty: "No note says yet what to do next time. A paragraph that begins “Next time:” is gathered here."},
		"bare/tags.html":                               &Tags{Frame: frame("bare/tags.html", "Tags", "tags")},
		"bare/found.html":                              &Found{Frame: frame("bare/found.html", "What the check found", "")},
		"long/Überrockärmelaufschlagsknopfleiste.html": longWords(),
		"decisions.html":                               decisionsPage(),
		"evidence/index.html":                          evidencePage(),
		"evidence/piped-armhole.html":                  pipedArmhole(),
		"builds/striped-jacket/documentation.html":     dossier(),
		"materials/stash.html":                         stashPage(),
		"materials/index.html":                         materialList(),
		"to-do.html":                                   toDoPage(),
		"search.html":                                  searchPage(),
		"bare/search.html":                             &Search{Frame: frame("bare/search.html", "Search", "search"), Empty: "Nothing is written yet."},
	}
	maps.Copy(pages, bareRecord())
	maps.Copy(pages, longRecord())
	return pages
}

// frame is the frame of a page at a path.
func frame(at, title, section string) Frame {
	return Frame{
		Site: "The Thimble Lane circle", Title: title, Section: section, Feed: true,
		Root: strings.Repeat("../", strings.Count(at, "/")),
	}
}

// hang writes the gallery with its assets and pictures into a folder.
func hang(t testing.TB) (dir string) {
	t.Helper()
	if dir = *keep; dir == "" {
		dir = t.TempDir()
	}
	look, err := New()
	if err != nil {
		t.Fatal(err)
	}
	for name, view := range gallery() {
		var page bytes.Buffer
		if err := look.Render(&page, view); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		hangFile(t, dir, name, page.Bytes())
	}
	for _, asset := range Assets() {
		hangFile(t, dir, asset.Path, asset.Data)
	}
	hangFile(t, dir, "search/words.js", []byte(`hussifSearch.take('{"pages":[],"lengths":[],"words":[]}')`))
	for i := range pictures {
		hangFile(t, dir, picturePath(i), picture(t, i))
	}
	return dir
}

func hangFile(t testing.TB, dir, name string, data []byte) {
	t.Helper()
	name = filepath.Join(dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, data, 0o644); err != nil {
		t.Fatal(err)
	}
}

const pictures = 4

func picturePath(i int) string { return fmt.Sprintf("photos/stripes-%d.png", i) }

// picture draws a piece of striped cloth, upright or lying.
func picture(t testing.TB, i int) []byte {
	t.Helper()
	wide, high := 480, 640
	if i%2 == 1 {
		wide, high = high, wide
	}
	cloth := [pictures]color.NRGBA{{214, 200, 170, 255}, {120, 140, 130, 255}, {190, 150, 120, 255}, {90, 100, 130, 255}}[i]
	stripe := color.NRGBA{cloth.R - 50, cloth.G - 60, cloth.B - 40, 255}
	m := image.NewNRGBA(image.Rect(0, 0, wide, high))
	for y := range high {
		for x := range wide {
			c := cloth
			if (x+y*i/3)%(24+8*i) < 7 {
				c = stripe
			}
			m.SetNRGBA(x, y, c)
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// photo is a picture as a page at a path shows it.
func photo(at string, i int, alt, caption string) Photo {
	src := strings.Repeat("../", strings.Count(at, "/")) + picturePath(i)
	wide, high := 480, 640
	if i%2 == 1 {
		wide, high = high, wide
	}
	return Photo{
		Src: src, Srcset: fmt.Sprintf("%s %dw", src, wide), Sizes: "(min-width: 40rem) 15rem, 92vw",
		Width: wide, Height: high, Full: src, Alt: alt, Caption: caption,
	}
}

func link(href, text string) Link { return Link{Href: href, Text: text} }

// inch is a value in inches with the same in centimetres.
func inch(text, other string, notes ...string) Value {
	return Value{Text: text, Other: other, Notes: notes}
}

func cells(row ...string) []Link {
	links := make([]Link, len(row))
	for i, text := range row {
		links[i].Text = text
	}
	return links
}
