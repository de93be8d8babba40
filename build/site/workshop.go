package site

import (
	"io"
	"runtime"
	"sync"
	"sync/atomic"

	"hussif/build/keep"
	"hussif/build/output"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/theme"
)

// A Workshop makes the pages of a journal's site, and when the journal has changed
// makes again only those that read something of it which is no longer as it was.
//
// What a page reads is not declared but written down while it is made: see
// [journal.Trace] and book. One goroutine shows it journals; between two calls of
// Show any number may have pages made.
type Workshop struct {
	look  *theme.Theme
	book  *book
	pages map[string]page
	order []string // paths of the pages

	mu   sync.Mutex
	made map[string]made

	before *before // from a ledger, until a journal is shown
}

// before is what an earlier run knew.
type before struct {
	numbers   map[journal.Question]uint32
	questions []journal.Question
	sums      []source.Sum
	made      map[string]made
}

// A made is a page that was made, with what it was made from.
type made struct {
	sum   keep.Sum
	asked []uint32 // of the workshop's questions
}

// NewWorkshop returns a workshop that has not been shown a journal.
func NewWorkshop() (*Workshop, error) {
	look, err := theme.New()
	if err != nil {
		return nil, err
	}
	return &Workshop{look: look, made: make(map[string]made)}, nil
}

// Show shows the workshop the journal as it is now. The same pointer as before
// stands for a journal whose facts are the same, as of [journal.Keeper].
func (w *Workshop) Show(in Input) {
	switch {
	case w.book == nil || w.book.Today != in.Today || w.book.Journal.Settings != in.Journal.Settings:
		w.begin(in)
	case w.book.Journal == in.Journal:
		w.book = &book{Input: in, facts: w.book.facts}
		w.forget(w.kept().known.renew(w.book, func(q journal.Question) bool { return passing[q.About] && in.may(q) }))
	default:
		before := w.book.facts
		w.book = newBook(in, before)
		w.forget(before.kept.renew(w.book, before))
		w.plan()
	}
}

// may reports whether a question about the journal may have another answer than before.
func (in Input) may(q journal.Question) bool { return in.Since == nil || in.Since.May(q) }

func (w *Workshop) kept() *kept { return w.book.facts.kept }

// passing are the aspects that change while the facts of a journal do not.
var passing = map[journal.Aspect]bool{journal.Text: true, askFound: true, askPicture: true, askTold: true}

// begin forgets all that was known.
func (w *Workshop) begin(in Input) {
	w.book = newBook(in, nil)
	clear(w.made)
	if b := w.before; b != nil {
		w.before = nil
		known := &w.kept().known
		known.numbers, known.questions, known.sums = b.numbers, b.questions, b.sums
		w.made = b.made
		w.forget(w.kept().renew(w.book, nil))
	}
	w.plan()
}

// plan works out which pages there are.
func (w *Workshop) plan() {
	w.book.warm()
	w.pages, w.order = make(map[string]page), nil
	for _, p := range w.book.pages() {
		w.pages[p.path] = p
		w.order = append(w.order, p.path)
	}
	for path := range w.made {
		if _, ok := w.pages[path]; !ok {
			delete(w.made, path)
		}
	}
}

// warm works out how all builds fit, on as many workers as there are processors.
func (b *book) warm() {
	builds := b.Journal.Builds()
	var group sync.WaitGroup
	var next atomic.Int64
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for i := next.Add(1) - 1; i < int64(len(builds)); i = next.Add(1) - 1 {
				b.panelsOf(builds[i])
			}
		})
	}
	group.Wait()
}

// forget drops the pages that asked something whose answer has changed.
func (w *Workshop) forget(changed changes) {
	for path, m := range w.made {
		if changed.any(m.asked) {
			delete(w.made, path)
		}
	}
}

// Files returns the pages and texts of the site. Those that would come out as they
// did before carry their sum.
func (w *Workshop) Files() []output.File {
	files := make([]output.File, 0, len(w.order))
	for _, path := range w.order {
		files = append(files, output.File{
			Path: path, Sum: w.made[path].sum,
			Content: func(to io.Writer) error { return w.write(to, path) },
			Made:    func(sum keep.Sum) { w.note(path, sum) },
		})
	}
	return files
}

// write makes a page and notes what it was made from.
func (w *Workshop) write(to io.Writer, path string) error {
	p := w.pages[path]
	trace := journal.NewTrace()
	b := w.book.traced(trace)
	if p.text != nil {
		text, err := p.text(b)
		if err != nil {
			return err
		}
		if _, err := to.Write(text); err != nil {
			return err
		}
	} else if err := w.look.Render(to, p.view(b)); err != nil {
		return err
	}
	asked := w.kept().known.number(w.book, trace.Questions())
	w.mu.Lock()
	defer w.mu.Unlock()
	w.made[path] = made{asked: asked}
	return nil
}

// note notes what came out of making a page.
func (w *Workshop) note(path string, sum keep.Sum) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if m, ok := w.made[path]; ok {
		m.sum = sum
		w.made[path] = m
	}
}

// Pages counts the pages of the site.
func (w *Workshop) Pages() int {
	n := 0
	for _, p := range w.pages {
		if p.view != nil {
			n++
		}
	}
	return n
}
