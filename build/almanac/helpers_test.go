package almanac

import (
	"net/url"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"hussif/content/journal"
	"hussif/testdata/demo"
)

// read reads a journal written as a txtar archive.
func read(t *testing.T, archive string) *journal.Journal {
	t.Helper()
	files := fstest.MapFS{}
	for _, f := range txtar.Parse([]byte(archive)).Files {
		files[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	j, findings, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range findings {
		t.Errorf("%s: %s", f.Span, f.Text)
	}
	return j
}

func readDemo(t *testing.T) *journal.Journal {
	t.Helper()
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func address(t *testing.T, s string) *url.URL {
	t.Helper()
	u, err := url.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return u
}

// fromDisk is a site that is opened from a disk.
var fromDisk = Pages{Path: func(id journal.ID) string { return string(id) + ".html" }}

func onWeb(t *testing.T) Pages {
	return Pages{Base: address(t, "https://needle.example/journal?from=post#top"), Path: fromDisk.Path}
}
