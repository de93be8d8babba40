package intake

import (
	"context"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"hussif/build/keep"
	"hussif/build/photo"
	"hussif/content/journal"
	"hussif/content/source"
)

// madeFrom begins the comment in a developed picture; the hash of the HEIC file
// follows.
const madeFrom = "developed by hussif from the HEIC picture sha256:"

// An album knows the pictures that a journal has by their content. Files are read
// only when one of the camera's has the same size.
type album struct {
	files     fs.FS
	bySize    map[int64][]string
	sums      map[string]keep.Sum
	jpegs     []string
	developed map[string]string // the file by the hash of its HEIC; nil until asked for
	shown     map[string]bool   // by a page
}

func newAlbum(files fs.FS, entries []source.Entry, j *journal.Journal) *album {
	a := &album{files: files, bySize: make(map[int64][]string), sums: make(map[string]keep.Sum), shown: make(map[string]bool)}
	for _, e := range entries {
		a.bySize[e.Size] = append(a.bySize[e.Size], e.Path)
		if ending := strings.ToLower(path.Ext(e.Path)); ending == ".jpg" || ending == ".jpeg" {
			a.jpegs = append(a.jpegs, e.Path)
		}
	}
	for _, r := range j.Records() {
		for _, p := range journal.Pictures(r) {
			a.shown[p.Path] = true
		}
	}
	return a
}

// holding returns the files of the journal that have a shot's content, or were
// developed from it.
func (a *album) holding(ctx context.Context, s Shot) ([]string, error) {
	var names []string
	for _, name := range a.bySize[s.size] {
		sum, ok := a.sums[name]
		if !ok {
			var err error
			if sum, err = a.sumOf(ctx, name); err != nil {
				return nil, err
			}
			a.sums[name] = sum
		}
		if sum == s.sum {
			names = append(names, name)
		}
	}
	if s.HEIC {
		if err := a.readComments(); err != nil {
			return nil, err
		}
		if name, ok := a.developed[s.sum.String()]; ok {
			names = append(names, name)
		}
	}
	return names, nil
}

func (a *album) sumOf(ctx context.Context, name string) (keep.Sum, error) {
	f, err := a.files.Open(name)
	if err != nil {
		return keep.Sum{}, fmt.Errorf("reading the journal: %w", err)
	}
	defer f.Close()
	sum, err := sumOf(ctx, f)
	if err != nil && ctx.Err() == nil {
		err = fmt.Errorf("reading the journal: %w", err)
	}
	return sum, err
}

func (a *album) readComments() error {
	if a.developed != nil {
		return nil
	}
	a.developed = make(map[string]string)
	for _, name := range a.jpegs {
		sum, err := a.comment(name)
		if err != nil {
			return fmt.Errorf("reading the journal: %w", err)
		}
		if _, there := a.developed[sum]; sum != "" && !there {
			a.developed[sum] = name
		}
	}
	return nil
}

func (a *album) comment(name string) (sum string, err error) {
	f, err := a.files.Open(name)
	if err != nil {
		return "", err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return "", err
	}
	if at, ok := f.(io.ReaderAt); ok {
		sum, _ = photo.Comment(at, info.Size(), madeFrom)
	}
	return sum, nil
}
