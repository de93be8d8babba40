package intake

import (
	"errors"
	"io/fs"
	"path"
	"strings"
	"time"
	"unicode/utf8"
)

// A Left is a file that stays out of the journal, or a folder that could not be
// read.
type Left struct {
	Path    string // from the camera's folder
	Reason  string // in words for the maker
	Trouble bool   // a picture that should have gone in, as far as can be told
}

// A file is one of the camera's.
type file struct {
	path     string
	size     int64
	modified time.Time
}

// list returns the files below a camera's folder in the order of their paths. Names
// that begin with a dot are not looked at: phones and card readers keep rubbish
// there. Links and devices are not followed, and the folder except is not entered.
func list(camera fs.FS, except string) (files []file, left []Left, err error) {
	err = fs.WalkDir(camera, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && name == ".":
			return err
		case err != nil:
			left = append(left, Left{name, "this folder cannot be read: " + cause(err), true})
			return fs.SkipDir
		case name != "." && strings.HasPrefix(path.Base(name), "."), name != "." && name == except:
			return skip(d)
		case !utf8.ValidString(name):
			left = append(left, Left{strings.ToValidUTF8(name, "?"), "its name is not UTF-8; rename it", true})
			return skip(d)
		case d.IsDir():
			return nil
		case !d.Type().IsRegular():
			left = append(left, Left{name, "a link or device, which is not followed", false})
			return nil
		}
		info, err := d.Info()
		if err != nil {
			left = append(left, Left{name, "it cannot be read: " + cause(err), true})
			return nil
		}
		files = append(files, file{name, info.Size(), info.ModTime()})
		return nil
	})
	return files, left, err
}

// cause says what went wrong without the path, which stands before it.
func cause(err error) string {
	if p, ok := errors.AsType[*fs.PathError](err); ok {
		return p.Err.Error()
	}
	return err.Error()
}

func skip(d fs.DirEntry) error {
	if d.IsDir() {
		return fs.SkipDir
	}
	return nil
}
