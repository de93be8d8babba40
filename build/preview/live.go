package preview

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"path"
	"time"

	"hussif/build/keep"
)

// pulse is how often a stream of events is written to when there is no news, so
// that a browser that has gone is noticed.
const pulse = 15 * time.Second

// tidings are what an open page is told.
type tidings struct {
	Sum   string `json:"sum"`   // of the page as it is now
	Class string `json:"class"` // of the bar
	Words string `json:"words"` // that the bar says
	List  string `json:"list"`  // HTML that the bar opens to
}

// events is the stream of an open page, which its script listens to. The address
// that the browser shows is given as page.
func (w *Window) events(rw http.ResponseWriter, r *http.Request) {
	at, err := url.ParseRequestURI(r.URL.Query().Get("page"))
	if err != nil {
		http.Error(rw, "whose page?", http.StatusBadRequest)
		return
	}
	name, ok := sitePath(at)
	if !ok {
		http.Error(rw, "there is no such page", http.StatusBadRequest)
		return
	}
	rw.Header().Set("Content-Type", "text/event-stream")
	rw.Header().Set("Cache-Control", "no-store")
	if r.Method == http.MethodHead {
		return
	}
	ctx := r.Context()
	control := http.NewResponseController(rw)
	// The stream outlasts the time in which others must be asked for.
	_ = control.SetReadDeadline(time.Time{})
	write := func(text string) bool {
		_ = control.SetWriteDeadline(time.Now().Add(pulse))
		_, err := io.WriteString(rw, text)
		return err == nil && control.Flush() == nil
	}
	defer w.read(ctx, name)()
	if !write("retry: 1000\n\n") {
		return
	}
	beat := time.NewTicker(pulse)
	defer beat.Stop()
	w.follow(ctx, name, beat.C, write)
}

// follow writes what is new for a page until nobody takes it any more.
func (w *Window) follow(ctx context.Context, name string, beat <-chan time.Time, write func(string) bool) {
	var last []byte
	for {
		s, sum, news := w.stand(name)
		if s.seen {
			if message := tell(s, sum); !bytes.Equal(message, last) {
				last = message
				if !write(fmt.Sprintf("data: %s\n", message)) {
					return
				}
			}
		}
		select {
		case <-ctx.Done():
			return
		case <-news:
		case <-beat:
			if !write(":\n\n") {
				return
			}
		}
	}
}

func tell(s sight, sum keep.Sum) []byte {
	b := barOf(s)
	var message bytes.Buffer
	e := json.NewEncoder(&message)
	e.SetEscapeHTML(false)
	// Strings can always be encoded, and are one line then, as events must be.
	_ = e.Encode(tidings{Sum: sum.String(), Class: b.Class, Words: b.Words, List: b.list()})
	return message.Bytes()
}

// ownFile serves what the preview adds to pages.
func ownFile(rw http.ResponseWriter, r *http.Request, name string) {
	data, err := files.ReadFile("files/" + name)
	if err != nil || path.Ext(name) == ".html" {
		http.NotFound(rw, r)
		return
	}
	rw.Header().Set("Content-Type", mediaType(name))
	rw.Header().Set("Cache-Control", "no-store")
	_, _ = rw.Write(data)
}
