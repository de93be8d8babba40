package intake

import (
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"
	"time"

	"hussif/build/keep"
	"hussif/build/photo"
	"hussif/content/edtf"
)

// A Shot is a picture of the camera's folder.
type Shot struct {
	Path   string   // from the camera's folder
	Day    edtf.Day // on which it was taken, where the camera was
	ByFile bool     // the day is that of the file's time, for the picture does not say
	Taken  photo.Taken
	HEIC   bool // developed to JPEG, where others are copied
	Ending string

	file
	found photo.File
	sum   keep.Sum
}

// look finds out what a file is. The shot counts where nothing is left out.
func look(ctx context.Context, camera fs.FS, f file) (shot Shot, left *Left, err error) {
	no := func(reason string, trouble bool) (Shot, *Left, error) {
		return Shot{}, &Left{f.path, reason, trouble}, nil
	}
	if strings.EqualFold(path.Ext(f.path), ".thm") {
		return no("a small picture of a film, left by the camera", false)
	}
	open, err := camera.Open(f.path)
	if err != nil {
		return no("it cannot be read: "+cause(err), true)
	}
	defer open.Close()
	at, ok := open.(io.ReaderAt)
	if !ok {
		return Shot{}, nil, fmt.Errorf("%s, a %T, cannot be read from the middle", f.path, open)
	}
	found, fault, err := photo.Examine(at, f.size, f.path)
	switch {
	case err != nil:
		return no("it cannot be read: "+cause(err), true)
	case fault != nil:
		return no(fault.Reason, true)
	case found.Called == "":
		return no("not a picture of a known format", false)
	case found.Ending == "":
		return no(found.Called+"; only JPEG, PNG, WebP and HEIC pictures are taken", false)
	}
	shot = Shot{Path: f.path, Taken: found.Taken, HEIC: found.HEIC, Ending: found.Ending, file: f}
	if shot.ByFile = found.Taken.IsZero(); shot.ByFile {
		shot.Day = edtf.DayFromTime(f.modified)
	} else {
		shot.Day = edtf.DayFromTime(found.Taken.Time)
	}
	if shot.sum, err = sumOf(ctx, io.NewSectionReader(at, 0, f.size)); err != nil {
		if ctx.Err() != nil {
			return Shot{}, nil, ctx.Err()
		}
		return no("it cannot be read: "+cause(err), true)
	}
	shot.found = found
	return shot, nil, nil
}

// prove looks at all pixels of a shot, since a page cannot show a picture that is
// torn further down, and its site would not be made. HEIC pictures prove themselves
// when they are developed.
func (s Shot) prove(ctx context.Context, camera fs.FS) (*Left, error) {
	if s.HEIC {
		return nil, ctx.Err()
	}
	open, err := camera.Open(s.Path)
	if err != nil {
		return &Left{s.Path, "it cannot be read: " + cause(err), true}, nil
	}
	defer open.Close()
	at, ok := open.(io.ReaderAt)
	if !ok {
		return nil, fmt.Errorf("%s, a %T, cannot be read from the middle", s.Path, open)
	}
	fault, err := s.found.Prove(ctx, at, s.size)
	switch {
	case ctx.Err() != nil:
		return nil, ctx.Err()
	case err != nil:
		return &Left{s.Path, "it cannot be read: " + cause(err), true}, nil
	case fault != nil:
		return &Left{s.Path, fault.Reason, true}, nil
	}
	return nil, nil
}

// sumOf returns the hash of all bytes of a reader.
func sumOf(ctx context.Context, r io.Reader) (keep.Sum, error) {
	h := sha256.New()
	if _, err := io.Copy(h, stopping{ctx, r}); err != nil {
		return keep.Sum{}, err
	}
	return keep.Sum(h.Sum(nil)), nil
}

// A stopping reader ends when its context does.
type stopping struct {
	ctx context.Context
	io.Reader
}

func (s stopping) Read(p []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.Reader.Read(p)
}

// moment is when the shot was taken, to put those of a day in order: by the
// camera's clock, whatever its zone, or else the file's time.
func (s Shot) moment() time.Time {
	at := s.Taken.Time
	if s.ByFile {
		at = s.modified
	}
	year, month, day := at.Date()
	hour, minute, second := at.Clock()
	return time.Date(year, month, day, hour, minute, second, at.Nanosecond(), time.UTC)
}
