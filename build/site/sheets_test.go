package site_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"hussif/build/site/sitetest"
	"hussif/testdata/demo"
)

// within returns the text of the part of a page that has an id.
func within(p sitetest.Page, id string) string {
	for n := range p.Root.Descendants() {
		if sitetest.Attr(n, "id") == id {
			return sitetest.Text(n)
		}
	}
	return ""
}

// TestSheetsSayWhatTheRecordKnows reads the demo's sheets. The figures are worked
// out by hand in the notes beside them.
func TestSheetsSayWhatTheRecordKnows(t *testing.T) {
	pages := sitetest.Pages(t, makeSite(t, demo.Journal()))
	for _, test := range []struct {
		page, part string
		want       []string
	}{
		// Body 29 1/4 in over shift and stays, 3/4 in more over the petticoats; the jacket is 28 1/4 in and laps from 1 in to 1/2 in.
		{"builds/grey-wool-jacket.before-a-remake.html", "section-fit-today", []string{"natural waist girth short by 1 1/4 in with a 1/2 in lap"}},
		// The centre back has 3/8 in of which 1/4 in must stay: two edges give 1/4 in, so 1 in is wanting of 1 1/4 in.
		{"builds/grey-wool-jacket.before-a-remake.html", "section-room", []string{"centre back natural waist girth 1/4 in 1/8 in 3/8 in 1/4 in", "natural waist girth 14 1/2 in 1 in"}},
		{"builds/grey-wool-jacket.before-a-remake.html", "section-next-time", []string{"open the lining at the waist too"}},
		{"builds/grey-wool-jacket.take-down.html", "section-open", []string{"lining fell whole", "centre back whole"}},
		{"people/hester.wardrobe.html", "section-short", []string{"Madder jacket short by 1 1/8 in at natural waist girth"}},
		{"people/hester.wardrobe.html", "section-waiting", []string{"Grey broadcloth jacket waiting for repair"}},
		{"patterns/kestrel-jacket-draft.before-a-remake.html", "section-advances", []string{"add 1/4 in to each edge"}},
	} {
		p, ok := pages[test.page]
		if !ok {
			t.Errorf("there is no %s", test.page)
			continue
		}
		got := within(p, test.part)
		for _, words := range test.want {
			if !strings.Contains(got, words) {
				t.Errorf("%s, %s: %q does not stand in %q", test.page, test.part, words, got)
			}
		}
	}
}

// TestDrawingsHaveWords: every drawing is named and told in words for those who do
// not see it.
func TestDrawingsHaveWords(t *testing.T) {
	drawings := 0
	for _, p := range sitetest.Pages(t, makeSite(t, demo.Journal())) {
		for n := range p.Root.Descendants() {
			if n.Type != html.ElementNode || n.Data != "svg" {
				continue
			}
			drawings++
			said := ""
			for c := range n.ChildNodes() {
				if c.Data == "title" || c.Data == "desc" {
					said += sitetest.Text(c)
				}
			}
			if sitetest.Attr(n, "role") != "img" || len(said) < 20 {
				t.Errorf("%s has a drawing that says only %q", p.Path, said)
			}
		}
	}
	if drawings < 30 {
		t.Errorf("only %d drawings found", drawings)
	}
}

// TestSameBytes: the same journal gives the same site, whatever the number of
// workers.
func TestSameBytes(t *testing.T) {
	workers := runtime.GOMAXPROCS(1)
	one := makeSite(t, demo.Journal())
	runtime.GOMAXPROCS(max(workers, 4))
	many := makeSite(t, demo.Journal())
	runtime.GOMAXPROCS(workers)
	names := func(dir string) []string {
		var all []string
		err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && !strings.HasPrefix(name, ".") {
				all = append(all, name)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		return all
	}
	if a, b := names(one), names(many); !slices.Equal(a, b) {
		t.Fatalf("one worker makes %d files, many make %d", len(a), len(b))
	}
	for _, name := range names(one) {
		a, err := os.ReadFile(filepath.Join(one, name))
		if err != nil {
			t.Fatal(err)
		}
		b, err := os.ReadFile(filepath.Join(many, name))
		if err != nil {
			t.Fatal(err)
		}
		if string(a) != string(b) {
			t.Errorf("%s depends on the number of workers", name)
		}
	}
}
