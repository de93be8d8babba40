package check

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"

	"hussif/content/journal"
	"hussif/testdata/generate"
)

// The generated journal is what the benchmarks of every package run on, so it
// must be as large as it says, sound, and the same each time.
func TestGeneratedJournal(t *testing.T) {
	const notes = 205
	fsys := generate.Journal(notes, 1)
	for _, f := range checked(t, fsys) {
		// Its last build is under way and has made nothing of what the others say.
		if f.Rule != unanswered.Name {
			t.Errorf("found %q", f.Text)
		}
	}
	count, size := 0, 0
	for name, f := range fsys {
		if strings.HasPrefix(name, "builds/") && !strings.HasSuffix(name, "/build.md") {
			count++
			size += len(f.Data)
		}
	}
	if mean := size / count; count != notes || mean < 1600 || mean > 2000 {
		t.Errorf("%d notes of %d bytes", count, mean)
	}
	again := generate.Journal(notes, 1)
	if !slices.Equal(slices.Sorted(maps.Keys(fsys)), slices.Sorted(maps.Keys(again))) {
		t.Fatal("other files the second time")
	}
	for name, f := range fsys {
		if !bytes.Equal(f.Data, again[name].Data) {
			t.Errorf("%s differs the second time", name)
		}
	}
}

func BenchmarkRun(b *testing.B) {
	for _, size := range []struct {
		name  string
		notes int
	}{{"1000", 1000}, {"10000", 10000}} {
		b.Run(size.name, func(b *testing.B) {
			fsys := generate.Journal(size.notes, 1)
			j, read, err := journal.Open(fsys)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				Run(j, fsys, read)
			}
		})
	}
}
