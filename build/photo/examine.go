package photo

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/bep/imagemeta"
)

// A File is one of a camera's files as its bytes tell: a picture that is read here,
// a HEIC picture, which is not but can be developed, or something else.
type File struct {
	Ending string // that a copy of the picture should have, as in ".jpg"; "" for no picture
	Called string // "a JPEG", "a film"; "" for what is of no known format
	HEIC   bool
	Taken  Taken

	info Info
}

// Examine tells what a file is, whatever its name says: phones give a picture the
// ending of the format it had before it was sent. The name only tells raw pictures
// from other TIFF files. A picture of a format read here that is damaged, or of a
// sort not read, is a fault. An error is trouble in reading.
func Examine(r io.ReaderAt, size int64, name string) (File, *Fault, error) {
	l := &leaf{r: r, size: size}
	head, _ := l.at(0, int(min(size, sniffed)))
	k := kindOf(head, name)
	switch {
	case l.err != nil:
		return File{}, nil, fmt.Errorf("reading %s: %w", name, l.err)
	case size == 0:
		return File{}, faultf("this file is empty; copy it from the camera or phone again"), nil
	case k == nil && !isHEIC(head):
		return File{}, nil, nil
	case k != nil && k.look == nil && !isHEIC(head):
		return File{Called: k.called}, nil, nil
	case size > MostBytes:
		return File{}, tooLarge(size), nil
	case isHEIC(head):
		return examineHEIC(r, size)
	}
	// Without a name there is none to compare the format with.
	info, fault, err := look("", r, size)
	if fault != nil || err != nil {
		return File{Called: k.called}, fault, err
	}
	return File{Ending: k.endings[0], Called: k.called, Taken: info.Taken(), info: info}, nil, nil
}

// leastHEIC is the shortest side, in pixels, of a HEIC picture from which the rows
// of colour are as long as the decoder's library takes them for.
const leastHEIC = 128

func examineHEIC(r io.ReaderAt, size int64) (File, *Fault, error) {
	l := &leaf{r: r, size: size}
	taken, of := described(io.NewSectionReader(l, 0, size), imagemeta.HEIF)
	f := File{Ending: ".jpg", Called: heicPicture, HEIC: true, Taken: taken}
	switch {
	case l.err != nil:
		return File{}, nil, l.err
	case of.Width <= 0 || of.Height <= 0:
		return f, faultf("this HEIC picture is damaged (it does not say how large it is); copy it again, or save it as JPEG"), nil
	case of.Width > MostPixels/of.Height || max(of.Width, of.Height) > MostSide:
		return f, faultf("this HEIC picture is %d by %d, which is more than can be read; save a smaller copy", of.Width, of.Height), nil
	case min(of.Width, of.Height) < leastHEIC:
		return f, faultf("this HEIC picture is %d by %d, too small to be read here; save it as JPEG", of.Width, of.Height), nil
	}
	return f, nil, nil
}

// isHEIC reports whether an ISO base media file holds an HEVC picture. Some phones
// give the general brand of HEIF first and HEVC's among the compatible ones
// (ISO/IEC 14496-12, 4.3).
func isHEIC(head []byte) bool {
	if len(head) < 16 || string(head[4:8]) != "ftyp" {
		return false
	}
	if brand(heicBrands...)(head, "") {
		return true
	}
	end := min(uint64(head[0])<<24|uint64(head[1])<<16|uint64(head[2])<<8|uint64(head[3]), uint64(len(head)))
	if !brand("mif1", "mif2", "msf1")(head, "") {
		return false
	}
	for at := 16; uint64(at)+4 <= end; at += 4 {
		if slices.Contains(heicBrands, string(head[at:at+4])) {
			return true
		}
	}
	return false
}

// Prove reads all pixels of a picture that [Examine] found sound from outside, and
// returns what is wrong with them. It takes as much memory as the picture. An error
// is trouble in reading, or the context's.
func (f File) Prove(ctx context.Context, r io.ReaderAt, size int64) (*Fault, error) {
	_, fault, err := decode(&reading{ctx: ctx, r: io.NewSectionReader(r, 0, size), sum: sha256.New()}, f.info)
	return fault, err
}

// Comment returns the text of the first comment of a JPEG that begins with prefix,
// without the prefix (ITU-T T.81, B.2.4.5). It looks before the picture's data only.
func Comment(r io.ReaderAt, size int64, prefix string) (text string, ok bool) {
	l := &leaf{r: r, size: size}
	if head, ok := l.at(0, 2); !ok || !bytes.Equal(head, []byte{0xff, markSOI}) {
		return "", false
	}
	for off := int64(2); ; {
		head, ok := l.at(off, 4)
		if !ok || head[0] != 0xff || head[1] == markSOS {
			return "", false
		}
		length := int64(head[2])<<8 | int64(head[3])
		if head[1] == markCOM && length >= 2 {
			if body, ok := l.at(off+4, int(length-2)); ok {
				if text, ok := strings.CutPrefix(string(body), prefix); ok {
					return text, true
				}
			}
		}
		off += 2 + max(length, 2)
	}
}

// WithComment puts a comment at the start of a JPEG. It must be shorter than
// 65,534 bytes.
func WithComment(jpeg []byte, text string) []byte {
	n := len(text) + 2
	out := append(slices.Clone(jpeg[:2]), 0xff, markCOM, byte(n>>8), byte(n))
	return append(append(out, text...), jpeg[2:]...)
}
