package preview

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"hussif/build/keep"
	"hussif/build/photo"
	"hussif/content/edtf"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
)

// bench is one on a folder, with a store of its own.
func bench(t *testing.T, dir string) *Bench {
	t.Helper()
	store, err := keep.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	b, err := NewBench(dir, &photo.Darkroom{Store: store}, func() edtf.Day { return edtf.DayOf(2026, 11, 25) })
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(b.Close)
	return b
}

func TestBenchKeepsItsWord(t *testing.T) {
	keepsItsWord(t, func(dir string) Maker { return bench(t, dir) })
}

// After any edits the bench shows what one does that has just begun; where that
// has errors, it shows what it did before there were any.
func TestBenchIsLikeBeginningAnew(t *testing.T) {
	for seed := range uint64(4) {
		var from fs.FS = generate.Journal(30, seed)
		if seed%2 == 1 {
			from = demo.Journal()
		}
		dir := filepath.Join(t.TempDir(), "journal")
		if err := os.CopyFS(dir, from); err != nil {
			t.Fatal(err)
		}
		warm := bench(t, dir)
		if _, err := warm.Look(t.Context(), nil, true); err != nil {
			t.Fatal(err)
		}
		editor := generate.NewEditor(dir, seed)
		var done []string
		var before map[string]string // the site as it was last sound
		unsound := 0
		for step := range 25 {
			what, folders, err := editor.Edit()
			if err == nil && step%5 == 4 {
				var more []string
				more, err = editor.Mend()
				folders = append(folders, more...)
				what += ", and mended"
			}
			if err != nil {
				t.Fatal(err)
			}
			done = append(done, what)
			got, err := warm.Look(t.Context(), folders, false)
			if err != nil {
				t.Fatal(err)
			}
			cold := bench(t, dir)
			want, err := cold.Look(t.Context(), nil, true)
			if err != nil {
				t.Fatal(err)
			}
			if got.Sound != want.Sound || printed(got.Findings) != printed(want.Findings) {
				t.Fatalf("seed %d, after %q found\n%s\nwant\n%s", seed, done, printed(got.Findings), printed(want.Findings))
			}
			if want.Sound {
				before = wholeSite(t, cold)
			} else if unsound++; before == nil {
				continue
			}
			// Not all pages are asked for each time.
			for i, name := range slices.Sorted(maps.Keys(before)) {
				if want.Sound && i%3 == step%3 {
					continue
				}
				text := before[name]
				c, err := warm.File(t.Context(), name)
				if err != nil || string(c.Data) != text {
					t.Fatalf("seed %d, sound %v, after %q %s is another page: %v", seed, want.Sound, done, name, err)
				}
			}
			if _, err := warm.File(t.Context(), "nothing.html"); !errors.Is(err, fs.ErrNotExist) {
				t.Errorf("a page of nothing: %v", err)
			}
		}
		if seed == 0 && unsound == 0 {
			t.Error("no edit made an error")
		}
	}
}

// wholeSite returns all pages that a bench makes.
func wholeSite(t *testing.T, b *Bench) map[string]string {
	t.Helper()
	site := make(map[string]string)
	for name := range b.good.files {
		c, err := b.File(t.Context(), name)
		if err != nil {
			t.Fatal(err)
		}
		site[name] = string(c.Data)
	}
	return site
}
