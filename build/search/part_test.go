package search

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"

	"hussif/theme"
	"hussif/theme/browsertest"
)

var pages = []Page{
	{Path: "builds/rock.html", Title: "Überrock", Kind: "Build", Lines: []Line{
		{Text: `It's "grey" \ cloth, with a </script> in it.`},
		{Label: "Features", Text: "piped armhole, Ärmel", Names: true},
		{Label: "Next time", Anchor: "next-cut", Text: "cut, cut and cut again\nas the tape says"},
	}},
	{Path: "builds/rock/a.html", Title: "First fitting", Kind: "Note", Day: "3 January 2026", Of: "Überrock", Lines: []Line{{Text: "The grey sleeve binds."}}},
	{Path: "tags.html#tag-grey", Title: "grey", Kind: "Tag"},
}

func TestParts(t *testing.T) {
	for records, want := range map[int]int{0: 1, 1: 1, 400: 1, 401: 2, 10_000: 32} {
		if got := Parts(records); got != want {
			t.Errorf("%d records make %d parts, want %d", records, got, want)
		}
	}
	sizes := make([]int, 8)
	for i := range 800 {
		sizes[PartOf(fmt.Sprintf("builds/jacket-%d", i), 8)]++
	}
	if slices.Min(sizes) < 50 || slices.Max(sizes) > 200 {
		t.Errorf("the parts hold %d", sizes)
	}
}

func TestScriptIsTheSameForTheSamePages(t *testing.T) {
	first := scriptOf(t, pages)
	for range 5 {
		if again := scriptOf(t, pages); !bytes.Equal(first, again) {
			t.Fatalf("got %s, and then %s", first, again)
		}
	}
}

func scriptOf(t *testing.T, pages []Page) []byte {
	t.Helper()
	b, err := Script(pages)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// open opens a page with the scripts of the search page and these parts of an index.
func open(t *testing.T, parts ...[]byte) *browsertest.Browser {
	t.Helper()
	dir := t.TempDir()
	put := func(name string, data []byte) {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	html := `<!DOCTYPE html><meta charset="utf-8">`
	for _, asset := range theme.Assets() {
		if filepath.Ext(asset.Path) == ".js" {
			put(filepath.Base(asset.Path), asset.Data)
		}
	}
	for _, name := range []string{"minisearch.js", "search.js"} {
		html += `<script src="` + name + `"></script>`
	}
	for i, part := range parts {
		name := fmt.Sprintf("part-%d.js", i)
		put(name, part)
		html += `<script src="` + name + `"></script>`
	}
	put("page.html", []byte(html))
	b := browsertest.Open(t)
	b.Visit(browsertest.File(t, filepath.Join(dir, "page.html")), 400, false)
	if said := b.Said(); len(said) > 0 {
		t.Fatalf("the browser says %q", said)
	}
	return b
}

// The index that the parts join to is the one that the library itself makes of the
// same pages, and is held to its own way of writing one.
func TestIndexIsTheLibrarysOwn(t *testing.T) {
	b := open(t, scriptOf(t, pages[:1]), scriptOf(t, nil), scriptOf(t, pages[1:]))
	var documents []map[string]any
	for i, p := range pages {
		document := map[string]any{"id": i, "title": p.Title, "names": p.Of, "text": ""}
		for _, l := range p.Lines {
			field := "text"
			if l.Names {
				field = "names"
			}
			document[field] = document[field].(string) + "\n" + l.Text
		}
		documents = append(documents, document)
	}
	given, err := json.Marshal(documents)
	if err != nil {
		t.Fatal(err)
	}
	got := browsertest.Ask[map[string]any](b, `JSON.parse(JSON.stringify(hussifSearch.join().index))`)
	want := browsertest.Ask[map[string]any](b, `(() => {
		const own = new MiniSearch(hussifSearch.options);
		own.addAll(`+string(given)+`);
		return JSON.parse(JSON.stringify(own));
	})()`)
	for _, index := range []map[string]any{got, want} {
		slices.SortFunc(index["index"].([]any), func(a, b any) int {
			return bytes.Compare([]byte(a.([]any)[0].(string)), []byte(b.([]any)[0].(string)))
		})
	}
	if len(want["index"].([]any)) < 20 {
		t.Fatalf("the library's index has %v", want["index"])
	}
	for _, key := range slices.Sorted(maps.Keys(want)) {
		if key != "storedFields" && !reflect.DeepEqual(got[key], want[key]) {
			t.Errorf("%s is\n%v, the library's own\n%v", key, got[key], want[key])
		}
	}
}

// What was written is shown as it was written.
func TestPagesComeAsTheyWere(t *testing.T) {
	b := open(t, scriptOf(t, pages))
	got := browsertest.Ask[[]any](b, `hussifSearch.join().pages[0]`)
	want := []any{"builds/rock.html", "Überrock", "Build", "", "", []any{
		[]any{"", "", `It's "grey" \ cloth, with a </script> in it.`},
		[]any{"Features", "", "piped armhole, Ärmel"},
		[]any{"Next time", "next-cut", "cut, cut and cut again\nas the tape says"},
	}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Browsers and Go each have tables of their own of what is a letter.
func TestWordsAreThoseOfTheBrowser(t *testing.T) {
	b := open(t)
	for text, want := range written {
		given, err := json.Marshal(text)
		if err != nil {
			t.Fatal(err)
		}
		got := browsertest.Ask[[]string](b, `hussifSearch.runs(`+string(given)+`).flatMap(hussifSearch.spellings)`)
		if !slices.Equal(got, want) {
			t.Errorf("%q has the words %q in a browser, want %q", text, got, want)
		}
	}
}
