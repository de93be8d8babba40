package theme

import (
	"bytes"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"
)

func TestAssets(t *testing.T) {
	assets := map[string][]byte{}
	fonts := 0
	for _, asset := range Assets() {
		if !strings.HasPrefix(asset.Path, "theme/") || assets[asset.Path] != nil {
			t.Errorf("an asset lies at %s", asset.Path)
		}
		assets[asset.Path] = asset.Data
		if strings.HasSuffix(asset.Path, ".woff2") {
			fonts += len(asset.Data)
			if !bytes.HasPrefix(asset.Data, []byte("wOF2")) { // W3C, WOFF File Format 2.0, section 4.1
				t.Errorf("%s is no WOFF 2 file", asset.Path)
			}
		}
		if strings.HasSuffix(asset.Path, "-OFL.txt") && !bytes.Contains(asset.Data, []byte("SIL OPEN FONT LICENSE Version 1.1")) {
			t.Errorf("%s is not the licence", asset.Path)
		}
	}
	for _, licence := range []string{"theme/fonts/vollkorn-OFL.txt", "theme/fonts/encode-sans-OFL.txt"} {
		if assets[licence] == nil {
			t.Errorf("%s does not go with the fonts", licence)
		}
	}
	const theirs, copyright = "theme/scripts/minisearch-LICENSE.txt", "Copyright 2022 Luca Ongaro"
	if assets["theme/scripts/minisearch.js"] == nil || !bytes.Contains(assets[theirs], []byte(copyright)) {
		t.Errorf("the library that searches does not go with its licence")
	}
	const most = 200_000
	if fonts > most {
		t.Errorf("the fonts are %d bytes, want at most %d", fonts, most)
	}
	for _, address := range regexp.MustCompile(`url\("([^"]+)"\)`).FindAllSubmatch(assets["theme/style.css"], -1) {
		if at := string(address[1]); !strings.HasPrefix(at, "data:image/svg+xml,") && assets["theme/"+at] == nil {
			t.Errorf("the style asks for %s, which is no asset", at)
		}
	}
}

func TestEachSheetIsOnTheSiteInALayer(t *testing.T) {
	if first := string(mustRead("style/" + sheets[0] + ".css")); !strings.HasPrefix(first, "@layer tokens, base, frame, parts, prose, print;") {
		t.Errorf("the style begins with %.60q, not with the order of the layers", first)
	}
	entries, err := files.ReadDir("style")
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(sheets) {
		t.Errorf("there are %d style sheets, of which %d are on the site", len(entries), len(sheets))
	}
	for _, sheet := range sheets[1:] {
		if css := string(mustRead("style/" + sheet + ".css")); !strings.HasPrefix(css, "@layer ") {
			t.Errorf("%s begins with %.20q and counts above all layers", sheet, css)
		}
	}
}

func TestDrawingsAreOnTheSiteInALayer(t *testing.T) {
	css := mustRead("draw/draw.css")
	if !bytes.HasPrefix(css, []byte("@layer ")) {
		t.Errorf("it begins with %.20q and counts above all layers", css)
	}
	for _, asset := range Assets() {
		if asset.Path == "theme/style.css" && !bytes.Contains(asset.Data, css) {
			t.Error("the style of theme/draw is not in the style sheet")
		}
	}
}

// A source that the hash left out could change pages which a warm build keeps.
func TestHashCoversTheSources(t *testing.T) {
	for _, dir := range []string{".", "draw"} {
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, entry := range entries {
			name := path.Join(dir, entry.Name())
			if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || name == "doc.go" {
				continue
			}
			if _, err := files.ReadFile(name); err != nil {
				t.Errorf("%s is not among the files of embed.go", name)
			}
		}
	}
}

func TestHashIsSteady(t *testing.T) {
	if Hash() != Hash() || len(Hash()) != 64 {
		t.Errorf("the hash is %s, then %s", Hash(), Hash())
	}
}
