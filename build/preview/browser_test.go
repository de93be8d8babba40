package preview

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"hussif/build/keep"
	"hussif/build/photo"
	"hussif/content/edtf"
	"hussif/testdata/demo"
	"hussif/theme/browsertest"
)

// A previewed is the preview of a journal on disk, in a browser.
type previewed struct {
	*watching
	*browsertest.Browser
	address string
	store   string // the folder of things made
	end     func() // ends the serving
	window  *Window
}

// preview opens the preview of a copy of the demo.
func preview(t *testing.T) *previewed {
	t.Helper()
	if testing.Short() {
		t.Skip("opens pages in a browser")
	}
	p := &previewed{
		watching: &watching{t: t, dir: filepath.Join(t.TempDir(), "journal")}, store: t.TempDir(), Browser: browsertest.Open(t),
	}
	if err := os.CopyFS(p.dir, demo.Journal()); err != nil {
		t.Fatal(err)
	}
	store, err := keep.Open(p.store)
	if err != nil {
		t.Fatal(err)
	}
	maker, err := NewBench(p.dir, &photo.Darkroom{Store: store}, func() edtf.Day { return edtf.DayOf(2026, 11, 25) })
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(maker.Close)
	p.window = NewWindow(maker, func(Change) {})
	ctx, stop := context.WithCancel(context.Background())
	batches, ended := make(chan Batch), make(chan struct{}, 2)
	go func() {
		(&Watcher{Dir: p.dir}).Run(ctx, batches)
		ended <- struct{}{}
	}()
	go func() {
		p.window.Follow(ctx, batches)
		ended <- struct{}{}
	}()
	t.Cleanup(func() { stop(); <-ended; <-ended })
	p.address, p.end = served(t, p.window)
	return p
}

// wait waits until a script says that it is so. The page may be loaded again
// meanwhile, which ends scripts.
func (p *previewed) wait(what, script string) {
	p.t.Helper()
	var err error
	for end := time.Now().Add(deadline); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		var so bool
		if so, err = chromedp.Run(p.Context(), chromedp.Evaluate[bool](script, chromedp.EvalAwaitPromise)); so && err == nil {
			return
		}
	}
	text, _ := chromedp.Run(p.Context(), chromedp.Evaluate[string](`scrollY + " " + document.body.innerText.slice(0, 1000)`))
	p.t.Fatalf("%s: not so (%v); the page says: %s", what, err, text)
}

// has waits until the preview has a page that says something.
func (p *previewed) has(path, text string) {
	p.t.Helper()
	for end := time.Now().Add(deadline); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if strings.Contains(string(p.window.page(p.t.Context(), path).with(p.window.sight())), text) {
			return
		}
	}
	p.t.Fatalf("%s does not say %q", path, text)
}

func (p *previewed) says(text string) string {
	return fmt.Sprintf(`document.body && document.querySelector("main").innerText.includes(%q)`, text)
}

const (
	jacketNote = "builds/grey-wool-jacket/2026-11-20-all-over-again"
	photoNote  = "builds/grey-wool-jacket/2024-04-13-waist-still-tight"
	barSays    = `document.querySelector("#hussif-preview [role=status]").textContent`
)

// long is a note of many paragraphs in parts with names of their own.
func long(first string) string {
	var b strings.Builder
	b.WriteString("---\nstage: fitting\n---\n" + first + "\n\n")
	for part := range 8 {
		fmt.Fprintf(&b, "## Part %d\n\n", part)
		for i := range 12 {
			fmt.Fprintf(&b, "Line %d of part %d, about the seams, at some length so that it fills a line or two of the page.\n\n", i, part)
		}
	}
	return b.String()
}

// TestAPageFollowsItsNote writes as a maker would, and looks at the open page.
func TestAPageFollowsItsNote(t *testing.T) {
	p := preview(t)
	p.write(jacketNote+".md", long("As it was."))
	p.has(jacketNote+".html", "As it was.")
	p.Visit(p.address+"/"+jacketNote+".html", 1280, false)
	p.wait("shown", p.says("As it was."))
	p.wait("so far nothing but a warning of the demo", barSays+`.endsWith("in the journal.")`)

	// Changed below, the page stays where it is.
	browsertest.Ask[bool](p.Browser, `scrollTo({top: 1500, behavior: "instant"}), window.marked = true`)
	p.write(jacketNote+".md", long("As it was.")+"Added at the end.\n")
	p.wait("the end is added", p.says("Added at the end."))
	p.wait("scrolled as before", `scrollY === 1500`)
	p.wait("loaded again", `window.marked === undefined`)

	// Changed above, what is being read stays where it is.
	const place = `document.querySelector("#part-3").getBoundingClientRect().top`
	browsertest.Ask[bool](p.Browser, `document.querySelector("#part-3").scrollIntoView({behavior: "instant"}), scrollBy({top: 60, behavior: "instant"}), true`)
	before := browsertest.Ask[float64](p.Browser, place)
	p.write(jacketNote+".md", long("Much is added above.\n\n"+strings.Repeat("More.\n\n", 40)))
	p.wait("the start is changed", p.says("Much is added above."))
	p.wait("what is read is where it was", fmt.Sprintf("Math.abs(%s - %v) < 2", place, before))

	// Another page's change is nothing to this one.
	browsertest.Ask[bool](p.Browser, `window.marked = true`)
	p.write("techniques/basting.md", "---\ntitle: Basting\n---\nLong stitches.\n")
	p.has("techniques/basting.html", "Long stitches.")
	if !browsertest.Ask[bool](p.Browser, `window.marked === true`) {
		t.Error("loaded again for another page's sake")
	}
	if said := p.Said(); len(said) > 0 {
		t.Errorf("the browser says %q", said)
	}
}

// TestBrokenAndMended makes a slip in a note and puts it right.
func TestBrokenAndMended(t *testing.T) {
	p := preview(t)
	p.write(jacketNote+".md", long("As it was."))
	p.has(jacketNote+".html", "As it was.")
	p.Visit(p.address+"/"+jacketNote+".html", 360, true)
	p.wait("shown", p.says("As it was."))

	browsertest.Ask[bool](p.Browser, `scrollTo({top: 1500, behavior: "instant"}), window.marked = true`)
	p.write(jacketNote+".md", strings.Replace(long("Not yet seen."), "fitting", "fittin", 1))
	p.wait("the finding is told", barSays+`.startsWith("1 error") && `+barSays+`.includes("last good one")`)
	p.wait("the list opens by its key", `(e => { e.focus(); e.click(); return document.activeElement === e && e.parentElement.open })(document.querySelector("#hussif-preview summary"))`)
	told := browsertest.Ask[string](p.Browser, `document.querySelector("#hussif-preview .finding").innerText`)
	for _, want := range []string{jacketNote + ".md:2:8", `"fittin" is not a stage of the work`, "stage: fittin", `did you mean "fitting"?`} {
		if !strings.Contains(told, want) {
			t.Errorf("the bar lacks %q: %s", want, told)
		}
	}
	p.wait("the last good page stays", p.says("As it was.")+` && scrollY === 1500 && window.marked`)
	if wide := browsertest.Ask[int](p.Browser, `document.scrollingElement.scrollWidth`); wide > 360 {
		t.Errorf("the page is %d px wide in a window of 360", wide)
	}
	// At the end of the page the bar is below all that the page holds.
	p.wait("nothing is covered", `(scrollTo({top: 1e6, behavior: "instant"}),
		document.querySelector(".colophon").getBoundingClientRect().bottom <= document.querySelector("#hussif-preview").getBoundingClientRect().top + 1)`)
	if height := browsertest.Ask[float64](p.Browser, `document.querySelector("#hussif-preview summary").getBoundingClientRect().height`); height < 24 {
		t.Errorf("what opens the list is %.1f px high, want 24 (WCAG 2.2, success criterion 2.5.8)", height)
	}

	p.write(jacketNote+".md", long("Seen now."))
	p.wait("the new page is shown", p.says("Seen now."))
	p.wait("the error has gone", `!`+barSays+`.includes("error")`)
	p.wait("what was open is open, and what had the focus has it",
		`document.querySelector("#hussif-preview details").open && document.activeElement === document.querySelector("#hussif-preview summary")`)
	if said := p.Said(); len(said) > 0 {
		t.Errorf("the browser says %q", said)
	}
}

// TestErrorsFirst opens a preview of a journal that is broken already.
func TestErrorsFirst(t *testing.T) {
	p := preview(t)
	p.write("people/hester.md", "---\nmeasured: nothing\n---\n")
	store, err := keep.Open(p.store)
	if err != nil {
		t.Fatal(err)
	}
	maker, err := NewBench(p.dir, &photo.Darkroom{Store: store}, func() edtf.Day { return edtf.DayOf(2026, 11, 25) })
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(maker.Close)
	w := NewWindow(maker, func(Change) {})
	w.Look(t.Context(), Batch{All: true})
	address, _ := served(t, w)
	p.Visit(address+"/index.html", 1280, false)
	p.wait("the findings are shown", p.says("people/hester.md:2:11"))
	hester, err := fs.ReadFile(demo.Journal(), "people/hester.md")
	if err != nil {
		t.Fatal(err)
	}
	p.write("people/hester.md", string(hester))
	w.Look(t.Context(), Batch{All: true})
	p.wait("the start is shown", `document.querySelector("h1").textContent.includes("Quayside")`)
}

// TestAPhotoIsMadeWhenItIsSeen counts what the store of things made holds.
func TestAPhotoIsMadeWhenItIsSeen(t *testing.T) {
	p := preview(t)
	p.Visit(p.address+"/decisions.html", 1280, false)
	p.wait("shown", `document.querySelector("h1").textContent === "Decisions"`)
	if made := p.made(); made != 0 {
		t.Errorf("%d pictures are made for a page without any", made)
	}
	p.Visit(p.address+"/"+photoNote+".html", 1280, false)
	p.wait("all pictures are there", `document.images.length > 0 && [...document.images].every(i => (i.loading = "eager", i.complete && i.naturalWidth > 0))`)
	made := p.made()
	if made == 0 || made > 3 {
		t.Errorf("%d pictures are made, want the widths of one photo", made)
	}
	size := browsertest.Ask[bool](p.Browser, `[...document.images].every(i => Math.abs(i.naturalWidth / i.naturalHeight - i.getAttribute("width") / i.getAttribute("height")) < 0.02)`)
	if !size {
		t.Error("a picture has not the size that was expected")
	}

	// One that turns out to be damaged is told, and the page stays.
	file := p.path("builds/grey-wool-jacket/photos/waist-inside.jpg")
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for i := len(data) / 2; i < len(data)-2; i++ {
		data[i] = 0xff
	}
	if err := os.WriteFile(file, data, 0o666); err != nil {
		t.Fatal(err)
	}
	p.wait("the damage is told", barSays+`.includes("1 error")`)
}

// made counts the pictures in the store.
func (p *previewed) made() int {
	n := 0
	err := filepath.WalkDir(p.store, func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && filepath.Base(filepath.Dir(filepath.Dir(name))) == "file" {
			n++
		}
		return err
	})
	if err != nil {
		p.t.Fatal(err)
	}
	return n
}

// TestThePreviewStartsAgain ends the serving and takes it up at the same port.
func TestThePreviewStartsAgain(t *testing.T) {
	p := preview(t)
	p.write(jacketNote+".md", long("As it was."))
	p.has(jacketNote+".html", "As it was.")
	p.Visit(p.address+"/"+jacketNote+".html#part-2", 1280, false)
	p.wait("shown", p.says("As it was."))
	p.end()
	p.wait("the end is told", barSays+`.includes("The preview has stopped")`)
	p.write(jacketNote+".md", long("As it is now."))
	var port int
	if _, err := fmt.Sscanf(strings.TrimPrefix(p.address, "http://127.0.0.1:"), "%d", &port); err != nil {
		t.Skip("no IPv4 here")
	}
	l, err := Listen(port)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error)
	go func() { ended <- p.window.Serve(ctx, l) }()
	defer func() { stop(); <-ended }()
	p.wait("the page is shown as it is now", p.says("As it is now."))
	if hash := browsertest.Ask[string](p.Browser, `location.hash`); hash != "#part-2" {
		t.Errorf("the part of the page is %q", hash)
	}
}

// TestWithoutScripts reads a page as a browser that runs none.
func TestWithoutScripts(t *testing.T) {
	p := preview(t)
	p.has("index.html", "in the journal.")
	p.write(photoNote+".md", strings.Replace(long("Written with a slip."), "fitting", "fittin", 1))
	p.has("index.html", "1 error")
	body := ask(p.window, "/"+photoNote+".html").Body.String()
	for _, want := range []string{"Good enough to go to market in.", `1 error`, "is not a stage of the work"} {
		if !strings.Contains(body, want) {
			t.Errorf("lacks %q", want)
		}
	}
}

// The search page has scripts of its own, which stand beside the preview's, and what
// they look in is the journal as it is now.
func TestPreviewIsSearched(t *testing.T) {
	p := preview(t)
	p.Visit(p.address+"/search.html?q=kestrel", 1280, false)
	p.wait("pages are found", `document.querySelectorAll(".hit").length === 3`)
	p.write("techniques/quillon.md", "Whip the quillon first.\n")
	p.has("search.html", "Quillon")
	p.wait("the page has the new one", `document.querySelector('.index a[href="techniques/quillon.html"]') !== null`)
	p.Visit(p.address+"/search.html?q=quillon", 1280, false)
	p.wait("the new page is found", `document.querySelector(".hit a").textContent === "Quillon"`)
	if said := p.Said(); len(said) > 0 {
		t.Errorf("the browser says %q", said)
	}
}
