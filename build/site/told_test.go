package site_test

import (
	"encoding/json"
	"io/fs"
	"path"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"hussif/build/site/sitetest"
	"hussif/testdata/demo"
)

// told returns what programs are told of a page: the properties of the Open Graph
// protocol, and its data.
func told(t *testing.T, p sitetest.Page) (map[string]string, map[string]any) {
	t.Helper()
	properties := make(map[string]string)
	var data map[string]any
	for n := range p.Root.Descendants() {
		switch {
		case n.Data == "meta" && sitetest.Attr(n, "property") != "":
			properties[sitetest.Attr(n, "property")] = sitetest.Attr(n, "content")
		case n.Data == "script" && sitetest.Attr(n, "type") == "application/ld+json":
			if err := json.Unmarshal([]byte(sitetest.Text(n)), &data); err != nil {
				t.Fatalf("%s: %v", p.Path, err)
			}
		}
	}
	return properties, data
}

// TestToldIsShown: programs are told nothing of a page but what a reader sees on it.
func TestToldIsShown(t *testing.T) {
	dir := makeSite(t, demo.Journal())
	pages := sitetest.Pages(t, dir)
	faces, openings := 0, 0
	for name, p := range pages {
		properties, data := told(t, p)
		var shown strings.Builder
		var main *html.Node
		for n := range p.Root.Descendants() {
			if n.Data == "main" {
				main = n
			}
			for _, address := range sitetest.Addresses(n) {
				if n.Data == "img" || n.Data == "a" {
					shown.WriteString(address + " ")
				}
			}
		}
		// The four properties that every page must have, as far as there can be any.
		if properties["og:title"] == "" || properties["og:type"] != "website" || properties["og:site_name"] != "The Quayside Needle Circle" {
			t.Errorf("%s tells %v", name, properties)
		}
		if !strings.Contains(sitetest.Text(main), strings.Join(strings.Fields(properties["og:title"]), " ")) {
			t.Errorf("%s is called %q and does not say so", name, properties["og:title"])
		}
		if about := properties["og:description"]; about != "" {
			openings++
			letters := func(s string) string { return strings.Join(strings.Fields(strings.TrimSuffix(s, "…")), "") }
			if !strings.Contains(letters(sitetest.Text(main)), letters(about)) {
				t.Errorf("%s does not say %q", name, about)
			}
		}
		if face := properties["og:image"]; face != "" {
			faces++
			if !strings.Contains(shown.String(), face) || path.IsAbs(face) || properties["og:image:alt"] == "" {
				t.Errorf("%s does not show %s (%q)", name, face, properties["og:image:alt"])
			}
		}
		if image, _ := data["image"].(string); data["name"] != properties["og:title"] || image != properties["og:image"] {
			t.Errorf("%s: %v is not %v", name, data, properties)
		}
		if properties["og:url"] != "" {
			t.Errorf("%s says it is at %s", name, properties["og:url"])
		}
	}
	if faces < 10 || openings < 50 {
		t.Errorf("%d pages have a face and %d an opening", faces, openings)
	}
}

// TestToldOnTheWeb: where a journal says where its site is, addresses are whole; a
// picture in which somebody can be recognised goes no further than its page.
func TestToldOnTheWeb(t *testing.T) {
	picture, err := fs.ReadFile(demo.Journal(), somePicture(t))
	if err != nil {
		t.Fatal(err)
	}
	dir := makeSite(t, fstest.MapFS{
		"journal.yaml":         {Data: []byte("title: Nähstube\naddress: https://example.org/costumes")},
		"builds/a/build.md":    {Data: []byte("---\nphotos: [{file: a.png, alt: The front, face: no}]\n---\nThe first.\n")},
		"builds/b/build.md":    {Data: []byte("---\nphotos: [{file: a.png, alt: The front, face: yes}]\n---\nThe second.\n")},
		"builds/a/a.png":       {Data: picture},
		"builds/b/a.png":       {Data: picture},
		"occasions/tag-der.md": {Data: []byte("---\ndate: 2026-06-01\nuntil: 2026-06-02\nplace: the green\n---\n")},
	})
	pages := sitetest.Pages(t, dir)
	properties, data := told(t, pages["builds/a.html"])
	for property, want := range map[string]string{
		"og:url": "https://example.org/costumes/builds/a.html", "og:description": "The first.", "og:image:alt": "The front",
	} {
		if properties[property] != want {
			t.Errorf("%s is %q, want %q", property, properties[property], want)
		}
	}
	if !strings.HasPrefix(properties["og:image"], "https://example.org/costumes/pictures/") || data["url"] != properties["og:url"] {
		t.Errorf("told are %v and %v", properties, data)
	}
	if properties, _ := told(t, pages["builds/b.html"]); properties["og:image"] != "" {
		t.Errorf("a face is told of: %v", properties)
	}
	if properties, _ := told(t, pages["index.html"]); properties["og:url"] != "https://example.org/costumes/" {
		t.Errorf("the start page is at %q", properties["og:url"])
	}
	_, data = told(t, pages["occasions/tag-der.html"])
	event, _ := data["mainEntity"].(map[string]any)
	if event["@type"] != "Event" || event["startDate"] != "2026-06-01" || event["endDate"] != "2026-06-02" {
		t.Errorf("the occasion is %v", data)
	}
}

// somePicture returns the name of a PNG of the demo.
func somePicture(t *testing.T) string {
	t.Helper()
	names, err := fs.Glob(demo.Journal(), "builds/*/photos/*.png")
	if err != nil || len(names) == 0 {
		t.Fatal("the demo has no PNG", err)
	}
	return names[0]
}
