package worksheet_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"

	"hussif/build/worksheet"
)

var update = flag.Bool("update", false, "write the guide anew")

// The guide in the repository is what the worksheets say about themselves.
func TestGuide(t *testing.T) {
	const name = "WORKSHEETS.md"
	if *update {
		if err := os.WriteFile(name, []byte(worksheet.Guide()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != worksheet.Guide() {
		t.Error("WORKSHEETS.md is not what the worksheets say; renew it with -update")
	}
}

// The example of each worksheet is worked without a fault, and has a drawing.
func TestExamples(t *testing.T) {
	for _, s := range worksheet.All() {
		p := worksheet.Work(s, block(s.About().Example), inches)
		for _, f := range p.Faults {
			t.Errorf("%s: %s", s.About().Name, f.Text)
		}
		if len(p.Drawings) == 0 || len(p.Formula) == 0 || len(p.Cut) == 0 {
			t.Errorf("%s: %d drawings, %d lines, %d things to cut", s.About().Name, len(p.Drawings), len(p.Formula), len(p.Cut))
		}
		for _, d := range p.Drawings {
			if d.Title == "" || !strings.HasSuffix(d.Desc, ".") {
				t.Errorf("%s: a drawing called %q says %q", s.About().Name, d.Title, d.Desc)
			}
		}
		if !strings.Contains(strings.ToLower(p.Title), s.About().Name) {
			t.Errorf("%s is called %q", s.About().Name, p.Title)
		}
	}
}

// The schemas are schemas by a library of its own, and take the examples but not
// what the sheets refuse.
func TestSchemas(t *testing.T) {
	for _, s := range worksheet.All() {
		about := s.About()
		data, err := json.Marshal(worksheet.Schema(s))
		if err != nil {
			t.Fatal(err)
		}
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		c := jsonschema.NewCompiler()
		if err := c.AddResource("sheet.json", doc); err != nil {
			t.Fatal(err)
		}
		schema, err := c.Compile("sheet.json")
		if err != nil {
			t.Fatalf("%s: %v", about.Name, err)
		}
		var example map[string]any
		if err := yaml.Unmarshal([]byte(about.Example), &example); err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(example); err != nil {
			t.Errorf("%s: %v", about.Name, err)
		}
		example["no such input"] = "1 in"
		if schema.Validate(example) == nil {
			t.Errorf("%s takes an input that it does not have", about.Name)
		}
		for _, in := range s.Inputs() {
			if in.Need != worksheet.Always {
				continue
			}
			delete(example, "no such input")
			kept := example[in.Name]
			delete(example, in.Name)
			if schema.Validate(example) == nil {
				t.Errorf("%s does without %s", about.Name, in.Name)
			}
			example[in.Name] = kept
		}
	}
}
