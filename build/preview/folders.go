package preview

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"github.com/fsnotify/fsnotify"

	"hussif/content/source"
)

// folders are those of the journal that are watched.
type folders struct {
	dir     string // the journal's
	told    notifier
	watched map[string]bool // slash-separated, from dir
}

func newFolders(dir string, told notifier) *folders {
	return &folders{dir, told, make(map[string]bool)}
}

// seen reports whether a journal's scan would look at a name.
func seen(base string) bool { return !source.Hidden(base) && utf8.ValidString(base) }

func (f *folders) onDisk(name string) string { return filepath.Join(f.dir, filepath.FromSlash(name)) }

// add watches a folder and all that are below it, and returns them. Each is
// watched before it is listed, so that what comes into it meanwhile is told or
// found. The error is that no more can be watched.
func (f *folders) add(name string) (added []string, err error) {
	dir := f.onDisk(name)
	if _, err := os.Lstat(filepath.Join(dir, source.SiteMark)); err == nil && name != "." {
		return nil, nil
	}
	if err := f.told.Add(dir); err != nil {
		// Gone again, or closed to us: the scan of the journal tells.
		if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrPermission) {
			return nil, nil
		}
		return nil, err
	}
	f.watched[name] = true
	added = append(added, name)
	entries, err := os.ReadDir(dir)
	if err != nil {
		return added, nil
	}
	for _, e := range entries {
		if !e.IsDir() || !seen(e.Name()) {
			continue
		}
		below, err := f.add(path.Join(name, e.Name()))
		if err != nil {
			return nil, err
		}
		added = append(added, below...)
	}
	return added, nil
}

// drop no longer watches a folder and all that were below it, and returns them.
// One that was moved must be let go of before it is watched by its new name, or
// it would be told of by the old one.
func (f *folders) drop(name string) (dropped []string) {
	for watched := range f.watched {
		if watched == name || strings.HasPrefix(watched, name+"/") {
			dropped = append(dropped, watched)
		}
	}
	for _, d := range dropped {
		delete(f.watched, d)
		// What is gone from the disk is not watched any more, which is no trouble.
		_ = f.told.Remove(f.onDisk(d))
	}
	return dropped
}

// take puts what is told onto the pile and watches what has come. The error is
// errAgain, or that no more can be watched.
func (f *folders) take(e fsnotify.Event, p *pile) error {
	if e.Op == fsnotify.Chmod {
		return nil
	}
	name, err := filepath.Rel(f.dir, e.Name)
	if err != nil {
		return nil
	}
	name = filepath.ToSlash(name)
	if name == "." {
		if e.Has(fsnotify.Remove) || e.Has(fsnotify.Rename) {
			return errAgain
		}
		return nil
	}
	folder, base := path.Split(name)
	folder = path.Clean(folder)
	if base == source.SiteMark && folder != "." {
		// The folder has become a site, or is none any more.
		name = folder
		folder = path.Dir(name)
	} else if !seen(base) {
		return nil
	}
	p.folder(folder)
	if e.Has(fsnotify.Create) || e.Has(fsnotify.Remove) || e.Has(fsnotify.Rename) {
		p.folder(f.drop(name)...)
	}
	info, err := os.Lstat(f.onDisk(name))
	if err == nil && info.IsDir() {
		if f.watched[name] {
			return nil
		}
		added, err := f.add(name)
		if err != nil {
			return err
		}
		p.folder(added...)
	}
	p.file(name)
	return nil
}
