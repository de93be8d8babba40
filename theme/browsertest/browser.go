// Package browsertest answers, for tests, what a real browser makes of a page. It
// drives Debian's Chromium, without a network and with a fresh profile each time.
//
// Where there is no Chromium, tests that ask for it are skipped; with
// HUSSIF_BROWSER=required in the environment they fail instead.
package browsertest

import (
	"context"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// patience is how long one browser may be used by one test.
const patience = 10 * time.Minute

// A Browser is one window of Chromium. It belongs to the test that opened it:
// whatever goes wrong with it fails that test.
type Browser struct {
	t   testing.TB
	ctx context.Context

	mu   sync.Mutex
	said []string
}

// Open starts Chromium and has it closed at the end of the test. A short run of tests
// goes without.
func Open(t testing.TB) *Browser {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes long")
	}
	program := find(t)
	var err error
	for range tries {
		var b *Browser
		if b, err = start(t, program); err == nil {
			return b
		}
	}
	t.Fatalf("starting %s: %v", program, err)
	panic("unreached")
}

// tries is how often Chromium is started: now and then it falls before it stands.
const tries = 3

func start(t testing.TB, program string) (*Browser, error) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), patience)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewExecAllocator(ctx,
		chromedp.ExecPath(program),
		chromedp.UserDataDir(t.TempDir()),
		chromedp.Headless,
		chromedp.NoSandbox,
		chromedp.DisableGPU,
		chromedp.NoFirstRun,
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
	)
	t.Cleanup(cancel)
	b := &Browser{t: t}
	b.ctx, cancel = chromedp.NewContext(ctx, chromedp.WithListener(b.listen))
	t.Cleanup(func() {
		cancel()
		_ = chromedp.Cancel(b.ctx) // waits until it has let go of its profile
	})
	return b, chromedp.Do(b.ctx)
}

// find returns the path of Chromium, or skips the test.
func find(t testing.TB) string {
	t.Helper()
	const debian = "/usr/bin/chromium"
	if _, err := os.Stat(debian); err == nil {
		return debian
	}
	program, err := exec.LookPath("chromium")
	if err == nil {
		return program
	}
	if os.Getenv("HUSSIF_BROWSER") == "required" {
		t.Fatalf("this test needs Chromium, which is not at %s: %v", debian, err)
	}
	t.Skipf("this test needs Chromium, which is not at %s; HUSSIF_BROWSER=required makes that a failure", debian)
	return ""
}

// listen keeps what a page makes Chromium say: refused files, faults of scripts.
func (b *Browser) listen(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *log.EventEntryAdded:
		b.said = append(b.said, e.Entry.Text)
	case *runtime.EventExceptionThrown:
		b.said = append(b.said, e.ExceptionDetails.Text)
	case *runtime.EventConsoleAPICalled:
		for _, arg := range e.Args {
			b.said = append(b.said, string(arg.Value)+arg.Description)
		}
	}
}

// Context returns the window's context, to run any chromedp action in.
func (b *Browser) Context() context.Context { return b.ctx }

// Said returns what the browser's console has said since it was last asked.
func (b *Browser) Said() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	said := b.said
	b.said = nil
	return said
}

// Visit opens a page in a window as many CSS pixels wide, by day or, dark, by
// night, and waits for its fonts.
func (b *Browser) Visit(address string, width int, dark bool) {
	b.t.Helper()
	scheme := "light"
	if dark {
		scheme = "dark"
	}
	err := chromedp.Do(b.ctx,
		chromedp.EmulateViewport(int64(width), 900),
		chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
			_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
				Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
			})
			if err != nil {
				return err
			}
			// A window nobody looks at has no focus, and :focus never matches.
			_, err = cdp.Call(ctx, t, emulation.SetFocusEmulationEnabled, emulation.SetFocusEmulationEnabledParams{Enabled: true})
			return err
		}),
		chromedp.Navigate(address),
	)
	if err != nil {
		b.t.Fatalf("visiting %s: %v", address, err)
	}
	Ask[string](b, `document.fonts.ready.then(() => document.fonts.status)`)
}

// Shot returns a picture of the whole page as PNG, with all pictures in it.
func (b *Browser) Shot() []byte {
	b.t.Helper()
	// Pictures further down are not fetched before somebody scrolls there.
	Ask[bool](b, `Promise.all([...document.images].map(i => (i.loading = "eager", i.decode().catch(() => 0)))).then(() => true)`)
	const lossless = 100
	shot, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(lossless))
	if err != nil {
		b.t.Fatalf("taking a picture of the page: %v", err)
	}
	return shot
}

// Print returns the page as it is printed, as PDF, on a paper of this size unless
// the page's style names its own.
func (b *Browser) Print(paper chromedp.PaperSize) []byte {
	b.t.Helper()
	pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper), chromedp.PDFPreferCSSPageSize()))
	if err != nil {
		b.t.Fatalf("printing the page: %v", err)
	}
	return pdf
}

// Ask runs a script in the page, in spite of the page's own policy, and returns
// its value, or what its promise comes to.
func Ask[T any](b *Browser, script string) T {
	b.t.Helper()
	answer, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("asking the page %q: %v", script, err)
	}
	return answer
}

// soon is how long a page may take to come.
const soon = time.Minute

// Await waits until a page has come that has an element, by a selector. It asks again and
// again: while one page gives way to another nobody may be there to answer.
func (b *Browser) Await(selector string) {
	b.t.Helper()
	script := `document.readyState === "complete" && document.querySelector(` + strconv.Quote(selector) + `) !== null`
	var err error
	for until := time.Now().Add(soon); time.Now().Before(until); time.Sleep(20 * time.Millisecond) {
		ctx, cancel := context.WithTimeout(b.ctx, soon/10)
		var there bool
		there, err = chromedp.Run(ctx, chromedp.Evaluate[bool](script))
		cancel()
		if there && err == nil {
			return
		}
	}
	b.t.Fatalf("no page has come with %s (%v), but %s", selector, err, Ask[string](b, `location.href + " " + document.readyState + " " + document.body.innerText.slice(0, 500)`))
}

// File returns the address of a file on disk.
func File(t testing.TB, name string) string {
	t.Helper()
	name, err := filepath.Abs(name)
	if err != nil {
		t.Fatal(err)
	}
	return (&url.URL{Scheme: "file", Path: filepath.ToSlash(name)}).String()
}
