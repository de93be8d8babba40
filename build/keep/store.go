package keep

import (
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
)

// layout names the folder inside the store. It is raised when the files in it
// change their form; a program that knows only the old form keeps its own.
const layout = "v1"

// tag is the file by which backup programs know a folder not worth keeping
// (Cache Directory Tagging Specification; the signature is the MD5 of
// ".IsCacheDirectory").
const (
	tagName = "CACHEDIR.TAG"
	tagText = "Signature: 8a477f597d28d172789f06886806bc55\n" +
		"# Kept so that a site is made faster the next time. It is safe to delete this folder.\n"
)

// A Store keeps what steps have made. Get one from [Open]; it may be used by
// many goroutines and processes at once.
type Store struct {
	// Verify makes every step run again: Get finds nothing, and Put compares
	// what was made now with what was kept. It finds a recipe that leaves out
	// something its step looks at. Set it before first use.
	Verify bool

	dir string
}

// Open returns the store in a folder, which it makes where there is none. The
// error says which folder could not be made or written.
func Open(dir string) (*Store, error) {
	s := &Store{dir: filepath.Join(dir, layout)}
	if err := os.MkdirAll(s.dir, 0o700); err != nil {
		return nil, fmt.Errorf("opening the store of things made before: %w", err)
	}
	if _, err := os.Lstat(filepath.Join(dir, tagName)); err != nil {
		if err := s.write(filepath.Join(dir, tagName), []byte(tagText)); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// place returns the path for a hash: two hundred and fifty-six folders keep
// each of them short enough to list quickly.
func (s *Store) place(sort string, hash []byte) string {
	name := hex.EncodeToString(hash)
	return filepath.Join(s.dir, sort, name[:2], name)
}

// write puts the parts at path all at once: a reader sees the old file or the
// new one.
func (s *Store) write(path string, parts ...[]byte) (err error) {
	defer func() {
		if err != nil {
			err = fmt.Errorf("keeping what was made: %w", err)
		}
	}()
	folder := filepath.Dir(path)
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return err
	}
	f, err := os.CreateTemp(folder, "unfinished-*")
	if err != nil {
		return err
	}
	for _, part := range parts {
		if _, err = f.Write(part); err != nil {
			break
		}
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		os.Remove(f.Name())
	}
	return err
}
