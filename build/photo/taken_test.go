package photo

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/bep/imagemeta"

	"hussif/build/photo/phototest"
)

// The form of the two fields is that of CIPA DC-008, 4.6.6, DateTimeOriginal and
// OffsetTimeOriginal; its example of blanks for an unknown date is among them.
func TestParseTaken(t *testing.T) {
	for _, c := range []struct{ date, offset, want string }{
		{"2026:03:01 18:22:03", "+01:00", "2026-03-01T18:22:03+01:00"},
		{"2026:03:01 18:22:03\x00", "+01:00\x00", "2026-03-01T18:22:03+01:00"},
		{"2026:03:01 00:00:01", "-09:30", "2026-03-01T00:00:01-09:30"},
		{"2024:02:29 23:59:59", "+14:00", "2024-02-29T23:59:59+14:00"},
		{"2026:03:01 18:22:03", "Z", "2026-03-01T18:22:03Z"},
		{"2026:03:01 18:22:03", "", "2026-03-01T18:22:03 unzoned"},
		{"2026:03:01 18:22:03", "   :  ", "2026-03-01T18:22:03 unzoned"},
		{"2026:03:01 18:22:03", "+1:00", "2026-03-01T18:22:03 unzoned"},
		{"2026:03:01 18:22:03", "+01:75", "2026-03-01T18:22:03 unzoned"},
		{"2026:03:01 18:22:03", "+-1:00", "2026-03-01T18:22:03 unzoned"},
		{"2026-03-01 18:22:03", "", "2026-03-01T18:22:03 unzoned"},
		{"2026:03:01T18:22:03.25", "", "2026-03-01T18:22:03 unzoned"},
		{"2026:03:01", "", "2026-03-01T00:00:00 unzoned"},
		{"2026:03:01   :  :  ", "", "2026-03-01T00:00:00 unzoned"},
		{"2026:03:01 24:61:00", "", "2026-03-01T00:00:00 unzoned"},
		{"    :  :     :  :  ", "", ""},
		{"0000:00:00 00:00:00", "", ""},
		{"0000:01:01 00:00:00", "", ""},
		{"2026:02:29 18:22:03", "", ""},
		{"2026:13:01 18:22:03", "", ""},
		{"1 March 2026, early", "", ""},
		{"", "+01:00", ""},
	} {
		taken := parseTaken(c.date, c.offset)
		got := ""
		switch {
		case taken.Zoned:
			got = taken.Time.Format(time.RFC3339)
		case !taken.IsZero():
			got = taken.Time.Format("2006-01-02T15:04:05") + " unzoned"
		}
		if got != c.want {
			t.Errorf("%q %q: %q, want %q", c.date, c.offset, got, c.want)
		}
	}
}

// All three formats carry the block, each in a place of its own.
func TestTakenInFiles(t *testing.T) {
	block := phototest.Exif("2026:03:01 18:22:03", "+01:00")
	still := asJPEG(t, drawing(40, 30))
	for name, file := range map[string][]byte{
		"a.jpg": withSegments(still, segment(markAPP1, "Exif\x00\x00"+string(block))),
		"a.png": withChunks(pngOf(t, drawing(40, 30)), chunk("eXIf", string(block))),
		"b.jpg": phototest.JPEG(1, "2026:03:01 18:22:03", "+01:00"),
	} {
		found, fault, err := Examine(bytes.NewReader(file), int64(len(file)), name)
		if fault != nil || err != nil {
			t.Fatalf("%s: %v %v", name, fault, err)
		}
		if got := found.Taken.Time.Format(time.RFC3339); got != "2026-03-01T18:22:03+01:00" {
			t.Errorf("%s was taken %s", name, got)
		}
	}
	found, _, _ := Examine(bytes.NewReader(still), int64(len(still)), "c.jpg")
	if !found.Taken.IsZero() {
		t.Errorf("a picture without a date was taken %v", found.Taken.Time)
	}
}

// TestTakenAgainstExifTool has ExifTool write the dates that are read here, and read
// those that phototest writes.
func TestTakenAgainstExifTool(t *testing.T) {
	tool := outside(t, "exiftool")
	dir := t.TempDir()
	name := filepath.Join(dir, "a.jpg")
	for _, c := range []struct{ date, offset string }{
		{"2026:03:01 18:22:03", "+01:00"},
		{"1999:12:31 23:59:59", "-11:00"},
		{"2024:02:29 00:00:00", ""},
	} {
		for _, ending := range []string{".jpg", ".png", ".webp"} {
			name := filepath.Join(dir, "b"+ending)
			m := filepath.Join(dir, "m.png")
			if err := os.WriteFile(m, pngOf(t, drawing(40, 30)), 0o600); err != nil {
				t.Fatal(err)
			}
			run(t, outside(t, "convert"), m, name)
			args := []string{"-q", "-overwrite_original", "-DateTimeOriginal=" + c.date, "-CreateDate=2001:01:01 01:01:01"}
			if c.offset != "" {
				args = append(args, "-OffsetTimeOriginal="+c.offset, "-OffsetTime=+05:00")
			}
			run(t, tool, append(args, name)...)
			file, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			found, fault, err := Examine(bytes.NewReader(file), int64(len(file)), name)
			if fault != nil || err != nil {
				t.Fatalf("%s: %v %v", ending, fault, err)
			}
			want := parseTaken(c.date, c.offset)
			if want.IsZero() || !found.Taken.Time.Equal(want.Time) || found.Taken.Zoned != want.Zoned {
				t.Errorf("%s of %s %s: taken %v", ending, c.date, c.offset, found.Taken)
			}
		}
		if err := os.WriteFile(name, phototest.JPEG(1, c.date, c.offset), 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command(tool, "-s3", "-DateTimeOriginal", "-OffsetTimeOriginal", name).Output()
		if got := strings.TrimSpace(strings.ReplaceAll(string(out), "\n", " ")); err != nil || got != strings.TrimSpace(c.date+" "+c.offset) {
			t.Errorf("ExifTool reads %q, %v", got, err)
		}
	}
}

func FuzzTaken(f *testing.F) {
	f.Add("2026:03:01 18:22:03", "+01:00")
	f.Add("    :  :     :  :  ", "   :  ")
	f.Add("2026-03-01", "Z")
	f.Fuzz(func(t *testing.T, date, offset string) {
		taken := parseTaken(date, offset)
		if taken.IsZero() {
			return
		}
		// The day is the camera's, whatever the zone.
		day := strings.ReplaceAll(strings.Trim(date, " \x00")[:10], "-", ":")
		if got := taken.Time.Format("2006:01:02"); got != day {
			t.Errorf("%q %q was taken on %s", date, offset, got)
		}
	})
}

// FuzzDescribed looks for files that make the library panic or run on.
func FuzzDescribed(f *testing.F) {
	f.Add(phototest.Exif("2026:03:01 18:22:03", "+01:00"), false)
	heic, err := os.ReadFile("../develop/testdata/phone.heic")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(heic, true)
	f.Fuzz(func(t *testing.T, file []byte, heif bool) {
		format := imagemeta.TIFF
		if heif {
			format = imagemeta.HEIF
		}
		if taken, _ := described(bytes.NewReader(file), format); taken.Time.Year() > 9999 {
			t.Errorf("taken %v", taken.Time)
		}
	})
}
