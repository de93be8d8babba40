package output

import (
	"errors"
	"io/fs"
	"time"

	"github.com/rogpeppe/go-internal/robustio"

	"hussif/content/source"
)

// clear removes files of an earlier run, and folders that this leaves empty.
func (r *run) clear(paths []string) error {
	if len(paths) == 0 {
		return nil
	}
	if err := r.begin(); err != nil {
		return err
	}
	// The mark of a killed run may name a file where by now a folder lies.
	var there []string
	for _, name := range paths {
		if r.found[name] != nil {
			there = append(there, name)
		}
	}
	if err := r.remove(there); err != nil {
		return err
	}
	r.removeFolders(paths)
	return nil
}

func (r *run) remove(paths []string) error {
	for _, name := range paths {
		err := patiently(func() error { return r.root.Remove(name) })
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return nil
}

// removeFolders takes away the folders above files that are gone, up to the
// first in which something else lies.
func (r *run) removeFolders(paths []string) {
	for _, name := range paths {
		for dir := range parents(name) {
			err := r.root.Remove(dir)
			if err != nil && !errors.Is(err, fs.ErrNotExist) {
				break
			}
		}
	}
}

// discard takes away all that the run or one before it may have put into the
// folder. What cannot be removed stays, and stays named by the mark.
func (r *run) discard() {
	if r.found == nil {
		return // it was not ours
	}
	var all []string
	for name := range r.found {
		all = append(all, name)
	}
	for _, f := range r.plan.Files {
		all = append(all, f.Path)
	}
	if r.remove(all) != nil || r.root.RemoveAll(partsName) != nil {
		return
	}
	r.removeFolders(all)
	r.root.Remove(source.SiteMark)
	r.root.Remove(markDraft)
}

// patiently repeats what some systems refuse while a scanner or a browser has a
// file open that is to be replaced.
func patiently(do func() error) error {
	for wait := time.Millisecond; ; wait *= 2 {
		err := do()
		if err == nil || !robustio.IsEphemeralError(err) || wait > time.Second/2 {
			return err
		}
		time.Sleep(wait)
	}
}
