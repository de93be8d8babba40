package photo

import (
	"image"
	"image/color"
	"image/draw"
	"math"
)

// A Region is a part of a picture as it is seen upright, in hundredths of its width
// and height.
type Region struct {
	Left, Top, Width, Height float64
}

// blurVersion is raised whenever a blurred region would come out otherwise.
const blurVersion = 1

// tilesAcross is into how many tiles the longer side of a region is parted. Each tile
// is of one colour, the mean of all its pixels, and nothing else of them is left; a
// blur that only smears can be undone in part by deconvolution. That a face of so few
// tiles is not recognised is common practice.
const tilesAcross = 5

// blurred returns a decoded picture in which some regions are only a few tiles of one
// colour each. The picture itself is left alone.
func blurred(m image.Image, info Info, regions []Region) image.Image {
	bounds := m.Bounds()
	out := image.NewNRGBA(image.Rect(0, 0, bounds.Dx(), bounds.Dy()))
	draw.Draw(out, out.Rect, m, bounds.Min, draw.Src)
	for _, r := range regions {
		tile(out, info.turn.lying(r).in(out.Rect))
	}
	return out
}

// in returns the pixels of a region: all that it touches, and a pixel more all round,
// since scaling mixes neighbours.
func (r Region) in(bounds image.Rectangle) image.Rectangle {
	width, height := float64(bounds.Dx())/100, float64(bounds.Dy())/100
	return image.Rect(
		int(math.Floor(r.Left*width))-1, int(math.Floor(r.Top*height))-1,
		int(math.Ceil((r.Left+r.Width)*width))+1, int(math.Ceil((r.Top+r.Height)*height))+1,
	).Intersect(bounds)
}

// lying returns where a region of the upright picture is in the stored one.
func (t turn) lying(r Region) Region {
	if t.swaps() {
		r = Region{r.Top, r.Left, r.Height, r.Width}
	}
	if t == 2 || t == 3 || t == 7 || t == 8 {
		r.Left = 100 - r.Left - r.Width
	}
	if t == 3 || t == 4 || t == 6 || t == 7 {
		r.Top = 100 - r.Top - r.Height
	}
	return r
}

// tile paints a part of a picture in tiles of one colour.
func tile(m *image.NRGBA, part image.Rectangle) {
	side := max(1, (max(part.Dx(), part.Dy())+tilesAcross-1)/tilesAcross)
	for y := part.Min.Y; y < part.Max.Y; y += side {
		for x := part.Min.X; x < part.Max.X; x += side {
			at := image.Rect(x, y, x+side, y+side).Intersect(part)
			draw.Draw(m, at, image.NewUniform(meanOf(m, at)), image.Point{}, draw.Src)
		}
	}
}

func meanOf(m *image.NRGBA, part image.Rectangle) color.NRGBA {
	var sum [4]int
	for y := part.Min.Y; y < part.Max.Y; y++ {
		row := m.Pix[m.PixOffset(part.Min.X, y):m.PixOffset(part.Max.X, y)]
		for i, v := range row {
			sum[i%4] += int(v)
		}
	}
	n := part.Dx() * part.Dy()
	return color.NRGBA{uint8(sum[0] / n), uint8(sum[1] / n), uint8(sum[2] / n), uint8(sum[3] / n)}
}
