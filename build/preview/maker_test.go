package preview

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// keepsItsWord has a maker do all that a [Maker] promises.
func keepsItsWord(t *testing.T, of func(dir string) Maker) {
	at := &watching{t: t, dir: filepath.Join(t.TempDir(), "journal")}
	at.write("journal.yaml", "title: A trial\n")
	at.write("notes/2026-03-01.md", "Bought linen.\n")
	m := of(at.dir)

	file := func(name string) string {
		t.Helper()
		c, err := m.File(t.Context(), name)
		if errors.Is(err, fs.ErrNotExist) {
			return ""
		}
		if err != nil || c.Sum != sha256.Sum256(c.Data) {
			t.Errorf("%s: %v, or another sum than that of its bytes", name, err)
		}
		return string(c.Data)
	}
	look := func(all bool, folders ...string) State {
		t.Helper()
		s, err := m.Look(t.Context(), folders, all)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	const note = "notes/2026-03-01.html"

	if file("theme/style.css") == "" || file(note) != "" {
		t.Error("before the journal is read there is a style and no page")
	}
	first := look(true)
	if !first.Sound || !strings.Contains(file(note), "Bought linen.") || file("calendar.ics") == "" {
		t.Errorf("read: %+v, %s", first, file(note))
	}
	if again := look(true); again.Generation != first.Generation {
		t.Error("nothing has changed, and it is another generation")
	}

	at.write("notes/2026-03-01.md", "Bought linen and thread.\n")
	second := look(false, "notes")
	if second.Generation == first.Generation || !strings.Contains(file(note), "and thread") {
		t.Errorf("changed: %+v, %s", second, file(note))
	}

	before := file(note)
	at.write("notes/2026-03-01.md", "---\nstage: sowing\n---\nBought a needle.\n")
	broken := look(false, "notes")
	if broken.Sound || len(broken.Findings) != 1 || broken.Generation == second.Generation || file(note) != before {
		t.Errorf("broken: %+v", broken)
	}
	at.write("notes/2026-03-01.md", "---\nstage: sewing\n---\nBought a needle.\n")
	if mended := look(false, "notes"); !mended.Sound || len(mended.Findings) != 0 || !strings.Contains(file(note), "a needle") {
		t.Errorf("mended: %+v", mended)
	}

	// Asking goes on while it looks.
	var asking sync.WaitGroup
	for range 4 {
		asking.Go(func() {
			for range 20 {
				file("index.html")
				file(note)
			}
		})
	}
	at.write("notes/2026-03-02.md", "Sewed.\n")
	look(false, "notes")
	asking.Wait()

	if err := os.Remove(at.path("notes/2026-03-01.md")); err != nil {
		t.Fatal(err)
	}
	if look(false, "notes"); file(note) != "" || file("notes/2026-03-02.html") == "" {
		t.Error("a note taken away keeps its page, or another loses its own")
	}
	if err := os.Rename(at.dir, at.dir+"-away"); err != nil {
		t.Fatal(err)
	}
	if _, err := m.Look(t.Context(), nil, true); err == nil || file("notes/2026-03-02.html") == "" {
		t.Errorf("the journal is gone: %v", err)
	}
}

func FuzzSitePath(f *testing.F) {
	for _, address := range []string{"/", "/builds/", "/builds/a%20b.html", "/../x", "/%2e%2e/x", "/a%00", "/a%5cb", "//x", "/.preview/x", "/ä.html"} {
		f.Add(address)
	}
	f.Fuzz(func(t *testing.T, address string) {
		u, err := url.ParseRequestURI(address)
		if err != nil {
			return
		}
		name, ok := sitePath(u)
		if ok && (!filepath.IsLocal(filepath.FromSlash(name)) || !fs.ValidPath(name) || strings.ContainsAny(name, "\\\x00")) {
			t.Errorf("%q leads to %q", address, name)
		}
	})
}
