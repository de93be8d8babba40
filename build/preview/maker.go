package preview

import (
	"context"

	"hussif/build/keep"
	"hussif/content/source"
)

// A Maker makes the files of a site when they are asked for.
type Maker interface {
	// File returns what the site holds under a path ("builds/x/index.html"), made
	// now if need be, as the journal was when it was last looked at and sound. The
	// error is fs.ErrNotExist where the site has no such file. It may be called by
	// many at once, and while Look runs.
	File(ctx context.Context, path string) (Content, error)

	// Look reads again what may have changed: the named folders of the journal
	// (slash-separated, "." the journal's own) without what lies below them, or
	// everything where all is set. It returns what the journal looks like now. It
	// is not called twice at once. An error is trouble with the disk; all stays as
	// it was then.
	Look(ctx context.Context, folders []string, all bool) (State, error)
}

// Content is what a file of the site holds.
type Content struct {
	Data []byte   // not to be changed
	Disk string   // where not empty, the name of the file on disk that holds it instead
	Type string   // its media type, where the ending of its path does not tell
	Sum  keep.Sum // of its bytes
}

// A State is a journal as it was looked at.
type State struct {
	Generation int              // another one whenever the journal is another
	Findings   []source.Finding // all, sorted
	Sound      bool             // no error is among them
}
