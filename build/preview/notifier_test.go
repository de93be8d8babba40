package preview

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"testing/synctest"
	"time"

	"github.com/fsnotify/fsnotify"
)

// A feigned notifier is one whose events, errors and limit the test makes.
type feigned struct {
	most   int // folders that can be watched; none where negative
	events chan fsnotify.Event
	errors chan error
	added  []string
}

func feign() *feigned {
	return &feigned{most: 1000, events: make(chan fsnotify.Event), errors: make(chan error)}
}

func (f *feigned) Add(dir string) error {
	if len(f.added) >= f.most {
		return fmt.Errorf("%s: %w", dir, syscall.ENOSPC)
	}
	f.added = append(f.added, dir)
	return nil
}

func (f *feigned) Remove(dir string) error {
	f.added = slices.DeleteFunc(f.added, func(d string) bool { return d == dir })
	return nil
}

func (f *feigned) Events() <-chan fsnotify.Event { return f.events }
func (f *feigned) Errors() <-chan error          { return f.errors }
func (f *feigned) Close() error                  { return nil }

// The kernel drops what it cannot hold: then everything is looked at, and folders of
// which nothing was told are watched.
func TestMoreThanCanBeTold(t *testing.T) {
	opened := make(chan *feigned, 2)
	at := watch(t, &Watcher{open: func() (notifier, error) {
		f := feign()
		opened <- f
		return f, nil
	}})
	now := <-opened
	at.write("patterns/drafts/jacket.md", "A draft.\n")
	now.errors <- fsnotify.ErrEventOverflow
	if b := at.next(); !b.All {
		t.Errorf("%+v, want everything", b)
	}
	now = <-opened
	if !slices.Contains(now.added, at.path("patterns/drafts")) {
		t.Errorf("watches only %q", now.added)
	}
}

func TestNoMoreFoldersCanBeWatched(t *testing.T) {
	at := watch(t, &Watcher{open: func() (notifier, error) {
		f := feign()
		f.most = 2
		return f, nil
	}})
	if said := <-at.warned; !strings.Contains(said, "fs.inotify.max_user_watches") {
		t.Errorf("said %q", said)
	}
	at.write("builds/jacket/build.md", "The jacket, told by looking.\n")
	if b := at.until("builds/jacket"); len(b.Folders) != 1 {
		t.Errorf("%+v, want that folder alone", b)
	}
	at.write("patterns/draft.md", "A draft.\n")
	at.until("patterns")
	if err := os.RemoveAll(at.path("builds/jacket/photos")); err != nil {
		t.Fatal(err)
	}
	at.until("builds/jacket/photos")
}

func TestNoNotifierAtAll(t *testing.T) {
	at := watch(t, &Watcher{open: func() (notifier, error) { return nil, syscall.EMFILE }})
	if said := <-at.warned; !strings.Contains(said, "fs.inotify.max_user_instances") {
		t.Errorf("said %q", said)
	}
	at.write("builds/jacket/build.md", "The jacket, told by looking.\n")
	at.until("builds/jacket")
}

// TestWhenItIsTold has time stand still but for the watcher: a change is told when
// nothing has happened for a while, and a steady stream of them now and then.
func TestWhenItIsTold(t *testing.T) {
	dir := t.TempDir()
	note := fsnotify.Event{Name: filepath.Join(dir, "note.md"), Op: fsnotify.Write}
	synctest.Test(t, func(t *testing.T) {
		f := feign()
		w := Watcher{Dir: dir, open: func() (notifier, error) { return f, nil }}
		out := make(chan Batch)
		ctx, stop := context.WithCancel(t.Context())
		var working sync.WaitGroup
		working.Go(func() { w.Run(ctx, out) })
		<-out

		began := time.Now()
		f.events <- note
		if <-out; time.Since(began) != quiet {
			t.Errorf("one change is told after %v, want %v", time.Since(began), quiet)
		}

		began = time.Now()
		working.Go(func() {
			for ctx.Err() == nil {
				select {
				case f.events <- note:
				case <-ctx.Done():
				}
				time.Sleep(quiet / 2)
			}
		})
		for range 2 {
			if <-out; time.Since(began) > longest+quiet {
				t.Errorf("a stream of changes is told after %v, want %v", time.Since(began), longest)
			}
			began = time.Now()
		}
		stop()
		working.Wait()
	})
}
