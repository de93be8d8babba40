package main

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
)

// label writes a few words with their middle on a point.
func (s *sheet) label(at point, words string, size float64) {
	parsed, err := opentype.Parse(goitalic.TTF)
	if err != nil {
		panic(err) // the font is part of the library
	}
	face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: size * s.scale, DPI: 72})
	if err != nil {
		panic(err) // as above
	}
	pen := font.Drawer{
		Dst:  s.img,
		Src:  image.NewUniform(color.RGBA{0x44, 0x36, 0x2E, 0xFF}),
		Face: face,
	}
	width := pen.MeasureString(words)
	pen.Dot = fixed.Point26_6{
		X: fixed.Int26_6(math.Round((at.x-s.left)*s.scale*64)) - width/2,
		Y: fixed.Int26_6(math.Round((at.y + size*0.34) * s.scale * 64)),
	}
	pen.DrawString(words)
}
