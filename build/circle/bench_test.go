package circle_test

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"

	"hussif/build/circle"
	"hussif/build/export"
	"hussif/build/site/sitetest"
	"hussif/testdata/generate"
)

// generated makes the site of a large journal for the circle.
func generated(b *testing.B, notes int, seed uint64) string {
	b.Helper()
	files := make(fstest.MapFS)
	from := generate.Journal(notes, seed)
	err := fs.WalkDir(from, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(from, name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	settings := files["journal.yaml"]
	settings.Data = fmt.Appendf(settings.Data, "maker: Maker %d\nshare: circle\n", seed)
	return share(b, files)
}

// BenchmarkRead reads the log of a large journal, all checks included.
func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile(filepath.Join(generated(b, 2000, 1), export.Path))
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if log, found := export.Read(export.Path, data); log == nil || len(found) > 0 {
			b.Fatal(found)
		}
	}
}

// BenchmarkMake makes the site of ten makers of a hundred notes each, from nothing.
func BenchmarkMake(b *testing.B) {
	var members []circle.Member
	for seed := range uint64(10) {
		members = append(members, open(b, generated(b, 100, seed))...)
	}
	dir := b.TempDir()
	n := 0
	for b.Loop() {
		n++
		if _, _, err := circle.Make(context.Background(), circle.Order{
			Members: members, Title: "All", Today: today, Out: filepath.Join(dir, fmt.Sprint(n)), Store: sitetest.Store(b),
		}); err != nil {
			b.Fatal(err)
		}
	}
}
