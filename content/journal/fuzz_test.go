package journal

import (
	"os"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"hussif/content/source"
)

// homes are where a file of each kind lies.
var homes = []string{
	SettingsFile, "people/a.md", "builds/a/build.md", "builds/a/2026-03-01.md", "patterns/a.md",
	"references/a.md", "materials/a.md", "techniques/a.md", "occasions/a.md",
}

func FuzzOpen(f *testing.F) {
	archive, err := os.ReadFile("testdata/every-field.txtar")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range txtar.Parse(archive).Files {
		for home := range homes {
			f.Add(uint8(home), file.Data)
		}
	}
	for _, seed := range []string{
		"---\nkind: note\ndate: 2026-03-01\nmeasured: [a, {b: c}]\naltered: x\n---\n[[#a]] [[a]] [x](../a.md#b)",
		"---\nkind: person\nmeasured: {bust: ½, bust girth: 3\"}\nnext time: {do: [a]}\n---\nNext time: x (pattern: a)",
		"---\nkind: build\nseams: [{crosses: [bust, {a: b}]}, crosses]\nfit: bust\nadjusts: x\nclosures: [[a]]\n---\n",
		"---\nkind: occasion\ndate:\n---\n![](../../a.png) [a](%2e%2e/b.md) Decided: x",
		"measures: [a, {name: b, also: [b]}]\nshort names: {a: b, waist: c}\nerrors: {a: b}\nease: {a: [b]}",
	} {
		for home := range homes {
			f.Add(uint8(home), []byte(seed))
		}
	}
	f.Fuzz(func(t *testing.T, home uint8, data []byte) {
		fsys := fstest.MapFS{
			homes[int(home)%len(homes)]: {Data: data},
			"notes/2026-01-01.md":       {Data: []byte("A journal.")},
		}
		j, findings, err := Open(fsys)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range findings {
			places := []source.Span{f.Span}
			for _, r := range f.Related {
				places = append(places, r.Span)
			}
			for _, s := range places {
				if s.File == nil || s.Start < 0 || s.Start > s.End || s.End > len(s.File.Data) {
					t.Fatalf("%q points outside its file", f.Text)
				}
			}
			if f.Text == "" || f.Rule == "" {
				t.Fatalf("%s: nothing is said", f.Span)
			}
		}
		for _, r := range j.Records() {
			for _, pic := range Pictures(r) {
				if pic.Span.File != r.Head().File {
					t.Fatalf("the picture %q is nowhere", pic.Path)
				}
			}
			Anchors(r)
		}
		_, again, err := Open(fsys)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(lines(findings), lines(again)); diff != "" {
			t.Fatal(diff)
		}
	})
}
