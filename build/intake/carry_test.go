package intake

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/google/go-cmp/cmp"

	"hussif/build/check"
	"hussif/build/photo"
	"hussif/content/journal"
	"hussif/content/source"
)

func contains(s, part string) bool { return strings.Contains(s, part) }

func carry(t testing.TB, d *Desk, p *Plan) Report {
	t.Helper()
	r, err := d.Carry(t.Context(), p)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The note is one that an editor of another system wrote: a byte order mark, CR LF,
// comments, and no line end at the end.
const herNote = "\xef\xbb\xbf---\r\n# tried on twice\r\nphotos: # the best ones\r\n  - {file: 'photos/old.jpg', alt: \"The back\"}   # keep\r\nstage:   fitting\r\n---\r\nTried it on."

func TestCarry(t *testing.T) {
	pictures := camera("DCIM/IMG_1.JPG 1 2026:03:01 18:22:03", "DCIM/IMG_2.JPG 2 2026:03:01 18:22:04", "c.png 3 2026:03:02 09:00:00")
	dir := laid(t, twoBuilds)
	note := filepath.Join(dir, "builds/jacket/2026-03-01-fitting.md")
	put(t, note, []byte(herNote))
	put(t, filepath.Join(dir, "builds/jacket/photos/old.jpg"), camera("x 9")["x"].Data)
	if err := os.Chmod(note, 0o640); err != nil {
		t.Fatal(err)
	}
	before := tree(t, dir)
	carry(t, desk(t, dir, pictures), plan(t, sorting(t, dir, pictures)))
	after := tree(t, dir)

	want := map[string]string{
		"builds/jacket/2026-03-01-fitting.md": strings.Replace(herNote, "   # keep\r\n",
			"   # keep\r\n  - {file: photos/2026-03-01-img-1.jpg}\r\n  - {file: photos/2026-03-01-img-2.jpg}\r\n", 1),
		"builds/jacket/photos/2026-03-01-img-1.jpg": string(pictures["DCIM/IMG_1.JPG"].Data),
		"builds/jacket/photos/2026-03-01-img-2.jpg": string(pictures["DCIM/IMG_2.JPG"].Data),
		"builds/jacket/photos/2026-03-02-c.jpg":     string(pictures["c.png"].Data), // which is a JPEG
		"builds/jacket/2026-03-02-photos.md":        "---\nphotos:\n  - file: photos/2026-03-02-c.jpg\n    alt:\n---\n",
	}
	for name, text := range before {
		if _, ok := want[name]; !ok {
			want[name] = text
		}
	}
	if diff := cmp.Diff(want, after); diff != "" {
		t.Error(diff)
	}
	if info, err := os.Stat(note); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("the note is %v, %v", info.Mode(), err)
	}
	if info, err := os.Stat(filepath.Join(dir, "builds/jacket/photos/2026-03-02-c.jpg")); err != nil || !info.ModTime().Equal(noon) {
		t.Errorf("the copy is of %v, %v", info.ModTime(), err)
	}
	sound(t, dir)

	// Again: nothing.
	p := plan(t, sorting(t, dir, pictures))
	if p.Pictures() != 0 || len(p.Doubles) != 3 {
		t.Errorf("again:\n%s", said(p))
	}
	carry(t, desk(t, dir, pictures), p)
	if diff := cmp.Diff(after, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
	// And when she has put one elsewhere.
	from := filepath.Join(dir, "builds/jacket/photos/2026-03-01-img-2.jpg")
	if err := os.Rename(from, filepath.Join(dir, "builds/jacket/back.jpg")); err != nil {
		t.Fatal(err)
	}
	put(t, note, []byte(strings.Replace(after["builds/jacket/2026-03-01-fitting.md"], "photos/2026-03-01-img-2.jpg", "back.jpg", 1)))
	if got := said(plan(t, sorting(t, dir, pictures))); !contains(got, "double DCIM/IMG_2.JPG = builds/jacket/back.jpg\n") {
		t.Errorf("elsewhere:\n%s", got)
	}
}

// sound sees that check finds no more than missing words.
func sound(t testing.TB, dir string) {
	t.Helper()
	files := os.DirFS(dir)
	j, found, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range check.Run(j, files, found) {
		if f.Level != source.Hint {
			t.Errorf("%s: %s", f.Span, f.Text)
		}
	}
}

// A run that is stopped anywhere loses nothing, and the next one completes it.
func TestCarryStopped(t *testing.T) {
	pictures := camera("a.jpg 1 2026:03:01 10:00:00", "b.jpg 2 2026:03:01 11:00:00", "c.jpg 3 2026:03:04 10:00:00", "d.jpg 4 2026:03:09 10:00:00")
	whole := laid(t, twoBuilds)
	carry(t, desk(t, whole, pictures), plan(t, sorting(t, whole, pictures)))
	want := tree(t, whole)
	for after := range 5 {
		dir := laid(t, twoBuilds)
		ctx, stop := context.WithCancel(t.Context())
		d := desk(t, dir, pictures)
		d.Progress = func(done, _ int) {
			if done == after {
				stop()
			}
		}
		if after == 0 {
			stop()
		}
		r, err := d.Carry(ctx, plan(t, sorting(t, dir, pictures)))
		if after < 4 && !errors.Is(err, context.Canceled) {
			t.Fatalf("after %d: %v", after, err)
		}
		got := 0
		for _, e := range r.Notes {
			got += len(e.Pictures)
		}
		if got != after {
			t.Errorf("after %d: %d are in notes", after, got)
		}
		sound(t, dir)
		carry(t, desk(t, dir, pictures), plan(t, sorting(t, dir, pictures)))
		if diff := cmp.Diff(want, tree(t, dir)); diff != "" {
			t.Errorf("after %d: %s", after, diff)
		}
		stop()
	}
}

// A run that is killed leaves pictures in no note, and perhaps half of one more.
func TestCarryKilled(t *testing.T) {
	pictures := camera("a.jpg 1 2026:03:01 10:00:00", "b.jpg 2 2026:03:01 11:00:00")
	whole, dir := laid(t, twoBuilds), laid(t, twoBuilds)
	carry(t, desk(t, whole, pictures), plan(t, sorting(t, whole, pictures)))
	photos := filepath.Join(dir, "builds/jacket/photos")
	put(t, filepath.Join(photos, "2026-03-01-a.jpg"), pictures["a.jpg"].Data)
	half := filepath.Join(photos, ".2026-03-01-b.jpg.hussif-new")
	put(t, half, pictures["b.jpg"].Data[:99])
	p := plan(t, sorting(t, dir, pictures))
	if got := said(p); !contains(got, "a.jpg -> builds/jacket/photos/2026-03-01-a.jpg here\n") {
		t.Errorf("%s", got)
	}
	// Perhaps it is not killed but at work.
	if _, err := desk(t, dir, pictures).Carry(t.Context(), p); err == nil || !contains(err.Error(), "another run was writing") {
		t.Errorf("beside another run: %v", err)
	}
	old := time.Now().Add(-2 * resting)
	if err := os.Chtimes(half, old, old); err != nil {
		t.Fatal(err)
	}
	carry(t, desk(t, dir, pictures), plan(t, sorting(t, dir, pictures)))
	if diff := cmp.Diff(tree(t, whole), tree(t, dir)); diff != "" {
		t.Error(diff)
	}
	// Meant for another build now, it stays what it is: there already.
	s := sorting(t, dir, camera("a.jpg 1 2026:03:01 10:00:00"))
	put(t, filepath.Join(dir, "builds/jacket/2026-03-01-fitting.md"), []byte("Tried it on."))
	s = sorting(t, dir, s.Camera)
	s.Build = s.Journal.Build(journal.Ref{To: "skirt"})
	if got := said(plan(t, s)); got != "double a.jpg = builds/jacket/photos/2026-03-01-a.jpg\n" {
		t.Errorf("%s", got)
	}
}

func TestCarryHEIC(t *testing.T) {
	phone, err := os.ReadFile("../develop/testdata/phone.heic")
	if err != nil {
		t.Fatal(err)
	}
	pictures := fstest.MapFS{"IMG_7.HEIC": {Data: phone, ModTime: noon}, "IMG_8.HEIC": {Data: append(bytes.Clone(phone), 0), ModTime: noon}}
	dir := laid(t, twoBuilds)
	d := desk(t, dir, pictures)
	d.Develop = func(ctx context.Context, heic []byte) ([]byte, *photo.Fault, error) {
		if len(heic) > len(phone) {
			return nil, &photo.Fault{Reason: "this HEIC picture is damaged"}, nil
		}
		return camera("x 5")["x"].Data, nil, nil
	}
	r := carry(t, d, plan(t, sorting(t, dir, pictures)))
	if len(r.Left) != 1 || r.Left[0].Path != "IMG_8.HEIC" || !r.Left[0].Trouble {
		t.Errorf("left out after all: %v", r.Left)
	}
	const name = "builds/jacket/photos/2026-03-01-img-7.jpg"
	if got := tree(t, dir)[name]; !contains(got, madeFrom) || contains(got, "Exif") {
		t.Errorf("developed to %q", got)
	}
	sound(t, dir)
	// It is known again by what it was developed from, whatever it is called.
	if err := os.Rename(filepath.Join(dir, name), filepath.Join(dir, "people.jpg")); err != nil {
		t.Fatal(err)
	}
	if got := said(plan(t, sorting(t, dir, pictures))); !contains(got, "double IMG_7.HEIC = people.jpg\n") {
		t.Errorf("%s", got)
	}
}

// Whatever changes between plan and work is left as it is.
func TestCarryMeetsChanges(t *testing.T) {
	pictures := camera("a.jpg 1 2026:03:01 10:00:00", "b.jpg 2 2026:03:01 11:00:00", "c.jpg 3 2026:03:02 11:00:00")
	dir := laid(t, twoBuilds)
	note := filepath.Join(dir, "builds/jacket/2026-03-01-fitting.md")

	p := plan(t, sorting(t, dir, pictures))
	put(t, note, []byte("Tried it on. Too long.\n"))
	if _, err := desk(t, dir, pictures).Carry(t.Context(), p); err == nil || !contains(err.Error(), "fitting.md was changed meanwhile") {
		t.Errorf("the note was changed: %v", err)
	}
	if got := tree(t, dir)["builds/jacket/2026-03-01-fitting.md"]; got != "Tried it on. Too long.\n" {
		t.Errorf("the note is %q", got)
	}

	p = plan(t, sorting(t, dir, pictures))
	put(t, filepath.Join(dir, "builds/jacket/photos/2026-03-02-c.jpg"), []byte("hers"))
	r, err := desk(t, dir, pictures).Carry(t.Context(), p)
	if err == nil || !contains(err.Error(), "2026-03-02-c.jpg was made meanwhile") || len(r.Notes) != 1 {
		t.Errorf("the picture was made: %v, %v", err, r)
	}
	if got := tree(t, dir)["builds/jacket/photos/2026-03-02-c.jpg"]; got != "hers" {
		t.Errorf("the picture is %q", got)
	}

	p = plan(t, sorting(t, dir, pictures))
	pictures["c.jpg"].Data[40]++
	r = carry(t, desk(t, dir, pictures), p)
	if len(r.Left) != 1 || !contains(r.Left[0].Reason, "changed meanwhile") || len(r.Notes) != 0 {
		t.Errorf("the camera's file was changed: %+v", r)
	}
	delete(pictures, "c.jpg")
	r = carry(t, desk(t, dir, pictures), p)
	if len(r.Left) != 1 || !contains(r.Left[0].Reason, "cannot be read") {
		t.Errorf("the camera's file is gone: %+v", r)
	}
	for name := range tree(t, dir) {
		if contains(name, ".hussif-new") {
			t.Errorf("%s is left over", name)
		}
	}
}

// A note that may not be written gets no pictures that would then be in no note.
func TestCarryReadOnlyNote(t *testing.T) {
	pictures := camera("a.jpg 1 2026:03:01 10:00:00")
	dir := laid(t, twoBuilds)
	note := filepath.Join(dir, "builds/jacket/2026-03-01-fitting.md")
	if err := os.Chmod(note, 0o444); err != nil {
		t.Fatal(err)
	}
	before := tree(t, dir)
	_, err := desk(t, dir, pictures).Carry(t.Context(), plan(t, sorting(t, dir, pictures)))
	if err == nil || !contains(err.Error(), "2026-03-01-fitting.md may only be read") {
		t.Errorf("read only: %v", err)
	}
	if diff := cmp.Diff(before, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
}

// Pictures go nowhere but into the journal's folder.
func TestCarryStaysInside(t *testing.T) {
	pictures := camera("a.jpg 1 2026:03:01 10:00:00")
	dir, away := laid(t, twoBuilds), t.TempDir()
	if err := os.Symlink(away, filepath.Join(dir, "builds/jacket/photos")); err != nil {
		t.Skip(err)
	}
	if _, err := sorting(t, dir, pictures).Plan(t.Context()); err == nil || !contains(err.Error(), "a file or a link") {
		t.Errorf("photos is a link: %v", err)
	}
	entries, err := fs.ReadDir(os.DirFS(away), ".")
	if err != nil || len(entries) > 0 {
		t.Errorf("outside: %v %v", entries, err)
	}
}
