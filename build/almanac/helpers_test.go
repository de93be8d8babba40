package almanac

import (
	"net/url"
	"testing"

	"hussif/content/journal"
	"hussif/testdata/demo"
)

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
