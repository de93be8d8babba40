package output

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"hussif/build/keep"
	"hussif/content/source"
)

// ErrOther is returned by [Session.Put] where only [Write] can bring a folder up to
// date: the files are not those that the site had, or somebody else has written to
// the folder.
var ErrOther = errors.New("the folder has to be looked through again")

// A Session replaces a few files of a site that [Write] has just written, again and
// again, without looking at the others. It is for one goroutine.
type Session struct {
	dir  string
	root *os.Root
	lock string
	whom string      // the site is for
	mark fs.FileInfo // as it was read or written last
	old  map[string]entry
}

// Hold begins a session in the folder of a site. The folder is locked only while
// files are put there.
func Hold(ctx context.Context, dir string) (*Session, error) {
	real, exists, err := locate(dir)
	if err != nil {
		return nil, err
	}
	if !exists {
		return nil, ErrOther
	}
	root, err := os.OpenRoot(real)
	if err != nil {
		return nil, err
	}
	s := &Session{dir: dir, root: root, lock: filepath.Join(real, lockName), old: make(map[string]entry)}
	unlock, err := lock(ctx, s.lock)
	if err != nil {
		return nil, errors.Join(err, root.Close())
	}
	defer unlock()
	m, err := readMark(root)
	if err == nil && m == nil {
		err = ErrOther
	}
	if err == nil {
		s.mark, err = root.Lstat(source.SiteMark)
	}
	if err != nil {
		return nil, errors.Join(err, root.Close())
	}
	s.whom = m.For
	for _, e := range m.Files {
		s.old[e.Path] = e
	}
	return s, nil
}

// Put makes files of the site that are there already hold what they shall now. Each is
// whole at every instant. What a killed session leaves, the next Write takes up. It
// errs like Write, or with [ErrOther]; then nothing was written.
func (s *Session) Put(ctx context.Context, files []File) (Report, error) {
	unlock, err := lock(ctx, s.lock)
	if err != nil {
		return Report{}, err
	}
	defer unlock()
	if now, err := s.root.Lstat(source.SiteMark); err != nil || now.Size() != s.mark.Size() || !now.ModTime().Equal(s.mark.ModTime()) {
		return Report{}, ErrOther
	}
	r := newRun(s.dir, s.root, &plan{Site: Site{Files: files, For: s.whom}})
	r.old, r.found = s.old, make(map[string]fs.FileInfo, len(files))
	for _, f := range files {
		if _, ok := s.old[f.Path]; !ok {
			return Report{}, ErrOther
		}
		info, err := s.root.Lstat(f.Path)
		if err != nil || !info.Mode().IsRegular() {
			return Report{}, ErrOther
		}
		r.found[f.Path] = info
	}
	r.begin = func() error { return nil } // the mark names them all
	r.parts = sync.OnceValue(func() error { return r.makeParts(true) })
	err = r.makeAll(ctx)
	for _, m := range r.made {
		if m.entry.Path != "" {
			s.old[m.entry.Path] = m.entry
		}
	}
	_, faults := r.outcome()
	return r.report(nil), errors.Join(err, faults, s.root.RemoveAll(partsName))
}

// Leave ends the session and notes nothing, as if it had been killed.
func (s *Session) Leave() error { return s.root.Close() }

// Close ends the session and notes what the folder holds now, under the recipe of
// the site as it is now.
func (s *Session) Close(ctx context.Context, recipe keep.Recipe) error {
	defer s.root.Close()
	unlock, err := lock(ctx, s.lock)
	if err != nil {
		return err
	}
	defer unlock()
	if now, err := s.root.Lstat(source.SiteMark); err != nil || !now.ModTime().Equal(s.mark.ModTime()) {
		return nil // somebody else has noted it
	}
	m := mark{Version: markVersion, Recipe: keep.Sum(recipe), For: s.whom}
	for _, e := range s.old {
		m.Files = append(m.Files, e)
	}
	slices.SortFunc(m.Files, func(a, b entry) int { return strings.Compare(a.Path, b.Path) })
	return writeMark(s.root, m)
}
