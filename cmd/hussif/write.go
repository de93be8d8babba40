package main

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"
)

// writeNew writes a file that must not be there yet, and the folders it lies in. It is
// whole or not there.
func writeNew(name string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	if _, err := os.Lstat(name); err == nil {
		return &fs.PathError{Op: "writing", Path: name, Err: fs.ErrExist}
	}
	beside, err := writeBeside(name, 0o666, func(f *os.File) error {
		_, err := f.Write(data)
		return err
	})
	if err != nil {
		return err
	}
	defer os.Remove(beside)
	// A link, unlike a renaming, never takes the place of a file made meanwhile.
	// Disks that know no links have to do with a look.
	if err := os.Link(beside, name); err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	if _, err := os.Lstat(name); err == nil {
		return &fs.PathError{Op: "writing", Path: name, Err: fs.ErrExist}
	}
	return os.Rename(beside, name)
}

// unfinished begins the names that files have until they are whole. The dot keeps
// them out of the journal.
const unfinished = ".hussif-unfinished-"

// resting is how long such a file must not have been written to until it is taken for
// one that a killed run left.
const resting = time.Hour

// writeBeside writes a file in the folder of name, under another name that no file
// has, and returns that. What killed runs left there long ago is taken away.
func writeBeside(name string, mode fs.FileMode, fill func(*os.File) error) (beside string, err error) {
	dir := filepath.Dir(name)
	sweep(dir)
	beside = filepath.Join(dir, unfinished+rand.Text()[:12])
	f, err := os.OpenFile(beside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return "", err
	}
	if err := errors.Join(fill(f), f.Close()); err != nil {
		os.Remove(beside)
		return "", err
	}
	return beside, nil
}

// sweep takes away what killed runs left in a folder. Where it cannot, nothing is
// lost but a little room.
func sweep(dir string) {
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), unfinished) || !e.Type().IsRegular() {
			continue
		}
		if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > resting {
			os.Remove(filepath.Join(dir, e.Name()))
		}
	}
}

// throughLink returns an error where a folder on the way from a journal's folder to a
// file in it is a link: nobody looks for a page of hers where that leads.
func throughLink(dir, page string) error {
	for at := path.Dir(page); at != "."; at = path.Dir(at) {
		if info, err := os.Lstat(filepath.Join(dir, filepath.FromSlash(at))); err == nil && info.Mode()&fs.ModeSymlink != 0 {
			return fmt.Errorf("%s is a link; nothing is written through it", at)
		}
	}
	return nil
}
