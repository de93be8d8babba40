package schema

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"path"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"

	"hussif/content/front"
	"hussif/content/journal"
	"hussif/content/source"
)

// compiled returns a schema for validating. Compiling holds it against the
// meta-schema of draft 2020-12, which the library brings.
func compiled(t testing.TB, s *Schema) *jsonschema.Schema {
	t.Helper()
	data, err := s.JSON()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("hussif.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	out, err := c.Compile("hussif.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// all returns the schemas of all kinds, and that of the settings under "".
func all(t testing.TB) map[journal.Kind]*jsonschema.Schema {
	out := map[journal.Kind]*jsonschema.Schema{"": compiled(t, Settings())}
	for _, k := range journal.Kinds() {
		out[k] = compiled(t, Of(k))
	}
	return out
}

// asJSON reads YAML as an editor does, into what a validator takes.
func asJSON(t testing.TB, text string) any {
	t.Helper()
	var n yaml.Node
	if err := yaml.Unmarshal([]byte(text), &n); err != nil {
		t.Fatalf("%v in:\n%s", err, text)
	}
	if n.Kind == 0 {
		return nil
	}
	data, err := plain(jsonOf(&n))
	if err != nil {
		t.Fatal(err)
	}
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// A page is the front matter of one file of a journal.
type page struct {
	kind  journal.Kind // "" for the settings
	text  string
	sound bool // whether all of it could be decoded
}

// pages returns the front matter of all files of a journal that is YAML.
func pages(t testing.TB, fsys fs.FS) map[string]page {
	t.Helper()
	out := make(map[string]page)
	var settings *source.File
	if data, err := fs.ReadFile(fsys, journal.SettingsFile); err == nil {
		settings, _ = source.Load(journal.SettingsFile, data)
	}
	s, found := journal.ParseSettings(settings)
	if settings != nil {
		if _, parsing := front.Parse(settings.Whole()); len(parsing) == 0 {
			out[journal.SettingsFile] = page{"", string(settings.Data), source.Count(found, source.Error) == 0}
		}
	}
	parser := journal.NewParser(s)
	err := fs.WalkDir(fsys, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.EqualFold(path.Ext(name), ".md") {
			return err
		}
		data, err := fs.ReadFile(fsys, name)
		if err != nil {
			return err
		}
		file, loading := source.Load(name, data)
		if len(loading) > 0 {
			return nil
		}
		parts, splitting := front.Split(file)
		if len(splitting) > 0 {
			return nil
		}
		draft := parser.Parse(file, nil)
		if _, parsing := front.Parse(parts.Front); draft.Record == nil || len(parsing) > 0 {
			return nil
		}
		out[name] = page{draft.Record.Head().Kind, parts.Front.Text(), !draft.Faulty}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// why returns what a validator has against a value, in a few lines.
func why(err error) string {
	data, _ := json.MarshalIndent(err.(*jsonschema.ValidationError).BasicOutput(), "", " ")
	return string(data)
}
