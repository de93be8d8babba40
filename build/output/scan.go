package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strings"

	"hussif/content/source"
)

// Foreign says that a folder holds files that no site put there. Nothing in it
// has been touched.
type Foreign struct {
	Dir   string   // as the caller called it
	Names []string // a few of them, from Dir, with forward slashes
	More  bool     // whether there are others
}

// foreignNames is how many names a maker needs to see what sort of folder it is.
const foreignNames = 5

func (f *Foreign) Error() string {
	names := strings.Join(f.Names, ", ")
	if f.More {
		names += " and more"
	}
	return fmt.Sprintf("%s holds files that no site put there: %s; choose another folder, or move them elsewhere", f.Dir, names)
}

// scan looks at all that lies in a folder. It returns what is there of the
// files that the mark names, by path; m is nil for a folder without a mark. The
// error is a [*Foreign] if there is more.
func scan(dir string, root *os.Root, m *mark) (map[string]fs.FileInfo, error) {
	owned := newOwned(m)
	found := make(map[string]fs.FileInfo, len(owned.names))
	foreign := &Foreign{Dir: dir}
	err := fs.WalkDir(root.FS(), ".", func(name string, d fs.DirEntry, err error) error {
		if errors.Is(err, fs.ErrNotExist) && name != "." {
			return nil // gone between two looks
		}
		if err != nil || name == "." {
			return err
		}
		if name[0] == '.' && !(m == nil && strings.HasPrefix(name, partsName)) {
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if d.IsDir() {
			return nil
		}
		if d.Type().IsRegular() {
			info, err := d.Info()
			if errors.Is(err, fs.ErrNotExist) {
				return nil
			}
			if err != nil {
				return err
			}
			if as, ok := owned.find(root, name, info); ok {
				found[as] = info
				return nil
			}
			if isLitter(path.Base(name)) {
				return nil
			}
		}
		if len(foreign.Names) == foreignNames {
			foreign.More = true
			return fs.SkipAll
		}
		foreign.Names = append(foreign.Names, name)
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("look through %s: %w", dir, err)
	}
	if foreign.Names != nil {
		return nil, foreign
	}
	return found, nil
}

// isLitter reports whether file managers leave files of this name behind.
func isLitter(name string) bool {
	for _, litter := range []string{".DS_Store", "Thumbs.db", "desktop.ini"} {
		if strings.EqualFold(name, litter) {
			return true
		}
	}
	return false
}

// owned tells whether a file on disk is one that the mark names.
type owned struct {
	names map[string]bool
	folds map[string]string // from the folded name, made when first needed
	folder
}

func newOwned(m *mark) *owned {
	o := &owned{names: map[string]bool{}, folder: newFolder()}
	if m != nil {
		for _, e := range m.Files {
			o.names[e.Path] = true
		}
	}
	return o
}

// find returns the path by which the mark names a file. A disk may give a name
// back in another case, or with its accents composed otherwise, than it was
// told; then only the disk knows whether it is the same file.
func (o *owned) find(root *os.Root, name string, info fs.FileInfo) (string, bool) {
	if o.names[name] {
		return name, true
	}
	if o.folds == nil {
		o.folds = make(map[string]string, len(o.names))
		for own := range o.names {
			o.folds[o.fold(own)] = own
		}
	}
	as, ok := o.folds[o.fold(name)]
	if !ok {
		return "", false
	}
	other, err := root.Lstat(as)
	return as, err == nil && os.SameFile(info, other)
}

// checkEmpty returns a [*Foreign] for a folder that holds files but no mark. It
// makes nothing in the folder, not even a lock.
func checkEmpty(dir string, root *os.Root) error {
	_, foreign := scan(dir, root, nil)
	if foreign == nil {
		return nil
	}
	// The mark is looked for last: another run that fills this folder just now
	// wrote its mark before any file that was seen.
	if _, err := root.Lstat(source.SiteMark); err == nil {
		return nil
	}
	return foreign
}
