// Package journaltest opens, for tests, journals that stand in the test itself.
package journaltest

import (
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"hussif/content/journal"
	"hussif/content/source"
)

// Files returns the files of a txtar archive.
func Files(archive string) fstest.MapFS {
	files := fstest.MapFS{}
	for _, f := range txtar.Parse([]byte(archive)).Files {
		files[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return files
}

// Open opens the journal in a txtar archive. A journal with errors ends the test.
func Open(t testing.TB, archive string) *journal.Journal {
	t.Helper()
	j, findings := read(t, archive)
	for _, f := range findings {
		if f.Level == source.Error {
			t.Fatalf("%s: %s", f.Span, f.Text)
		}
	}
	return j
}

// OpenClean does so with a journal of which reading finds nothing at all amiss, not
// even a hint: whatever it finds fails the test.
func OpenClean(t testing.TB, archive string) *journal.Journal {
	t.Helper()
	j, findings := read(t, archive)
	for _, f := range findings {
		t.Errorf("%s: %s", f.Span, f.Text)
	}
	return j
}

func read(t testing.TB, archive string) (*journal.Journal, []source.Finding) {
	t.Helper()
	j, findings, err := journal.Open(Files(archive))
	if err != nil {
		t.Fatal(err)
	}
	return j, findings
}
