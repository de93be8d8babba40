package photo

import (
	"bytes"
	"image"

	"github.com/bep/imagemeta"
	"github.com/disintegration/imaging"
)

// A turn is how a stored picture is made upright, numbered as the Orientation
// tag of Exif (CIPA DC-008, 4.6.4, after TIFF 6.0) from 1 to 8. The zero turn
// leaves it as it is, like 1.
type turn uint16

// swaps reports whether the upright picture is as wide as the stored one is
// high.
func (t turn) swaps() bool { return t >= 5 }

// apply returns the picture upright.
func (t turn) apply(m *image.NRGBA) *image.NRGBA {
	switch t {
	case 2:
		return imaging.FlipH(m)
	case 3:
		return imaging.Rotate180(m)
	case 4:
		return imaging.FlipV(m)
	case 5:
		return imaging.Transpose(m)
	case 6:
		return imaging.Rotate270(m) // the library turns against the clock
	case 7:
		return imaging.Transverse(m)
	case 8:
		return imaging.Rotate90(m)
	}
	return m
}

// turnFrom reads the orientation of the main picture from an EXIF block, which
// is the start of a TIFF file. What cannot be read turns nothing, so
// the library's error is not wanted.
//
// All three formats hand their block in here, rather than the file to the
// library: it loses the block of a WebP whose pixels take an odd number of
// bytes.
func turnFrom(exif []byte) turn {
	if len(exif) == 0 {
		return 0
	}
	const tag, directory = "Orientation", "IFD0"
	var found turn
	imagemeta.Decode(imagemeta.Options{
		R:           bytes.NewReader(exif),
		ImageFormat: imagemeta.TIFF,
		Sources:     imagemeta.EXIF,
		ShouldHandleTag: func(t imagemeta.TagInfo) bool {
			return t.Tag == tag && t.Namespace == directory
		},
		HandleTag: func(t imagemeta.TagInfo) error {
			switch n := t.Value.(type) {
			case uint16:
				found = turn(n)
			case uint32:
				found = turn(min(n, 9))
			}
			return imagemeta.ErrStopWalking
		},
	})
	if found > 8 {
		return 0
	}
	return found
}
