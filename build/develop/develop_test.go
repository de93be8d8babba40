package develop

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
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/disintegration/imaging"
)

// TestMain is the process of a lab too.
func TestMain(m *testing.M) {
	switch os.Getenv("HUSSIF_TEST_LAB") {
	case "":
		os.Exit(m.Run())
	case "serve":
		if err := Serve(os.Stdin, os.Stdout); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	case "hang":
		time.Sleep(time.Hour)
	case "fall over":
		panic("as asked")
	}
}

func running(how string) func() (*exec.Cmd, error) {
	return func() (*exec.Cmd, error) {
		self, err := os.Executable()
		c := exec.Command(self)
		c.Env = append(os.Environ(), "HUSSIF_TEST_LAB="+how)
		return c, err
	}
}

// phone is a HEIC picture of 192 by 144, made of the drawing by libheif's encoder.
func phone(t testing.TB) []byte {
	t.Helper()
	file, err := os.ReadFile("testdata/phone.heic")
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// turned returns the picture with a rotation against the clock by so many right
// angles (ISO/IEC 23008-12, 6.5.10): a property more in the list of those, named as
// the fourth of the first item, and all that lies behind it moved.
func turned(t testing.TB, heic []byte, angle byte) []byte {
	t.Helper()
	out := bytes.Clone(heic)
	add := func(at, n int) { binary.BigEndian.PutUint32(out[at:], binary.BigEndian.Uint32(out[at:])+uint32(n)) }
	find := func(name string) int {
		i := bytes.Index(out, []byte(name))
		if i < 0 {
			t.Fatalf("the picture has no %s", name)
		}
		return i - 4 // where the size stands
	}
	box := []byte{0, 0, 0, 9, 'i', 'r', 'o', 't', angle}
	iloc, ipma := find("iloc"), find("ipma")
	add(find("meta"), len(box)+1)
	add(find("iprp"), len(box)+1)
	add(find("ipco"), len(box))
	add(ipma, 1)
	for _, extent := range []int{20, 38} {
		add(iloc+extent, len(box)+1)
	}
	// The first item's count of properties and the last of them.
	count := ipma + 18
	if out[count] != 3 {
		t.Fatalf("the picture has %d properties", out[count])
	}
	out[count] = 4
	out = bytes.Join([][]byte{out[:count+4], {0x84}, out[count+4:]}, nil)
	return bytes.Join([][]byte{out[:ipma], box, out[ipma:]}, nil)
}

// drawing has no symmetry, so that no two turns of it are alike.
func drawing() *image.NRGBA {
	const width, height = 192, 144
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

// difference returns how far two pictures are apart, in steps of 255 on average.
func difference(t testing.TB, a, b image.Image) float64 {
	t.Helper()
	if a.Bounds() != b.Bounds() {
		t.Fatalf("one is %v and one %v", a.Bounds(), b.Bounds())
	}
	x, y := imaging.Clone(a), imaging.Clone(b)
	sum := 0
	for i := range x.Pix {
		sum += max(int(x.Pix[i])-int(y.Pix[i]), int(y.Pix[i])-int(x.Pix[i]))
	}
	return float64(sum) / float64(len(x.Pix))
}

func TestDevelop(t *testing.T) {
	lab := &Lab{Command: running("serve")}
	defer lab.Close()
	file := phone(t)
	for _, c := range []struct {
		name string
		file []byte
		want *image.NRGBA // nil where it cannot be developed
	}{
		{"upright", file, drawing()},
		{"quarter turn", turned(t, file, 1), imaging.Rotate90(drawing())},
		{"junk", bytes.Repeat([]byte("linen"), 4000), nil},
		{"nothing", nil, nil},
		{"half turn", turned(t, file, 2), imaging.Rotate180(drawing())},
		{"torn", file[:len(file)/2], nil},
		{"three quarter turn", turned(t, file, 3), imaging.Rotate270(drawing())},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, fault, err := lab.Develop(t.Context(), c.file)
			if err != nil {
				t.Fatal(err)
			}
			if c.want == nil {
				if fault == nil || !strings.Contains(fault.Reason, "damaged") {
					t.Errorf("fault %v", fault)
				}
				return
			}
			if fault != nil {
				t.Fatal(fault.Reason)
			}
			m, err := jpeg.Decode(bytes.NewReader(out))
			if err != nil {
				t.Fatal(err)
			}
			if d := difference(t, m, c.want); d > 2 {
				t.Errorf("%.1f steps from the drawing", d)
			}
			if bytes.Contains(out, []byte("Exif")) || bytes.Contains(out, []byte("2026:03:01")) {
				t.Error("the date came along")
			}
		})
	}
}

// What happens to the process happens to one picture only.
func TestLabOutlivesItsProcess(t *testing.T) {
	lab := &Lab{Command: running("fall over")}
	defer lab.Close()
	if _, fault, err := lab.Develop(t.Context(), phone(t)); err != nil || fault == nil || !strings.Contains(fault.Reason, "broke off") {
		t.Errorf("fell over: %v, %v", fault, err)
	}
	lab.Command, lab.Patience = running("hang"), 200*time.Millisecond
	if _, fault, err := lab.Develop(t.Context(), phone(t)); err != nil || fault == nil || !strings.Contains(fault.Reason, "within 200ms") {
		t.Errorf("hung: %v, %v", fault, err)
	}
	lab.Command, lab.Patience = running("serve"), 0
	if _, fault, err := lab.Develop(t.Context(), phone(t)); err != nil || fault != nil {
		t.Errorf("afterwards: %v, %v", fault, err)
	}
	lab.Close()
	ctx, stop := context.WithCancel(t.Context())
	lab.Command = running("hang")
	time.AfterFunc(100*time.Millisecond, stop)
	if _, _, err := lab.Develop(ctx, phone(t)); !errors.Is(err, context.Canceled) {
		t.Errorf("called off: %v", err)
	}
	lab.Command = func() (*exec.Cmd, error) { return exec.Command(filepath.Join(t.TempDir(), "gone")), nil }
	if _, _, err := lab.Develop(t.Context(), phone(t)); err == nil {
		t.Error("a process that cannot be started is no error")
	}
}

// TestAgainstLibheif compares with what libheif's own converter makes of the same
// file.
func TestAgainstLibheif(t *testing.T) {
	convert, err := exec.LookPath("heif-convert")
	if err != nil {
		if os.Getenv("HUSSIF_OUTSIDE") == "required" {
			t.Fatal(err)
		}
		t.Skip(err)
	}
	for angle := range byte(4) {
		file := turned(t, phone(t), angle)
		dir := t.TempDir()
		from, to := filepath.Join(dir, "a.heic"), filepath.Join(dir, "a.png")
		if err := os.WriteFile(from, file, 0o600); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command(convert, from, to).CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		made, err := os.ReadFile(to)
		if err != nil {
			t.Fatal(err)
		}
		want, err := png.Decode(bytes.NewReader(made))
		if err != nil {
			t.Fatal(err)
		}
		out, err := develop(file)
		if err != nil {
			t.Fatal(err)
		}
		got, err := jpeg.Decode(bytes.NewReader(out))
		if err != nil {
			t.Fatal(err)
		}
		if d := difference(t, got, want); d > 2 {
			t.Errorf("turned by %d: %.1f steps apart", angle, d)
		}
	}
}

// FuzzDevelop damages pictures. The lab must come back from all of them, with a
// picture or a reason.
func FuzzDevelop(f *testing.F) {
	f.Add(phone(f))
	f.Add(turned(f, phone(f), 1))
	lab := &Lab{Command: running("serve"), Patience: 3 * time.Second}
	f.Cleanup(lab.Close)
	f.Fuzz(func(t *testing.T, file []byte) {
		out, fault, err := lab.Develop(t.Context(), file)
		if err != nil {
			t.Fatal(err)
		}
		if fault == nil && len(out) == 0 {
			t.Error("no picture and no reason")
		}
	})
}
