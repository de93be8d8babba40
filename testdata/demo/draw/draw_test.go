package main

import (
	"bytes"
	"image"
	_ "image/jpeg"
	_ "image/png"
	"io/fs"
	"path"
	"testing"

	"github.com/bep/imagemeta"

	"hussif/testdata/demo"
)

// Encoders differ between Go releases, so the committed files are compared with
// the list by their size and not by their bytes.
func TestCommittedPictures(t *testing.T) {
	const most = 3 << 20
	total := 0
	for _, p := range pictures() {
		data, err := fs.ReadFile(demo.Journal(), p.file)
		if err != nil {
			t.Error(err)
			continue
		}
		total += len(data)
		config, _, err := image.DecodeConfig(bytes.NewReader(data))
		if err != nil {
			t.Errorf("%s: %v", p.file, err)
			continue
		}
		width, height := p.width, p.height
		if p.turned {
			width, height = height, width
		}
		if config.Width != width || config.Height != height {
			t.Errorf("%s is stored %d by %d, want %d by %d", p.file, config.Width, config.Height, width, height)
		}
	}
	if total > most {
		t.Errorf("the pictures take %d bytes together, want at most %d", total, most)
	}
}

// A reader of EXIF that is not ours sees the tag, in the turned picture alone.
func TestOrientation(t *testing.T) {
	for _, p := range pictures() {
		if path.Ext(p.file) != ".jpg" {
			continue
		}
		data, err := fs.ReadFile(demo.Journal(), p.file)
		if err != nil {
			t.Error(err)
			continue
		}
		var tags imagemeta.Tags
		_, err = imagemeta.Decode(imagemeta.Options{
			R:           bytes.NewReader(data),
			ImageFormat: imagemeta.JPEG,
			Sources:     imagemeta.EXIF,
			HandleTag: func(tag imagemeta.TagInfo) error {
				tags.Add(tag)
				return nil
			},
		})
		if err != nil {
			t.Errorf("%s: %v", p.file, err)
			continue
		}
		tag, found := tags.EXIF()["Orientation"]
		switch {
		case found != p.turned:
			t.Errorf("%s: has an orientation: %v, want %v", p.file, found, p.turned)
		case found && tag.Value != uint16(turnRight):
			t.Errorf("%s: orientation %v, want %d", p.file, tag.Value, turnRight)
		}
	}
}

func TestOnItsSide(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 3, 2))
	img.SetRGBA(2, 0, paper) // top right
	side := onItsSide(img)
	if side.Rect != image.Rect(0, 0, 2, 3) {
		t.Fatalf("turned to %v, want 2 by 3", side.Rect)
	}
	if side.RGBAAt(0, 0) != paper {
		t.Error("the top right corner is not at the top left after a turn to the left")
	}
}

func TestDrawnTheSameTwice(t *testing.T) {
	p := picture{file: "strip.png", width: 90, height: 180, draw: strip}
	first, err := p.encode(1)
	if err != nil {
		t.Fatal(err)
	}
	second, err := p.encode(1)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first, second) {
		t.Error("the same picture with the same seed came out different")
	}
}
