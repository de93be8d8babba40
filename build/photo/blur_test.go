package photo

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"math/rand/v2"
	"testing"
	"testing/fstest"

	"hussif/build/keep"
)

// A region of the upright picture lies where its pixels are once the picture is turned:
// the turns are those of the library, the numbers those of Exif.
func TestARegionTurnsWithThePicture(t *testing.T) {
	const width, height = 40, 20
	for n := turn(1); n <= 8; n++ {
		stored := image.NewNRGBA(image.Rect(0, 0, width, height))
		if n.swaps() {
			stored = image.NewNRGBA(image.Rect(0, 0, height, width))
		}
		at := n.lying(Region{Left: 10, Top: 40, Width: 20, Height: 30})
		w, h := float64(stored.Rect.Dx())/100, float64(stored.Rect.Dy())/100
		for y := int(at.Top * h); y < int((at.Top+at.Height)*h+0.5); y++ {
			for x := int(at.Left * w); x < int((at.Left+at.Width)*w+0.5); x++ {
				stored.Set(x, y, color.White)
			}
		}
		upright := n.apply(stored)
		for y := range height {
			for x := range width {
				inside := x >= 4 && x < 12 && y >= 8 && y < 14
				if white := upright.NRGBAAt(x, y).R == 255; white != inside {
					t.Fatalf("turn %d: %d,%d is in it: %t, want %t", n, x, y, white, inside)
				}
			}
		}
	}
}

// What a region shows can no longer be told: whatever is there, if its tiles have the
// same mean the outcome is the same to the byte. All else stays.
func TestABlurredRegionTellsNothingButMeans(t *testing.T) {
	regions := []Region{{Left: 25, Top: 25, Width: 50, Height: 50}}
	random := rand.New(rand.NewPCG(1, 2))
	noise := func() *image.NRGBA {
		m := image.NewNRGBA(image.Rect(0, 0, 100, 100))
		for i := range m.Pix {
			m.Pix[i] = 200
			if i%4 == 3 {
				m.Pix[i] = 255
			}
		}
		return m
	}
	one, other := noise(), noise()
	part := regions[0].in(one.Rect)
	side := (part.Dx() + tilesAcross - 1) / tilesAcross
	for y := part.Min.Y; y < part.Max.Y; y += side {
		for x := part.Min.X; x < part.Max.X; x += side {
			at := image.Rect(x, y, x+side, y+side).Intersect(part)
			var values []uint8
			for range at.Dx() * at.Dy() {
				values = append(values, uint8(random.IntN(256)))
			}
			for _, m := range []*image.NRGBA{one, other} {
				random.Shuffle(len(values), func(i, j int) { values[i], values[j] = values[j], values[i] })
				i := 0
				for y := at.Min.Y; y < at.Max.Y; y++ {
					for x := at.Min.X; x < at.Max.X; x++ {
						m.SetNRGBA(x, y, color.NRGBA{values[i], 10, 20, 255})
						i++
					}
				}
			}
		}
	}
	if bytes.Equal(one.Pix, other.Pix) {
		t.Fatal("the two are one picture")
	}
	a, b := blurred(one, Info{}, regions).(*image.NRGBA), blurred(other, Info{}, regions).(*image.NRGBA)
	if !bytes.Equal(a.Pix, b.Pix) {
		t.Error("the two can be told apart")
	}
	for y := range 100 {
		for x := range 100 {
			if !(image.Point{x, y}).In(part) && a.NRGBAAt(x, y) != one.NRGBAAt(x, y) {
				t.Fatalf("%d,%d outside the region has changed", x, y)
			}
		}
	}
}

// A blurred picture and the whole one are kept apart, also where one store has both.
func TestABlurredPictureIsNotTakenForTheWholeOne(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 64, 64))
	for i := range m.Pix {
		m.Pix[i] = uint8(i * 7)
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	fsys := fstest.MapFS{"a.png": &fstest.MapFile{Data: b.Bytes()}}
	store, err := keep.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	names := make(map[string]int)
	for i, blur := range []map[string][]Region{nil, {"a.png": {{Left: 10, Top: 10, Width: 30, Height: 30}}}, {"a.png": {{Left: 10, Top: 10, Width: 40, Height: 30}}}, nil} {
		results, err := (&Darkroom{Store: store, Blur: blur}).Make(context.Background(), fsys, []string{"a.png"})
		if err != nil || results[0].Fault != nil {
			t.Fatal(err, results[0].Fault)
		}
		if results[0].Fresh != (i < 3) {
			t.Errorf("picture %d was made anew: %t", i, results[0].Fresh)
		}
		names[results[0].Pictures[0].Name]++
	}
	if len(names) != 3 {
		t.Errorf("they are called %v", names)
	}
}
