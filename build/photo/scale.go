package photo

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"math"

	"github.com/disintegration/imaging"
)

// widths are those a page may ask for, in pixels: a phone, half a page and a
// whole page.
func widths() []int { return []int{480, 960, 1920} }

// widthsOf returns the widths made of an upright picture: those of widths
// that are smaller than it and one more, as near to the original as the
// largest allows.
func widthsOf(width int) []int {
	var made []int
	for _, w := range widths() {
		if w >= width {
			return append(made, width)
		}
		made = append(made, w)
	}
	return made
}

// heightFor returns the height that goes with a width, to the nearest pixel.
func heightFor(width int, info Info) int {
	return max(1, int(math.Round(float64(width)*float64(info.Height)/float64(info.Width))))
}

// scale returns the decoded picture upright in each of its widths, the largest
// first. Each is made of the one before: that is as sharp to the eye and much
// quicker than going back to the original.
func scale(m image.Image, info Info) []*image.NRGBA {
	wanted := widthsOf(info.Width)
	width := wanted[len(wanted)-1]
	height := heightFor(width, info)

	// Scaled first and turned then, fewer pixels are turned.
	lyingWidth, lyingHeight := width, height
	if info.turn.swaps() {
		lyingWidth, lyingHeight = height, width
	}
	if y, ok := m.(*image.YCbCr); ok {
		for y.Rect.Dx() >= 2*lyingWidth && y.Rect.Dy() >= 2*lyingHeight {
			y = halve(y)
		}
		m = y
	}
	scaled := []*image.NRGBA{info.turn.apply(imaging.Resize(m, lyingWidth, lyingHeight, imaging.Lanczos))}
	for i := len(wanted) - 2; i >= 0; i-- {
		larger := scaled[len(scaled)-1]
		scaled = append(scaled, imaging.Resize(larger, wanted[i], heightFor(wanted[i], info), imaging.Lanczos))
	}
	return scaled
}

// jpegQuality is common practice for photographs on pages: higher, files grow
// faster than anyone can see.
const jpegQuality = 82

// fewColours is up to how many colours a picture with a palette counts as a
// drawing, whose lines a JPEG would blur.
const fewColours = 16

// asPNG reports whether a decoded picture is better written as PNG: one that
// is partly transparent, or a drawing in a few colours.
func asPNG(m image.Image) bool {
	if p, ok := m.(*image.Paletted); ok && len(p.Palette) <= fewColours {
		return true
	}
	o, ok := m.(interface{ Opaque() bool })
	return ok && !o.Opaque()
}

// encode writes a picture's pixels and nothing else.
func encode(m *image.NRGBA, toPNG bool) ([]byte, error) {
	var b bytes.Buffer
	var err error
	if toPNG {
		err = png.Encode(&b, m)
	} else {
		// Where all is opaque both types hold the same bytes, and the encoder
		// has a quick way for this one.
		opaque := &image.RGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
		err = jpeg.Encode(&b, opaque, &jpeg.Options{Quality: jpegQuality})
	}
	if err != nil {
		return nil, fmt.Errorf("encoding: %w", err)
	}
	return b.Bytes(), nil
}
