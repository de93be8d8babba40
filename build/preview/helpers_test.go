package preview

import (
	"context"
	"crypto/sha256"
	"io/fs"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"testing"

	"hussif/content/source"
	"hussif/theme"
)

// A shelf is a maker of the files that a test puts on it.
type shelf struct {
	mu      sync.Mutex
	files   map[string]string
	state   State
	trouble error
	looked  int
}

func (s *shelf) File(_ context.Context, name string) (Content, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	text, ok := s.files[name]
	if !ok {
		return Content{}, fs.ErrNotExist
	}
	return Content{Data: []byte(text), Sum: sha256.Sum256([]byte(text))}, nil
}

func (s *shelf) Look(context.Context, []string, bool) (State, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.looked++
	return s.state, s.trouble
}

// put makes the state another.
func (s *shelf) put(change func(*shelf)) {
	s.mu.Lock()
	defer s.mu.Unlock()
	change(s)
	s.state.Generation++
	s.state.Sound = source.Count(s.state.Findings, source.Error) == 0
}

// html is a page as the theme would print it.
func html(text string) string {
	return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n" + theme.Policy + "\n<title>A page</title>\n</head>\n<body>\n<p>" + text + "</p>\n</body>\n</html>\n"
}

// fault is an error in a note.
func fault() source.Finding {
	f, _ := source.Load("notes/2026-03-01.md", []byte("---\nstage: <sowing>\n---\n"))
	found := source.Found(f.Span(11, 19), source.Error, "not one of these", `"<sowing>" is not a stage of the work`)
	found.Instead = []string{"sewing"}
	return found
}

// shown returns a window on a small site that has been looked at.
func shown(t *testing.T) (*Window, *shelf) {
	t.Helper()
	s := &shelf{files: map[string]string{
		"index.html": html("The start."), "builds/index.html": html("The builds."), "builds/jacket.html": html("The jacket."),
		"theme/style.css": "p { margin: 0 }", "notes.atom": "<feed/>", "calendar.ics": "BEGIN:VCALENDAR", "theme/fonts/a.woff2": "wOF2",
	}, state: State{Generation: 1, Sound: true}}
	w := NewWindow(s, func(Change) {})
	w.Look(t.Context(), Batch{All: true})
	return w, s
}

// ask sends a request as a browser at the right address would, changed by the
// test, and returns the answer.
func ask(w *Window, address string, headers ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest("GET", "http://127.0.0.1:4877/", nil)
	method, address, ok := strings.Cut(address, " ")
	if !ok {
		method, address = "GET", method
	}
	u, err := url.ParseRequestURI(address) // as a server reads it
	if err != nil {
		panic(err)
	}
	r.Method, r.URL = method, u
	for i := 0; i < len(headers); i += 2 {
		if headers[i] == "Host" {
			r.Host = headers[i+1]
		}
		r.Header.Set(headers[i], headers[i+1])
	}
	answer := httptest.NewRecorder()
	w.Handler(4877).ServeHTTP(answer, r)
	return answer
}
