package preview

import (
	"bytes"
	"context"
	"errors"
	"io"
	"io/fs"
	"log"
	"mime"
	"net"
	"net/http"
	"net/url"
	"os"
	"path"
	"strings"
	"time"
)

// reserved is the folder of what the preview adds to the site. No site has a folder
// of this name, since those that begin with a dot are left to the maker.
const reserved = "/.preview/"

// Handler serves the window's site to browsers that ask for it at a port of this
// machine. It looks at who asks first: see admit.
func (w *Window) Handler(port int) http.Handler {
	own := hosts(port)
	return http.HandlerFunc(func(rw http.ResponseWriter, r *http.Request) {
		protect(rw.Header())
		if !admit(rw, r, own) {
			return
		}
		switch rest, ok := strings.CutPrefix(r.URL.Path, reserved); {
		case ok && rest == "events":
			w.events(rw, r)
		case ok:
			ownFile(rw, r, rest)
		default:
			w.file(rw, r)
		}
	})
}

// file answers for a path of the site.
func (w *Window) file(rw http.ResponseWriter, r *http.Request) {
	name, ok := sitePath(r.URL)
	switch {
	case !ok:
		w.send(rw, notHere())
	case isPage(name):
		w.send(rw, w.page(r.Context(), name))
	default:
		c, err := w.maker.File(r.Context(), name)
		switch {
		case err == nil:
			serveContent(rw, r, name, c)
		case r.Context().Err() != nil:
			// Nobody is there to hear it.
		case errors.Is(err, fs.ErrNotExist):
			w.missing(rw, r, name)
		default:
			http.Error(rw, err.Error(), http.StatusInternalServerError)
			// What was found in making it belongs to the journal's findings now.
			w.Look(r.Context(), Batch{})
		}
	}
}

// missing answers for a path where there is no file: that of a folder leads to the
// folder's page, as on any web host.
func (w *Window) missing(rw http.ResponseWriter, r *http.Request, name string) {
	if _, err := w.maker.File(r.Context(), path.Join(name, "index.html")); err == nil {
		to := url.URL{Path: "/" + name + "/", RawQuery: r.URL.RawQuery}
		http.Redirect(rw, r, to.String(), http.StatusFound)
		return
	}
	w.send(rw, notHere())
}

// send answers with a page. It is never kept, not even for going back to.
func (w *Window) send(rw http.ResponseWriter, p page) {
	rw.Header().Set("Cache-Control", "no-store")
	rw.Header().Set("Content-Type", "text/html; charset=utf-8")
	rw.WriteHeader(p.status)
	// A browser that has gone away is no trouble of ours.
	_, _ = rw.Write(p.with(w.sight()))
}

func serveContent(rw http.ResponseWriter, r *http.Request, name string, c Content) {
	var content io.ReadSeeker = bytes.NewReader(c.Data)
	if c.Disk != "" {
		f, err := os.Open(c.Disk)
		if err != nil {
			http.Error(rw, err.Error(), http.StatusInternalServerError)
			return
		}
		defer f.Close()
		content = f
	}
	kind := c.Type
	if kind == "" {
		kind = mediaType(name)
	}
	rw.Header().Set("Content-Type", kind)
	rw.Header().Set("Cache-Control", "no-cache") // kept, but asked for by its tag each time
	rw.Header().Set("ETag", `"`+c.Sum.String()+`"`)
	http.ServeContent(rw, r, "", time.Time{}, content)
}

// mediaTypes are those of the files that a site has, as registered with IANA. The
// system's own table may say anything.
var mediaTypes = map[string]string{
	".atom": "application/atom+xml; charset=utf-8", ".css": "text/css; charset=utf-8",
	".csv": "text/csv; charset=utf-8", ".html": "text/html; charset=utf-8",
	".ics": "text/calendar; charset=utf-8", ".jpg": "image/jpeg", ".js": "text/javascript; charset=utf-8",
	".json": "application/json", ".png": "image/png", ".svg": "image/svg+xml",
	".txt": "text/plain; charset=utf-8", ".woff2": "font/woff2", ".xml": "application/xml",
}

func mediaType(name string) string {
	ending := strings.ToLower(path.Ext(name))
	if t, ok := mediaTypes[ending]; ok {
		return t
	}
	if t := mime.TypeByExtension(ending); t != "" {
		return t
	}
	return "application/octet-stream"
}

// sitePath returns the path of the site's file that an address stands for. It is
// false for an address that would lead anywhere else, however it is written.
func sitePath(u *url.URL) (name string, ok bool) {
	written := strings.ToLower(u.EscapedPath())
	if strings.Contains(written, "%2f") || strings.Contains(written, "%5c") {
		return "", false
	}
	name, ok = strings.CutPrefix(u.Path, "/")
	if !ok {
		return "", false
	}
	if name == "" || strings.HasSuffix(name, "/") {
		name += "index.html"
	}
	if !fs.ValidPath(name) || strings.ContainsAny(name, "\\\x00") {
		return "", false
	}
	for part := range strings.SplitSeq(name, "/") {
		if strings.HasPrefix(part, ".") {
			return "", false
		}
	}
	return name, true
}

// Serve answers on a listener until the context is done, then ends what is being
// answered and returns. Where it cannot go on the error says why.
func (w *Window) Serve(ctx context.Context, l net.Listener) error {
	asking, stop := context.WithCancel(context.WithoutCancel(ctx))
	defer stop()
	s := &http.Server{
		Handler:           w.Handler(l.Addr().(*net.TCPAddr).Port),
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       10 * time.Second,
		WriteTimeout:      time.Minute, // pictures of a large photo take a while
		IdleTimeout:       time.Minute,
		MaxHeaderBytes:    32 << 10,
		ErrorLog:          log.New(io.Discard, "", 0), // browsers that hang up are no news
		BaseContext:       func(net.Listener) context.Context { return asking },
	}
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	stop() // or streams of events would never end
	ending, cancel := context.WithTimeout(context.WithoutCancel(ctx), 2*time.Second)
	defer cancel()
	if s.Shutdown(ending) != nil {
		return s.Close()
	}
	return nil
}
