package output

import (
	"fmt"
	"io"

	"hussif/build/keep"
)

// A Site is all that its folder shall hold.
type Site struct {
	// Recipe stands for everything that decides the site, for [Current]. A site
	// with the zero Recipe is never current.
	Recipe keep.Recipe
	Files  []File

	// For is whom the site is for; "" for its maker. A folder that holds a site for
	// somebody else is refused with an [Others] error.
	For string
}

// A File is one file of a site. Either Content or From says what it holds.
type File struct {
	// Path is where it lies, from the site's folder, with forward slashes.
	// Parts that begin with a dot and names that some system cannot hold are
	// refused.
	Path string

	// Content writes what the file holds. It is called at most once in a
	// [Write], from any goroutine, and must not keep the writer.
	Content func(io.Writer) error

	// From is the path of a file to copy. It is copied, never linked, so that
	// nobody who edits the site changes what it was made from.
	From string

	// Sum is what the file at From must hold, or what Content is known to write;
	// zero if that is not known. Knowing it saves reading or making a file that has
	// been written before.
	Sum keep.Sum

	// Made, where it is set, is told what Content wrote. It is called from any
	// goroutine.
	Made func(keep.Sum)
}

// A Report counts the files of a site by what became of them.
type Report struct {
	Written int // new, or other than before
	Kept    int // already there; their time stamps have not changed
	Removed int // of an earlier run, no longer wanted
	Failed  int // could not be made; an earlier file of that name stays
}

// A Fault says why one file of a site could not be made.
type Fault struct {
	Path  string
	Err   error
	Stack []byte // where Content panicked, else nil
}

func (f *Fault) Error() string {
	if f.Stack != nil {
		return fmt.Sprintf("%s could not be made, by a mistake in hussif: %v", f.Path, f.Err)
	}
	return fmt.Sprintf("%s could not be made: %v", f.Path, f.Err)
}

func (f *Fault) Unwrap() error { return f.Err }

// validate looks for a File that says too little or too much.
func (f File) validate() error {
	if err := checkPath(f.Path); err != nil {
		return fmt.Errorf("a site cannot hold a file called %q: %w", f.Path, err)
	}
	if (f.Content == nil) == (f.From == "") {
		return fmt.Errorf("%s needs either a content or a file to copy", f.Path)
	}
	return nil
}
