package intake

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"hussif/content/journal"
)

const twoBuilds = `
-- journal.yaml --
title: Two at work
-- builds/jacket/build.md --
A jacket.
-- builds/jacket/2026-02-14-cut.md --
Cut it.
-- builds/jacket/2026-03-01-fitting.md --
Tried it on.
-- builds/skirt/build.md --
A skirt.
-- builds/skirt/2026-03-04-hem.md --
Hemmed it.
`

func TestPlan(t *testing.T) {
	for _, c := range []struct {
		name, journal string
		camera        []string
		want          string
	}{
		{
			"a day that has a note", twoBuilds, []string{"DCIM/100/IMG_1.JPG 1 2026:03:01 18:22:03"}, `
2026-03-01 builds/jacket/2026-03-01-fitting.md; it has a note of that day
  DCIM/100/IMG_1.JPG -> builds/jacket/photos/2026-03-01-img-1.jpg
`,
		},
		{
			// It was the second of March in London by then.
			"the day is the camera's", twoBuilds, []string{"a.jpg 1 2026:03:01 23:30:00 -08:00", "b.jpg 2 2026:03:02 00:10:00 +13:00"}, `
2026-03-01 builds/jacket/2026-03-01-fitting.md; it has a note of that day
  a.jpg -> builds/jacket/photos/2026-03-01-a.jpg
2026-03-02 builds/jacket/2026-03-02-photos.md new; its note of 2026-03-01 is the nearest
  b.jpg -> builds/jacket/photos/2026-03-02-b.jpg
`,
		},
		{
			"the nearest note, before or after", twoBuilds, []string{"a.jpg 1 2026:03:03 10:00:00", "b.jpg 2 2026:02:20 10:00:00"}, `
2026-02-20 builds/jacket/2026-02-20-photos.md new; its note of 2026-02-14 is the nearest
  b.jpg -> builds/jacket/photos/2026-02-20-b.jpg
2026-03-03 builds/skirt/2026-03-03-photos.md new; its note of 2026-03-04 is the nearest
  a.jpg -> builds/skirt/photos/2026-03-03-a.jpg
`,
		},
		{
			"the file's time, and the order of a day", twoBuilds, []string{"z.jpg 1 2026:05:17 08:00:00", "b.jpg 2", "a.jpg 3 2026:05:17 20:00:00"}, `
2026-05-17 builds/skirt/2026-05-17-photos.md new; its note of 2026-03-04 is the nearest
  z.jpg -> builds/skirt/photos/2026-05-17-z.jpg
  b.jpg -> builds/skirt/photos/2026-05-17-b.jpg by file
  a.jpg -> builds/skirt/photos/2026-05-17-a.jpg
`,
		},
		{
			"one name twice, and one that is taken in capitals", twoBuilds + "-- builds/jacket/photos/2026-03-01-IMG-1.JPG --\nanother\n",
			[]string{"100/IMG_1.JPG 1 2026:03:01 18:22:03", "101/IMG_1.JPG 2 2026:03:01 18:22:04"}, `
2026-03-01 builds/jacket/2026-03-01-fitting.md; it has a note of that day
  100/IMG_1.JPG -> builds/jacket/photos/2026-03-01-img-1-2.jpg
  101/IMG_1.JPG -> builds/jacket/photos/2026-03-01-img-1-3.jpg
`,
		},
		{
			"a picture twice", twoBuilds, []string{"a.jpg 1 2026:03:01 18:22:03", "sub/b.jpeg 1 2026:03:01 18:22:03"}, `
2026-03-01 builds/jacket/2026-03-01-fitting.md; it has a note of that day
  a.jpg -> builds/jacket/photos/2026-03-01-a.jpg
double sub/b.jpeg = a.jpg
`,
		},
		{
			"two builds on one day: the other notes tell", twoBuilds + "-- builds/skirt/2026-03-01-pleats.md --\nPleated.\n",
			[]string{"a.jpg 1 2026:03:01 18:22:03"}, `
2026-03-01 builds/skirt/2026-03-01-pleats.md; it has a note of that day, as has one more build
  a.jpg -> builds/skirt/photos/2026-03-01-a.jpg
`,
		},
		{
			"two builds alike: the names tell", `
-- builds/b/build.md --
-- builds/b/2026-03-01.md --
-- builds/a/build.md --
-- builds/a/2026-03-01.md --
-- builds/c/build.md --
`, []string{"a.jpg 1 2026:03:02 18:22:03"}, `
2026-03-02 builds/a/2026-03-02-photos.md new; its note of 2026-03-01 is the nearest, as has one more build
  a.jpg -> builds/a/photos/2026-03-02-a.jpg
`,
		},
		{
			"the only build has no note", "-- builds/cap.md --\nA cap.\n", []string{"a.jpg 1 2026:03:02 18:22:03"}, `
2026-03-02 builds/cap/2026-03-02-photos.md new; the only build
  a.jpg -> builds/cap/photos/2026-03-02-a.jpg
`,
		},
		{
			"a note with errors is left alone", `
-- builds/cap/build.md --
-- builds/cap/2026-03-02-ribbon.md --
---
hours: many
---
`, []string{"a.jpg 1 2026:03:02 18:22:03"}, `
2026-03-02 builds/cap/2026-03-02-photos.md new; the only build; builds/cap/2026-03-02-ribbon.md has errors
  a.jpg -> builds/cap/photos/2026-03-02-a.jpg
`,
		},
		{
			"a note whose photos cannot be added to", `
-- builds/cap/build.md --
-- builds/cap/2026-03-02-ribbon.md --
---
photos: photos/old.jpg
---
-- builds/cap/photos/old.jpg --
old
`, []string{"a.jpg 1 2026:03:02 18:22:03"}, `
2026-03-02 builds/cap/2026-03-02-photos.md new; the only build; builds/cap/2026-03-02-ribbon.md: ` + "`photos:` holds a single value where a list should be" + `
  a.jpg -> builds/cap/photos/2026-03-02-a.jpg
`,
		},
		{
			"names of new notes stay clear of other pages", `
-- builds/cap/build.md --
-- builds/hood/build.md --
-- builds/hood/2026-03-02-photos.md --
---
date: 2026-03-20
---
-- builds/cap/2026-03-01.md --
`, []string{"a.jpg 1 2026:03:02 18:22:03"}, `
2026-03-02 builds/cap/2026-03-02-photos-2.md new; its note of 2026-03-01 is the nearest
  a.jpg -> builds/cap/photos/2026-03-02-a.jpg
`,
		},
		{
			"notes that lie elsewhere", `
-- builds/cap/build.md --
-- builds/cap/2026/2026-03-02.md --
-- builds/hood/build.md --
-- notes/2026-03-03.md --
---
build: hood
---
`, []string{"a.jpg 1 2026:03:02 18:22:03", "b.jpg 2 2026:03:03 18:22:03"}, `
2026-03-02 builds/cap/2026/2026-03-02.md; it has a note of that day
  a.jpg -> builds/cap/photos/2026-03-02-a.jpg
2026-03-03 notes/2026-03-03.md; it has a note of that day
  b.jpg -> builds/hood/photos/2026-03-03-b.jpg
`,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := said(plan(t, sorting(t, laid(t, c.journal), camera(c.camera...))))
			if diff := cmp.Diff(c.want[1:], got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestPlanForOneBuild(t *testing.T) {
	s := sorting(t, laid(t, twoBuilds), camera("a.jpg 1 2026:03:01 18:22:03"))
	s.Build = s.Journal.Build(journal.Ref{To: "skirt"})
	want := "2026-03-01 builds/skirt/2026-03-01-photos.md new\n  a.jpg -> builds/skirt/photos/2026-03-01-a.jpg\n"
	if got := said(plan(t, s)); got != want {
		t.Errorf("%s", got)
	}
}

func TestPlanLeavesOut(t *testing.T) {
	pictures := camera("a.jpg 1 2026:03:01 18:22:03", "journal/x.jpg 2 2026:03:01 18:22:03", ".trash/b.jpg 3", "._a.jpg 4", "MVI_1.THM 5", "torn.jpg 6")
	pictures["torn.jpg"].Data = pictures["torn.jpg"].Data[:300]
	grey := pictures["a.jpg"].Data
	spoilt := append([]byte(nil), grey...)
	for i := len(spoilt) - 60; i < len(spoilt)-2; i++ {
		spoilt[i] = 0xff // no code of any table
	}
	for name, data := range map[string]string{
		"spoilt.jpg": string(spoilt), "MVI_1.MOV": "\x00\x00\x00\x14ftypqt  \x00\x00\x00\x00qt  ", "list.txt": "pins",
		"empty.jpg": "", "b\xff.jpg": string(grey),
	} {
		pictures[name] = &fstest.MapFile{Data: []byte(data), ModTime: noon}
	}
	s := sorting(t, laid(t, twoBuilds), pictures)
	s.Except = "journal"
	got := said(plan(t, s))
	want := `2026-03-01 builds/jacket/2026-03-01-fitting.md; it has a note of that day
  a.jpg -> builds/jacket/photos/2026-03-01-a.jpg
left MVI_1.MOV: a film; only JPEG, PNG, WebP and HEIC pictures are taken
left MVI_1.THM: a small picture of a film, left by the camera
left trouble b?.jpg: its name is not UTF-8; rename it
left trouble empty.jpg: this file is empty; copy it from the camera or phone again
left list.txt: not a picture of a known format
left trouble spoilt.jpg: this JPEG is damaged (invalid JPEG format: missing 0xff00 sequence); copy it again, or open it and save it anew
left trouble torn.jpg: this JPEG ends too early; copy it from the camera or phone again
`
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A camera's folder on a disk may have links that lead out of it, or round in it.
func TestPlanFollowsNoLinks(t *testing.T) {
	dir := t.TempDir()
	for name, file := range camera("a.jpg 1 2026:03:01 18:22:03", "shut/b.jpg 2", "c.jpg 3") {
		put(t, filepath.Join(dir, name), file.Data)
	}
	if err := os.Symlink(dir, filepath.Join(dir, "round")); err != nil {
		t.Skip(err)
	}
	if err := os.Symlink(filepath.Join(dir, "a.jpg"), filepath.Join(dir, "link.jpg")); err != nil {
		t.Fatal(err)
	}
	got := said(plan(t, sorting(t, laid(t, twoBuilds), os.DirFS(dir))))
	for _, want := range []string{"left link.jpg: a link", "left round: a link"} {
		if !contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if contains(got, "double") {
		t.Errorf("a link was followed:\n%s", got)
	}
}

func TestPlanRefuses(t *testing.T) {
	pictures := camera("a.jpg 1 2026:03:01 18:22:03")
	s := sorting(t, laid(t, "-- builds/a/build.md --\n-- builds/b/build.md --\n"), pictures)
	if _, err := s.Plan(t.Context()); !errors.Is(err, ErrWhichBuild) {
		t.Errorf("two builds without notes: %v", err)
	}
	s = sorting(t, laid(t, "-- builds/a/build.md --\n-- builds/a/photos --\nin words\n"), pictures)
	if _, err := s.Plan(t.Context()); err == nil || !contains(err.Error(), "builds/a/photos is a file") {
		t.Errorf("photos is a file: %v", err)
	}
}
