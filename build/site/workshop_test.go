package site_test

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"slices"
	"testing"

	"hussif/build/check"
	"hussif/build/keep"
	"hussif/build/site"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
)

// A mirror is a site in memory, of which only what is stale is made anew.
type mirror struct {
	workshop *site.Workshop
	pages    map[string][]byte
	again    int // pages made by the last call of show
}

func newMirror(t testing.TB) *mirror {
	t.Helper()
	w, err := site.NewWorkshop()
	if err != nil {
		t.Fatal(err)
	}
	return &mirror{workshop: w, pages: make(map[string][]byte)}
}

func (m *mirror) show(t testing.TB, in site.Input) {
	t.Helper()
	m.workshop.Show(in)
	m.again = 0
	wanted := make(map[string]bool)
	for _, f := range m.workshop.Files() {
		wanted[f.Path] = true
		if f.Sum != (keep.Sum{}) {
			continue
		}
		var b bytes.Buffer
		if err := f.Content(&b); err != nil {
			t.Fatal(err)
		}
		f.Made(keep.Sum{1})
		m.pages[f.Path] = b.Bytes()
		m.again++
	}
	maps.DeleteFunc(m.pages, func(path string, _ []byte) bool { return !wanted[path] })
}

// After any edits the pages that were kept or made again are those of a site made anew.
func TestWorkshopIsLikeMakingAnew(t *testing.T) {
	quick, again, all := 0, 0, 0
	for seed := range uint64(4) {
		var who journal.Audience
		if seed >= 2 {
			who = journal.Circle // whose site holds a log too
		}
		var from fs.FS = generate.Journal(60, seed)
		if seed%2 == 1 {
			from = demo.Journal()
		}
		dir := t.TempDir()
		if err := os.CopyFS(dir, from); err != nil {
			t.Fatal(err)
		}
		files := os.DirFS(dir)
		folder, err := journal.Read(files)
		if err != nil {
			t.Fatal(err)
		}
		kept := newMirror(t)
		var keeper journal.Keeper
		var checker check.Checker
		editor := generate.NewEditor(dir, seed)
		var done []string
		for range 40 {
			what, folders, err := editor.Edit()
			if err != nil {
				t.Fatal(err)
			}
			done = append(done, what)
			if folder, err = folder.Again(files, folders); err != nil {
				t.Fatal(err)
			}
			u := keeper.Update(folder, nil)
			news := u.News
			if len(u.Again) > 0 {
				quick++
			}
			in := site.Input{Journal: u.Journal, Findings: checker.Run(u.Journal, files, u.Findings, u.Again), Today: today, For: who}
			sound := source.Count(in.Findings, source.Error) == 0
			if !sound && len(done)%3 == 0 {
				if folders, err = editor.Mend(); err != nil {
					t.Fatal(err)
				}
				done = append(done, "mended")
				if folder, err = folder.Again(files, folders); err != nil {
					t.Fatal(err)
				}
				u = keeper.Update(folder, nil)
				news.Add(u.News)
				in = site.Input{Journal: u.Journal, Findings: checker.Run(u.Journal, files, u.Findings, u.Again), Today: today, For: who}
			}
			in.Since = &news
			kept.show(t, in)

			j, read := must(journal.Read(files)).Journal(nil)
			clean := newMirror(t)
			clean.show(t, site.Input{Journal: j, Findings: check.Run(j, files, read), Today: today, For: who})
			again, all = again+kept.again, all+clean.again
			for _, path := range slices.Sorted(maps.Keys(clean.pages)) {
				if !bytes.Equal(kept.pages[path], clean.pages[path]) {
					t.Errorf("%s differs: %s", path, difference(kept.pages[path], clean.pages[path]))
				}
			}
			if len(kept.pages) != len(clean.pages) {
				t.Errorf("%d pages, want %d", len(kept.pages), len(clean.pages))
			}
			if t.Failed() {
				t.Fatalf("seed %d, after %q", seed, done)
			}
		}
	}
	t.Logf("%d pages of %d were made again", again, all)
	if again > all/2 {
		t.Errorf("%d pages of %d were made again", again, all)
	}
	if quick == 0 {
		t.Error("no edit left the facts as they were")
	}
}

func must(f *journal.Folder, err error) *journal.Folder {
	if err != nil {
		panic(err)
	}
	return f
}

// difference shows where two pages part.
func difference(got, want []byte) string {
	at := 0
	for at < min(len(got), len(want)) && got[at] == want[at] {
		at++
	}
	cut := func(b []byte) string { return string(b[max(0, at-80):min(len(b), at+80)]) }
	return "got …" + cut(got) + "…, want …" + cut(want) + "…"
}
