package preview

import (
	"context"
	"slices"
	"sync"
	"time"

	"hussif/build/keep"
)

// A Window shows the site of a journal. Make one with [NewWindow].
type Window struct {
	maker Maker
	tell  func(Change)

	looking sync.Mutex // held while the journal is looked at

	mu    sync.Mutex
	now   sight
	first chan struct{}    // closed when the journal has been looked at
	news  chan struct{}    // closed and replaced whenever something may be new
	open  map[string]*leaf // the pages that browsers have open, by path
}

// A sight is what is known of the journal.
type sight struct {
	State
	trouble error // why it could not be looked at this time
	shown   bool  // whether it was ever sound, and so there are pages to show
	seen    bool  // whether it was ever looked at
}

// A leaf is a page that browsers have open.
type leaf struct {
	readers int
	sum     keep.Sum
}

// A Change is what came of looking at the journal.
type Change struct {
	Batch
	State
	Trouble error    // the journal could not be looked at; State is the one before
	New     bool     // the state is another than before
	Pages   []string // which of the open pages are others now, sorted
	Took    time.Duration
}

// NewWindow returns a window on what a maker makes. tell is called after each look
// at the journal, never twice at once.
func NewWindow(m Maker, tell func(Change)) *Window {
	return &Window{
		maker: m, tell: tell,
		first: make(chan struct{}), news: make(chan struct{}), open: make(map[string]*leaf),
	}
}

// Follow looks at the journal whenever a batch says so, until the context is done.
func (w *Window) Follow(ctx context.Context, batches <-chan Batch) {
	for {
		select {
		case <-ctx.Done():
			return
		case b := <-batches:
			w.Look(ctx, b)
		}
	}
}

// Look looks at the journal and tells the open pages what is new.
func (w *Window) Look(ctx context.Context, b Batch) {
	w.looking.Lock()
	defer w.looking.Unlock()
	began := time.Now()
	state, err := w.maker.Look(ctx, b.Folders, b.All)
	if ctx.Err() != nil {
		return
	}
	w.mu.Lock()
	before := w.now
	w.now.trouble = err
	if err == nil {
		w.now.State = state
		w.now.shown = before.shown || state.Sound
	}
	w.now.seen = true
	if !before.seen {
		close(w.first)
	}
	c := Change{Batch: b, State: w.now.State, Trouble: err}
	w.mu.Unlock()
	c.New = !before.seen || c.State.Generation != before.Generation
	c.Pages = w.turn(ctx)
	c.Took = time.Since(began)
	w.tell(c)
}

// turn makes the open pages anew, tells their readers, and returns those that are
// others now.
func (w *Window) turn(ctx context.Context) (changed []string) {
	w.mu.Lock()
	var open []string
	for path := range w.open {
		open = append(open, path)
	}
	w.mu.Unlock()
	slices.Sort(open)
	sums := make(map[string]keep.Sum, len(open))
	for _, path := range open {
		sums[path] = w.page(ctx, path).sum
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	for _, path := range open {
		// Its last reader may have left meanwhile.
		if l := w.open[path]; l != nil && l.sum != sums[path] {
			l.sum = sums[path]
			changed = append(changed, path)
		}
	}
	close(w.news)
	w.news = make(chan struct{})
	return changed
}

// read registers a reader of a page; leave is called when it is one no more.
func (w *Window) read(ctx context.Context, path string) (leave func()) {
	sum := w.page(ctx, path).sum
	w.mu.Lock()
	defer w.mu.Unlock()
	l := w.open[path]
	if l == nil {
		l = &leaf{sum: sum}
		w.open[path] = l
	}
	l.readers++
	return func() {
		w.mu.Lock()
		defer w.mu.Unlock()
		if l.readers--; l.readers == 0 {
			delete(w.open, path)
		}
	}
}

// sight returns what is known now.
func (w *Window) sight() sight {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.now
}

// stand returns what is known, the sum of an open page, and what is closed when
// either may be another.
func (w *Window) stand(path string) (sight, keep.Sum, <-chan struct{}) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.now, w.open[path].sum, w.news
}
