package develop

import (
	"bytes"
	"compress/gzip"
	"context"
	_ "embed"
	"errors"
	"fmt"
	"image"
	"io"
	"sync"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"

	"hussif/build/photo"
)

// heifModule is libheif with libde265 as a WebAssembly module, as it lies in
// github.com/gen2brain/heic; a test compares the two. That package's own Go code is
// not linked in: before the program's first line it looks for a libheif of the
// system's, on Windows in the current folder too, where a journal that came from
// somebody else could have put one.
//
//go:embed heif/heif.wasm.gz
var heifModule []byte

// A library is a compiled module.
type library struct {
	runtime wazero.Runtime
	module  wazero.CompiledModule
}

// openLibrary compiles the module, which takes a second or two.
var openLibrary = sync.OnceValues(func() (*library, error) {
	ctx := context.Background()
	unpacked, err := gzip.NewReader(bytes.NewReader(heifModule))
	if err != nil {
		return nil, err
	}
	code, err := io.ReadAll(unpacked)
	if err != nil {
		return nil, err
	}
	l := &library{runtime: wazero.NewRuntime(ctx)}
	if l.module, err = l.runtime.CompileModule(ctx, code); err != nil {
		return nil, err
	}
	_, err = wasi_snapshot_preview1.Instantiate(ctx, l.runtime)
	return l, err
})

// The module's numbers for colour spaces and for how much colour is kept of them
// (libheif, heif_image.h).
const (
	spaceYCbCr = 0
	spaceRGB   = 1
	spaceGrey  = 2

	chroma420 = 1
	chroma422 = 2
	chroma444 = 3
)

// header is what the module tells of a picture, in this order.
type header struct{ width, height, space, chroma, premultiplied uint32 }

var errModule = errors.New("the decoder gave up")

// decodeHEIC returns the picture of a file, upright. The module has no files, no
// clock, no network and no output: it sees the bytes that it is given.
func decodeHEIC(ctx context.Context, file []byte) (image.Image, error) {
	l, err := openLibrary()
	if err != nil {
		return nil, err
	}
	// A fresh memory for each picture: what a damaged one leaves there harms no other.
	module, err := l.runtime.InstantiateModule(ctx, l.module, wazero.NewModuleConfig().WithName(""))
	if err != nil {
		return nil, err
	}
	defer module.Close(ctx)
	m := machine{ctx, module}

	in, err := m.room(len(file))
	if err != nil {
		return nil, err
	}
	if !module.Memory().Write(in, file) {
		return nil, errModule
	}
	at, err := m.room(4 * 5)
	if err != nil {
		return nil, err
	}
	if err := m.decode(in, len(file), at, 0); err != nil {
		return nil, err
	}
	h, err := m.header(at)
	if err != nil {
		return nil, err
	}
	if h.width == 0 || h.height == 0 || h.width > photo.MostSide || h.height > photo.MostSide || h.width*h.height > photo.MostPixels {
		return nil, fmt.Errorf("it says it is %d by %d", h.width, h.height)
	}
	picture, pixels, err := h.frame()
	if err != nil {
		return nil, err
	}
	out, err := m.room(len(pixels))
	if err != nil {
		return nil, err
	}
	if err := m.decode(in, len(file), at, out); err != nil {
		return nil, err
	}
	made, ok := module.Memory().Read(out, uint32(len(pixels)))
	if !ok {
		return nil, errModule
	}
	copy(pixels, made)
	return picture, nil
}

// A machine is an instance of the module.
type machine struct {
	ctx    context.Context
	module api.Module
}

func (m machine) call(name string, args ...uint64) (uint32, error) {
	answers, err := m.module.ExportedFunction(name).Call(m.ctx, args...)
	if err != nil {
		return 0, err
	}
	return api.DecodeU32(answers[0]), nil
}

// room returns the address of free memory. None of it is given back before the
// instance is dropped.
func (m machine) room(bytes int) (uint32, error) {
	at, err := m.call("malloc", uint64(bytes))
	if err == nil && at == 0 {
		err = errors.New("too little memory")
	}
	return at, err
}

// decode reads the file at in. It fills the header and, where there is an address
// to put them, the pixels.
func (m machine) decode(in uint32, size int, header, pixels uint32) error {
	headerOnly := uint64(0)
	if pixels == 0 {
		headerOnly = 1
	}
	args := []uint64{uint64(in), uint64(size), headerOnly}
	for field := range uint32(5) {
		args = append(args, uint64(header+4*field))
	}
	sound, err := m.call("decode", append(args, uint64(pixels))...)
	if err == nil && sound == 0 {
		err = errModule
	}
	return err
}

func (m machine) header(at uint32) (h header, err error) {
	for i, field := range []*uint32{&h.width, &h.height, &h.space, &h.chroma, &h.premultiplied} {
		value, ok := m.module.Memory().ReadUint32Le(at + 4*uint32(i))
		if !ok {
			return h, errModule
		}
		*field = value
	}
	return h, nil
}

// frame returns an empty picture for the pixels of a header, and where they go.
func (h header) frame() (image.Image, []byte, error) {
	width, height := int(h.width), int(h.height)
	bounds := image.Rect(0, 0, width, height)
	switch h.space {
	case spaceGrey:
		m := &image.Gray{Stride: row(width), Rect: bounds}
		m.Pix = make([]byte, m.Stride*height)
		return m, m.Pix, nil
	case spaceRGB:
		stride := row(4 * width)
		pixels := make([]byte, stride*height)
		if h.premultiplied != 0 {
			return &image.RGBA{Pix: pixels, Stride: stride, Rect: bounds}, pixels, nil
		}
		return &image.NRGBA{Pix: pixels, Stride: stride, Rect: bounds}, pixels, nil
	case spaceYCbCr:
		m := &image.YCbCr{YStride: row(width), CStride: row((width + 1) / 2), Rect: bounds}
		rows := height // of colour
		switch h.chroma {
		case chroma420:
			m.SubsampleRatio, rows = image.YCbCrSubsampleRatio420, (height+1)/2
		case chroma422:
			m.SubsampleRatio = image.YCbCrSubsampleRatio422
		case chroma444:
			m.SubsampleRatio, m.CStride = image.YCbCrSubsampleRatio444, row(width)
		default:
			return nil, nil, fmt.Errorf("colour of a sort %d", h.chroma)
		}
		y, c := m.YStride*height, m.CStride*rows
		pixels := make([]byte, y+2*c)
		m.Y, m.Cb, m.Cr = pixels[:y:y], pixels[y:y+c:y+c], pixels[y+c:]
		return m, pixels, nil
	}
	return nil, nil, fmt.Errorf("a colour space %d", h.space)
}

// row is how many bytes libheif gives a row of pixels: it begins each at a multiple
// of sixteen.
func row(bytes int) int { return (bytes + 15) &^ 15 }
