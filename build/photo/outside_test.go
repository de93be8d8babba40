package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"golang.org/x/sync/errgroup"
)

// outside returns the path of a program that the project does not need but can
// be compared with. Where it is missing the test is skipped, or fails if
// HUSSIF_OUTSIDE=required.
func outside(t testing.TB, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		if os.Getenv("HUSSIF_OUTSIDE") == "required" {
			t.Fatal(err)
		}
		t.Skip(err)
	}
	return path
}

func run(t testing.TB, program string, args ...string) {
	t.Helper()
	if out, err := exec.Command(program, args...).CombinedOutput(); err != nil {
		t.Fatalf("%s %s: %v\n%s", filepath.Base(program), strings.Join(args, " "), err, out)
	}
}

// TestAgainstVips has ImageMagick write the drawing in every form that the
// encoders of the standard library cannot, and libvips make the thumbnail that
// ours is compared with.
func TestAgainstVips(t *testing.T) {
	convert, vips := outside(t, "convert"), outside(t, "vipsthumbnail")
	const most = 1 // step of 255 on average; a drawing left lying is off by more than 20
	forms := []struct {
		ending string
		args   []string
	}{
		{".jpg", []string{"-quality", "92", "-sampling-factor", "1x1"}},
		{".jpg", []string{"-quality", "92", "-sampling-factor", "2x1"}},
		{".jpg", []string{"-quality", "92", "-sampling-factor", "2x2"}},
		{".jpg", []string{"-quality", "92", "-sampling-factor", "1x2"}},
		{".jpg", []string{"-quality", "92", "-sampling-factor", "4x1"}},
		{".jpg", []string{"-quality", "92", "-sampling-factor", "4x2"}},
		{".jpg", []string{"-quality", "92", "-interlace", "JPEG"}},
		{".jpg", []string{"-quality", "92", "-colorspace", "Gray"}},
		{".png", []string{"-interlace", "PNG"}},
		{".png", []string{"-depth", "16"}},
		{".webp", []string{"-quality", "92"}},
		{".webp", []string{"-define", "webp:lossless=true"}},
	}
	dir := t.TempDir()
	original := filepath.Join(dir, "drawing.png")
	for _, size := range []image.Point{{1203, 901}, {4001, 600}} {
		if err := os.WriteFile(original, pngOf(t, drawing(size.X, size.Y)), 0o600); err != nil {
			t.Fatal(err)
		}
		for i, form := range forms {
			if size.X > 4000 && !slices.Contains(form.args, "-sampling-factor") {
				continue // the others go no other way when they are large
			}
			o := turn(i%8 + 1)
			t.Run(strconv.Itoa(size.X)+" "+strings.Join(form.args, " ")+form.ending, func(t *testing.T) {
				given := filepath.Join(dir, "given"+form.ending)
				run(t, convert, append(append([]string{original}, form.args...), given)...)
				file, err := os.ReadFile(given)
				if err != nil {
					t.Fatal(err)
				}
				exif := exifOf(binary.BigEndian, uint16(o), "")
				switch form.ending {
				case ".jpg":
					file = withSegments(file, segment(0xe1, "Exif\x00\x00"+string(exif)))
				case ".png":
					file = withChunks(file, chunk("eXIf", string(exif)))
				}
				if err := os.WriteFile(given, file, 0o600); err != nil {
					t.Fatal(err)
				}
				r := makeAll(t, darkroom(t), map[string][]byte{"given" + form.ending: file})["given"+form.ending]
				if r.Fault != nil {
					t.Fatal(r.Fault.Reason)
				}
				for _, p := range r.Pictures {
					theirs := filepath.Join(dir, "theirs.png")
					run(t, vips, given, "--size", strconv.Itoa(p.Width)+"x", "-o", theirs)
					content, err := os.ReadFile(theirs)
					if err != nil {
						t.Fatal(err)
					}
					want, err := png.Decode(bytes.NewReader(content))
					if err != nil {
						t.Fatal(err)
					}
					if d := difference(t, pixels(t, p), want); d > most {
						t.Errorf("orientation %d, %d wide: %.2f steps apart", o, p.Width, d)
					}
				}
			})
		}
	}
}

// ImageMagick writes printer's colours by the plain formula that package
// image/color reads them with (libvips takes a press's profile instead), so
// the drawing itself must come back.
func TestPrintersColours(t *testing.T) {
	convert := outside(t, "convert")
	dir := t.TempDir()
	original, given := filepath.Join(dir, "drawing.png"), filepath.Join(dir, "given.jpg")
	if err := os.WriteFile(original, pngOf(t, drawing(600, 450)), 0o600); err != nil {
		t.Fatal(err)
	}
	run(t, convert, original, "-quality", "92", "-colorspace", "CMYK", given)
	file, err := os.ReadFile(given)
	if err != nil {
		t.Fatal(err)
	}
	r := makeAll(t, darkroom(t), map[string][]byte{"given.jpg": file})["given.jpg"]
	if r.Fault != nil {
		t.Fatal(r.Fault.Reason)
	}
	for _, p := range r.Pictures {
		if d := difference(t, pixels(t, p), drawing(p.Width, p.Height)); d > 1.5 {
			t.Errorf("%d wide: %.2f steps from the drawing", p.Width, d)
		}
	}
}

// BenchmarkMake makes three widths of eight photographs of 12 megapixels, and
// has vipsthumbnail do the same, once a width in two processes. Run it with
//
//	go test ./build/photo -run '^$' -bench Make -benchtime 3x
func BenchmarkMake(b *testing.B) {
	for _, shape := range []struct {
		name string
		turn uint16
	}{{"landscape", 1}, {"portrait", 6}} {
		b.Run(shape.name, func(b *testing.B) { benchmarkMake(b, shape.turn) })
	}
}

func benchmarkMake(b *testing.B, orientation uint16) {
	const width, height, count = 4000, 3000, 8
	dir := b.TempDir()
	file := asJPEG(b, noise(width, height))
	exif := segment(0xe1, "Exif\x00\x00"+string(exifOf(binary.BigEndian, orientation, "")))
	var names, paths []string
	for i := range count {
		name := strconv.Itoa(i) + ".jpg"
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, withSegments(file, exif, segment(0xfe, name)), 0o600); err != nil {
			b.Fatal(err)
		}
		names, paths = append(names, name), append(paths, path)
	}
	const megapixels = width * height * count / 1e6
	vips, missing := exec.LookPath("vipsthumbnail")
	if missing != nil {
		b.Log(missing)
	}
	fsys := os.DirFS(dir)
	var theirs time.Duration
	for b.Loop() {
		b.StopTimer()
		if missing == nil {
			// In turns with ours, so that a busy machine slows both.
			theirs += vipsthumbnails(b, vips, dir, paths)
		}
		d := darkroom(b)
		b.StartTimer()
		results, err := d.Make(b.Context(), fsys, names)
		if err != nil {
			b.Fatal(err)
		}
		for _, r := range results {
			if r.Fault != nil || !r.Fresh {
				b.Fatalf("%+v", r)
			}
		}
	}
	ours := b.Elapsed()
	b.ReportMetric(float64(b.N)*megapixels/ours.Seconds(), "MP/s")
	if missing == nil {
		b.ReportMetric(float64(b.N)*megapixels/theirs.Seconds(), "vips-MP/s")
		b.ReportMetric(theirs.Seconds()/ours.Seconds(), "of-vips-speed")
	}
}

// vipsthumbnails returns how long vipsthumbnail takes, called once a width on
// each half of the pictures, the halves at once.
func vipsthumbnails(b *testing.B, vips, dir string, paths []string) time.Duration {
	start := time.Now()
	var group errgroup.Group
	half := len(paths) / 2
	for _, part := range [][]string{paths[:half], paths[half:]} {
		group.Go(func() error {
			for _, w := range widths() {
				to := filepath.Join(dir, "%s-"+strconv.Itoa(w)+".jpg[Q=82,strip]")
				args := append([]string{"--size", strconv.Itoa(w) + "x", "-o", to}, part...)
				if err := exec.Command(vips, args...).Run(); err != nil {
					return err
				}
			}
			return nil
		})
	}
	if err := group.Wait(); err != nil {
		b.Fatal(err)
	}
	return time.Since(start)
}
