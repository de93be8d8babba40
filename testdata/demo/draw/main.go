// Command draw makes the pictures of the demo journal again: ink and wash, all
// from curves, none from a photograph. Run it from the top of the repository:
//
//	go run ./testdata/demo/draw
//
// The same program built with the same Go release writes the same bytes.
package main

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"strings"
)

// A picture is a file of the journal and what is drawn in it.
type picture struct {
	file          string
	width, height int // as seen
	draw          func(*sheet)
	turned        bool // stored on its side, with the EXIF tag that turns it back
}

func pictures() []picture {
	return []picture{
		{"references/pictures/moss-green-jacket.jpg", 1440, 1800, func(s *sheet) { jacketBack(s, green) }, false},
		{"references/pictures/plate-october-1786.jpg", 1300, 2000, plate1786, false},
		{"references/pictures/walnut-stays.jpg", 1300, 1700, staysFront, false},
		{"references/pictures/serge-skirt.jpg", 1280, 1920, func(s *sheet) { walkingSkirt(s, tint{0.22, 0.25, 0.36, 0.62}, false) }, false},
		{"references/pictures/promenade-plate-1912.jpg", 1200, 2000, plate1912, false},
		{"occasions/pictures/promenade-2025.jpg", 2400, 1500, promenade, false},
		{"materials/pictures/swatches.jpg", 2000, 1250, swatches, false},
		{"techniques/pictures/piped-seam.jpg", 2000, 1333, func(s *sheet) { pipedSeam(s, green, linen) }, false},
		{"patterns/pictures/kestrel-draft.png", 2000, 1400, draftPieces, false},
		{"builds/blue-petticoat/photos/pleats.jpg", 2000, 1333, pleats, false},
		{"builds/blue-petticoat/photos/whole.jpg", 1600, 1700, petticoat, false},
		{"builds/grey-wool-jacket/photos/back.jpg", 1440, 1800, func(s *sheet) { jacketBack(s, grey) }, false},
		{"builds/grey-wool-jacket/photos/layout.png", 2200, 1300, layout, false},
		{"builds/grey-wool-jacket/photos/sleeve-seam.jpg", 1300, 1800, sleeveSeam, false},
		{"builds/grey-wool-jacket/photos/waist-inside.jpg", 2000, 1500, waistInside, false},
		{"builds/madder-jacket/photos/front.jpg", 1440, 1800, jacketFront, false},
		{"builds/madder-jacket/photos/piping.jpg", 1800, 1800, func(s *sheet) { pipedSeam(s, madder, madder) }, false},
		{"builds/walking-skirt/photos/front.jpg", 1280, 1920, func(s *sheet) { walkingSkirt(s, blue, true) }, false},
		{"builds/walking-skirt/photos/strip.png", 900, 1800, strip, false},
		{"builds/oat-linen-stays/photos/mock-up.jpg", 1300, 1700, staysBack, false},
		{"builds/oat-linen-stays/photos/channels.jpg", 1500, 1900, channels, true},
	}
}

func main() {
	const journal = "testdata/demo/journal"
	for i, p := range pictures() {
		if err := p.write(journal, uint64(i)); err != nil {
			fmt.Fprintln(os.Stderr, "draw:", err)
			os.Exit(1)
		}
	}
}

func (p picture) write(journal string, seed uint64) error {
	data, err := p.encode(seed)
	if err != nil {
		return fmt.Errorf("%s: %w", p.file, err)
	}
	name := filepath.Join(journal, filepath.FromSlash(p.file))
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	return os.WriteFile(name, data, 0o666)
}

func (p picture) encode(seed uint64) ([]byte, error) {
	var out bytes.Buffer
	if strings.HasSuffix(p.file, ".png") {
		s := newSheet(p.width, p.height, seed, false)
		p.draw(s)
		encoder := png.Encoder{CompressionLevel: png.BestCompression}
		err := encoder.Encode(&out, fewColours(s.img))
		return out.Bytes(), err
	}
	s := newSheet(p.width, p.height, seed, true)
	p.draw(s)
	var img image.Image = s.img
	if p.turned {
		img = onItsSide(s.img)
	}
	if err := jpeg.Encode(&out, img, &jpeg.Options{Quality: 66}); err != nil {
		return nil, err
	}
	if p.turned {
		return withOrientation(out.Bytes(), turnRight), nil
	}
	return out.Bytes(), nil
}
