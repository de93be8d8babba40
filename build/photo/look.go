package photo

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"syscall"
	"time"
)

const (
	// MostPixels is the largest picture that is read: 100 megapixels.
	MostPixels = 100_000_000

	// MostSide is the longest side in pixels that a picture may have, since a
	// JPEG can have no longer one (ITU-T T.81, B.2.2: sixteen bits).
	MostSide = 65_535

	// MostBytes is the largest file that is read as a picture: 100 megapixels that
	// nothing could be saved on come to about as much as a PNG.
	MostBytes = 512 << 20
)

// Info is what a picture's header says.
type Info struct {
	Format        string // "JPEG", "PNG" or "WebP"
	Width, Height int    // in pixels, once the picture is turned upright

	kind     *kind
	turn     turn
	perPixel float64 // bytes of memory for a pixel while decoding, at most
	exif     []byte  // its Exif block, the start of a TIFF file, or nothing
}

// stored returns the size of the picture as it lies in the file.
func (i Info) stored() (width, height int) {
	if i.turn.swaps() {
		return i.Height, i.Width
	}
	return i.Width, i.Height
}

// Look reads a picture's header and finds out, without decoding, whether the
// file is a picture, what its name promises, of a size that is read here, and
// all there. The pixels may still turn out to be damaged. A file that is
// missing or may not be read is a fault; any other trouble in reading is an
// error that names the file.
func Look(fsys fs.FS, name string) (Info, *Fault, error) {
	o, fault, err := open(fsys, name)
	if fault != nil || err != nil {
		return Info{}, fault, err
	}
	defer o.Close()
	info, fault, err := look(name, o, o.size)
	if err != nil {
		err = fmt.Errorf("reading the picture %s: %w", name, err)
	}
	return info, fault, err
}

// An original is a maker's file, open for reading.
type original struct {
	io.ReaderAt
	io.Closer
	size    int64
	changed time.Time
}

func open(fsys fs.FS, name string) (*original, *Fault, error) {
	if !fs.ValidPath(name) {
		return nil, faultf("this is not the name of a file in the journal"), nil
	}
	f, err := fsys.Open(name)
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR), errors.Is(err, syscall.ENAMETOOLONG):
		return nil, faultf("there is no file of this name"), nil
	case errors.Is(err, fs.ErrPermission):
		return nil, faultf("this file may not be read; change who may read it"), nil
	case err != nil:
		return nil, nil, fmt.Errorf("opening a picture: %w", err)
	}
	stat, err := f.Stat()
	if err != nil {
		f.Close()
		return nil, nil, fmt.Errorf("opening a picture: %w", err)
	}
	if !stat.Mode().IsRegular() {
		f.Close()
		if stat.IsDir() {
			return nil, faultf("this is a folder, not a picture"), nil
		}
		return nil, faultf("this is no ordinary file"), nil
	}
	at, ok := f.(io.ReaderAt)
	if !ok {
		f.Close()
		return nil, nil, fmt.Errorf("opening a picture: %s, a %T, cannot be read from the middle", name, f)
	}
	return &original{at, f, stat.Size(), stat.ModTime()}, nil, nil
}

// look is [Look] for a file that is open.
func look(name string, r io.ReaderAt, size int64) (Info, *Fault, error) {
	l := &leaf{r: r, size: size}
	info, fault := lookAt(name, l)
	if l.err != nil {
		return Info{}, nil, l.err
	}
	return info, fault, nil
}

func lookAt(name string, l *leaf) (Info, *Fault) {
	if l.size == 0 {
		return Info{}, faultf("this file is empty; copy the picture here again")
	}
	if l.size > MostBytes {
		return Info{}, tooLarge(l.size)
	}
	head, _ := l.at(0, int(min(l.size, sniffed)))
	k := kindOf(head, name)
	if fault := misnamed(k, name); fault != nil {
		return Info{}, fault
	}
	info, fault := k.look(l)
	if fault != nil {
		return Info{}, fault
	}
	info.Format, info.kind = k.name, k
	switch {
	case info.Width == 0 || info.Height == 0:
		return Info{}, damaged(k, "it says that it has no pixels")
	case info.Width > MostPixels/info.Height:
		return Info{}, faultf("this picture says it is %d by %d, %d megapixels, and %d are the most; save a smaller copy",
			info.Width, info.Height, uint64(info.Width)*uint64(info.Height)/1_000_000, MostPixels/1_000_000)
	case max(info.Width, info.Height) > MostSide:
		return Info{}, faultf("this picture is %d by %d, and a side may have %d pixels at most; cut it into parts",
			info.Width, info.Height, MostSide)
	}
	return info, nil
}

func tooLarge(size int64) *Fault {
	return faultf("this file has %d MB, and a picture may have %d at most; save a smaller copy", size>>20, MostBytes>>20)
}

// misnamed compares what a file is with what it is called. It returns nil for
// a format read here under an ending of its own or none.
func misnamed(k *kind, name string) *Fault {
	if k == nil {
		return faultf("this is not a picture of a known format; save it as JPEG, PNG or WebP")
	}
	ending := path.Ext(name)
	ours := slices.Contains([]string{".jpg", ".jpeg", ".png", ".webp"}, strings.ToLower(ending))
	if k.look == nil {
		instead := ".jpg"
		if strings.HasPrefix(k.saveAs, "PNG") {
			instead = ".png"
		}
		fault := faultf("this is %s; save it as %s", k.called, k.saveAs)
		if ours {
			fault.Reason = fmt.Sprintf("named %s but holds %s; save it as %s", ending, k.called, k.saveAs)
		}
		fault.Instead = []string{withEnding(name, instead)}
		return fault
	}
	if ending == "" || slices.Contains(k.endings, strings.ToLower(ending)) {
		return nil
	}
	return &Fault{
		Reason:  fmt.Sprintf("named %s but holds %s; rename it", ending, k.called),
		Instead: []string{withEnding(name, k.endings[0])},
	}
}

// A leaf is a file of known size, read piece by piece. The first trouble in
// reading stays in err.
type leaf struct {
	r    io.ReaderAt
	size int64
	err  error
}

// at returns n bytes from off, or false where the file ends before.
func (l *leaf) at(off int64, n int) ([]byte, bool) {
	if off < 0 || n < 0 || off > l.size-int64(n) || l.err != nil {
		return nil, false
	}
	b := make([]byte, n)
	got, err := l.r.ReadAt(b, off)
	if got == n {
		return b, true
	}
	// The file may have become shorter since it was opened.
	if err != io.EOF {
		l.err = err
	}
	return nil, false
}

// ReadAt lets others read the file by way of l.
func (l *leaf) ReadAt(b []byte, off int64) (int, error) {
	n, err := l.r.ReadAt(b, off)
	if err != nil && err != io.EOF {
		l.err = err
	}
	return n, err
}
