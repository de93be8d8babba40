package preview

import (
	"context"
	"errors"
	"os"
	"time"
)

const (
	// quiet is how long nothing may have happened before it is told: editors save
	// in several steps, and checking out a branch is one change.
	quiet = 25 * time.Millisecond

	// longest is how long a steady stream of changes can put that off.
	longest = 250 * time.Millisecond

	// glance is how often the journal's folder itself is looked for. Nobody tells
	// that a folder above it was moved.
	glance = time.Second
)

// A Batch says where in a journal to look again.
type Batch struct {
	Folders []string // without what lies below them, slash-separated; "." is the journal's own
	All     bool     // everywhere
	Files   []string // what the hints were about, in the order they came: to be told, not to be trusted
}

// A Watcher watches a journal's folder with all below it that [source.Scan] would
// look into. Links are not followed.
type Watcher struct {
	Dir  string
	Poll bool              // look at all files every second instead
	Warn func(text string) // is told why folders cannot be watched and what to do

	// open opens a notifier; nil stands for that of the system.
	open func() (notifier, error)
}

// errAgain ends a watch that has lost sight of something. The next one begins by
// looking everywhere.
var errAgain = errors.New("the watch begins again")

// Run watches until the context is done. The first batch, once all is watched,
// says to look everywhere; so does each that follows a loss of sight, as when the
// journal's folder is moved away and when it is back. What happens while nobody
// receives is gathered into one batch.
func (w *Watcher) Run(ctx context.Context, out chan<- Batch) {
	if w.open == nil {
		w.open = openNotifier
	}
	for ctx.Err() == nil {
		if _, err := os.Stat(w.Dir); err != nil {
			w.await(ctx, out)
			continue
		}
		if w.Poll {
			w.poll(ctx, out)
			continue
		}
		if err := w.watch(ctx, out); err != nil && !errors.Is(err, errAgain) {
			w.Warn(limitWords(err))
			w.Poll = true
		}
	}
}

// await has the loss of the journal's folder noticed and waits for it to be back.
func (w *Watcher) await(ctx context.Context, out chan<- Batch) {
	select {
	case out <- Batch{All: true}:
	case <-ctx.Done():
	}
	for ctx.Err() == nil {
		if _, err := os.Stat(w.Dir); err == nil {
			return
		}
		select {
		case <-time.After(glance / 4):
		case <-ctx.Done():
		}
	}
}

// watch watches until the context is done or something is lost from sight.
func (w *Watcher) watch(ctx context.Context, out chan<- Batch) error {
	told, err := w.open()
	if err != nil {
		return err
	}
	defer told.Close()
	root, err := os.Stat(w.Dir)
	if err != nil {
		return errAgain
	}
	f := newFolders(w.Dir, told)
	if _, err := f.add("."); err != nil {
		return err
	}
	p := newPile()
	p.all()
	looking := time.NewTicker(glance)
	defer looking.Stop()
	for {
		var give chan<- Batch
		var ripe <-chan time.Time
		if wait, any := p.wait(time.Now()); any && wait <= 0 {
			give = out
		} else if any {
			ripe = time.After(wait)
		}
		select {
		case <-ctx.Done():
			return nil
		case give <- p.Batch:
			p = newPile()
		case <-ripe:
		case e, ok := <-told.Events():
			if !ok {
				return errAgain
			}
			if err := f.take(e, p); err != nil {
				return err
			}
		case <-told.Errors():
			// More has happened than could be told, or the telling failed.
			return errAgain
		case <-looking.C:
			now, err := os.Stat(w.Dir)
			if err != nil || !os.SameFile(root, now) {
				return errAgain
			}
		}
	}
}
