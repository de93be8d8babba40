package intake

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"time"
)

// temporary is the name that a file has until it is whole. The dot keeps it out of
// the journal.
func temporary(name string) string {
	return path.Join(path.Dir(name), "."+path.Base(name)+".hussif-new")
}

// putNew writes a file that must not be there yet, and the folders it lies in. It
// is whole or not there.
func putNew(root *os.Root, name string, fill func(*os.File) error) error {
	if err := root.MkdirAll(path.Dir(name), 0o777); err != nil {
		return err
	}
	beside, err := putBeside(root, name, 0o666, fill)
	if err != nil {
		return err
	}
	defer root.Remove(beside)
	// A link, unlike a renaming, never takes the place of a file made meanwhile.
	// Disks that know no links have to do with a look.
	err = root.Link(beside, name)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return exists(name, err)
	}
	if _, err := root.Lstat(name); err == nil {
		return exists(name, fs.ErrExist)
	}
	return root.Rename(beside, name)
}

func exists(name string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s was made meanwhile and is left as it is; run the same again", name)
}

// putOver writes a file anew that is there, keeping who may read and write it.
func putOver(root *os.Root, name string, data []byte) error {
	info, err := root.Lstat(name)
	if err != nil {
		return err
	}
	beside, err := putBeside(root, name, info.Mode().Perm(), func(f *os.File) error {
		if _, err := f.Write(data); err != nil {
			return err
		}
		// What the system masks for new files this one may have.
		return f.Chmod(info.Mode().Perm())
	})
	if err != nil {
		return err
	}
	if err := root.Rename(beside, name); err != nil {
		root.Remove(beside)
		return err
	}
	return nil
}

// resting is how long a file must not have been written to until it is taken for
// one that a killed run left.
const resting = time.Minute

// putBeside writes a file under its temporary name. What a killed run left there is
// taken away; what another run writes at the moment is not.
func putBeside(root *os.Root, name string, mode fs.FileMode, fill func(*os.File) error) (beside string, err error) {
	beside = temporary(name)
	switch info, err := root.Lstat(beside); {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return "", err
	case time.Since(info.ModTime()) < resting:
		return "", fmt.Errorf("another run was writing %s not a minute ago; wait for it, then run the same again", name)
	default:
		if err := root.Remove(beside); err != nil {
			return "", err
		}
	}
	f, err := root.OpenFile(beside, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return "", err
	}
	err = fill(f)
	if err == nil {
		err = f.Sync()
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err != nil {
		root.Remove(beside)
		return "", err
	}
	return beside, nil
}
