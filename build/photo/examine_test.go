package photo

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"hussif/build/photo/phototest"
)

func TestExamine(t *testing.T) {
	picture := phototest.JPEG(1, "2026:03:01 18:22:03", "")
	phone, err := os.ReadFile("../develop/testdata/phone.heic")
	if err != nil {
		t.Fatal(err)
	}
	// The compatible brands follow the major one and the version: ISO/IEC 14496-12,
	// 4.3.
	general := bytes.Replace(phone, []byte("ftypheic"), []byte("ftypmif1"), 1)
	other := bytes.ReplaceAll(general, []byte("heic"), []byte("miaf"))
	for _, c := range []struct {
		name, want string
		file       []byte
	}{
		{"a.jpg", ".jpg a JPEG 2026-03-01", picture},
		{"phone.HEIC", ".jpg a JPEG 2026-03-01", picture}, // as phones name what they have sent on
		{"", ".jpg a JPEG 2026-03-01", picture},
		{"a.jpg", ".png a PNG 0001-01-01", pngOf(t, drawing(9, 9))},
		{"a.heic", ".jpg a HEIC picture 2026-03-01 HEIC", phone},
		{"a.heic", ".jpg a HEIC picture 2026-03-01 HEIC", general},
		{"a.heic", " a HEIF picture 0001-01-01", other},
		{"a.mov", " a film 0001-01-01", []byte("\x00\x00\x00\x14ftypqt  \x00\x00\x00\x00qt  ")},
		{"a.nef", " a camera's raw picture 0001-01-01", []byte("MM\x00*\x00\x00\x00\x08")},
		{"a.txt", "  0001-01-01", []byte("pins, chalk\n")},
		{"a.jpg", "this file is empty; copy it from the camera or phone again", nil},
		{"a.jpg", "this JPEG ends too early", picture[:len(picture)-200]},
		{"a.heic", "this HEIC picture is damaged (it does not say how large it is)", phone[:60]},
		{"a.heic", "this HEIC picture is 127 by 144, too small", bytes.Replace(phone, []byte("ispe\x00\x00\x00\x00\x00\x00\x00\xc0"), []byte("ispe\x00\x00\x00\x00\x00\x00\x00\x7f"), 1)},
		{"a.heic", "this HEIC picture is 16777408 by 144, which is more", bytes.Replace(phone, []byte("ispe\x00\x00\x00\x00\x00\x00\x00\xc0"), []byte("ispe\x00\x00\x00\x00\x01\x00\x00\xc0"), 1)},
	} {
		found, fault, err := Examine(bytes.NewReader(c.file), int64(len(c.file)), c.name)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		got := fmt.Sprintf("%s %s %s", found.Ending, found.Called, found.Taken.Time.Format(time.DateOnly))
		if found.HEIC {
			got += " HEIC"
		}
		if fault != nil {
			got = fault.Reason
		}
		if fault == nil && got != c.want || fault != nil && (c.want == "" || !strings.HasPrefix(got, c.want)) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A file's header can be sound and its pixels not.
func TestProve(t *testing.T) {
	sound := pngOf(t, drawing(60, 40))
	torn := bytes.Clone(sound)
	torn[len(torn)/2] ^= 0x55
	for _, c := range []struct {
		file []byte
		want string
	}{{sound, ""}, {torn, "this PNG is damaged"}} {
		found, fault, err := Examine(bytes.NewReader(c.file), int64(len(c.file)), "a.png")
		if fault != nil || err != nil {
			t.Fatal(fault, err)
		}
		fault, err = found.Prove(t.Context(), bytes.NewReader(c.file), int64(len(c.file)))
		if err != nil {
			t.Fatal(err)
		}
		if fault == nil && c.want != "" || fault != nil && (c.want == "" || !strings.HasPrefix(fault.Reason, c.want)) {
			t.Errorf("%v, want %q", fault, c.want)
		}
	}
}

func TestComment(t *testing.T) {
	const prefix = "made of "
	file := phototest.JPEG(1, "2026:03:01 18:22:03", "")
	if _, ok := Comment(bytes.NewReader(file), int64(len(file)), prefix); ok {
		t.Error("there is a comment before one is made")
	}
	for _, text := range []string{"", "linen", strings.Repeat("x", 60_000)} {
		with := WithComment(WithComment(file, "another"), prefix+text)
		with = WithComment(with, "and another")
		got, ok := Comment(bytes.NewReader(with), int64(len(with)), prefix)
		if !ok || got != text {
			t.Errorf("%.20q came back as %.20q, %v", text, got, ok)
		}
		found, fault, err := Examine(bytes.NewReader(with), int64(len(with)), "a.jpg")
		if fault != nil || err != nil || found.Taken.IsZero() {
			t.Errorf("with a comment: %+v %v %v", found, fault, err)
		}
	}
}

func FuzzComment(f *testing.F) {
	f.Add(WithComment(phototest.JPEG(1, "2026:03:01 18:22:03", ""), "made of linen"))
	f.Add([]byte("\xff\xd8\xff\xfe\x00\x00\xff\xfe\x00\x01"))
	f.Fuzz(func(t *testing.T, file []byte) {
		if text, ok := Comment(bytes.NewReader(file), int64(len(file)), "made of "); ok && !bytes.Contains(file, []byte(text)) {
			t.Errorf("%q is not in the file", text)
		}
	})
}

func FuzzExamine(f *testing.F) {
	f.Add(phototest.JPEG(1, "2026:03:01 18:22:03", "+01:00"), "a.jpg")
	f.Add([]byte("\x00\x00\x00\x18ftypmif1\x00\x00\x00\x00mif1heic"), "a.heic")
	f.Fuzz(func(t *testing.T, file []byte, name string) {
		found, fault, err := Examine(bytes.NewReader(file), int64(len(file)), name)
		if err != nil {
			t.Fatal(err)
		}
		if fault == nil && found.Ending != "" && found.Called == "" {
			t.Errorf("a picture of no format: %+v", found)
		}
	})
}

// A file of a size that no picture has is not read through, whatever it begins with.
func TestHugeFiles(t *testing.T) {
	head := phototest.JPEG(1, "", "")
	huge := io.NewSectionReader(nothing(head), 0, 10<<30)
	begun := time.Now()
	_, fault, err := look("a.jpg", huge, huge.Size())
	if err != nil || fault == nil || !strings.Contains(fault.Reason, "this file has 10240 MB") {
		t.Errorf("looked at: %v, %v", fault, err)
	}
	_, fault, err = Examine(huge, huge.Size(), "a.jpg")
	if err != nil || fault == nil || !strings.Contains(fault.Reason, "this file has 10240 MB") {
		t.Errorf("examined: %v, %v", fault, err)
	}
	if took := time.Since(begun); took > 5*time.Second {
		t.Errorf("took %v", took)
	}
}

// nothing is a file with a beginning and then zero bytes without end.
type nothing []byte

func (n nothing) ReadAt(p []byte, off int64) (int, error) {
	clear(p)
	if off < int64(len(n)) {
		copy(p, n[off:])
	}
	return len(p), nil
}
