package journal

import (
	"fmt"
	"os"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/rogpeppe/go-internal/txtar"

	"hussif/content/front"
	"hussif/content/prose"
	"hussif/content/source"
)

// files makes a folder of a text with a line "-- path --" before each file.
func files(archive string) fstest.MapFS {
	out := fstest.MapFS{}
	for _, f := range txtar.Parse([]byte(archive)).Files {
		out[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return out
}

func open(t testing.TB, archive string) (*Journal, []source.Finding) {
	t.Helper()
	j, findings, err := Open(files(archive))
	if err != nil {
		t.Fatal(err)
	}
	return j, findings
}

// sound opens a journal in which nothing is wrong.
func sound(t testing.TB, archive string) *Journal {
	t.Helper()
	j, findings := open(t, archive)
	for _, f := range findings {
		t.Errorf("%s: %s", f.Span, f.Text)
	}
	return j
}

// said writes a finding in a line.
func said(f source.Finding) string {
	out := fmt.Sprintf("%s: %s: %s [%s]", f.Span, f.Level, f.Text, f.Rule)
	if advice := f.Advice(); advice != "" {
		out += " " + advice
	}
	return out
}

func lines(findings []source.Finding) []string {
	var out []string
	for _, f := range findings {
		out = append(out, said(f))
	}
	return out
}

// record returns the record with an ID as one of its type.
func record[T Record](t testing.TB, j *Journal, id ID) T {
	t.Helper()
	for _, r := range j.byID[string(id)] {
		if r, ok := r.(T); ok {
			return r
		}
	}
	t.Fatalf("no record of the wanted kind is called %q", id)
	panic("unreached")
}

// values compares what was read without its places and what follows from it.
var values = cmp.Options{
	cmpopts.IgnoreTypes(source.Span{}, front.Where{}, prose.Doc{}),
	cmpopts.IgnoreFields(Page{}, "ID", "Kind", "File"),
	cmpopts.IgnoreUnexported(Page{}),
	cmpopts.IgnoreFields(Build{}, "Notes"),
	cmpopts.IgnoreFields(Note{}, "Of"),
	cmpopts.EquateEmpty(),
}

func everyField(t testing.TB) *Journal {
	t.Helper()
	archive, err := os.ReadFile("testdata/every-field.txtar")
	if err != nil {
		t.Fatal(err)
	}
	return sound(t, string(archive))
}
