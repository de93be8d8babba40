package schema

import (
	"io/fs"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/rogpeppe/go-internal/txtar"

	"hussif/content/front"
	"hussif/content/journal"
	"hussif/content/source"
	"hussif/testdata/demo"
	"hussif/testdata/generate"
)

// Each schema is one by the meta-schema of draft 2020-12.
func TestMetaSchema(t *testing.T) {
	if n := len(all(t)); n != len(journal.Kinds())+1 {
		t.Errorf("%d schemas", n)
	}
}

func archive(t testing.TB, name string) fs.FS {
	t.Helper()
	a, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	out := fstest.MapFS{}
	for _, f := range a.Files {
		out[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	return out
}

// Whatever the decoder takes, the schemas take: an editor raises no false alarm.
func TestJournalsThatAreSound(t *testing.T) {
	schemas := all(t)
	folders := map[string]fs.FS{
		"demo":      demo.Journal(),
		"generated": generate.Journal(200, 1),
		"fields":    archive(t, "../journal/testdata/every-field.txtar"),
	}
	names, err := filepath.Glob("../../testdata/cases/*.txtar")
	if err != nil || len(names) < 30 {
		t.Fatalf("%d cases, %v", len(names), err)
	}
	for _, name := range names {
		folders[filepath.Base(name)] = archive(t, name)
	}
	looked := make(map[journal.Kind]int)
	for folder, fsys := range folders {
		for name, p := range pages(t, fsys) {
			if !p.sound {
				continue
			}
			looked[p.kind]++
			if err := schemas[p.kind].Validate(asJSON(t, p.text)); err != nil {
				t.Errorf("%s: %s is refused: %s", folder, name, why(err))
			}
		}
	}
	for kind := range schemas {
		if looked[kind] < 2 {
			t.Errorf("%d sound pages of the kind %q were looked at", looked[kind], kind)
		}
	}
}

// A slip is what makers write now and then, and an editor should mark at once. All
// of them are refused by the decoder too.
func TestSlips(t *testing.T) {
	schemas := all(t)
	for _, c := range []struct {
		name string
		kind journal.Kind
		text string
	}{
		{"a field misspelt", journal.KindNote, "stgae: sewing"},
		{"a field of another kind", journal.KindPerson, "stage: sewing"},
		{"a field in a group misspelt", journal.KindBuild, "seams: [{name: side, nwo: 5/8 in}]"},
		{"an unknown stage", journal.KindNote, "stage: swing"},
		{"an unknown state", journal.KindBuild, "state: nearly done"},
		{"an unknown type of reference", journal.KindReference, "type: dress"},
		{"an unknown audience", journal.KindPattern, "share: everyone"},
		{"an unknown verdict", journal.KindNote, "turned out: [{decision: first#decided-cuffs, how: badly}]"},
		{"neither yes nor no", journal.KindNote, "on the pattern: maybe"},
		{"a list where a length should be", journal.KindMaterial, "width: [54, 56]"},
		{"a group where a length should be", journal.KindMaterial, "width: {in: 54}"},
		{"words where a length should be", journal.KindMaterial, "width: wide"},
		{"a word before a length", journal.KindMaterial, "width: some 54 in"},
		{"words where a reading should be", journal.KindNote, "measured: {bust girth: tight}"},
		{"a text where readings should be", journal.KindNote, "measured: bust girth 36 in"},
		{"a let-out that could be either", journal.KindNote, "altered: [{seam: side, let out: 3/8 in}]"},
		{"a size of one figure", journal.KindNote, "left over: [{material: linen, size: 9 in}]"},
		{"a day in another order", journal.KindNote, "date: 14/02/2026"},
		{"a month for a day", journal.KindOccasion, "date: 2026-02"},
		{"a year for a day", journal.KindOccasion, "date: 2026"},
		{"no date", journal.KindOccasion, "place: the green"},
		{"a date left empty", journal.KindOccasion, "date:"},
		{"half a seam", journal.KindBuild, "seams: [{name: side, count: 1.5}]"},
		{"no seam", journal.KindBuild, "seams: [{name: side, count: 0}]"},
		{"a count in words", journal.KindBuild, "seams: [{name: side, count: two}]"},
		{"a seam without a name", journal.KindBuild, "seams: [{now: 5/8 in}]"},
		{"a material entry without its material", journal.KindNote, "used: [{amount: 2 yd}]"},
		{"a note set aside without a reason", journal.KindBuild, "set aside: [{note: jacket-draft#next-cut-sleeve-wider}]"},
		{"a list in a list", journal.KindBuild, "over: [[shift, stays]]"},
		{"hours in words", journal.KindNote, "hours: all day"},
		{"money in words", journal.KindNote, "spent: [nothing much]"},
		{"no web address", journal.KindReference, "address: the green museum"},
		{"a date that says nothing", journal.KindReference, "date: old"},
		{"another kind", journal.KindBuild, "kind: note"},
		{"a list for a page", journal.KindNote, "[a, b]"},
		{"a setting misspelt", "", "uint: cm"},
		{"a unit for cloth", "", "unit: yd"},
		{"ease as a number", "", "ease: 3"},
		{"a measure of one's own without a name", "", "measures: [{class: large girth}]"},
		{"years in words", "", "circa: some years"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if err := schemas[c.kind].Validate(asJSON(t, c.text)); err == nil {
				t.Errorf("%q is taken", c.text)
			}
			if decoded(t, c.kind, c.text) && c.name != "another kind" {
				t.Errorf("%q is no slip: the decoder takes it", c.text)
			}
		})
	}
}

// decoded reports whether the decoder takes a text as front matter of a kind, or
// as settings.
func decoded(t testing.TB, kind journal.Kind, text string) bool {
	t.Helper()
	if kind == "" {
		f, _ := source.Load(journal.SettingsFile, []byte(text))
		_, found := journal.ParseSettings(f)
		return source.Count(found, source.Error) == 0
	}
	f, _ := source.Load("2026-03-01.md", []byte(text))
	node, found := front.Parse(f.Whole())
	if len(found) > 0 {
		t.Fatalf("%q: %s", text, found[0].Text)
	}
	found = journal.Shapes().Decode(node, reflect.New(kind.Type()).Interface())
	return source.Count(found, source.Error) == 0
}

// eachField visits every field of every kind and group once, with a kind that has
// it in its schema.
func eachField(visit func(kind journal.Kind, group *front.Group, f front.FieldShape)) {
	seen := make(map[string]bool)
	var walk func(s *front.Schema, kind journal.Kind, t reflect.Type)
	walk = func(s *front.Schema, kind journal.Kind, t reflect.Type) {
		shape := s.Shape(t)
		switch {
		case shape.Item != nil:
			walk(s, kind, shape.Item)
		case shape.Form != nil && shape.Form.Each != nil:
			walk(s, kind, reflect.TypeOf(shape.Form.Each))
		case shape.Group != nil:
			for _, f := range shape.Group.Fields {
				if name := shape.Group.Name + "." + f.Name; !seen[name] {
					seen[name] = true
					visit(kind, shape.Group, f)
					walk(s, kind, f.Type)
				}
			}
			if shape.Group.Rest != nil {
				walk(s, kind, shape.Group.Rest)
			}
		}
	}
	for _, k := range journal.Kinds() {
		walk(journal.Shapes(), k, k.Type())
	}
	walk(journal.SettingsShapes(), "", reflect.TypeFor[journal.Settings]())
}

// A field without a description, or without an example where its type has none,
// would leave an editor with nothing to show.
func TestEveryFieldIsDescribed(t *testing.T) {
	fields := 0
	eachField(func(kind journal.Kind, g *front.Group, f front.FieldShape) {
		fields++
		if f.Doc == "" || strings.HasSuffix(f.Doc, ".") || f.Doc != strings.TrimSpace(f.Doc) {
			t.Errorf("field %q of %s has the description %q", f.Name, g.Noun, f.Doc)
		}
		shapes := journal.Shapes()
		if kind == "" {
			shapes = journal.SettingsShapes()
		}
		m := maker{shapes: shapes}
		if form := m.single(f.Type); len(f.Examples) == 0 && (form == nil || len(form.Examples)+len(form.Words) == 0) {
			t.Errorf("field %q of %s has no example", f.Name, g.Noun)
		}
	})
	if fields < 150 {
		t.Errorf("only %d fields were looked at", fields)
	}
}

// Every example is taken by the decoder, as its field's value.
func TestExamplesAreTaken(t *testing.T) {
	examples := 0
	eachField(func(kind journal.Kind, g *front.Group, f front.FieldShape) {
		shapes := journal.Shapes()
		if kind == "" {
			shapes = journal.SettingsShapes()
		}
		m := maker{shapes: shapes}
		of := f.Examples
		if form := m.single(f.Type); form != nil {
			of = append(of, form.Examples...)
			of = append(of, form.Words...)
		}
		for _, example := range of {
			examples++
			file, _ := source.Load("example.yaml", []byte(example))
			node, found := front.Parse(file.Whole())
			if len(found) == 0 {
				found = shapes.Decode(node, reflect.New(f.Type).Interface())
			}
			// Money has no currency where a journal names none; the examples name theirs.
			if len(found) > 0 {
				t.Errorf("field %q of %s, example %q: %s", f.Name, g.Noun, example, found[0].Text)
			}
		}
	})
	if examples < 200 {
		t.Errorf("only %d examples were tried", examples)
	}
}
