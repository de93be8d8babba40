package intake

import (
	"path"
	"regexp"
	"strings"
	"testing"

	"hussif/content/edtf"
)

func TestNameFor(t *testing.T) {
	day := edtf.DayOf(2026, 3, 1)
	for _, c := range []struct{ camera, want string }{
		{"DCIM/100ABC/IMG_0001.JPG", "2026-03-01-img-0001.jpg"},
		{"_DSC0042.jpg", "2026-03-01-dsc0042.jpg"},
		{"PXL_20260301_182203123.jpg", "pxl-20260301-182203123.jpg"},
		{"2026-03-01 18.22.03.jpeg", "2026-03-01-18-22-03.jpg"},
		{"Rückseite (2).HEIC", "2026-03-01-r-ckseite-2.jpg"},
		{"衣.jpg", "2026-03-01.jpg"},
		{"a'b\"c\nd.jpg", "2026-03-01-a-b-c-d.jpg"},
		{strings.Repeat("long ", 40) + ".jpg", "2026-03-01-" + strings.Repeat("long-", 11) + "long.jpg"},
	} {
		if got := nameFor(Shot{Path: c.camera, Day: day, Ending: ".jpg"}); got != c.want {
			t.Errorf("%q: %q, want %q", c.camera, got, c.want)
		}
	}
}

func FuzzNameFor(f *testing.F) {
	f.Add("IMG_0001.JPG")
	f.Add("_ .. .jpg")
	fine := regexp.MustCompile(`^[a-z0-9][a-z0-9-]*[a-z0-9]\.png$`)
	f.Fuzz(func(t *testing.T, camera string) {
		got := nameFor(Shot{Path: camera, Day: 20_000, Ending: ".png"})
		if !fine.MatchString(got) || len(got) > 80 {
			t.Errorf("%q: %q", camera, got)
		}
		for n := 1; n < 4; n++ {
			if !isNumbered(numbered(got, n), got) {
				t.Errorf("%q is not %q numbered", numbered(got, n), got)
			}
		}
	})
}

func TestRelative(t *testing.T) {
	for _, c := range []struct{ folder, file, want string }{
		{"builds/a", "builds/a/photos/x.jpg", "photos/x.jpg"},
		{"builds/a/2026", "builds/a/photos/x.jpg", "../photos/x.jpg"},
		{"notes", "builds/a/photos/x.jpg", "../builds/a/photos/x.jpg"},
		{"builds/ab", "builds/a/photos/x.jpg", "../a/photos/x.jpg"},
		{".", "builds/a/photos/x.jpg", "builds/a/photos/x.jpg"},
	} {
		got := relative(c.folder, c.file)
		if got != c.want || path.Join(c.folder, got) != c.file {
			t.Errorf("from %s to %s: %s, want %s", c.folder, c.file, got, c.want)
		}
	}
}
