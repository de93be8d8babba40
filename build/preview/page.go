package preview

import (
	"bytes"
	"context"
	"crypto/sha256"
	"embed"
	"errors"
	"html/template"
	"io/fs"
	"net/http"
	"path"
	"time"

	"hussif/build/keep"
	"hussif/theme"
)

//go:embed files
var files embed.FS

var templates = template.Must(template.ParseFS(files, "files/*.html"))

// patience is how long a page waits for the journal to be read the first time
// before something else is shown.
const patience = time.Second

// A page is what is shown under the path of a page: that of the site, or words of
// our own where there is none.
type page struct {
	status int
	html   []byte
	sum    keep.Sum // of html; the bar and the script are added to it later
}

// words is a page of our own.
type words struct {
	Title    string
	Text     string
	Findings []finding
	Start    bool // leads to the start page
	Again    bool // asks again by itself
}

// page makes what stands under a path.
func (w *Window) page(ctx context.Context, path string) page {
	select {
	case <-w.first:
	case <-time.After(patience):
		return own(http.StatusServiceUnavailable, words{
			Title: "The journal is being read", Text: "Its pages are shown as soon as that is done.", Again: true,
		})
	}
	c, err := w.maker.File(ctx, path)
	s := w.sight()
	switch {
	case err == nil:
		return page{http.StatusOK, c.Data, c.Sum}
	case !errors.Is(err, fs.ErrNotExist):
		return own(http.StatusInternalServerError, words{Title: "This page could not be made", Text: err.Error(), Start: true})
	case !s.shown && s.trouble != nil:
		return own(http.StatusServiceUnavailable, words{Title: "The journal cannot be read", Text: s.trouble.Error()})
	case !s.shown:
		return own(http.StatusServiceUnavailable, words{
			Title: "The journal has errors", Text: "Its pages are shown as soon as these are put right.", Findings: listed(s.Findings),
		})
	}
	return notHere()
}

func notHere() page {
	return own(http.StatusNotFound, words{
		Title: "There is no such page", Text: "Nothing in the journal makes a page of this name now.", Start: true,
	})
}

func own(status int, w words) page {
	var b bytes.Buffer
	if err := templates.ExecuteTemplate(&b, "own.html", w); err != nil {
		panic(err) // it is embedded and prints these words and no others
	}
	return page{status, b.Bytes(), sha256.Sum256(b.Bytes())}
}

// with returns a page's bytes with the script and the bar in them. The page's own
// policy, which knows of no stream of events, gives way to that of the answer it comes in.
func (p page) with(s sight) []byte {
	var head, foot bytes.Buffer
	err := errors.Join(
		templates.ExecuteTemplate(&head, "head.html", p.sum.String()),
		templates.ExecuteTemplate(&foot, "bar.html", barOf(s)),
	)
	if err != nil {
		panic(err)
	}
	html := p.html
	for _, policy := range []string{theme.Policy, theme.SearchPolicy} {
		html = bytes.Replace(html, []byte(policy), nil, 1)
	}
	html = bytes.Replace(html, []byte("</head>"), append(head.Bytes(), "</head>"...), 1)
	if at := bytes.LastIndex(html, []byte("</body>")); at >= 0 {
		html = bytes.Join([][]byte{html[:at], foot.Bytes(), html[at:]}, nil)
	}
	return html
}

// isPage reports whether a path is that of a page.
func isPage(name string) bool { return path.Ext(name) == ".html" }
