package photo

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"runtime"
	"sync"

	"golang.org/x/sync/errgroup"
	"golang.org/x/sync/semaphore"

	"hussif/build/keep"
)

// A Picture is one clean picture in the store.
type Picture struct {
	Name          string // for the site, made from its content: "3f9c2a1b40de-960.jpg"
	Width, Height int    // in pixels
	Path          string // where it lies in the store; copy it from there
	Size          int64  // in bytes
	Sum           keep.Sum
}

// A Result is what came of one of the maker's pictures: pictures, the
// narrowest first, or a fault.
type Result struct {
	Name     string // as it was asked for
	Pictures []Picture
	Fault    *Fault
	Fresh    bool // made now, not found in the store
}

// A Darkroom makes clean pictures and keeps them in its store, by the content
// of the original, so that the next time they are only found.
type Darkroom struct {
	Store *keep.Store

	// Journal tells journals apart that share a store: the journal's absolute
	// path. Under it the store remembers which file had which content, so that
	// unchanged files need not be read. Where it is empty all files are read.
	Journal string

	// Blur is which regions of which files are made unsharp before they are scaled.
	Blur map[string][]Region

	// Workers is how many pictures are worked on at once; zero means one for
	// every core.
	Workers int

	// Progress, where it is set, is told after each picture how many are done.
	// It is never called twice at once.
	Progress func(done, total int)

	// memory is how many bytes pictures in work may take together; zero means
	// mostMemory.
	memory int64
}

// mostMemory is enough for a dozen photographs of 12 megapixels. A picture that
// by itself takes more is worked on alone.
const mostMemory = 512 << 20

// Make makes the pictures of the named files. The results are in the order of
// the names. The error is trouble that is no picture's fault, such as a full
// disk, and says over which picture it came; or it is the context's.
func (d *Darkroom) Make(ctx context.Context, fsys fs.FS, names []string) ([]Result, error) {
	workers := d.Workers
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	memory := d.memory
	if memory == 0 {
		memory = mostMemory
	}
	results := make([]Result, len(names))
	bench := &bench{d, fsys, semaphore.NewWeighted(memory), memory}
	group, ctx := errgroup.WithContext(ctx)
	group.SetLimit(workers)
	var counting sync.Mutex
	done := 0
	for i, name := range names {
		group.Go(func() error {
			if err := ctx.Err(); err != nil {
				return err
			}
			result, err := bench.work(ctx, name)
			if err != nil {
				return fmt.Errorf("making the pictures of %s: %w", name, err)
			}
			results[i] = result
			if d.Progress != nil {
				counting.Lock()
				defer counting.Unlock()
				done++
				d.Progress(done, len(names))
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		return nil, err
	}
	return results, nil
}

// printed is what a record says of one picture.
type printed struct {
	Width, Height int
	Ending        string
	Size          int64
	Sum           keep.Sum
}

// A record is what the store holds under a picture's recipe.
type record struct {
	Prints []printed `json:",omitempty"`
	Fault  *Fault    `json:",omitempty"`
}

// recall returns what is kept under a recipe, if all of it is still whole.
func (d *Darkroom) recall(r keep.Recipe) ([]Picture, *Fault, bool) {
	content, ok := d.Store.Get(r)
	if !ok {
		return nil, nil, false
	}
	var rec record
	if json.Unmarshal(content, &rec) != nil {
		return nil, nil, false
	}
	pictures, ok := d.pictures(rec.Prints)
	return pictures, rec.Fault, ok
}

// pictures finds the prints in the store; false if one is not whole.
func (d *Darkroom) pictures(prints []printed) ([]Picture, bool) {
	var pictures []Picture
	for _, p := range prints {
		path, ok := d.Store.File(p.Sum)
		if !ok {
			return nil, false
		}
		pictures = append(pictures, Picture{
			Name:   fmt.Sprintf("%x-%d%s", p.Sum[:6], p.Width, p.Ending),
			Width:  p.Width,
			Height: p.Height,
			Path:   path,
			Size:   p.Size,
			Sum:    p.Sum,
		})
	}
	return pictures, true
}
