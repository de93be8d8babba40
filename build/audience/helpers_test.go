package audience

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/tools/txtar"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

var today = edtf.DayOf(2026, 11, 25)

// files are those of a journal by path.
type files map[string]string

func archive(t testing.TB, text string) files {
	t.Helper()
	all := make(files)
	for _, f := range txtar.Parse([]byte(text)).Files {
		all[f.Name] = string(f.Data)
	}
	return all
}

// every is a journal in which every field of every kind of page is given.
func every(t testing.TB) files {
	t.Helper()
	text, err := os.ReadFile("../../content/journal/testdata/every-field.txtar")
	if err != nil {
		t.Fatal(err)
	}
	all := archive(t, string(text))
	all.replace("people/wren.md", "share: self\n", "", "shows fit: deltas\n", "", "shows measures: circle\n", "", "share fields: {measured: self, tags: circle}\n", "")
	all.replace("builds/striped-jacket/build.md", "blur: [40% 5% 20% 25%, 1.5 2 3 4], share: circle", "share: public")
	all["journal.yaml"] = strings.Replace(all["journal.yaml"], "share: circle", "share: public", 1)
	return all
}

func (f files) replace(name string, pairs ...string) {
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(f[name], pairs[i]) {
			panic(name + " does not have " + pairs[i])
		}
	}
	f[name] = strings.NewReplacer(pairs...).Replace(f[name])
}

// with returns the files with some changed.
func (f files) with(name, text string) files {
	out := make(files, len(f))
	for n, t := range f {
		out[n] = t
	}
	out[name] = text
	return out
}

func (f files) open(t testing.TB) (*journal.Journal, []source.Finding) {
	t.Helper()
	m := fstest.MapFS{}
	for name, text := range f {
		m[name] = &fstest.MapFile{Data: []byte(text)}
	}
	j, findings, err := journal.Open(m)
	if err != nil {
		t.Fatal(err)
	}
	return j, slices.DeleteFunc(findings, func(f source.Finding) bool { return f.Level != source.Error })
}

// sound reports whether the files are a journal without errors.
func (f files) sound(t testing.TB) bool {
	t.Helper()
	_, errors := f.open(t)
	return len(errors) == 0
}

func (f files) share(t testing.TB, who journal.Audience) *Share {
	t.Helper()
	j, errors := f.open(t)
	for _, e := range errors {
		t.Errorf("%s: %s", e.Span, e.Text)
	}
	s, err := For(j, who, today)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// print writes down all that a share holds: what a site is made from.
func (s *Share) print() string {
	var b bytes.Buffer
	for _, e := range s.Folder.Entries {
		fmt.Fprintf(&b, "== %s %d\n%s", e.Path, e.Size, s.Folder.Texts[e.Path])
	}
	for _, id := range slices.Sorted(maps.Keys(s.Fits)) {
		for _, row := range s.Fits[id].Rows {
			fmt.Fprintf(&b, "%s on %s: %s: %s (%d)\n", id, s.Fits[id].Day, row.Measure, row.Words, row.Verdict)
		}
	}
	fmt.Fprintln(&b, s.Blur)
	return b.String()
}

func isPicture(e source.Entry) bool { return strings.HasSuffix(e.Path, ".png") }
