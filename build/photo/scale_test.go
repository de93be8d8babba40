package photo

import (
	"fmt"
	"image"
	"image/color"
	"slices"
	"testing"
)

// planes is the drawing as its components are stored when colours are this
// coarse. Sizes that are odd leave a last sample that covers less.
func planes(width, height int, ratio image.YCbCrSubsampleRatio) *image.YCbCr {
	m := image.NewYCbCr(image.Rect(0, 0, width, height), ratio)
	for i := range m.Y {
		x, y := i%m.YStride, i/m.YStride
		m.Y[i] = uint8(90 + 60*x/width + 30*y/height + (x^y)&7)
	}
	for i := range m.Cb {
		x, y := i%m.CStride, i/m.CStride
		m.Cb[i] = uint8(118 + 20*x/m.CStride + x&3)
		m.Cr[i] = uint8(140 - y%16 - x&1)
	}
	return m
}

// The reference turns every pixel into red, green and blue by package
// image/color, and averages then.
func TestHalveIsTheMeanOfFourPixels(t *testing.T) {
	ratios := []image.YCbCrSubsampleRatio{
		image.YCbCrSubsampleRatio444, image.YCbCrSubsampleRatio422, image.YCbCrSubsampleRatio420,
		image.YCbCrSubsampleRatio440, image.YCbCrSubsampleRatio411, image.YCbCrSubsampleRatio410,
	}
	for _, ratio := range ratios {
		for _, size := range []image.Point{{64, 48}, {63, 47}, {61, 48}, {62, 45}, {1, 1}, {2, 1}, {1, 5}, {3, 3}} {
			t.Run(fmt.Sprint(ratio, size), func(t *testing.T) {
				m := planes(size.X, size.Y, ratio)
				got := halve(m)
				if want := image.Rect(0, 0, (size.X+1)/2, (size.Y+1)/2); got.Rect != want {
					t.Fatalf("size %v, want %v", got.Rect, want)
				}
				for y := range got.Rect.Dy() {
					for x := range got.Rect.Dx() {
						var sum [3]float64
						for _, d := range [4]image.Point{{0, 0}, {1, 0}, {0, 1}, {1, 1}} {
							r, g, b, _ := m.At(min(2*x+d.X, size.X-1), min(2*y+d.Y, size.Y-1)).RGBA()
							sum[0], sum[1], sum[2] = sum[0]+float64(r)/257, sum[1]+float64(g)/257, sum[2]+float64(b)/257
						}
						r, g, b, _ := got.At(x, y).RGBA()
						for i, v := range [3]uint32{r, g, b} {
							// Each of three components is rounded once more than in
							// the reference, and blue-difference counts 1.77 fold.
							if d := float64(v)/257 - sum[i]/4; d > 2.5 || d < -2.5 {
								t.Fatalf("pixel %d,%d colour %d: %v, want %v", x, y, i, float64(v)/257, sum[i]/4)
							}
						}
					}
				}
			})
		}
	}
}

func TestWidthsNeverEnlarge(t *testing.T) {
	for width, want := range map[int][]int{
		1: {1}, 300: {300}, 480: {480}, 481: {480, 481}, 700: {480, 700}, 960: {480, 960},
		1919: {480, 960, 1919}, 1920: {480, 960, 1920}, 12000: {480, 960, 1920},
	} {
		if got := widthsOf(width); !slices.Equal(got, want) {
			t.Errorf("%d pixels wide: %v, want %v", width, got, want)
		}
	}
}

func TestExtremeShapesKeepOnePixel(t *testing.T) {
	for _, info := range []Info{
		{Width: 65535, Height: 1}, {Width: 1, Height: 65535}, {Width: 4000, Height: 2, turn: 6}, {Width: 1, Height: 1},
	} {
		w, h := info.stored()
		for _, m := range []image.Image{planes(w, h, image.YCbCrSubsampleRatio420), image.NewGray(image.Rect(0, 0, w, h))} {
			for _, s := range scale(m, info) {
				if s.Rect.Dx() < 1 || s.Rect.Dy() != heightFor(s.Rect.Dx(), info) {
					t.Errorf("%d by %d: %v", info.Width, info.Height, s.Rect)
				}
			}
		}
	}
}

// Every orientation and every way into the scaler gives the same upright
// picture as the drawing made small in the first place.
func TestScaledPicturesAreUpright(t *testing.T) {
	const width, height = 3840, 160 // wide enough to be halved first
	upright := drawing(width, height)
	for o := turn(1); o <= 8; o++ {
		stored := laid(upright, o)
		halved := image.NewYCbCr(stored.Rect, image.YCbCrSubsampleRatio420)
		for y := range stored.Rect.Dy() {
			for x := range stored.Rect.Dx() {
				c := stored.NRGBAAt(x, y)
				yy, cb, cr := color.RGBToYCbCr(c.R, c.G, c.B)
				halved.Y[halved.YOffset(x, y)] = yy
				halved.Cb[halved.COffset(x, y)], halved.Cr[halved.COffset(x, y)] = cb, cr
			}
		}
		info := Info{Width: width, Height: height, turn: o}
		for name, m := range map[string]image.Image{"planes": halved, "pixels": stored} {
			for _, s := range scale(m, info) {
				want := drawing(s.Rect.Dx(), s.Rect.Dy())
				if d := difference(t, s, want); d > 1 {
					t.Errorf("orientation %d, %s, %d wide: %.2f steps from upright", o, name, s.Rect.Dx(), d)
				}
			}
		}
	}
}
