// Package phototest makes small pictures for tests, as a camera would write them.
package phototest

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
)

// JPEG returns a small picture, another one for each n, that says when it was
// taken: as Exif writes it, "2026:03:01 18:22:03", and the offset from UTC,
// "+01:00". Either may be empty.
func JPEG(n int, date, offset string) []byte {
	m := image.NewNRGBA(image.Rect(0, 0, 48, 32))
	for y := range 32 {
		for x := range 48 {
			m.SetNRGBA(x, y, color.NRGBA{uint8(5 * x), uint8(8 * y), uint8(40 * n), 255})
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, m, nil); err != nil {
		panic(err) // a buffer takes anything
	}
	file := b.Bytes()
	if date == "" && offset == "" {
		return file
	}
	body := append([]byte("Exif\x00\x00"), Exif(date, offset)...)
	head := append([]byte{0xff, 0xd8, 0xff, 0xe1}, binary.BigEndian.AppendUint16(nil, uint16(len(body)+2))...)
	return bytes.Join([][]byte{head, body, file[2:]}, nil)
}

// Exif returns an Exif block, a TIFF file of two directories (CIPA DC-008, 4.5 and
// 4.6.5), with DateTimeOriginal and OffsetTimeOriginal, or those of them that are
// not empty.
func Exif(date, offset string) []byte {
	type field struct {
		tag  uint16
		text string
	}
	var fields []field
	for _, f := range []field{{0x9003, date}, {0x9011, offset}} {
		if f.text != "" {
			fields = append(fields, field{f.tag, f.text + "\x00"})
		}
	}
	order := binary.BigEndian
	const second = 8 + 2 + 12 + 4
	b := append([]byte("MM\x00*"), 0, 0, 0, 8, 0, 1)
	b = append(b, 0x87, 0x69, 0, 4, 0, 0, 0, 1) // the place of the Exif directory
	b = order.AppendUint32(b, second)
	b = order.AppendUint32(b, 0)
	b = order.AppendUint16(b, uint16(len(fields)))
	at := second + 2 + 12*len(fields) + 4
	for _, f := range fields {
		b = order.AppendUint16(b, f.tag)
		b = order.AppendUint16(b, 2)
		b = order.AppendUint32(b, uint32(len(f.text)))
		b = order.AppendUint32(b, uint32(at))
		at += len(f.text)
	}
	b = order.AppendUint32(b, 0)
	for _, f := range fields {
		b = append(b, f.text...)
	}
	return b
}
