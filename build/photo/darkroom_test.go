package photo

import (
	"bytes"
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/fstest"
	"time"

	"hussif/build/keep"
)

// darkroom is one with a store of its own.
func darkroom(t testing.TB) *Darkroom {
	t.Helper()
	store, err := keep.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	return &Darkroom{Store: store, Journal: "/journal"}
}

// makeAll makes the pictures of all files, which are a day old.
func makeAll(t testing.TB, d *Darkroom, files map[string][]byte) map[string]Result {
	t.Helper()
	fsys := fstest.MapFS{}
	var names []string
	for name, file := range files {
		fsys[name] = &fstest.MapFile{Data: file, ModTime: time.Now().Add(-24 * time.Hour)}
		names = append(names, name)
	}
	made, err := d.Make(context.Background(), fsys, names)
	if err != nil {
		t.Fatal(err)
	}
	results := map[string]Result{}
	for i, r := range made {
		if r.Name != names[i] {
			t.Fatalf("result %d is of %s, asked for %s", i, r.Name, names[i])
		}
		results[r.Name] = r
	}
	return results
}

// pixels decodes a picture that came out.
func pixels(t testing.TB, p Picture) image.Image {
	t.Helper()
	content := bytesOf(t, p)
	var m image.Image
	var err error
	if strings.HasSuffix(p.Name, ".png") {
		m, err = png.Decode(bytes.NewReader(content))
	} else {
		m, err = jpeg.Decode(bytes.NewReader(content))
	}
	if err != nil {
		t.Fatalf("%s: %v", p.Name, err)
	}
	if m.Bounds() != image.Rect(0, 0, p.Width, p.Height) {
		t.Fatalf("%s is %v, said to be %d by %d", p.Name, m.Bounds(), p.Width, p.Height)
	}
	return m
}

func bytesOf(t testing.TB, p Picture) []byte {
	t.Helper()
	content, err := os.ReadFile(p.Path)
	if err != nil {
		t.Fatal(err)
	}
	if int64(len(content)) != p.Size {
		t.Fatalf("%s has %d bytes, said to have %d", p.Name, len(content), p.Size)
	}
	return content
}

// A picture partly seen through, and small, comes out as PNG and unscaled, so
// each pixel can be compared.
func TestEachOrientationComesOutUprightToThePixel(t *testing.T) {
	upright := translucent(41, 30)
	for o := turn(1); o <= 8; o++ {
		for name, r := range makeAll(t, darkroom(t), turned(t, upright, o)) {
			if r.Fault != nil || len(r.Pictures) != 1 {
				t.Fatalf("%s, orientation %d: %+v", name, o, r)
			}
			most := 0.0
			if strings.HasSuffix(name, ".jpg") {
				most = 12 // it knows no transparency: black shows through
			}
			if d := difference(t, pixels(t, r.Pictures[0]), upright); d > most {
				t.Errorf("%s, orientation %d: %.2f steps from upright", name, o, d)
			}
		}
	}
}

func TestPicturesComeNarrowestFirst(t *testing.T) {
	d := darkroom(t)
	r := makeAll(t, d, map[string][]byte{"photos/back.jpg": asJPEG(t, drawing(2000, 300))})["photos/back.jpg"]
	if r.Fault != nil || len(r.Pictures) != 3 || !r.Fresh {
		t.Fatalf("%+v", r)
	}
	for i, want := range []image.Point{{480, 72}, {960, 144}, {1920, 288}} {
		p := r.Pictures[i]
		if p.Width != want.X || p.Height != want.Y {
			t.Errorf("picture %d is %d by %d, want %v", i, p.Width, p.Height, want)
		}
		if !strings.HasSuffix(p.Name, fmt.Sprintf("-%d.jpg", want.X)) || strings.Contains(p.Name, "back") {
			t.Errorf("picture %d is named %s", i, p.Name)
		}
		if d := difference(t, pixels(t, p), drawing(want.X, want.Y)); d > 1.5 {
			t.Errorf("picture %d is %.2f steps from the drawing", i, d)
		}
	}
}

func TestEveryPixelFormatIsMade(t *testing.T) {
	const width, height = 600, 450
	m := drawing(width, height)
	converted := func(to interface {
		image.Image
		Set(x, y int, c color.Color)
	}) image.Image {
		for y := range height {
			for x := range width {
				to.Set(x, y, m.At(x, y))
			}
		}
		return to
	}
	size := image.Rect(0, 0, width, height)
	var palette color.Palette
	for r := range 8 {
		for g := range 8 {
			palette = append(palette, color.RGBA{uint8(60 + 17*r), uint8(70 + 14*g), 90, 255}, color.RGBA{uint8(60 + 17*r), uint8(70 + 14*g), 160, 255})
		}
	}
	few := color.Palette{color.White, color.Black, color.Transparent}
	files := map[string]struct {
		file   []byte
		ending string
		most   float64
	}{
		"grey.jpg":      {asJPEG(t, converted(image.NewGray(size))), ".jpg", 60},
		"grey.png":      {pngOf(t, converted(image.NewGray(size))), ".jpg", 60},
		"grey16.png":    {pngOf(t, converted(image.NewGray16(size))), ".jpg", 60},
		"deep.png":      {pngOf(t, converted(image.NewRGBA64(size))), ".jpg", 2},
		"palette.png":   {pngOf(t, converted(image.NewPaletted(size, palette))), ".jpg", 10},
		"drawing.png":   {pngOf(t, converted(image.NewPaletted(size, few))), ".png", 255},
		"seen.png":      {pngOf(t, translucent(width, height)), ".png", 10},
		"lossless.webp": {riff(lossless(m)), ".jpg", 2},
		"seen.webp":     {riff(lossless(translucent(width, height))), ".png", 10},
	}
	given := map[string][]byte{}
	for name, f := range files {
		given[name] = f.file
	}
	for name, r := range makeAll(t, darkroom(t), given) {
		want := files[name]
		if r.Fault != nil || len(r.Pictures) != 2 {
			t.Errorf("%s: %+v", name, r.Fault)
			continue
		}
		for _, p := range r.Pictures {
			if filepath.Ext(p.Name) != want.ending {
				t.Errorf("%s came out as %s", name, p.Name)
			}
			if d := difference(t, pixels(t, p), drawing(p.Width, p.Height)); d > want.most {
				t.Errorf("%s at %d: %.2f steps from the drawing", name, p.Width, d)
			}
		}
	}
}

func TestNothingButPixelsComesOut(t *testing.T) {
	const planted = "PLANTED"
	exif := string(exifOf(binary.LittleEndian, 6, planted))
	photograph := withSegments(asJPEG(t, drawing(700, 500)),
		segment(0xe0, "JFIF\x00\x01\x02\x00\x00\x01\x00\x01\x00\x00"),
		segment(0xe1, "Exif\x00\x00"+exif),
		segment(0xe1, "http://ns.adobe.com/xap/1.0/\x00<x:xmpmeta>"+planted+"</x:xmpmeta>"),
		segment(0xe2, "ICC_PROFILE\x00\x01\x01"+planted),
		segment(0xed, "Photoshop 3.0\x008BIM\x04\x04\x00\x00\x00\x00\x00\x0c\x1c\x02\x50\x00\x07"+planted),
		segment(0xef, planted), segment(0xfe, planted))
	metadata := [][]byte{
		chunk("eXIf", exif), chunk("tEXt", "Comment\x00"+planted), chunk("iTXt", "XML:com.adobe.xmp\x00\x00\x00\x00\x00"+planted),
		chunk("tIME", "\x07\xea\x02\x0e\x0a\x00\x00"), chunk("prVt", planted),
	}
	seen := riff(extended(600, 400, 8|4|16), lossless(translucent(600, 400)), riffChunk("EXIF", []byte(exif)), riffChunk("XMP ", []byte(planted)))
	files := map[string][]byte{
		"back.jpg":  append(photograph, planted...),
		"back.png":  append(withChunks(pngOf(t, drawing(700, 500)), metadata...), planted...),
		"seen.png":  withChunks(pngOf(t, translucent(700, 500)), metadata...),
		"seen.webp": seen,
	}
	for name, file := range files {
		if !bytes.Contains(file, []byte(planted)) {
			t.Fatalf("%s has nothing planted in it", name)
		}
	}
	for name, r := range makeAll(t, darkroom(t), files) {
		if r.Fault != nil {
			t.Errorf("%s: %s", name, r.Fault.Reason)
		}
		for _, p := range r.Pictures {
			content := bytesOf(t, p)
			if bytes.Contains(content, []byte(planted)) {
				t.Errorf("%s: what was planted is in %s", name, p.Name)
			}
			var err error
			if strings.HasSuffix(p.Name, ".png") {
				err = onlyPixelsPNG(content)
			} else {
				err = onlyPixelsJPEG(content)
			}
			if err != nil {
				t.Errorf("%s: %s: %v", name, p.Name, err)
			}
		}
	}
}

// onlyPixelsJPEG allows the segments that decoding needs (ITU-T T.81, table
// B.1) and nothing after the end.
func onlyPixelsJPEG(b []byte) error {
	needed := map[byte]bool{0xdb: true, 0xc0: true, 0xc4: true, 0xda: true}
	if !bytes.HasPrefix(b, []byte{0xff, 0xd8}) {
		return errors.New("no start")
	}
	for at := 2; ; {
		if at+4 > len(b) || b[at] != 0xff {
			return fmt.Errorf("no segment at %d", at)
		}
		mark := b[at+1]
		if !needed[mark] {
			return fmt.Errorf("segment %x at %d", mark, at)
		}
		at += 2 + int(binary.BigEndian.Uint16(b[at+2:]))
		if mark == 0xda {
			// In a baseline picture's one scan every other ff is followed by 0.
			for i := at; i+1 < len(b); i++ {
				if b[i] == 0xff && b[i+1] != 0 && (b[i+1] != 0xd9 || i+2 != len(b)) {
					return fmt.Errorf("marker %x at %d of %d", b[i+1], i, len(b))
				}
			}
			return nil
		}
	}
}

// onlyPixelsPNG allows the critical chunks a truecolour picture needs (PNG
// specification, third edition, clause 11.2) and nothing after the last.
func onlyPixelsPNG(b []byte) error {
	for at := 8; at < len(b); {
		name := string(b[at+4 : at+8])
		if name != "IHDR" && name != "IDAT" && name != "IEND" {
			return fmt.Errorf("chunk %s at %d", name, at)
		}
		at += 12 + int(binary.BigEndian.Uint32(b[at:]))
		if name == "IEND" && at != len(b) {
			return fmt.Errorf("%d bytes after the last chunk", len(b)-at)
		}
	}
	return nil
}

func TestDamageIsAFaultAndNoError(t *testing.T) {
	files := map[string][]byte{
		"hollow.png": pngClaiming(9000, 9000),
		"fine.png":   pngOf(t, drawing(20, 20)),
	}
	for name, file := range samples(t) {
		for at := 0; at < len(file); at += 5 {
			bad := bytes.Clone(file)
			bad[at] ^= 0xff
			files[fmt.Sprintf("%d/%s", at, name)] = bad
		}
	}
	// The first scan lost its second half; the end is still there.
	half := asJPEG(t, drawing(400, 300))
	files["half.jpg"] = append(half[:len(half)/2:len(half)/2], 0xff, 0xd9)
	results := makeAll(t, darkroom(t), files)
	for name, r := range results {
		if (r.Fault == nil) != (len(r.Pictures) > 0) {
			t.Errorf("%s: %d pictures and the fault %v", name, len(r.Pictures), r.Fault)
		}
		if r.Fault != nil && strings.Contains(r.Fault.Reason, "runtime error") {
			t.Errorf("%s: %s", name, r.Fault.Reason)
		}
	}
	for _, name := range []string{"hollow.png", "half.jpg"} {
		if results[name].Fault == nil {
			t.Errorf("%s: no fault", name)
		}
	}
	if r := results["fine.png"]; r.Fault != nil {
		t.Errorf("the sound one: %s", r.Fault.Reason)
	}
}

// countingFS counts the bytes that are read from its files, and lets a test
// step in.
type countingFS struct {
	fs.FS
	read   *atomic.Int64
	begun  *int // readings of one file from its start
	before func(off int64) error
}

// decoding is how many readings have begun when a file is decoded: the look at
// its header, its hash, and this one.
const decoding = 3

// starts counts the readings begun, this one at off included.
func (c countingFS) starts(off int64) int {
	if off == 0 {
		*c.begun++
	}
	return *c.begun
}

func (c countingFS) Open(name string) (fs.File, error) {
	f, err := c.FS.Open(name)
	if err != nil {
		return nil, err
	}
	return countingFile{f, c}, nil
}

type countingFile struct {
	fs.File
	c countingFS
}

func (f countingFile) ReadAt(p []byte, off int64) (int, error) {
	if f.c.before != nil {
		if err := f.c.before(off); err != nil {
			return 0, err
		}
	}
	n, err := f.File.(interface {
		ReadAt([]byte, int64) (int, error)
	}).ReadAt(p, off)
	f.c.read.Add(int64(n))
	return n, err
}

// old is a file system of one photograph, changed a day ago.
func old(t testing.TB) (fsys countingFS, size int64) {
	file := asJPEG(t, noise(1200, 900))
	files := fstest.MapFS{"back.jpg": {Data: file, ModTime: time.Now().Add(-24 * time.Hour)}}
	return countingFS{FS: files, read: new(atomic.Int64), begun: new(int)}, int64(len(file))
}

// noise makes large files.
func noise(width, height int) *image.NRGBA {
	m := drawing(width, height)
	state := uint32(1)
	for i := range m.Pix {
		if i%4 != 3 {
			state = state*1664525 + 1013904223
			m.Pix[i] += uint8(state >> 29)
		}
	}
	return m
}

func TestTheSecondTimeNothingIsDecodedOrRead(t *testing.T) {
	d := darkroom(t)
	fsys, size := old(t)
	make := func(d *Darkroom) Result {
		t.Helper()
		fsys.read.Store(0)
		results, err := d.Make(context.Background(), fsys, []string{"back.jpg"})
		if err != nil || results[0].Fault != nil {
			t.Fatal(results, err)
		}
		return results[0]
	}
	first := make(d)
	if got := fsys.read.Load(); !first.Fresh || got < 2*size {
		t.Errorf("the first time: fresh %v, %d of %d bytes read; it takes two readings", first.Fresh, got, size)
	}
	second := make(d)
	if got := fsys.read.Load(); second.Fresh || got > 70<<10 || got >= size {
		t.Errorf("the second time: fresh %v, %d of %d bytes read", second.Fresh, got, size)
	}
	if fmt.Sprint(first.Pictures) != fmt.Sprint(second.Pictures) {
		t.Errorf("first %v\nsecond %v", first.Pictures, second.Pictures)
	}

	nameless := &Darkroom{Store: d.Store}
	if r := make(nameless); r.Fresh || fsys.read.Load() < size {
		t.Errorf("without a journal's name: fresh %v, %d of %d bytes read", r.Fresh, fsys.read.Load(), size)
	}
	files := fsys.FS.(fstest.MapFS)
	files["back.jpg"].ModTime = time.Now()
	for range 2 {
		if r := make(d); r.Fresh || fsys.read.Load() < size {
			t.Errorf("with a young time stamp: fresh %v, %d of %d bytes read", r.Fresh, fsys.read.Load(), size)
		}
	}
	files["back.jpg"].ModTime = time.Now().Add(-time.Hour)
	files["back.jpg"].Data = asJPEG(t, drawing(1200, 900))
	if r := make(d); !r.Fresh || r.Pictures[0].Name == first.Pictures[0].Name {
		t.Errorf("with another content: fresh %v, %s", r.Fresh, r.Pictures[0].Name)
	}
}

func TestFaultsFoundByDecodingAreKept(t *testing.T) {
	d := darkroom(t)
	files := map[string][]byte{"hollow.png": pngClaiming(900, 900)}
	first := makeAll(t, d, files)["hollow.png"]
	second := makeAll(t, d, files)["hollow.png"]
	if first.Fault == nil || second.Fault == nil || first.Fault.Reason != second.Fault.Reason || second.Fresh {
		t.Errorf("first %+v\nsecond %+v", first, second)
	}
}

func TestADamagedPictureInTheStoreIsMadeAgain(t *testing.T) {
	d := darkroom(t)
	files := map[string][]byte{"back.jpg": asJPEG(t, drawing(700, 500))}
	first := makeAll(t, d, files)["back.jpg"]
	if err := os.Truncate(first.Pictures[1].Path, 100); err != nil {
		t.Fatal(err)
	}
	second := makeAll(t, d, files)["back.jpg"]
	if !second.Fresh || fmt.Sprint(first.Pictures) != fmt.Sprint(second.Pictures) {
		t.Errorf("first %+v\nsecond %+v", first, second)
	}
	pixels(t, second.Pictures[1])
}

func TestVerifyMakesAgainAndComparesPictures(t *testing.T) {
	d := darkroom(t)
	files := map[string][]byte{"back.jpg": asJPEG(t, drawing(700, 500))}
	makeAll(t, d, files)
	d.Store.Verify = true
	if r := makeAll(t, d, files)["back.jpg"]; !r.Fresh {
		t.Error("not made again")
	}
}

func TestManyDarkroomsMayShareAStore(t *testing.T) {
	d := darkroom(t)
	files := map[string][]byte{}
	for i := range 6 {
		files[fmt.Sprintf("%d.jpg", i)] = withSegments(asJPEG(t, drawing(600, 400)), segment(0xfe, fmt.Sprint(i)))
	}
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			for name, r := range makeAll(t, &Darkroom{Store: d.Store, Workers: 3}, files) {
				if r.Fault != nil || len(r.Pictures) != 2 {
					t.Errorf("%s: %+v", name, r)
				}
			}
		})
	}
	wg.Wait()
}

func TestProgressCountsEachPictureOnce(t *testing.T) {
	d := darkroom(t)
	var told []string
	d.Progress = func(done, total int) { told = append(told, fmt.Sprint(done, "/", total)) }
	d.Workers = 3
	makeAll(t, d, samples(t))
	if got := strings.Join(told, " "); got != "1/3 2/3 3/3" {
		t.Errorf("told %s", got)
	}
}

func TestMakeStopsWithItsContext(t *testing.T) {
	for name, at := range map[string]int64{"at once": -1, "while hashing": 1 << 16, "while decoding": 0} {
		t.Run(name, func(t *testing.T) {
			fsys, _ := old(t)
			ctx, cancel := context.WithCancel(context.Background())
			defer cancel()
			fsys.before = func(off int64) error {
				if starts := fsys.starts(off); at > 0 && off >= at || at == 0 && starts == decoding && off > 0 {
					cancel()
				}
				return nil
			}
			if at < 0 {
				cancel()
			}
			d := darkroom(t)
			d.Workers = 1
			results, err := d.Make(ctx, fsys, []string{"back.jpg"})
			if !errors.Is(err, context.Canceled) || results != nil {
				t.Errorf("%v, %v", results, err)
			}
		})
	}
}

func TestTroubleInReadingIsAnErrorNamingTheFile(t *testing.T) {
	fsys, _ := old(t)
	for _, from := range []int64{0, 300, 100_000} {
		fsys.before = func(off int64) error {
			if off >= from {
				return fs.ErrClosed
			}
			return nil
		}
		_, err := darkroom(t).Make(context.Background(), fsys, []string{"back.jpg"})
		if !errors.Is(err, fs.ErrClosed) || !strings.Contains(err.Error(), "back.jpg") {
			t.Errorf("from byte %d on: %v", from, err)
		}
	}
}

func TestAFileChangedBetweenReadingsIsAFault(t *testing.T) {
	fsys, size := old(t)
	file := fsys.FS.(fstest.MapFS)["back.jpg"]
	fsys.before = func(off int64) error {
		if fsys.starts(off) == decoding && off == 0 {
			file.Data[size-1000] ^= 1
		}
		return nil
	}
	results, err := darkroom(t).Make(context.Background(), fsys, []string{"back.jpg"})
	if err != nil || results[0].Fault == nil || !strings.Contains(results[0].Fault.Reason, "changed") {
		t.Errorf("%+v, %v", results, err)
	}
}

func TestATimeStampThatLiedIsNotBelievedTwice(t *testing.T) {
	fsys, size := old(t)
	file := fsys.FS.(fstest.MapFS)["back.jpg"]
	d := darkroom(t)
	make := func() Result {
		t.Helper()
		results, err := d.Make(context.Background(), fsys, []string{"back.jpg"})
		if err != nil {
			t.Fatal(err)
		}
		return results[0]
	}
	if err := os.Remove(make().Pictures[0].Path); err != nil {
		t.Fatal(err)
	}
	file.Data[size-1000] ^= 1 // same size, same time stamp
	if r := make(); r.Fault == nil || !strings.Contains(r.Fault.Reason, "run the same again") {
		t.Errorf("first: %+v", r)
	}
	if r := make(); r.Fault != nil || !r.Fresh {
		t.Errorf("again: %+v", r)
	}
}

func TestAStoreThatCannotBeWrittenIsAnError(t *testing.T) {
	dir := t.TempDir()
	store, err := keep.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(dir, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	d := &Darkroom{Store: store}
	fsys, _ := old(t)
	if _, err := d.Make(context.Background(), fsys, []string{"back.jpg"}); err == nil || !strings.Contains(err.Error(), "back.jpg") {
		t.Errorf("error %v", err)
	}
}

func FuzzMake(f *testing.F) {
	for _, file := range samples(f) {
		f.Add(file)
	}
	f.Add(pngClaiming(300, 300))
	d := darkroom(f)
	const name = "back" // without an ending all formats may go on
	f.Fuzz(func(t *testing.T, file []byte) {
		if info, fault, err := look(name, bytes.NewReader(file), int64(len(file))); err != nil || fault == nil && info.Width*info.Height > 1<<18 {
			t.Skip()
		}
		results, err := d.Make(context.Background(), fstest.MapFS{name: {Data: file}}, []string{name})
		if err != nil {
			t.Fatal(err)
		}
		if r := results[0]; (r.Fault == nil) != (len(r.Pictures) > 0) {
			t.Fatalf("%+v", r)
		}
	})
}
