package preview

import (
	"bufio"
	"context"
	"errors"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestWhoIsServed(t *testing.T) {
	w, _ := shown(t)
	for _, c := range []struct {
		name    string
		address string
		headers []string
		status  int
	}{
		{"by name", "/", []string{"Host", "localhost:4877"}, 200},
		{"in capitals", "/", []string{"Host", "LOCALHOST:4877"}, 200},
		{"by number", "/", []string{"Host", "127.0.0.1:4877"}, 200},
		{"by the other number", "/", []string{"Host", "[::1]:4877"}, 200},
		{"at another port", "/", []string{"Host", "localhost:8080"}, 421},
		{"without a port", "/", []string{"Host", "localhost"}, 421},
		{"a name that was made to stand for this machine", "/", []string{"Host", "rebound.example:4877"}, 421},
		{"a name that begins like ours", "/", []string{"Host", "localhost.example:4877"}, 421},
		{"a name that ends like ours", "/", []string{"Host", "x.localhost:4877"}, 421},
		{"another number of this machine", "/", []string{"Host", "127.0.0.2:4877"}, 421},
		{"no name", "/", []string{"Host", ""}, 421},

		{"HEAD", "HEAD /", nil, 200},
		{"POST", "POST /", nil, 405},
		{"PUT", "PUT /index.html", nil, 405},
		{"DELETE", "DELETE /index.html", nil, 405},
		{"OPTIONS", "OPTIONS /", nil, 405},
		{"TRACE", "TRACE /", nil, 405},

		{"typed", "/", []string{"Sec-Fetch-Site", "none", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "document"}, 200},
		{"from our page", "/theme/style.css", []string{"Sec-Fetch-Site", "same-origin", "Sec-Fetch-Mode", "no-cors", "Sec-Fetch-Dest", "style"}, 200},
		{"a link elsewhere", "/", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "document"}, 200},
		{"framed elsewhere", "/", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "iframe"}, 403},
		{"a picture elsewhere", "/pictures/a.jpg", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "no-cors", "Sec-Fetch-Dest", "image"}, 403},
		{"a script of another port", "/index.html", []string{"Sec-Fetch-Site", "same-site", "Sec-Fetch-Mode", "cors", "Sec-Fetch-Dest", "empty"}, 403},
		{"a script elsewhere, of an old browser", "/index.html", []string{"Origin", "http://elsewhere.example"}, 403},
		{"a script of nowhere", "/index.html", []string{"Origin", "null"}, 403},
		{"our script", "/index.html", []string{"Origin", "http://127.0.0.1:4877"}, 200},
		{"events for a page elsewhere", "/.preview/events?page=/", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "cors", "Sec-Fetch-Dest", "empty"}, 403},
		{"a link elsewhere to the events", "/.preview/events?page=/", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "document"}, 403},
	} {
		answer := ask(w, c.address, c.headers...)
		if answer.Code != c.status {
			t.Errorf("%s: %d, want %d", c.name, answer.Code, c.status)
		}
		if answer.Header().Get("Access-Control-Allow-Origin") != "" {
			t.Errorf("%s: may be read elsewhere", c.name)
		}
		if allow := answer.Header().Get("Allow"); (c.status == 405) != (allow == "GET, HEAD") {
			t.Errorf("%s: allows %q", c.name, allow)
		}
		if c.status != 200 && strings.Contains(answer.Body.String(), "The start.") {
			t.Errorf("%s: shows the page", c.name)
		}
	}
}

// All that leads out of the site, however it is written, is not there.
func TestNothingButTheSite(t *testing.T) {
	w, s := shown(t)
	for _, escape := range []string{"../secret.html", "..", ".git/config", "a\\b.html", "a\x00.html", "/etc/passwd", ""} {
		s.files[escape] = "secret"
	}
	for _, address := range []string{
		"/../secret.html", "/builds/../../secret.html", "/%2e%2e/secret.html", "/..%2fsecret.html", "/..%5Csecret.html",
		"/builds/..%2F..%2Fsecret.html", "/%2E%2E%2Fsecret.html", "/a%5cb.html", "/a\\b.html", "/a%00.html", "//etc/passwd",
		"/%2fetc/passwd", "/./index.html", "/builds//index.html", "/.git/config", "/..", "/.", "/.preview/../index.html",
		"/.preview/events/../../secret.html", "/.preview/%2e%2e/secret.html", "/.preview/bar.html", "/.preview/", "/.preview/nothing.js",
		"/%ff.html", "/builds%2Findex.html",
	} {
		answer := ask(w, address)
		if answer.Code != 404 || strings.Contains(answer.Body.String(), "secret") {
			t.Errorf("%s: %d %s", address, answer.Code, answer.Body)
		}
	}
}

func TestFoldersLeadToTheirPages(t *testing.T) {
	w, _ := shown(t)
	for address, want := range map[string]string{"/": "The start.", "/builds/": "The builds.", "/builds/index.html": "The builds."} {
		if answer := ask(w, address); answer.Code != 200 || !strings.Contains(answer.Body.String(), want) {
			t.Errorf("%s: %d %s", address, answer.Code, answer.Body)
		}
	}
	for address, want := range map[string]string{"/builds": "/builds/", "/builds?print": "/builds/?print"} {
		if answer := ask(w, address); answer.Code != 302 || answer.Header().Get("Location") != want {
			t.Errorf("%s: %d to %q, want %s", address, answer.Code, answer.Header().Get("Location"), want)
		}
	}
}

func TestWhatAnswersSay(t *testing.T) {
	w, _ := shown(t)
	for address, kind := range map[string]string{
		"/": "text/html; charset=utf-8", "/nothing.html": "text/html; charset=utf-8", "/nothing": "text/html; charset=utf-8",
		"/theme/style.css": "text/css; charset=utf-8", "/notes.atom": "application/atom+xml; charset=utf-8",
		"/calendar.ics": "text/calendar; charset=utf-8", "/theme/fonts/a.woff2": "font/woff2",
		"/.preview/preview.js": "text/javascript; charset=utf-8", "/.preview/preview.css": "text/css; charset=utf-8",
	} {
		h := ask(w, address).Header()
		if got := h.Get("Content-Type"); got != kind {
			t.Errorf("%s is %q, want %q", address, got, kind)
		}
		for name, want := range map[string]string{
			"X-Content-Type-Options": "nosniff", "Cross-Origin-Resource-Policy": "same-origin", "Referrer-Policy": "no-referrer",
		} {
			if h.Get(name) != want {
				t.Errorf("%s: %s is %q, want %q", address, name, h.Get(name), want)
			}
		}
		policy := h.Get("Content-Security-Policy")
		if !strings.Contains(policy, "default-src 'none'") || !strings.Contains(policy, "frame-ancestors 'none'") || strings.Contains(policy, "unsafe") {
			t.Errorf("%s: the policy is %q", address, policy)
		}
		if kept := h.Get("Cache-Control"); kept != "no-store" && (kept != "no-cache" || h.Get("ETag") == "") {
			t.Errorf("%s is kept: %q, tag %q", address, kept, h.Get("ETag"))
		}
	}
	tag := ask(w, "/theme/style.css").Header().Get("ETag")
	if answer := ask(w, "/theme/style.css", "If-None-Match", tag); answer.Code != 304 || answer.Body.Len() > 0 {
		t.Errorf("asked for by its tag: %d, %d bytes", answer.Code, answer.Body.Len())
	}
	if answer := ask(w, "HEAD /theme/style.css"); answer.Body.Len() > 0 || answer.Header().Get("Content-Length") != "15" {
		t.Errorf("HEAD: %d bytes, said to be %s", answer.Body.Len(), answer.Header().Get("Content-Length"))
	}
}

// The script and the bar are the preview's; what the maker made has neither.
func TestOnlyThePreviewHasAScript(t *testing.T) {
	w, s := shown(t)
	before := s.files["builds/jacket.html"]
	body := ask(w, "/builds/jacket.html").Body.String()
	if !strings.Contains(body, `<script src="/.preview/preview.js"`) || !strings.Contains(body, `id="hussif-preview"`) {
		t.Errorf("no script or no bar: %s", body)
	}
	if strings.Contains(body, "http-equiv") {
		t.Errorf("the page's own policy would stop the script: %s", body)
	}
	if s.files["builds/jacket.html"] != before || strings.Contains(before, "script src") {
		t.Error("what was made was changed")
	}
}

func TestFindingsStandInThePage(t *testing.T) {
	w, s := shown(t)
	s.put(func(s *shelf) { s.state.Findings = append(s.state.Findings, fault()) })
	w.Look(t.Context(), Batch{All: true})
	body := ask(w, "/").Body.String()
	for _, want := range []string{
		"The start.", `<p role="status">1 error in the journal. The page shown is the last good one.</p>`, "notes/2026-03-01.md:2:8",
		"&#34;&lt;sowing&gt;&#34; is not a stage of the work", "stage: &lt;sowing&gt;", "did you mean &#34;sewing&#34;?",
	} {
		if !strings.Contains(body, want) {
			t.Errorf("lacks %q: %s", want, body)
		}
	}
	s.put(func(s *shelf) { s.trouble = errors.New("the disk is full of moths") })
	w.Look(t.Context(), Batch{All: true})
	if body := ask(w, "/").Body.String(); !strings.Contains(body, "full of moths") || !strings.Contains(body, "The start.") {
		t.Errorf("with trouble: %s", body)
	}
	s.put(func(s *shelf) { s.trouble, s.state.Findings = nil, nil })
	w.Look(t.Context(), Batch{All: true})
	if body := ask(w, "/").Body.String(); !strings.Contains(body, `<p role="status"></p>`) || strings.Contains(body, "moths") {
		t.Errorf("mended: %s", body)
	}
}

// A journal that has errors from the start has no good page to show yet.
func TestErrorsFromTheStart(t *testing.T) {
	s := &shelf{files: map[string]string{"theme/style.css": "p { margin: 0 }"}}
	s.put(func(s *shelf) { s.state.Findings = append(s.state.Findings, fault()) })
	w := NewWindow(s, func(Change) {})
	w.Look(t.Context(), Batch{All: true})
	answer := ask(w, "/")
	if answer.Code != 503 || !strings.Contains(answer.Body.String(), "The journal has errors") || !strings.Contains(answer.Body.String(), "notes/2026-03-01.md:2:8") {
		t.Errorf("%d %s", answer.Code, answer.Body)
	}
	if answer := ask(w, "/theme/style.css"); answer.Code != 200 {
		t.Errorf("without a style: %d", answer.Code)
	}
}

func TestAPageBeforeTheJournalIsRead(t *testing.T) {
	w := NewWindow(&shelf{}, func(Change) {})
	if answer := ask(w, "/"); answer.Code != 503 || !strings.Contains(answer.Body.String(), `http-equiv="refresh"`) {
		t.Errorf("%d %s", answer.Code, answer.Body)
	}
}

func TestAFileOnDisk(t *testing.T) {
	name := filepath.Join(t.TempDir(), "copy")
	if err := os.WriteFile(name, []byte("a picture"), 0o600); err != nil {
		t.Fatal(err)
	}
	w := NewWindow(onDisk{name}, func(Change) {})
	answer := ask(w, "/pictures/back-480")
	if answer.Body.String() != "a picture" || answer.Header().Get("Content-Type") != "image/png" {
		t.Errorf("%s %s", answer.Header().Get("Content-Type"), answer.Body)
	}
	if err := os.Remove(name); err != nil {
		t.Fatal(err)
	}
	if answer := ask(w, "/pictures/back-480"); answer.Code != 500 {
		t.Errorf("gone: %d", answer.Code)
	}
}

// onDisk is a maker of one picture.
type onDisk struct{ name string }

func (o onDisk) File(context.Context, string) (Content, error) {
	return Content{Disk: o.name, Type: "image/png"}, nil
}

func (o onDisk) Look(context.Context, []string, bool) (State, error) { return State{Sound: true}, nil }

// served has a window served until the test ends or the returned function is called,
// which waits for the end.
func served(t *testing.T, w *Window) (address string, end func()) {
	t.Helper()
	l, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- w.Serve(ctx, l) }()
	done := false
	end = func() {
		if done {
			return
		}
		done = true
		stop()
		if err := <-ended; err != nil {
			t.Errorf("serving ended with %v", err)
		}
	}
	t.Cleanup(end)
	return "http://" + l.Addr().String(), end
}

// listen opens the stream of events of a page and returns its messages.
func listen(t *testing.T, address, page string) <-chan string {
	t.Helper()
	answer, err := http.Get(address + "/.preview/events?page=" + page)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { answer.Body.Close() })
	if kind := answer.Header.Get("Content-Type"); answer.StatusCode != 200 || kind != "text/event-stream" {
		t.Fatalf("the events are %d %s", answer.StatusCode, kind)
	}
	messages := make(chan string, 99)
	go func() {
		defer close(messages)
		for lines := bufio.NewScanner(answer.Body); lines.Scan(); {
			if text, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				messages <- text
			}
		}
	}()
	return messages
}

func hear(t *testing.T, messages <-chan string) string {
	t.Helper()
	select {
	case m := <-messages:
		return m
	case <-time.After(deadline):
		t.Fatal("nothing is told")
	}
	panic("not reached")
}

// An open page is told when it is another, and only then.
func TestEvents(t *testing.T) {
	w, s := shown(t)
	address, end := served(t, w)
	start, builds := listen(t, address, "/"), listen(t, address, "/builds/")
	first := hear(t, start)
	hear(t, builds)

	s.put(func(s *shelf) { s.files["index.html"] = html("Another start.") })
	w.Look(t.Context(), Batch{All: true})
	if second := hear(t, start); second == first {
		t.Errorf("told the same: %s", second)
	}
	s.put(func(s *shelf) { s.state.Findings = append(s.state.Findings, fault()) })
	w.Look(t.Context(), Batch{All: true})
	if m := hear(t, builds); !strings.Contains(m, "1 error in the journal") {
		t.Errorf("the other page is told %s", m)
	}
	hear(t, start)
	s.put(func(s *shelf) { delete(s.files, "index.html") })
	w.Look(t.Context(), Batch{All: true})
	hear(t, start)

	end()
	if _, open := <-start; open {
		t.Error("told at the end")
	}
	if _, open := <-builds; open {
		t.Error("told at the end")
	}
}

func TestEventsOfNoPage(t *testing.T) {
	w, _ := shown(t)
	for _, query := range []string{"", "?page=", "?page=builds", "?page=/../x", "?page=/%252e%252e/x", "?page=%00"} {
		if answer := ask(w, "/.preview/events"+query); answer.Code != 400 {
			t.Errorf("%q: %d", query, answer.Code)
		}
	}
}

// A change tells which of the open pages are others, and a page nobody has open any
// more is not made.
func TestChangeNamesOpenPages(t *testing.T) {
	var last Change
	s := &shelf{files: map[string]string{"index.html": html("The start.")}, state: State{Generation: 1, Sound: true}}
	w := NewWindow(s, func(c Change) { last = c })
	w.Look(t.Context(), Batch{All: true})
	leave := w.read(t.Context(), "index.html")
	s.put(func(s *shelf) { s.files["index.html"] = html("Another.") })
	w.Look(t.Context(), Batch{Folders: []string{"notes"}})
	if len(last.Pages) != 1 || !last.New || last.Folders[0] != "notes" {
		t.Errorf("%+v", last)
	}
	leave()
	s.put(func(s *shelf) { s.files["index.html"] = html("A third.") })
	if w.Look(t.Context(), Batch{All: true}); len(last.Pages) != 0 {
		t.Errorf("%+v", last)
	}
	if w.Look(t.Context(), Batch{All: true}); last.New {
		t.Error("the same again is news")
	}
}

func TestListen(t *testing.T) {
	first, err := Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	at := first.Addr().(*net.TCPAddr)
	if !at.IP.IsLoopback() {
		t.Errorf("others can reach %v", at)
	}
	if _, err := Listen(at.Port); err == nil || !strings.Contains(err.Error(), "leave out --port") {
		t.Errorf("a port in use: %v", err)
	}
	a, err := Listen(-1)
	if err != nil {
		t.Fatal(err)
	}
	defer a.Close()
	b, err := Listen(-1)
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if a.Addr().String() == b.Addr().String() {
		t.Error("the same port twice")
	}
}
