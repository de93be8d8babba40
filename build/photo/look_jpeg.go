package photo

import (
	"bytes"
	"encoding/binary"
	"fmt"
)

// Markers of ITU-T T.81, table B.1.
const (
	markSOF0 = 0xc0 // start of frame, baseline
	markSOF1 = 0xc1 // extended sequential
	markSOF2 = 0xc2 // progressive
	markDHT  = 0xc4
	markJPG  = 0xc8
	markDAC  = 0xcc
	markRST0 = 0xd0
	markSOI  = 0xd8
	markEOI  = 0xd9
	markSOS  = 0xda
	markAPP1 = 0xe1
	markCOM  = 0xfe
	markTEM  = 0x01
)

// mostStrays is how many bytes may lie between segments in all.
const mostStrays = 4096

// lookJPEG walks the segments up to the first scan and sees that the picture's
// end follows (ITU-T T.81, annex B).
func lookJPEG(l *leaf) (Info, *Fault) {
	k := kindJPEG()
	var info Info
	var exif []byte
	framed := false
	strays := 0
	for off := int64(2); ; {
		head, ok := l.at(off, 2)
		if !ok {
			return Info{}, cutShort(k)
		}
		if head[0] != 0xff || head[1] == 0xff || head[1] == 0 {
			// Fill bytes, or what some cameras leave between segments.
			if strays++; strays > mostStrays {
				return Info{}, damaged(k, "its parts do not follow each other")
			}
			off++
			continue
		}
		mark := head[1]
		off += 2
		switch {
		case mark == markEOI:
			return Info{}, damaged(k, "it ends before its picture begins")
		case mark == markTEM || mark >= markRST0 && mark <= markSOI:
			continue // these have no body
		}
		size, ok := l.at(off, 2)
		if !ok {
			return Info{}, cutShort(k)
		}
		length := int(binary.BigEndian.Uint16(size))
		if length < 2 {
			return Info{}, damaged(k, "a part of it has no size")
		}
		if mark == markSOS {
			if !framed {
				return Info{}, damaged(k, "it does not say how large it is")
			}
			if !endsAfter(l, off) {
				return Info{}, cutShort(k)
			}
			info.exif, info.turn = exif, turnFrom(exif)
			if info.turn.swaps() {
				info.Width, info.Height = info.Height, info.Width
			}
			return info, nil
		}
		body, ok := l.at(off+2, length-2)
		if !ok {
			return Info{}, cutShort(k)
		}
		off += int64(length)
		switch {
		case mark == markAPP1 && exif == nil:
			if after, found := bytes.CutPrefix(body, []byte("Exif\x00")); found && len(after) > 1 {
				exif = after[1:] // the second nul is sometimes another byte
			}
		case mark >= markSOF0 && mark <= 0xcf && mark != markDHT && mark != markJPG && mark != markDAC:
			if framed {
				return Info{}, damaged(k, "it says twice how large it is")
			}
			var fault *Fault
			if info, fault = frame(k, mark, body); fault != nil {
				return Info{}, fault
			}
			framed = true
		}
	}
}

// frame reads a start of frame (ITU-T T.81, B.2.2).
func frame(k *kind, mark byte, body []byte) (Info, *Fault) {
	if mark > markSOF2 {
		return Info{}, unreadable(k, "lossless, hierarchical or arithmetic coding")
	}
	if len(body) < 6 || len(body) < 6+3*int(body[5]) {
		return Info{}, damaged(k, "a part of it is too short")
	}
	if body[0] != 8 {
		return Info{}, unreadable(k, fmt.Sprintf("%d bits a colour", body[0]))
	}
	info := Info{
		Height: int(binary.BigEndian.Uint16(body[1:])),
		Width:  int(binary.BigEndian.Uint16(body[3:])),
	}
	// A sample takes a byte, and while a progressive picture is refined four
	// more. Four colours are kept as they come and as one picture.
	var samples, most float64
	for i := range int(body[5]) {
		factors := body[6+3*i+1]
		area := float64(factors>>4) * float64(factors&15)
		samples += area
		most = max(most, area)
	}
	info.perPixel = min(samples/max(most, 1), 4)
	if mark == markSOF2 {
		info.perPixel *= 5
	}
	if body[5] == 4 {
		info.perPixel += 4
	}
	return info, nil
}

// endsAfter reports whether an end of image follows off. It looks at the
// file's last part first, then at all: phones append films and second pictures.
func endsAfter(l *leaf, off int64) bool {
	const part = 64 << 10
	end := []byte{0xff, markEOI}
	if tail, ok := l.at(max(off, l.size-part), int(min(part, l.size-off))); ok && bytes.Contains(tail, end) {
		return true
	}
	for ; off < l.size-1; off += part - 1 {
		if piece, ok := l.at(off, int(min(part, l.size-off))); !ok || bytes.Contains(piece, end) {
			return ok
		}
	}
	return false
}
