package photo

import (
	"encoding/binary"
	"hash/crc32"
)

// mostExif is as much of an EXIF block as is read. In a JPEG it could not be
// larger; elsewhere the orientation stands near the start all the same.
const mostExif = 64 << 10

// lookPNG walks the chunks to the last (PNG specification, third edition,
// clause 5).
func lookPNG(l *leaf) (Info, *Fault) {
	k := kindPNG()
	var info Info
	var exif []byte
	pixels := false
	for off := int64(8); ; {
		head, ok := l.at(off, 8)
		if !ok {
			return Info{}, cutShort(k)
		}
		length, name := int64(binary.BigEndian.Uint32(head)), string(head[4:])
		if off+12+length > l.size {
			return Info{}, cutShort(k)
		}
		if (off == 8) != (name == "IHDR") {
			return Info{}, damaged(k, "its parts are out of order")
		}
		switch name {
		case "IHDR":
			chunk, ok := l.at(off+4, 4+13+4)
			if !ok || length != 13 || crc32.ChecksumIEEE(chunk[:17]) != binary.BigEndian.Uint32(chunk[17:]) {
				return Info{}, damaged(k, "its first part is wrong")
			}
			info = header(chunk[4:17])
		case "IDAT":
			pixels = true
		case "eXIf":
			exif, _ = l.at(off+8, int(min(length, mostExif)))
		case "IEND":
			if !pixels {
				return Info{}, damaged(k, "it ends before its picture begins")
			}
			info.exif, info.turn = exif, turnFrom(exif)
			if info.turn.swaps() {
				info.Width, info.Height = info.Height, info.Width
			}
			return info, nil
		}
		off += 12 + length
	}
}

// header reads the body of an IHDR chunk (clause 11.2.1).
func header(body []byte) Info {
	depth, colour, interlaced := body[8], body[9], body[12] == 1
	info := Info{
		// A side of 2³¹ or more is refused as too long, by its size.
		Width:    int(binary.BigEndian.Uint32(body)),
		Height:   int(binary.BigEndian.Uint32(body[4:])),
		perPixel: 4,
	}
	switch {
	case depth == 16:
		info.perPixel = 8
	case colour == 3:
		info.perPixel = 1
	}
	if interlaced {
		info.perPixel *= 1.5 // the largest of the seven passes is half the picture
	}
	return info
}
