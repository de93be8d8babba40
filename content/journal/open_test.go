package journal

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"hussif/content/edtf"
)

func TestErrNoJournal(t *testing.T) {
	dir := t.TempDir()
	for _, fsys := range []fs.FS{
		fstest.MapFS{}, fstest.MapFS{"README.md": {}, "src/main.go": {}, "docs/notes.md": {}}, os.DirFS(dir),
		fstest.MapFS{"link": {Mode: fs.ModeSymlink}},
	} {
		if j, findings, err := Open(fsys); !errors.Is(err, ErrNoJournal) || j != nil || findings != nil {
			t.Errorf("got %v", err)
		}
	}
	if _, _, err := Open(os.DirFS(dir + "/gone")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a folder that is not there: %v", err)
	}
}

// Files saved on Windows hold the same journal.
func TestCRLF(t *testing.T) {
	archive, err := os.ReadFile("testdata/every-field.txtar")
	if err != nil {
		t.Fatal(err)
	}
	unix := files(string(archive))
	windows := fstest.MapFS{}
	for name, f := range unix {
		windows[name] = &fstest.MapFile{Data: []byte("\xef\xbb\xbf" + strings.ReplaceAll(string(f.Data), "\n", "\r\n"))}
	}
	a, _, err := Open(unix)
	if err != nil {
		t.Fatal(err)
	}
	b, findings, err := Open(windows)
	if err != nil || len(findings) > 0 {
		t.Fatal(err, lines(findings))
	}
	for i, r := range a.Records() {
		if diff := cmp.Diff(r, b.Records()[i], values); diff != "" {
			t.Errorf("%s: %s", r.Head().ID, diff)
		}
	}
}

// The same journal gives the same records and findings however many workers read it.
func TestOpenOnAnyNumberOfWorkers(t *testing.T) {
	archive, err := os.ReadFile("testdata/every-field.txtar")
	if err != nil {
		t.Fatal(err)
	}
	fsys := files(string(archive))
	for i := range 40 {
		name := fmt.Sprintf("notes/%s.md", edtf.DayOf(2026, 1, i))
		fsys[name] = &fstest.MapFile{Data: fmt.Appendf(nil, "---\nhours: %dx\nstge: a\n---\n[[note-%d]] [[wren]]\n", i, i)}
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	first, findings, err := Open(fsys)
	if err != nil {
		t.Fatal(err)
	}
	for _, workers := range []int{2, 3, 8} {
		runtime.GOMAXPROCS(workers)
		j, more, err := Open(fsys)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(lines(findings), lines(more)); diff != "" {
			t.Errorf("%d workers: %s", workers, diff)
		}
		for i, r := range first.Records() {
			if diff := cmp.Diff(r, j.Records()[i], values); diff != "" {
				t.Errorf("%d workers: %s", workers, diff)
			}
		}
		if len(first.LinkedFrom("people/wren")) != len(j.LinkedFrom("people/wren")) {
			t.Errorf("%d workers: other links", workers)
		}
	}
}

// brokenDisk fails to read one file.
type brokenDisk struct{ fstest.MapFS }

var errBroken = errors.New("input/output error")

func (b brokenDisk) Open(name string) (fs.File, error) {
	if name == "notes/2026-03-02.md" {
		return nil, errBroken
	}
	return b.MapFS.Open(name)
}

func TestOpenTellsOfTheDisk(t *testing.T) {
	_, _, err := Open(brokenDisk{fstest.MapFS{"notes/2026-03-01.md": {}, "notes/2026-03-02.md": {}}})
	if !errors.Is(err, errBroken) {
		t.Errorf("got %v", err)
	}
}
