package output

import (
	"archive/zip"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// packed begins the comment of a file that [Pack] made, by which a later run knows it.
// Whom the site is for follows.
const packed = "a site made by hussif for "

// Pack writes a site's folder into one zip file, in a folder of the same name. It
// holds the files that the site's mark names and no others, not the mark itself, and no
// times: two sites of the same files give the same bytes. A file that is there
// is replaced only if Pack made it of a site for the same people; else it stays and the
// error says so.
func Pack(dir, name string) (err error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return err
	}
	defer root.Close()
	m, err := readMark(root)
	switch {
	case err != nil:
		return err
	case m == nil:
		return fmt.Errorf("%s holds no site to pack", dir)
	}
	whom := m.For
	if whom == "" {
		whom = "its maker"
	}
	if err := mayReplace(name, packed+whom); err != nil {
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*.hussif-new")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	err = pack(f, root, m, strings.TrimSuffix(filepath.Base(name), ".zip"), packed+whom)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if err := errors.Join(err, f.Close()); err != nil {
		return err
	}
	return patiently(func() error { return os.Rename(f.Name(), name) })
}

// mayReplace says why a file may not be replaced.
func mayReplace(name, comment string) error {
	if _, err := os.Lstat(name); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	r, err := zip.OpenReader(name)
	if err != nil || !strings.HasPrefix(r.Comment, packed) {
		if err == nil {
			r.Close()
		}
		return fmt.Errorf("%s is there already, and no site was packed into it; move it or choose another folder", name)
	}
	defer r.Close()
	if r.Comment != comment {
		return fmt.Errorf("%s is %s; move it or choose another folder", name, r.Comment)
	}
	return nil
}

func pack(to io.Writer, root *os.Root, m *mark, top, comment string) error {
	z := zip.NewWriter(to)
	if err := z.SetComment(comment); err != nil {
		return err
	}
	entries := slices.Clone(m.Files)
	slices.SortFunc(entries, func(a, b entry) int { return strings.Compare(a.Path, b.Path) })
	for _, e := range entries {
		w, err := z.CreateHeader(&zip.FileHeader{Name: top + "/" + e.Path, Method: zip.Deflate})
		if err != nil {
			return err
		}
		from, err := root.Open(e.Path)
		if err != nil {
			return err
		}
		_, err = io.Copy(w, from)
		if err := errors.Join(err, from.Close()); err != nil {
			return err
		}
	}
	return z.Close()
}
