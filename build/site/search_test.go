package site_test

import (
	"bytes"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"hussif/build/check"
	"hussif/build/site"
	"hussif/build/site/sitetest"
	"hussif/content/journal"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
	"hussif/theme/browsertest"
)

// seeker uses the search page of a site as a reader would.
type seeker struct {
	*browsertest.Browser
	t *testing.T
}

func (s seeker) press(keys string) {
	s.t.Helper()
	if err := chromedp.Do(s.Context(), chromedp.KeyEvent(keys)); err != nil {
		s.t.Fatal(err)
	}
}

// settled is true when the page has answered what was typed.
const settled = `new Promise(done => setTimeout(() => done(true), 200))`

// seek types words in place of those before, and returns what comes of them.
func (s seeker) seek(words string) (titles []string, tally string) {
	s.t.Helper()
	s.press(kb.Escape)
	s.press(words)
	browsertest.Ask[bool](s.Browser, settled)
	return s.titles(), browsertest.Ask[string](s.Browser, `document.querySelector(".tally").textContent`)
}

func (s seeker) titles() []string {
	return browsertest.Ask[[]string](s.Browser, `[...document.querySelectorAll(".hit-title")].map(p => p.textContent)`)
}

func (s seeker) marked() []string {
	return browsertest.Ask[[]string](s.Browser, `[...document.querySelectorAll(".hits mark")].map(m => m.textContent)`)
}

// focused says what has the focus: a field, or a link by its words.
func (s seeker) focused() string {
	return browsertest.Ask[string](s.Browser, `document.activeElement.name || document.activeElement.textContent`)
}

func (s seeker) heading() string {
	return browsertest.Ask[string](s.Browser, `document.querySelector("h1").textContent`)
}

// wardrobe is a small journal whose words are German, and hostile.
var wardrobe = fstest.MapFS{
	"journal.yaml":       {Data: []byte("title: Nähstube")},
	"people/änne.md":     {Data: []byte("---\ntitle: Änne\nmeasured:\n  - {date: 2026-01-02, upper arm girth: 11 in}\n---\n")},
	"builds/rock.md":     {Data: []byte("---\ntitle: Überrock\nfor: änne\ngarment: Rock\ntags: [Straße]\nfeatures: [Stulpenärmel]\n---\nAus grauem Tuch, die Ärmel gefüttert.\n\nNext time: den Kragen <b>zuerst</b> heften.\n")},
	"builds/rock/a.md":   {Data: []byte("---\ndate: 2026-01-03\ntitle: Erste Anprobe\nstage: fitting\nmeasured: {natural waist girth: 30 in}\n---\nSitzt.\n\nDecided: Knöpfe statt Haken.\n")},
	"materials/tuch.md":  {Data: []byte("---\ntitle: '<img src=x onerror=document.title=1>'\n---\nSchweres Tuch.")},
	"techniques/naht.md": {Data: []byte("Kappnaht.")},
}

func TestSearchFromADisk(t *testing.T) {
	dir := makeSite(t, wardrobe)
	s := seeker{browsertest.Open(t), t}
	s.Visit(browsertest.File(t, filepath.Join(dir, "search.html")), 1280, false)
	for _, c := range []struct {
		words  string
		titles []string
		marked string // one of the words that are marked
	}{
		{"Ärmel", []string{"Überrock"}, "Ärmel"},
		{"aermel grau", []string{"Überrock"}, "grauem"},
		{"ARMEL", []string{"Überrock"}, "Ärmel"},
		{"strasse", []string{"Straße", "Überrock"}, "Straße"},
		{"stulp", []string{"Stulpenärmel", "Überrock"}, "Stulpenärmel"},
		{"waist", []string{"Erste Anprobe"}, "waist"},
		{"knopf", []string{"Erste Anprobe"}, "Knöpfe"},
		{"uberrock anprobe", []string{"Erste Anprobe"}, "Anprobe"},
		{"upper arm", []string{"Änne"}, "upper"},
		{"kragen", []string{"Überrock"}, "Kragen"},
		{"onerror", []string{"<img src=x onerror=document.title=1>"}, "onerror"},
	} {
		titles, tally := s.seek(c.words)
		if slices.Sort(titles); !reflect.DeepEqual(titles, c.titles) {
			t.Errorf("%q finds %q, want %q", c.words, titles, c.titles)
		}
		if marked := s.marked(); !slices.Contains(marked, c.marked) {
			t.Errorf("%q marks %q, want %q among them", c.words, marked, c.marked)
		}
		if strings.Contains(tally, "near") {
			t.Errorf("%q: %s", c.words, tally)
		}
	}
	if titles, tally := s.seek("uberrok"); !slices.Contains(titles, "Überrock") || !strings.Contains(tally, "near") {
		t.Errorf("a slip finds %q: %s", titles, tally)
	}
	if titles, tally := s.seek("qqqqqq"); len(titles) > 0 || !strings.HasPrefix(tally, "Nothing here") {
		t.Errorf("what is nowhere finds %q: %s", titles, tally)
	}
	s.seek("kragen")
	if said := browsertest.Ask[string](s.Browser, `document.querySelector(".hit").innerText`); !strings.Contains(said, "den Kragen <b>zuerst</b> heften") || !strings.Contains(strings.ToLower(said), "next time") {
		t.Errorf("it shows %q", said)
	}
	href := browsertest.Ask[string](s.Browser, `document.querySelector(".hit a").getAttribute("href")`)
	if !strings.HasPrefix(href, "builds/rock.html#next-") {
		t.Errorf("it leads to %s, not to the place where it stands", href)
	}
	s.seek("anprobe")
	if about := browsertest.Ask[string](s.Browser, `document.querySelector(".hit .whence").innerText`); !strings.Contains(about, "fitting") || !strings.Contains(about, "3 January 2026") || !strings.Contains(about, "Überrock") {
		t.Errorf("of what it is it says %q", about)
	}
	if said := s.Said(); len(said) > 0 {
		t.Errorf("the browser says %q", said)
	}
}

func TestSearchByKeyboard(t *testing.T) {
	dir := makeSite(t, demo.Journal())
	s := seeker{browsertest.Open(t), t}
	s.Visit(browsertest.File(t, filepath.Join(dir, "builds", "grey-wool-jacket.html")), 1280, false)
	for range 3 { // the skip link, the journal's name, the words to look for
		s.press("\t")
	}
	if at := s.focused(); at != "q" {
		t.Fatalf("the third thing to tab to is %q, not the search", at)
	}
	s.press("sleeve" + kb.Enter)
	s.Await(".hits li")
	if heading := s.heading(); heading != "Search" {
		t.Fatalf("it leads to %q", heading)
	}
	titles := s.titles()
	if len(titles) < 3 || s.focused() != "q" {
		t.Fatalf("it finds %q, and %q has the focus", titles, s.focused())
	}
	for _, step := range []struct{ keys, focus string }{
		{kb.ArrowDown, titles[0]}, {kb.ArrowDown, titles[1]}, {kb.ArrowUp, titles[0]}, {kb.ArrowUp, "q"},
		{kb.Enter, titles[0]}, {kb.Escape, "q"}, {kb.ArrowDown, titles[0]}, {"/", "q"}, {kb.ArrowDown, titles[0]},
	} {
		if s.press(step.keys); s.focused() != step.focus {
			t.Fatalf("%q leads to %q, want %q", step.keys, s.focused(), step.focus)
		}
	}
	if width := browsertest.Ask[string](s.Browser, `getComputedStyle(document.activeElement).outlineWidth`); width != "2px" {
		t.Errorf("the outline of what has the focus is %s wide", width)
	}
	s.press(kb.Enter)
	s.Await("main:not(:has(.seek-page))")
	if heading := s.heading(); heading != titles[0] {
		t.Fatalf("Enter leads to %q, want %q", heading, titles[0])
	}
	if err := chromedp.Do(s.Context(), chromedp.NavigateBack()); err != nil {
		t.Fatal(err)
	}
	s.Await(".hits li")
	if again := s.titles(); !slices.Equal(again, titles) {
		t.Errorf("going back leads to %q, want %q", again, titles)
	}
	s.press("/" + kb.Escape)
	if left := s.titles(); len(left) > 0 {
		t.Errorf("Escape leaves %q", left)
	}
}

// TestSearchPageWithoutScripts: it is an index of all that has a page of its own.
func TestSearchPageWithoutScripts(t *testing.T) {
	dir := makeSite(t, wardrobe)
	pages := sitetest.Pages(t, dir)
	for name, p := range pages {
		for n := range p.Root.Descendants() {
			if n.Data == "script" && sitetest.Attr(n, "type") != "application/ld+json" && name != "search.html" {
				t.Errorf("%s loads a script", name)
			}
		}
	}
	var lines []string
	for n := range pages["search.html"].Root.Descendants() {
		if n.Data == "h2" || n.Data == "li" && sitetest.Attr(n.Parent, "class") == "index" {
			lines = append(lines, sitetest.Text(n))
		}
	}
	want := []string{
		"Figures", "<img src=x onerror=document.title=1> material",
		"A", "Änne person",
		"E", "Erste Anprobe 3 January 2026, Überrock",
		"N", "Naht technique",
		"R", "Rock: Überrock",
		"S", "Straße tag", "Stulpenärmel feature",
		"U", "Überrock build",
	}
	if !slices.Equal(lines, want) {
		t.Errorf("the index is\n%q, want\n%q", lines, want)
	}
}

// An edit of one note makes one part of the index anew and not all of them.
func TestOneEditIsOnePartOfTheIndex(t *testing.T) {
	files := generate.Journal(1500, 1)
	m := newMirror(t)
	show := func() map[string][]byte {
		j, read, err := journal.Open(files)
		if err != nil {
			t.Fatal(err)
		}
		m.show(t, site.Input{Journal: j, Findings: check.Run(j, files, read), Today: today})
		parts := make(map[string][]byte)
		for path, data := range m.pages {
			if strings.HasPrefix(path, "search/") {
				parts[path] = bytes.Clone(data)
			}
		}
		return parts
	}
	before := show()
	if len(before) < 4 {
		t.Fatalf("there are only the parts %d", len(before))
	}
	note := regexp.MustCompile(`^builds/.*/20.*\.md$`)
	for name, file := range files {
		if note.MatchString(name) {
			files[name] = &fstest.MapFile{Data: append(bytes.Clone(file.Data), "\n\nNext time: whip the quillon first.\n"...)}
			break
		}
	}
	var changed []string
	for path, data := range show() {
		if !bytes.Equal(before[path], data) {
			changed = append(changed, path)
			if !bytes.Contains(data, []byte("quillon")) {
				t.Errorf("%s does not have the new word", path)
			}
		}
	}
	if len(changed) != 1 {
		t.Errorf("the parts %q changed, want one", changed)
	}
}

// BenchmarkSearchPage opens the search page of a large journal from a disk, and says
// after how many milliseconds the first words are answered. The target is a second for
// 10,000 notes.
func BenchmarkSearchPage(b *testing.B) {
	dir := makeSite(b, generate.Journal(10_000, 1))
	window := browsertest.Open(b)
	address := browsertest.File(b, filepath.Join(dir, "search.html")) + "?q=waist+sea"
	var took []float64
	for b.Loop() {
		window.Visit(address, 1280, false)
		took = append(took, browsertest.Ask[float64](window, `Number(document.querySelector(".seek").dataset.ready)`))
	}
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2], "ms-ready")
	b.ReportMetric(took[len(took)-1], "ms-worst")
}
