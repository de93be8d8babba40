package intake

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"hussif/build/photo"
	"hussif/build/photo/phototest"
	"hussif/content/journal"
)

// laid lays out a journal of a text with a line "-- path --" before each file.
func laid(t testing.TB, archive string) string {
	t.Helper()
	dir := t.TempDir()
	for _, f := range txtar.Parse([]byte(archive)).Files {
		put(t, filepath.Join(dir, f.Name), f.Data)
	}
	return dir
}

func put(t testing.TB, name string, data []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, data, 0o666); err != nil {
		t.Fatal(err)
	}
}

// noon is the time of all of the camera's files.
var noon = time.Date(2026, 5, 17, 12, 0, 0, 0, time.Local)

// camera makes a camera's folder of lines such as "DCIM/a.jpg 1 2026:03:01 18:22:03
// +01:00": the path, the number of the picture, and when it was taken, if it says so.
func camera(lines ...string) fstest.MapFS {
	out := fstest.MapFS{}
	for _, line := range lines {
		fields := append(strings.Fields(line), "", "", "")
		var n int
		fmt.Sscan(fields[1], &n)
		out[fields[0]] = &fstest.MapFile{Mode: 0o644, ModTime: noon,
			Data: phototest.JPEG(n, strings.TrimSpace(fields[2]+" "+fields[3]), fields[4])}
	}
	return out
}

// sorting reads the journal in a folder anew.
func sorting(t testing.TB, dir string, camera fs.FS) *Sorting {
	t.Helper()
	files := os.DirFS(dir)
	folder, err := journal.Read(files)
	if err != nil {
		t.Fatal(err)
	}
	j, _ := folder.Journal(nil)
	return &Sorting{Journal: j, Files: files, Entries: folder.Entries, Camera: camera}
}

func plan(t testing.TB, s *Sorting) *Plan {
	t.Helper()
	p, err := s.Plan(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// said writes a plan in lines.
func said(p *Plan) string {
	var b strings.Builder
	for _, e := range p.Notes {
		fresh := ""
		if e.New {
			fresh = " new"
		}
		fmt.Fprintf(&b, "%s %s%s", e.Day, e.Note, fresh)
		for _, why := range []string{e.Why, e.Instead} {
			if why != "" {
				fmt.Fprintf(&b, "; %s", why)
			}
		}
		b.WriteString("\n")
		for _, pic := range e.Pictures {
			fmt.Fprintf(&b, "  %s -> %s", pic.Path, pic.To)
			if pic.ByFile {
				b.WriteString(" by file")
			}
			if pic.HEIC {
				b.WriteString(" heic")
			}
			if pic.Here {
				b.WriteString(" here")
			}
			b.WriteString("\n")
		}
	}
	for _, d := range p.Doubles {
		fmt.Fprintf(&b, "double %s = %s\n", d.Path, d.Same)
	}
	for _, l := range p.Left {
		trouble := ""
		if l.Trouble {
			trouble = "trouble "
		}
		fmt.Fprintf(&b, "left %s%s: %s\n", trouble, l.Path, l.Reason)
	}
	return b.String()
}

// desk is one whose HEIC pictures come out as a JPEG of their own.
func desk(t testing.TB, dir string, camera fs.FS) *Desk {
	t.Helper()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return &Desk{Journal: root, Camera: camera, Develop: func(_ context.Context, heic []byte) ([]byte, *photo.Fault, error) {
		return phototest.JPEG(len(heic)%7, "", ""), nil, nil
	}}
}

// tree reads all files of a folder, hidden ones too.
func tree(t testing.TB, dir string) map[string]string {
	t.Helper()
	out := make(map[string]string)
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		out[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
