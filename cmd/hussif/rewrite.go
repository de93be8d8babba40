package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// errChanged says that somebody else wrote a file meanwhile.
var errChanged = errors.New("it was changed meanwhile")

// rewrite puts new content in the place of a file that holds the old: it is written
// whole under another name first and then renamed, with the mode that the file had.
// Nothing is touched where the file no longer holds the old content, may not be
// written, or is a link, whose place a file would take.
func rewrite(name string, old, content []byte) (err error) {
	info, err := os.Lstat(name)
	switch {
	case err != nil:
		return err
	case info.Mode()&fs.ModeSymlink != 0:
		return fmt.Errorf("%s is a link", name)
	case !info.Mode().IsRegular():
		return fmt.Errorf("%s is no file", name)
	case info.Mode().Perm()&0o222 == 0:
		return fmt.Errorf("%s may only be read", name)
	}
	// Whoever may write the folder could replace the file without being allowed to
	// write it.
	if f, err := os.OpenFile(name, os.O_WRONLY, 0); err != nil {
		return err
	} else if err := f.Close(); err != nil {
		return err
	}
	beside, err := writeBeside(name, 0o600, func(f *os.File) error {
		_, err := f.Write(content)
		return errors.Join(err, f.Chmod(info.Mode().Perm()), f.Sync())
	})
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			os.Remove(beside)
		}
	}()
	now, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	if !bytes.Equal(now, old) {
		return fmt.Errorf("%s: %w", name, errChanged)
	}
	return os.Rename(beside, name)
}
