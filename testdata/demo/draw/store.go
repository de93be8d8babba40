package main

import (
	"image"
	"image/color"
	"image/draw"
	"slices"
)

// turnRight is the EXIF orientation of a picture that is seen upright when it is
// turned a quarter to the right (Exif 2.32, tag 0x0112, value 6).
const turnRight = 6

// onItsSide turns a picture a quarter to the left.
func onItsSide(img *image.RGBA) *image.RGBA {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	out := image.NewRGBA(image.Rect(0, 0, h, w))
	for y := range h {
		for x := range w {
			out.SetRGBA(y, w-1-x, img.RGBAAt(x, y))
		}
	}
	return out
}

// withOrientation puts an EXIF segment that holds nothing but an orientation
// behind the first marker of a JPEG.
func withOrientation(jpeg []byte, orientation byte) []byte {
	segment := []byte{
		0xFF, 0xE1, 0, 34, // APP1 and its length, counted from the length itself
		'E', 'x', 'i', 'f', 0, 0,
		'M', 'M', 0, 42, 0, 0, 0, 8, // TIFF, big end first; the directory follows
		0, 1, // one entry
		0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, // orientation, one short
		0, 0, 0, 0, // no further directory
	}
	return slices.Insert(jpeg, 2, segment...)
}

// fewColours maps a picture to at most 256 colours, which makes a line drawing a
// small file: the commonest colours as they are, the others to the nearest.
func fewColours(img *image.RGBA) *image.Paletted {
	counts := make(map[color.RGBA]int)
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			c := img.RGBAAt(x, y)
			counts[color.RGBA{c.R &^ 7, c.G &^ 7, c.B &^ 7, 255}]++
		}
	}
	common := make([]color.RGBA, 0, len(counts))
	for c := range counts {
		common = append(common, c)
	}
	slices.SortFunc(common, func(a, b color.RGBA) int {
		if counts[a] != counts[b] {
			return counts[b] - counts[a]
		}
		return int(a.R)<<16 + int(a.G)<<8 + int(a.B) - int(b.R)<<16 - int(b.G)<<8 - int(b.B)
	})
	colours := color.Palette{paper}
	for _, c := range common[:min(len(common), 250)] {
		colours = append(colours, color.RGBA{c.R | 3, c.G | 3, c.B | 3, 255})
	}
	out := image.NewPaletted(img.Rect, colours)
	draw.Draw(out, out.Rect, img, image.Point{}, draw.Src)
	return out
}
