package preview

import (
	"context"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"hussif/content/source"
)

// deadline is how long a loaded machine may take to tell of a change.
const deadline = 30 * time.Second

// A watching is a watcher at work on a folder of its own.
type watching struct {
	t       *testing.T
	dir     string
	batches chan Batch
	warned  chan string
}

// watch begins to watch a small journal and takes the first batch.
func watch(t *testing.T, w *Watcher) *watching {
	t.Helper()
	at := &watching{t: t, dir: filepath.Join(t.TempDir(), "journal"), batches: make(chan Batch), warned: make(chan string, 9)}
	at.write("journal.yaml", "title: A trial\n")
	at.write("builds/jacket/build.md", "The jacket.\n")
	at.write("builds/jacket/photos/back.txt", "no photo\n")
	w.Dir, w.Warn = at.dir, func(text string) { at.warned <- text }
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		w.Run(ctx, at.batches)
	}()
	t.Cleanup(func() { stop(); <-ended })
	if first := at.next(); !first.All {
		t.Fatalf("the first batch is %+v, want everything", first)
	}
	return at
}

func (at *watching) path(name string) string { return filepath.Join(at.dir, filepath.FromSlash(name)) }

func (at *watching) write(name, text string) {
	at.t.Helper()
	if err := os.MkdirAll(filepath.Dir(at.path(name)), 0o777); err != nil {
		at.t.Fatal(err)
	}
	if err := os.WriteFile(at.path(name), []byte(text), 0o666); err != nil {
		at.t.Fatal(err)
	}
}

func (at *watching) rename(from, to string) {
	at.t.Helper()
	if err := os.Rename(at.path(from), at.path(to)); err != nil {
		at.t.Fatal(err)
	}
}

func (at *watching) next() Batch {
	at.t.Helper()
	select {
	case b := <-at.batches:
		return b
	case <-time.After(deadline):
		at.t.Fatal("nothing is told")
	}
	panic("not reached")
}

// until takes batches until all these folders have been named, and returns what
// they say together.
func (at *watching) until(folders ...string) Batch {
	at.t.Helper()
	var sum Batch
	for {
		b := at.next()
		sum.All = sum.All || b.All
		sum.Folders = append(sum.Folders, b.Folders...)
		sum.Files = append(sum.Files, b.Files...)
		if !slices.ContainsFunc(folders, func(f string) bool { return !slices.Contains(sum.Folders, f) }) {
			return sum
		}
	}
}

// end writes into the journal's own folder and returns all that is told up to
// there: what is not among it is never told.
func (at *watching) end() Batch {
	at.t.Helper()
	at.write("end.md", "The end.\n")
	return at.until(".")
}

func TestAFileSaved(t *testing.T) {
	at := watch(t, &Watcher{})
	at.write("builds/jacket/build.md", "The jacket, written over.\n")
	if b := at.until("builds/jacket"); b.All || !slices.Equal(b.Files, []string{"builds/jacket/build.md"}) {
		t.Errorf("%+v", b)
	}
}

// Editors write a file beside, some keep the old one under another name, and rename.
func TestAFileSavedByRename(t *testing.T) {
	at := watch(t, &Watcher{})
	at.write("builds/jacket/.build.md.swp", "open in an editor")
	at.rename("builds/jacket/build.md", "builds/jacket/build.md~")
	at.write("builds/jacket/.new", "The jacket.\n")
	at.rename("builds/jacket/.new", "builds/jacket/build.md")
	b := at.until("builds/jacket")
	if !slices.Contains(b.Files, "builds/jacket/build.md") {
		t.Errorf("%+v", b)
	}
	at.write("builds/jacket/build.md", "And saved again.\n")
	at.until("builds/jacket")
}

func TestAFileTakenAway(t *testing.T) {
	at := watch(t, &Watcher{})
	if err := os.Remove(at.path("builds/jacket/build.md")); err != nil {
		t.Fatal(err)
	}
	at.until("builds/jacket")
}

// Files may have come into new folders before anybody watches these.
func TestNewFoldersWithFiles(t *testing.T) {
	at := watch(t, &Watcher{})
	at.write("occasions/market/notes/2026-03-01.md", "Rain.\n")
	at.until(".", "occasions", "occasions/market", "occasions/market/notes")
	at.write("occasions/market/notes/2026-03-02.md", "Sun.\n")
	at.until("occasions/market/notes")
}

func TestAFolderMoved(t *testing.T) {
	at := watch(t, &Watcher{})
	at.rename("builds/jacket", "builds/coat")
	at.until("builds", "builds/jacket", "builds/jacket/photos", "builds/coat", "builds/coat/photos")
	at.write("builds/coat/photos/front.txt", "no photo\n")
	if b := at.until("builds/coat/photos"); slices.Contains(b.Folders, "builds/jacket/photos") {
		t.Errorf("told by its old name: %+v", b)
	}
}

func TestAFolderMovedAwayAndAnotherPutThere(t *testing.T) {
	at := watch(t, &Watcher{})
	away := filepath.Join(t.TempDir(), "jacket")
	if err := os.Rename(at.path("builds/jacket"), away); err != nil {
		t.Fatal(err)
	}
	at.until("builds", "builds/jacket", "builds/jacket/photos")
	if err := os.WriteFile(filepath.Join(away, "build.md"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if b := at.end(); slices.Contains(b.Folders, "builds/jacket") {
		t.Errorf("told what happens elsewhere: %+v", b)
	}
	at.write("builds/jacket/build.md", "Another jacket.\n")
	at.until("builds/jacket")
	at.write("builds/jacket/build.md", "Another jacket, written over.\n")
	at.until("builds/jacket")
}

func TestAFolderRemovedAndMadeAgain(t *testing.T) {
	at := watch(t, &Watcher{})
	for range 3 {
		if err := os.RemoveAll(at.path("builds")); err != nil {
			t.Fatal(err)
		}
		at.write("builds/jacket/build.md", "The jacket.\n")
	}
	at.until("builds", "builds/jacket")
	at.end()
	at.write("builds/jacket/build.md", "The jacket, written over.\n")
	at.until("builds/jacket")
}

// As checking out a branch does.
func TestABurstIsToldTogether(t *testing.T) {
	at := watch(t, &Watcher{})
	var want []string
	for _, build := range strings.Fields("cap cloak hood mantle petticoat pocket shift stays stomacher gown") {
		for i := range 50 {
			at.write("builds/"+build+"/note-"+string(rune('a'+i%26))+strings.Repeat("x", i/26)+".md", "A note.\n")
		}
		want = append(want, "builds/"+build)
	}
	told := 0
	var named []string
	for slices.ContainsFunc(want, func(f string) bool { return !slices.Contains(named, f) }) {
		named = append(named, at.next().Folders...)
		told++
	}
	// It is one batch, or a few where writing the files took its time.
	if told > 25 {
		t.Errorf("500 files in %d batches", told)
	}
}

func TestWhatAScanLeavesOut(t *testing.T) {
	at := watch(t, &Watcher{})
	at.write("site/"+source.SiteMark, "{}")
	at.write("site/builds/jacket.html", "<p>")
	at.write(".git/index", "x")
	at.write("_drafts/note.md", "Not yet.\n")
	elsewhere := t.TempDir()
	if err := os.Symlink(elsewhere, at.path("linked")); err != nil && runtime.GOOS != "windows" {
		t.Fatal(err)
	}
	at.end()
	at.write("site/builds/jacket.html", "<p>again")
	at.write(".git/index", "y")
	at.write("_drafts/note.md", "Still not.\n")
	if err := os.WriteFile(filepath.Join(elsewhere, "note.md"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(at.path("builds/jacket/build.md"), 0o600); err != nil {
		t.Fatal(err)
	}
	if b := at.end(); !slices.Equal(b.Folders, []string{"."}) || !slices.Equal(b.Files, []string{"end.md"}) {
		t.Errorf("told %+v, want only the end", b)
	}
}

func TestTheJournalMovedAwayAndBack(t *testing.T) {
	for _, poll := range []bool{false, true} {
		at := watch(t, &Watcher{Poll: poll})
		away := at.dir + "-away"
		if err := os.Rename(at.dir, away); err != nil {
			t.Fatal(err)
		}
		if b := at.next(); !b.All {
			t.Errorf("poll %v, gone: %+v, want everything", poll, b)
		}
		if err := os.Rename(away, at.dir); err != nil {
			t.Fatal(err)
		}
		for !at.next().All {
		}
		at.write("builds/jacket/build.md", "The jacket again, and longer.\n")
		at.until("builds/jacket")
	}
}

// Nobody tells when a folder above the journal is moved.
func TestAFolderAboveMoved(t *testing.T) {
	at := watch(t, &Watcher{})
	above := filepath.Dir(at.dir)
	if err := os.Rename(above, above+"-away"); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(above + "-away") })
	if b := at.next(); !b.All {
		t.Errorf("%+v, want everything", b)
	}
}
