package journal

import (
	"testing"
	"testing/fstest"
)

func TestTitled(t *testing.T) {
	j, _, err := Open(fstest.MapFS{
		"patterns/draft.md":   {Data: []byte("---\ntitle: Jacket draft\n---\n")},
		"notes/2026-03-01.md": {Data: []byte("See [[draft]].\n\nNext time: trust the draft less, see [[draft#sleeve|there]] and [[draft]].\n")},
	})
	if err != nil {
		t.Fatal(err)
	}
	note := j.Notes()[0]
	for got, want := range map[string]string{
		j.Titled(note.Text.Opening):         "See Jacket draft.",
		j.Titled(note.Text.Remarks[0].Text): "trust the draft less, see there and Jacket draft.",
		j.Titled("[[nobody]] and [x]"):      "nobody and [x]",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
