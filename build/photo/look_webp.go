package photo

import (
	"bytes"
	"encoding/binary"
)

// lookWebP walks the chunks (RFC 9649, section 2; the frame headers are those
// of RFC 6386, 9.1, and RFC 9649, 3.4).
func lookWebP(l *leaf) (Info, *Fault) {
	k := kindWebP()
	size, ok := l.at(4, 4)
	if !ok {
		return Info{}, cutShort(k)
	}
	end := 8 + int64(binary.LittleEndian.Uint32(size))
	if end > l.size {
		return Info{}, cutShort(k)
	}
	var info, canvas Info
	var exif []byte
	for off := int64(12); off+8 <= end; {
		head, ok := l.at(off, 8)
		if !ok {
			return Info{}, cutShort(k)
		}
		name, length := string(head[:4]), int64(binary.LittleEndian.Uint32(head[4:]))
		if off+8+length > end {
			return Info{}, damaged(k, "a part of it is larger than the whole")
		}
		body, ok := l.at(off+8, int(min(length, mostExif)))
		if !ok {
			return Info{}, cutShort(k)
		}
		switch {
		case name == "VP8X" && len(body) >= 10:
			if body[0]&2 != 0 {
				return Info{}, faultf("this WebP moves; save one frame of it as JPEG")
			}
			canvas.Width, canvas.Height = 1+int(uint24(body[4:])), 1+int(uint24(body[7:]))
			if body[0]&16 != 0 {
				canvas.perPixel = 6 // transparency is unpacked as a picture of its own
			}
		case name == "VP8 " && len(body) >= 10:
			info.Width = int(binary.LittleEndian.Uint16(body[6:]) & 0x3fff)
			info.Height = int(binary.LittleEndian.Uint16(body[8:]) & 0x3fff)
			info.perPixel = 2
		case name == "VP8L" && len(body) >= 5:
			bits := binary.LittleEndian.Uint32(body[1:])
			info.Width, info.Height = 1+int(bits&0x3fff), 1+int(bits>>14&0x3fff)
			info.perPixel = 8
		case name == "EXIF":
			// Some writers keep the JPEG's mark before the block.
			exif = bytes.TrimPrefix(body, []byte("Exif\x00\x00"))
		}
		off += 8 + length + length&1
	}
	switch {
	case info.perPixel == 0:
		return Info{}, damaged(k, "it holds no picture")
	case canvas.Width != 0 && (canvas.Width != info.Width || canvas.Height != info.Height):
		return Info{}, damaged(k, "it gives two different sizes")
	}
	info.perPixel += canvas.perPixel
	info.exif, info.turn = exif, turnFrom(exif)
	if info.turn.swaps() {
		info.Width, info.Height = info.Height, info.Width
	}
	return info, nil
}

func uint24(b []byte) uint32 {
	return uint32(b[0]) | uint32(b[1])<<8 | uint32(b[2])<<16
}
