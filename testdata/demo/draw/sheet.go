package main

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"

	"golang.org/x/image/vector"
)

// A sheet is a piece of paper that is drawn on with ink and washed with colour.
// Its height is 100, whatever its size in dots.
type sheet struct {
	img   *image.RGBA
	scale float64 // dots to a hundredth of the height
	left  float64 // the x at its left edge
	hand  *rand.Rand
	grain bool
}

// A tint is a colour of ink or wash and how strongly it is laid on, 0 to 1.
type tint struct {
	r, g, b  float64
	strength float64
}

func (t tint) at(strength float64) tint { t.strength = strength; return t }

var paper = color.RGBA{246, 240, 227, 255}

// newSheet returns blank paper. Grained paper and uneven washes look better; a
// flat one makes a small PNG.
func newSheet(width, height int, seed uint64, grain bool) *sheet {
	s := &sheet{
		img:   image.NewRGBA(image.Rect(0, 0, width, height)),
		scale: float64(height) / 100,
		hand:  rand.New(rand.NewPCG(seed, 1784)),
		grain: grain,
	}
	for y := range height {
		for x := range width {
			c := paper
			if grain {
				shade := 1 - 0.05*(1-noise(float64(x)/260, float64(y)/260)) - 0.018*noise(float64(x)/23, float64(y)/17)
				c = color.RGBA{uint8(float64(c.R) * shade), uint8(float64(c.G) * shade), uint8(float64(c.B) * shade), 255}
			}
			s.img.SetRGBA(x, y, c)
		}
	}
	return s
}

// wide is the width of the sheet where its height is 100.
func (s *sheet) wide() float64 { return float64(s.img.Rect.Dx()) / s.scale }

// dots turns an x into whole dots from the left edge.
func (s *sheet) dots(x float64) int { return int((x - s.left) * s.scale) }

// A shape is how far each dot of a part of the sheet is covered.
type shape struct {
	mask *image.Alpha
	at   image.Point
}

// cover returns the dots inside outlines. Outlines are all turned the same way
// round, so that where they overlap they do not cancel.
func (s *sheet) cover(outlines ...line) shape {
	low, high := pt(math.Inf(1), math.Inf(1)), pt(math.Inf(-1), math.Inf(-1))
	for _, l := range outlines {
		for _, p := range l {
			low = pt(min(low.x, p.x), min(low.y, p.y))
			high = pt(max(high.x, p.x), max(high.y, p.y))
		}
	}
	box := image.Rect(s.dots(low.x)-2, int(low.y*s.scale)-2, s.dots(high.x)+3, int(high.y*s.scale)+3).Intersect(s.img.Rect)
	if box.Empty() {
		return shape{mask: image.NewAlpha(image.Rectangle{}), at: box.Min}
	}
	r := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, l := range outlines {
		if len(l) < 3 {
			continue
		}
		if area(l) < 0 {
			l = l.back()
		}
		for i, p := range l {
			x, y := float32((p.x-s.left)*s.scale-float64(box.Min.X)), float32(p.y*s.scale-float64(box.Min.Y))
			if i == 0 {
				r.MoveTo(x, y)
			} else {
				r.LineTo(x, y)
			}
		}
		r.ClosePath()
	}
	mask := image.NewAlpha(image.Rect(0, 0, box.Dx(), box.Dy()))
	r.Draw(mask, mask.Rect, image.Opaque, image.Point{})
	return shape{mask, box.Min}
}

func area(l line) float64 {
	var sum float64
	for i, p := range l {
		q := l[(i+1)%len(l)]
		sum += p.x*q.y - q.x*p.y
	}
	return sum
}

// within leaves of a shape only what lies in another.
func (a shape) within(b shape) shape {
	out := image.NewAlpha(a.mask.Rect)
	for y := range a.mask.Rect.Dy() {
		for x := range a.mask.Rect.Dx() {
			over := b.mask.AlphaAt(x+a.at.X-b.at.X, y+a.at.Y-b.at.Y).A
			out.SetAlpha(x, y, color.Alpha{uint8(int(a.mask.AlphaAt(x, y).A) * int(over) / 255)})
		}
	}
	return shape{out, a.at}
}

// stain darkens the paper under a shape as a transparent colour does.
func (s *sheet) stain(a shape, t tint, mottled bool) {
	s.each(a, func(x, y int, cover float64, dot *[3]float64) {
		strength := t.strength * cover
		if mottled && s.grain {
			strength *= 0.82 + 0.3*noise(float64(x)/90, float64(y)/130)
		}
		for i, c := range [3]float64{t.r, t.g, t.b} {
			dot[i] *= 1 - strength*(1-c)
		}
	})
}

// blank paints bare paper over a shape, so that what lies in front hides what
// lies behind.
func (s *sheet) blank(outline line) {
	s.each(s.cover(outline), func(_, _ int, cover float64, dot *[3]float64) {
		for i, c := range [3]uint8{paper.R, paper.G, paper.B} {
			dot[i] += (float64(c)*0.985 - dot[i]) * cover
		}
	})
}

func (s *sheet) each(a shape, paint func(x, y int, cover float64, dot *[3]float64)) {
	for my := range a.mask.Rect.Dy() {
		for mx := range a.mask.Rect.Dx() {
			cover := a.mask.AlphaAt(mx, my).A
			if cover == 0 {
				continue
			}
			x, y := mx+a.at.X, my+a.at.Y
			c := s.img.RGBAAt(x, y)
			dot := [3]float64{float64(c.R), float64(c.G), float64(c.B)}
			paint(x, y, float64(cover)/255, &dot)
			s.img.SetRGBA(x, y, color.RGBA{uint8(dot[0] + 0.5), uint8(dot[1] + 0.5), uint8(dot[2] + 0.5), 255})
		}
	}
}

// noise is smooth and between 0 and 1: random values at whole numbers, blended.
func noise(x, y float64) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	u, v := ease(x-fx), ease(y-fy)
	ix, iy := int32(fx), int32(fy)
	top := speck(ix, iy)*(1-u) + speck(ix+1, iy)*u
	low := speck(ix, iy+1)*(1-u) + speck(ix+1, iy+1)*u
	return top*(1-v) + low*v
}

func ease(t float64) float64 { return t * t * (3 - 2*t) }

func speck(x, y int32) float64 {
	h := uint32(x)*0x9E3779B1 ^ uint32(y)*0x85EBCA77
	h = (h ^ h>>15) * 0x2C1B3C6D
	h = (h ^ h>>12) * 0x297A2D39
	return float64(h^h>>15) / math.MaxUint32
}
