package preview

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"runtime"
	"sync"

	"golang.org/x/sync/singleflight"

	"hussif/build/check"
	"hussif/build/photo"
	"hussif/content/journal"
	"hussif/content/source"
)

// prints are the scaled copies of a journal's photos, each made when a page that
// shows it is looked at.
type prints struct {
	files  fs.FS
	room   *photo.Darkroom
	making singleflight.Group
	slots  chan struct{} // held by photos in work

	working context.Context // for the photos in work: who asked first may leave before the others
	stop    func()
	work    sync.WaitGroup

	mu     sync.Mutex
	faults map[string]*photo.Fault // found in making, by the name of the first copy
	known  map[string]expected     // by the photo's name
}

// An expected is what a photo's header says of its copies.
type expected struct {
	photo    source.Entry
	pictures []photo.Picture
}

// A copyOf is one of the scaled copies of a photo, counted from the narrowest.
type copyOf struct {
	photo string
	at    int
}

func newPrints(files fs.FS, room *photo.Darkroom) *prints {
	working, stop := context.WithCancel(context.Background())
	return &prints{
		working: working, stop: stop, files: files, room: room, slots: make(chan struct{}, runtime.GOMAXPROCS(0)),
		faults: make(map[string]*photo.Fault), known: make(map[string]expected),
	}
}

// expect says which copies the photos of a journal will have, and what was found
// in photos that were to be made. What their headers tell check has told. Only
// photos that have changed are opened.
func (p *prints) expect(j *journal.Journal, entries []source.Entry) (map[string][]photo.Picture, []source.Finding, error) {
	there := make(map[string]source.Entry, len(entries))
	for _, e := range entries {
		there[e.Path] = e
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	copies := make(map[string][]photo.Picture)
	known := make(map[string]expected)
	var found []source.Finding
	for _, r := range j.Records() {
		for _, shown := range journal.Pictures(r) {
			e, ok := there[shown.Path]
			if !ok {
				continue
			}
			if _, ok := known[shown.Path]; !ok {
				is := p.known[shown.Path]
				if is.photo != e {
					pictures, _, err := photo.Expect(p.files, shown.Path)
					if err != nil {
						return nil, nil, err
					}
					is = expected{e, pictures}
				}
				known[shown.Path], copies[shown.Path] = is, is.pictures
			}
			if fault := p.faults[known[shown.Path].name()]; fault != nil {
				found = append(found, check.BadPicture(shown.Span, fault))
			}
		}
	}
	p.known = known
	return copies, found, nil
}

// name returns what stands for the photo as it is now: the name of its first copy.
func (e expected) name() string {
	if len(e.pictures) == 0 {
		return ""
	}
	return e.pictures[0].Name
}

// make makes a photo's copies, once for all who ask for any of them meanwhile, and
// returns the one asked for.
func (p *prints) make(ctx context.Context, c copyOf) (Content, error) {
	made := p.making.DoChan(c.photo, func() (any, error) {
		if !p.begin() {
			return nil, context.Canceled
		}
		defer p.work.Done()
		select {
		case p.slots <- struct{}{}:
		case <-p.working.Done():
			return nil, p.working.Err()
		}
		defer func() { <-p.slots }()
		return p.develop(p.working, c.photo)
	})
	select {
	case <-ctx.Done():
		return Content{}, ctx.Err()
	case r := <-made:
		if r.Err != nil {
			return Content{}, r.Err
		}
		pictures := r.Val.([]photo.Picture)
		if c.at >= len(pictures) {
			return Content{}, fmt.Errorf("%s has become another picture: %w", c.photo, fs.ErrNotExist)
		}
		picture := pictures[c.at]
		return Content{Disk: picture.Path, Type: mediaType(picture.Name), Sum: picture.Sum}, nil
	}
}

// close ends the work on photos and waits until it has ended. Nothing is made
// afterwards.
func (p *prints) close() {
	p.mu.Lock()
	p.stop()
	p.mu.Unlock()
	p.work.Wait()
}

// begin counts one more piece of work, unless all work has been ended.
func (p *prints) begin() bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.working.Err() != nil {
		return false
	}
	p.work.Add(1)
	return true
}

func (p *prints) develop(ctx context.Context, name string) ([]photo.Picture, error) {
	results, err := p.room.Make(ctx, p.files, []string{name})
	if err != nil {
		return nil, err
	}
	if fault := results[0].Fault; fault != nil {
		p.mu.Lock()
		defer p.mu.Unlock()
		p.faults[p.known[name].name()] = fault
		return nil, errors.New(fault.Reason)
	}
	return results[0].Pictures, nil
}
