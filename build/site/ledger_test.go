package site_test

import (
	"bytes"
	"os"
	"slices"
	"testing"
	"testing/fstest"

	"hussif/build/check"
	"hussif/build/site"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
)

var given = source.Sum{1, 2, 3}

// A workshop that goes on from what another wrote down makes the same site as one that
// knows nothing, and less of it anew.
func TestLedger(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, demo.Journal()); err != nil {
		t.Fatal(err)
	}
	files := os.DirFS(dir)
	input := func() site.Input {
		j, read := must(journal.Read(files)).Journal(nil)
		return site.Input{Journal: j, Findings: check.Run(j, files, read), Today: today}
	}
	kept := newMirror(t)
	kept.show(t, input())
	editor := generate.NewEditor(dir, 7)
	again, all := 0, 0
	for range 25 {
		what, _, err := editor.Edit()
		if err != nil {
			t.Fatal(err)
		}
		next := newMirror(t)
		if err := next.workshop.Load(kept.workshop.Save(given), given); err != nil {
			t.Fatal(err)
		}
		next.pages = kept.pages
		next.show(t, input())
		clean := newMirror(t)
		clean.show(t, input())
		for path, page := range clean.pages {
			if !bytes.Equal(next.pages[path], page) {
				t.Fatalf("after %s, %s differs: %s", what, path, difference(next.pages[path], page))
			}
		}
		again, all = again+next.again, all+clean.again
		kept = next
	}
	t.Logf("%d pages of %d were made again", again, all)
	if again > all/2 {
		t.Errorf("%d pages of %d were made again", again, all)
	}
}

// What is damaged, or of other things, is not gone by.
func TestLedgerOfOtherThings(t *testing.T) {
	files := demo.Journal()
	j, read := must(journal.Read(files)).Journal(nil)
	in := site.Input{Journal: j, Findings: check.Run(j, files, read), Today: today}
	m := newMirror(t)
	m.show(t, in)
	ledger := m.workshop.Save(given)
	for name, data := range map[string][]byte{
		"nothing": nil, "cut short": ledger[:len(ledger)/2], "longer": append(slices.Clone(ledger), 0), "another version": append([]byte{9}, ledger[1:]...),
	} {
		if err := newMirror(t).workshop.Load(data, given); err == nil {
			t.Errorf("%s was taken for a ledger", name)
		}
	}
	if err := newMirror(t).workshop.Load(ledger, source.Sum{4}); err == nil {
		t.Error("a ledger of other settings was taken")
	}
	next := newMirror(t)
	if err := next.workshop.Load(ledger, given); err != nil {
		t.Fatal(err)
	}
	if next.show(t, in); next.again != 0 {
		t.Errorf("of the same journal %d pages were made again", next.again)
	}
}

func FuzzLoad(f *testing.F) {
	files := fstest.MapFS{"notes/2026-01-01.md": {Data: []byte("It rained.\n")}}
	j, read := must(journal.Read(files)).Journal(nil)
	in := site.Input{Journal: j, Findings: read, Today: today}
	m := newMirror(f)
	m.show(f, in)
	f.Add(m.workshop.Save(given))
	f.Add([]byte{1})
	f.Fuzz(func(t *testing.T, data []byte) {
		next := newMirror(t)
		if next.workshop.Load(data, given) == nil {
			next.show(t, in) // whatever it says, it must not panic
		}
	})
}
