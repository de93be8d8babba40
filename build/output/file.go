package output

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"runtime/debug"

	"hussif/build/keep"
)

// makeOne makes one file of the site and puts it in its place, unless the same
// lies there already. The error is not the fault of the file.
func (r *run) makeOne(ctx context.Context, f File, s *spool) (made, error) {
	old := r.old[f.Path]
	info := r.found[f.Path]
	if f.Sum != (keep.Sum{}) && f.Sum == old.Sum && info != nil && old.matches(info) {
		return made{entry: old}, nil
	}
	err := f.writeTo(s)
	if s.err != nil {
		return made{}, fmt.Errorf("write %s: %w", f.Path, s.err)
	}
	if err != nil {
		// What is made after the work was called off may fail for that reason.
		if ctx.Err() != nil {
			return made{}, ctx.Err()
		}
		m := made{fault: asFault(f.Path, err)}
		if info != nil {
			m.entry = old
			m.entry.Path = f.Path
		}
		return m, nil
	}
	if f.Made != nil {
		f.Made(s.sum())
	}
	if info == nil || info.Size() != s.size || r.sumOf(f.Path, s.copying[:]) != s.sum() {
		if info, err = r.put(f.Path, s); err != nil {
			return made{}, fmt.Errorf("write %s: %w", f.Path, err)
		}
		return made{entry: entryOf(f.Path, s.sum(), info), written: true}, nil
	}
	return made{entry: entryOf(f.Path, s.sum(), info)}, nil
}

func entryOf(name string, sum keep.Sum, info fs.FileInfo) entry {
	return entry{name, info.Size(), sum, info.ModTime().UnixNano()}
}

// writeTo writes what the file holds. A panic of Content is a [*Fault].
func (f File) writeTo(s *spool) (err error) {
	if f.From == "" {
		defer func() {
			if p := recover(); p != nil {
				err = &Fault{f.Path, fmt.Errorf("%v", p), debug.Stack()}
			}
		}()
		return f.Content(s)
	}
	from, err := os.Open(f.From)
	if err != nil {
		return err
	}
	defer from.Close()
	if _, err := io.Copy(s, from); err != nil {
		return err
	}
	if f.Sum != (keep.Sum{}) && f.Sum != s.sum() {
		return errors.New(f.From + " is not what it was; clear the kept pictures and try again")
	}
	return nil
}

func asFault(name string, err error) *Fault {
	if f, ok := err.(*Fault); ok {
		return f
	}
	return &Fault{Path: name, Err: err}
}

// sumOf reads a file of the folder. One that cannot be read has the sum of
// nothing we would write and is replaced.
func (r *run) sumOf(name string, buf []byte) keep.Sum {
	f, err := r.root.Open(name)
	if err != nil {
		return keep.Sum{}
	}
	defer f.Close()
	h := sha256.New()
	// Without its WriteTo, which would take a buffer of its own for each file.
	if _, err := io.CopyBuffer(h, struct{ io.Reader }{f}, buf); err != nil {
		return keep.Sum{}
	}
	return keep.Sum(h.Sum(nil))
}

// put brings what the spool holds to its place in the folder.
func (r *run) put(name string, s *spool) (fs.FileInfo, error) {
	if err := r.begin(); err != nil {
		return nil, err
	}
	if r.hidden && s.file == nil && r.found[name] == nil {
		return r.putNew(name, s)
	}
	if err := r.root.MkdirAll(path.Dir(name), 0o777); err != nil {
		return nil, err
	}
	if err := s.finish(); err != nil {
		return nil, err
	}
	// Making the pages may have taken minutes since the folder was looked at.
	if _, err := r.root.Lstat(name); err == nil && r.found[name] == nil {
		r.strange.Store(name, true)
		return nil, &Foreign{Dir: r.dir, Names: []string{name}}
	}
	if err := patiently(func() error { return r.root.Rename(s.name, name) }); err != nil {
		return nil, err
	}
	return r.root.Lstat(name)
}

// putNew writes a file where nobody looks yet straight to its place.
func (r *run) putNew(name string, s *spool) (fs.FileInfo, error) {
	dir, name := path.Split(name)
	folder, err := s.folder.open(r.root, path.Clean(dir))
	if err != nil {
		return nil, err
	}
	if s.file, err = folder.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666); err != nil {
		return nil, err
	}
	if err := s.finish(); err != nil {
		return nil, err
	}
	return folder.Lstat(name)
}

// A lastFolder is the folder that a worker put a file into last. Most files go
// where the one before went, and a [os.Root] looks at each folder on the way.
type lastFolder struct {
	path string
	root *os.Root // nil before the first
}

// open makes a folder below root where there is none, and returns it. It stays
// open until the next one or close.
func (f *lastFolder) open(root *os.Root, path string) (*os.Root, error) {
	if f.root != nil && f.path == path {
		return f.root, nil
	}
	f.close()
	if err := root.MkdirAll(path, 0o777); err != nil {
		return nil, err
	}
	opened, err := root.OpenRoot(path)
	if err != nil {
		return nil, err
	}
	f.path, f.root = path, opened
	return opened, nil
}

func (f *lastFolder) close() {
	if f.root != nil {
		f.root.Close()
		f.root = nil
	}
}
