package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// lookIn looks at bytes under a name and fails on an error.
func lookIn(t *testing.T, name string, file []byte) (Info, *Fault) {
	t.Helper()
	info, fault, err := Look(fstest.MapFS{name: {Data: file}}, name)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return info, fault
}

// samples is one small file of each format, each 40 by 30.
func samples(t testing.TB) map[string][]byte {
	m := drawing(40, 30)
	exif := exifOf(binary.BigEndian, 1, "a collar")
	return map[string][]byte{
		"back.jpg":  withSegments(asJPEG(t, m), segment(0xe1, "Exif\x00\x00"+string(exif))),
		"back.png":  withChunks(pngOf(t, m), chunk("eXIf", string(exif))),
		"back.webp": riff(extended(40, 30, 8), lossless(m), riffChunk("EXIF", exif)),
	}
}

func TestLookReadsSizeAndFormat(t *testing.T) {
	for name, file := range samples(t) {
		for _, name := range []string{name, strings.ToUpper(name), "back"} {
			info, fault := lookIn(t, name, file)
			if fault != nil {
				t.Errorf("%s: %s", name, fault.Reason)
			} else if info.Width != 40 || info.Height != 30 {
				t.Errorf("%s: %d by %d", name, info.Width, info.Height)
			}
		}
	}
}

func TestLookGivesTheUprightSize(t *testing.T) {
	upright := drawing(40, 30)
	for o := turn(1); o <= 8; o++ {
		for name, file := range turned(t, upright, o) {
			info, fault := lookIn(t, name, file)
			if fault != nil || info.Width != 40 || info.Height != 30 || info.turn != o {
				t.Errorf("%s, orientation %d: %+v, %v", name, o, info, fault)
			}
		}
	}
}

// turned is the upright picture in each format, lying as its orientation says.
func turned(t *testing.T, upright *image.NRGBA, o turn) map[string][]byte {
	stored := laid(upright, o)
	w, h := stored.Rect.Dx(), stored.Rect.Dy()
	little := exifOf(binary.LittleEndian, uint16(o), "a collar")
	big := exifOf(binary.BigEndian, uint16(o), "a collar")
	odd := append(slices.Clip(little), 0)
	return map[string][]byte{
		"little.jpg": withSegments(asJPEG(t, stored), segment(0xe1, "Exif\x00\x00"+string(little))),
		"big.jpg":    withSegments(asJPEG(t, stored), segment(0xe1, "http://ns.adobe.com/xap/1.0/\x00<x/>"), segment(0xe1, "Exif\x00\x00"+string(big))),
		"big.png":    withChunks(pngOf(t, stored), chunk("eXIf", string(big))),
		"big.webp":   riff(extended(w, h, 8), lossless(stored), riffChunk("EXIF", big)),
		"odd.webp":   riff(extended(w, h, 8), riffChunk("odd ", []byte("odd")), lossless(stored), riffChunk("EXIF", odd)),
		"mark.webp":  riff(extended(w, h, 8), lossless(stored), riffChunk("EXIF", append([]byte("Exif\x00\x00"), big...))),
	}
}

func TestAnOrientationThatMeansNothingTurnsNothing(t *testing.T) {
	for _, exif := range [][]byte{
		exifOf(binary.BigEndian, 0, ""),
		exifOf(binary.BigEndian, 9, ""),
		exifOf(binary.BigEndian, 65535, ""),
		exifOf(binary.BigEndian, 6, "")[:12],
		[]byte("II"), []byte("nonsense, and more of it"),
	} {
		if got := turnFrom(exif); got != 0 {
			t.Errorf("%q turns %d", exif, got)
		}
	}
}

func TestOtherFormatsAreRefusedByName(t *testing.T) {
	tests := []struct{ name, head, reason, instead string }{
		{"back.heic", "\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic", "this is a HEIC picture; save it as JPEG", "back.jpg"},
		{"back.jpg", "\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic", "named .jpg but holds a HEIC picture; save it as JPEG", "back.jpg"},
		{"back.heif", "\x00\x00\x00\x18ftypmif1\x00\x00\x00\x00", "this is a HEIF picture; save it as JPEG", "back.jpg"},
		{"a/back.avif", "\x00\x00\x00\x1cftypavif\x00\x00\x00\x00", "this is an AVIF picture; save it as JPEG", "a/back.jpg"},
		{"walk.mp4", "\x00\x00\x00\x1cftypisom\x00\x00\x00\x00", "this is a film; save it as JPEG, one frame of it", "walk.jpg"},
		{"back.cr3", "\x00\x00\x00\x18ftypcrx \x00\x00\x00\x01", "this is a camera's raw picture; save it as JPEG", "back.jpg"},
		{"back.cr2", "II*\x00\x10\x00\x00\x00CR\x02\x00", "this is a camera's raw picture; save it as JPEG", "back.jpg"},
		{"back.NEF", "MM\x00*\x00\x00\x00\x08", "this is a camera's raw picture; save it as JPEG", "back.jpg"},
		{"back.raf", "FUJIFILMCCD-RAW 0201", "this is a camera's raw picture; save it as JPEG", "back.jpg"},
		{"back.tif", "MM\x00*\x00\x00\x00\x08", "this is a TIFF picture; save it as JPEG", "back.jpg"},
		{"back.gif", "GIF89a\x01\x00", "this is a GIF picture; save it as PNG", "back.png"},
		{"back.png", "GIF87a\x01\x00", "named .png but holds a GIF picture; save it as PNG", "back.png"},
		{"back.bmp", "BM\x36\x00\x00\x00", "this is a BMP picture; save it as PNG", "back.png"},
		{"draft.pdf", "%PDF-1.7\n", "this is a PDF; save it as PNG, one page a picture", "draft.png"},
		{"draft.svg", "\xef\xbb\xbf<?xml version='1.0'?>\n<SVG width='1'>", "this is an SVG drawing; save it as PNG", "draft.png"},
		{"back.jxl", "\xff\x0a\x00\x00", "this is a JPEG XL picture; save it as JPEG", "back.jpg"},
		{"back.psd", "8BPS\x00\x01", "this is a layered PSD picture; save it as JPEG", "back.jpg"},
		{"back.jpg", "<!DOCTYPE html><title>not found</title>", "named .jpg but holds a web page; save it as JPEG, the picture it shows", "back.jpg"},
		{"back.jpg", "a letter from my aunt", "this is not a picture of a known format; save it as JPEG, PNG or WebP", ""},
		{"back.jpg", "\xff", "this is not a picture of a known format; save it as JPEG, PNG or WebP", ""},
		{"back.jpg", "", "this file is empty; copy the picture here again", ""},
	}
	for _, tt := range tests {
		_, fault := lookIn(t, tt.name, []byte(tt.head))
		if fault == nil {
			t.Errorf("%s, %.12q: no fault", tt.name, tt.head)
			continue
		}
		if fault.Reason != tt.reason || strings.Join(fault.Instead, ", ") != tt.instead {
			t.Errorf("%s, %.12q:\n got %q, %q\nwant %q, %q", tt.name, tt.head, fault.Reason, fault.Instead, tt.reason, tt.instead)
		}
	}
}

func TestANameThatLiesIsAFault(t *testing.T) {
	files := samples(t)
	tests := []struct{ name, holds, reason, instead string }{
		{"a/back.jpg", "back.png", "named .jpg but holds a PNG; rename it", "a/back.png"},
		{"back.PNG", "back.webp", "named .PNG but holds a WebP; rename it", "back.webp"},
		{"back.webp", "back.jpg", "named .webp but holds a JPEG; rename it", "back.jpg"},
		{"back.heic", "back.jpg", "named .heic but holds a JPEG; rename it", "back.jpg"},
	}
	for _, tt := range tests {
		_, fault := lookIn(t, tt.name, files[tt.holds])
		if fault == nil || fault.Reason != tt.reason || len(fault.Instead) != 1 || fault.Instead[0] != tt.instead {
			t.Errorf("%s: %+v", tt.name, fault)
		}
	}
}

func TestAFileCutShortAnywhereIsAFault(t *testing.T) {
	for name, file := range samples(t) {
		for n := range file {
			if _, fault := lookIn(t, name, file[:n]); fault == nil {
				t.Errorf("%s cut to %d of %d bytes: no fault", name, n, len(file))
			}
		}
		if _, fault := lookIn(t, name, file[:len(file)-1]); !strings.Contains(fault.Reason, "ends too early") {
			t.Errorf("%s without its last byte: %s", name, fault.Reason)
		}
	}
}

func TestWhatFollowsThePictureDoesNoHarm(t *testing.T) {
	film := bytes.Repeat([]byte("film"), 100_000)
	for name, file := range samples(t) {
		if _, fault := lookIn(t, name, append(slices.Clip(file), film...)); fault != nil {
			t.Errorf("%s: %s", name, fault.Reason)
		}
	}
	cut := samples(t)["back.jpg"]
	if _, fault := lookIn(t, "back.jpg", append(slices.Clip(cut[:len(cut)-2]), film...)); fault == nil {
		t.Error("a JPEG without its end, and a film behind it: no fault")
	}
}

func TestImpossibleSizesAreFaults(t *testing.T) {
	resized := func(width, height uint16) []byte {
		file := asJPEG(t, drawing(16, 16))
		at := bytes.Index(file, []byte{0xff, 0xc0}) + 5
		binary.BigEndian.PutUint16(file[at:], height)
		binary.BigEndian.PutUint16(file[at+2:], width)
		return file
	}
	largeWebP := lossless(drawing(8, 8))
	binary.LittleEndian.PutUint32(largeWebP[8+1:], 16383<<14|16383)
	tests := []struct {
		name   string
		file   []byte
		reason string
	}{
		{"wide.png", pngClaiming(20000, 20000), "this picture says it is 20000 by 20000, 400 megapixels, and 100 are the most"},
		{"most.png", pngClaiming(1<<32-1, 1<<32-1), "megapixels"},
		{"long.png", pngClaiming(1, 70000), "a side may have 65535 pixels at most"},
		{"none.png", pngClaiming(0, 10), "no pixels"},
		{"wide.jpg", resized(65535, 65535), "4294 megapixels"},
		{"none.jpg", resized(10, 0), "no pixels"},
		{"wide.webp", riff(largeWebP), "268 megapixels"},
		{"two.webp", riff(extended(9, 8, 8), lossless(drawing(8, 8))), "two different sizes"},
		{"moves.webp", riff(extended(8, 8, 2), lossless(drawing(8, 8))), "this WebP moves"},
		{"bare.webp", riff(extended(8, 8, 8)), "holds no picture"},
	}
	for _, tt := range tests {
		if _, fault := lookIn(t, tt.name, tt.file); fault == nil || !strings.Contains(fault.Reason, tt.reason) {
			t.Errorf("%s: %+v, want %q", tt.name, fault, tt.reason)
		}
	}
	if _, fault := lookIn(t, "fits.png", pngClaiming(10000, 10000)); fault != nil {
		t.Errorf("100 megapixels: %s", fault.Reason)
	}
}

func TestRareSortsOfJPEGAreNamed(t *testing.T) {
	file := asJPEG(t, drawing(16, 16))
	at := bytes.Index(file, []byte{0xff, 0xc0})
	for mark, reason := range map[byte]string{0xc3: "lossless", 0xc9: "arithmetic"} {
		rare := bytes.Clone(file)
		rare[at+1] = mark
		if _, fault := lookIn(t, "back.jpg", rare); fault == nil || !strings.Contains(fault.Reason, reason) {
			t.Errorf("%x: %+v", mark, fault)
		}
	}
	deep := bytes.Clone(file)
	deep[at+4] = 12
	if _, fault := lookIn(t, "back.jpg", deep); fault == nil || !strings.Contains(fault.Reason, "12 bits") {
		t.Errorf("12 bits: %+v", fault)
	}
}

func TestFilesThatCannotBeOpenedAreFaults(t *testing.T) {
	fsys := fstest.MapFS{"photos/back.jpg": {Data: []byte("x")}}
	for name, reason := range map[string]string{
		"front.jpg":        "there is no file of this name",
		"photos":           "this is a folder, not a picture",
		"../back.jpg":      "this is not the name of a file in the journal",
		"/photos/back.jpg": "this is not the name of a file in the journal",
	} {
		_, fault, err := Look(fsys, name)
		if err != nil || fault == nil || fault.Reason != reason {
			t.Errorf("%s: %+v, %v", name, fault, err)
		}
	}
}

func FuzzLook(f *testing.F) {
	for name, file := range samples(f) {
		f.Add(name, file)
	}
	f.Add("wide.png", pngClaiming(20000, 20000))
	f.Fuzz(func(t *testing.T, name string, file []byte) {
		info, fault, err := look(name, bytes.NewReader(file), int64(len(file)))
		switch {
		case err != nil:
			t.Fatal(err)
		case fault != nil && fault.Reason == "":
			t.Fatal("a fault without a reason")
		case fault == nil && (info.Width < 1 || info.Height < 1 || info.Width*info.Height > MostPixels):
			t.Fatalf("%d by %d passed", info.Width, info.Height)
		}
	})
}
