package output

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// locate returns the folder that dir leads to, links resolved, and whether it
// is there. Folders above it are made.
func locate(dir string) (real string, exists bool, err error) {
	abs, err := filepath.Abs(dir)
	if err != nil {
		return "", false, err
	}
	info, err := os.Stat(abs)
	switch {
	case err == nil && !info.IsDir():
		return "", false, fmt.Errorf("%s is not a folder; choose another name", dir)
	case err == nil:
		real, err := filepath.EvalSymlinks(abs)
		return real, true, err
	case !errors.Is(err, fs.ErrNotExist):
		return "", false, err
	}
	if _, err := os.Lstat(abs); err == nil {
		return "", false, fmt.Errorf("%s is a link to a folder that is not there; make that folder, or choose another name", dir)
	}
	parent := filepath.Dir(abs)
	if err := os.MkdirAll(parent, 0o777); err != nil {
		return "", false, err
	}
	parent, err = filepath.EvalSymlinks(parent)
	return filepath.Join(parent, filepath.Base(abs)), false, err
}

// Separate returns an error if a site written to dir would lie on top of the
// journal: if dir is the journal's folder or holds it, by whatever names and
// links. The site may lie inside the journal's folder. The journal must be
// there; dir need not.
func Separate(dir, journal string) error {
	site, err := os.Stat(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil // what is not there holds no journal
	}
	if err != nil {
		return err
	}
	above, err := filepath.Abs(journal)
	if err != nil {
		return err
	}
	if above, err = filepath.EvalSymlinks(above); err != nil {
		return err
	}
	for is := "is"; ; is = "holds" {
		info, err := os.Stat(above)
		if err != nil {
			return err
		}
		if os.SameFile(site, info) {
			return fmt.Errorf("%s %s the journal's own folder; choose another folder for the site, such as %s",
				dir, is, filepath.Join(journal, "site"))
		}
		parent := filepath.Dir(above)
		if parent == above {
			return nil
		}
		above = parent
	}
}
