package photo

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math/bits"
	"testing"

	"github.com/disintegration/imaging"
)

// drawing is soft, so that every encoding keeps it, and has no symmetry, so
// that no two turns of it are alike.
func drawing(width, height int) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			c := color.NRGBA{uint8(60 + 120*x/width), uint8(70 + 100*y/height), 90, 255}
			if x < width/3 && y < height/2 {
				c.B = 160
			}
			m.SetNRGBA(x, y, c)
		}
	}
	return m
}

// translucent is the drawing with one corner seen through.
func translucent(width, height int) *image.NRGBA {
	m := drawing(width, height)
	for y := range height / 4 {
		for x := range width / 4 {
			m.Pix[m.PixOffset(x, y)+3] = 128
		}
	}
	return m
}

// laid returns an upright picture as it lies in a file of the given
// orientation. The table is TIFF 6.0, section 8, Orientation: which side of the
// upright picture the stored first row and first column are.
func laid(upright *image.NRGBA, t turn) *image.NRGBA {
	w, h := upright.Rect.Dx(), upright.Rect.Dy()
	size := image.Rect(0, 0, w, h)
	if t >= 5 {
		size = image.Rect(0, 0, h, w)
	}
	stored := image.NewNRGBA(size)
	for y := range size.Dy() {
		for x := range size.Dx() {
			var from image.Point
			switch t {
			case 1: // top, left
				from = image.Pt(x, y)
			case 2: // top, right
				from = image.Pt(w-1-x, y)
			case 3: // bottom, right
				from = image.Pt(w-1-x, h-1-y)
			case 4: // bottom, left
				from = image.Pt(x, h-1-y)
			case 5: // left, top
				from = image.Pt(y, x)
			case 6: // right, top
				from = image.Pt(w-1-y, x)
			case 7: // right, bottom
				from = image.Pt(w-1-y, h-1-x)
			case 8: // left, bottom
				from = image.Pt(y, h-1-x)
			}
			stored.SetNRGBA(x, y, upright.NRGBAAt(from.X, from.Y))
		}
	}
	return stored
}

func asJPEG(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func pngOf(t testing.TB, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// exifOf is an EXIF block: a TIFF whose first directory gives the orientation
// and a description, whose second, the thumbnail's, gives another orientation.
func exifOf(order binary.AppendByteOrder, orientation uint16, description string) []byte {
	description += "\x00"
	b := []byte("II*\x00")
	if order.String() == "BigEndian" {
		b = []byte("MM\x00*")
	}
	entry := func(tag, sort uint16, count, value uint32) {
		b = order.AppendUint16(b, tag)
		b = order.AppendUint16(b, sort)
		b = order.AppendUint32(b, count)
		if sort == 3 {
			b = order.AppendUint16(b, uint16(value))
			b = order.AppendUint16(b, 0)
		} else {
			b = order.AppendUint32(b, value)
		}
	}
	const first, second, text = 8, 8 + 2 + 2*12 + 4, 8 + 2 + 2*12 + 4 + 2 + 12 + 4
	b = order.AppendUint32(b, first)
	b = order.AppendUint16(b, 2)
	entry(0x010e, 2, uint32(len(description)), text)
	entry(0x0112, 3, 1, uint32(orientation))
	b = order.AppendUint32(b, second)
	b = order.AppendUint16(b, 1)
	entry(0x0112, 3, 1, uint32(orientation%8+1))
	b = order.AppendUint32(b, 0)
	return append(b, description...)
}

// segment is one of a JPEG's.
func segment(mark byte, body string) []byte {
	b := binary.BigEndian.AppendUint16([]byte{0xff, mark}, uint16(len(body)+2))
	return append(b, body...)
}

// withSegments puts segments after a JPEG's start.
func withSegments(file []byte, segments ...[]byte) []byte {
	return bytes.Join([][]byte{file[:2], bytes.Join(segments, nil), file[2:]}, nil)
}

func chunk(name, body string) []byte {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(body)))
	b = append(b, name+body...)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
}

// withChunks puts chunks after a PNG's header.
func withChunks(file []byte, chunks ...[]byte) []byte {
	const header = 8 + 12 + 13
	return bytes.Join([][]byte{file[:header], bytes.Join(chunks, nil), file[header:]}, nil)
}

// pngClaiming is a PNG of sound parts that says it has this size, and holds
// next to nothing.
func pngClaiming(width, height uint32) []byte {
	header := binary.BigEndian.AppendUint32(nil, width)
	header = binary.BigEndian.AppendUint32(header, height)
	header = append(header, 8, 2, 0, 0, 0)
	return bytes.Join([][]byte{
		[]byte("\x89PNG\r\n\x1a\n"),
		chunk("IHDR", string(header)), chunk("IDAT", "x\x9c\x03\x00\x00\x00\x00\x01"), chunk("IEND", ""),
	}, nil)
}

// riff is a WebP of these chunks.
func riff(chunks ...[]byte) []byte {
	body := append([]byte("WEBP"), bytes.Join(chunks, nil)...)
	b := binary.LittleEndian.AppendUint32([]byte("RIFF"), uint32(len(body)))
	return append(b, body...)
}

func riffChunk(name string, body []byte) []byte {
	b := binary.LittleEndian.AppendUint32([]byte(name), uint32(len(body)))
	b = append(b, body...)
	if len(body)%2 == 1 {
		b = append(b, 0)
	}
	return b
}

// extended is the header chunk that announces metadata (RFC 9649, 2.7).
func extended(width, height int, flags byte) []byte {
	b := []byte{flags, 0, 0, 0}
	for _, side := range []int{width, height} {
		b = append(b, byte(side-1), byte((side-1)>>8), byte((side-1)>>16))
	}
	return riffChunk("VP8X", b)
}

// lossless is a VP8L chunk in the plainest form RFC 9649, 3, allows: no
// transforms, every colour value a prefix code of eight bits.
func lossless(m *image.NRGBA) []byte {
	var w bitWriter
	w.put(0x2f, 8)
	w.put(uint64(m.Rect.Dx()-1), 14)
	w.put(uint64(m.Rect.Dy()-1), 14)
	w.put(1, 1) // transparency may be used
	w.put(0, 3+1+1+1)
	for i, symbols := range []int{256 + 24, 256, 256, 256} {
		// Lengths are 0 or 8, so their own code needs two symbols of one bit.
		w.put(0, 1)
		w.put(12-4, 4)
		for _, length := range []uint64{0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1} {
			w.put(length, 3)
		}
		w.put(0, 1)
		for s := range symbols {
			if i == 0 && s >= 256 {
				w.put(0, 1) // no repeats of earlier pixels
			} else {
				w.put(1, 1)
			}
		}
	}
	w.put(0b0001, 4) // distances: one symbol, never used
	for i := 0; i < len(m.Pix); i += 4 {
		for _, v := range []uint8{m.Pix[i+1], m.Pix[i], m.Pix[i+2], m.Pix[i+3]} {
			w.put(uint64(bits.Reverse8(v)), 8)
		}
	}
	w.put(0, 7)
	return riffChunk("VP8L", w.bytes)
}

// bitWriter packs bits, the lowest first.
type bitWriter struct {
	bytes []byte
	held  uint64
	count int
}

func (w *bitWriter) put(value uint64, count int) {
	w.held |= value << w.count
	for w.count += count; w.count >= 8; w.count -= 8 {
		w.bytes = append(w.bytes, byte(w.held))
		w.held >>= 8
	}
}

// difference is the mean over all pixels and colours of how far two pictures
// of one size are apart, in steps of 255.
func difference(t testing.TB, a, b image.Image) float64 {
	t.Helper()
	if a.Bounds().Size() != b.Bounds().Size() {
		t.Fatalf("sizes differ: %v and %v", a.Bounds().Size(), b.Bounds().Size())
	}
	p, q := imaging.Clone(a), imaging.Clone(b)
	sum := 0
	for i, v := range p.Pix {
		d := int(v) - int(q.Pix[i])
		sum += max(d, -d)
	}
	return float64(sum) / float64(len(p.Pix))
}
