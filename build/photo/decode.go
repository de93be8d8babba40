package photo

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"hash"
	"image"
	"image/jpeg"
	"image/png"
	"io"

	"golang.org/x/image/webp"
)

// decode reads all pixels of a picture of the kind that look found, as they lie
// in the file. The context stops it. The error is a trouble in reading.
func decode(r *reading, info Info) (m image.Image, fault *Fault, err error) {
	// What a decoder trips over is the picture's fault as much as what it
	// refuses. It may do so only in this goroutine.
	defer func() {
		if p := recover(); p != nil {
			m, fault, err = nil, damaged(info.kind, fmt.Sprint(p)), nil
		}
	}()
	buffered := bufio.NewReaderSize(r, 64<<10)
	switch info.Format {
	case "JPEG":
		m, err = jpeg.Decode(buffered)
	case "PNG":
		m, err = png.Decode(buffered)
	case "WebP":
		if m, err = webp.Decode(buffered); err == nil {
			m = widened(m)
		}
	}
	if r.err != nil {
		return nil, nil, r.err
	}
	if err != nil {
		return nil, decodeFault(info.kind, err), nil
	}
	width, height := info.stored()
	if b := m.Bounds(); b != image.Rect(0, 0, width, height) {
		return nil, damaged(info.kind, fmt.Sprintf("it says it is %d by %d and holds %d by %d", width, height, b.Dx(), b.Dy())), nil
	}
	return m, nil, nil
}

func decodeFault(k *kind, err error) *Fault {
	var jpegSort jpeg.UnsupportedError
	var pngSort png.UnsupportedError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF):
		return cutShort(k)
	case errors.As(err, &jpegSort):
		return unreadable(k, string(jpegSort))
	case errors.As(err, &pngSort):
		return unreadable(k, string(pngSort))
	}
	return damaged(k, err.Error())
}

// A reading reads a file once, from start to end, and sums up what it read. It
// stops when its context does, and keeps the first trouble in err.
type reading struct {
	ctx context.Context
	r   io.Reader
	sum hash.Hash
	err error
}

func (r *reading) Read(p []byte) (int, error) {
	if r.err == nil {
		r.err = r.ctx.Err()
	}
	if r.err != nil {
		return 0, r.err
	}
	n, err := r.r.Read(p)
	r.sum.Write(p[:n])
	if err != nil && err != io.EOF {
		r.err = err
	}
	return n, err
}

// widened returns a lossy WebP's picture with the range of values that package
// image gives to YCbCr: black and white are 0 and 255, where WebP has 16 and
// 235, and 16 and 240 for the colours (ITU-R BT.601, as RFC 9649, 2.5, says).
// The decoder leaves them as they are.
func widened(m image.Image) image.Image {
	var y *image.YCbCr
	switch m := m.(type) {
	case *image.YCbCr:
		y = m
	case *image.NYCbCrA:
		y = &m.YCbCr
	default:
		return m
	}
	var luma, chroma [256]uint8
	for v := range 256 {
		luma[v] = uint8(max(0, min(255, (float64(v)-16)*255/219+0.5)))
		chroma[v] = uint8(max(0, min(255, (float64(v)-128)*255/224+128.5)))
	}
	replace(y.Y, &luma)
	replace(y.Cb, &chroma)
	replace(y.Cr, &chroma)
	return m
}

func replace(values []uint8, by *[256]uint8) {
	for i, v := range values {
		values[i] = by[v]
	}
}
