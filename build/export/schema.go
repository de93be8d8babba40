package export

import (
	"bytes"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"hussif/content/schema"
)

// A form is what a text that is not just words may be: the tag `is`.
type form struct {
	about   string
	pattern string
	longest int // in characters
}

var forms = map[string]form{
	"id":      {"", "", 1000},
	"name":    {"a name that can be read", `\S`, 0}, // as long as the tag `max` says
	"day":     {"a day as in 2026-03-01", `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`, 10},
	"edtf":    {"a date of a year with four digits", `^[^Y]+$`, 200},
	"page":    {"a path from the site's top folder, perhaps with a fragment", `^[^:\\?#]+\.html(#.*)?$`, 1500},
	"address": {"an address on the web", `^https?://`, 2000},
	"picture": {"the path of a picture in the site", `^pictures/[0-9a-f]{12}-[0-9]+\.(jpg|png)$`, 60},
	"html":    {"of the elements " + strings.Join(elements, ", "), "", 200_000},
}

const (
	longestWord = 500     // of a list of words, in characters
	mostHours   = 100_000 // some fifty years of full days
)

// Schema returns the JSON Schema of a log.
func Schema() *schema.Schema {
	m := maker{}
	s := m.group(reflect.TypeFor[Log]())
	s.Version = "https://json-schema.org/draft/2020-12/schema"
	s.Comment = schema.Mark + "; change nothing here, for it is written anew"
	s.Title = Path + ": what a maker hands to her sewing circle"
	s.Properties[0].Schema.Const = Version
	s.Defs = m.defs
	return s
}

// A maker gathers the definitions that the schema refers to.
type maker struct{ defs schema.Properties }

func (m *maker) group(t reflect.Type) *schema.Schema {
	s := &schema.Schema{Types: []string{"object"}, Others: false}
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		s.Properties = append(s.Properties, schema.Property{Name: name, Schema: m.field(f)})
		if options != "omitempty" {
			s.Required = append(s.Required, name)
		}
	}
	return s
}

func (m *maker) field(f reflect.StructField) *schema.Schema {
	s := m.value(f, f.Type)
	s.About = f.Tag.Get("doc")
	if about := forms[f.Tag.Get("is")].about; about != "" {
		s.About += ": " + about
	}
	return s
}

func (m *maker) value(f reflect.StructField, t reflect.Type) *schema.Schema {
	switch t.Kind() {
	case reflect.Pointer:
		return m.value(f, t.Elem())
	case reflect.Struct:
		return &schema.Schema{Ref: "#/$defs/" + m.define(t)}
	case reflect.Slice:
		return &schema.Schema{Types: []string{"array"}, MaxItems: most(f), Items: m.value(f, t.Elem())}
	case reflect.Int:
		return &schema.Schema{Types: []string{"integer"}}
	case reflect.Float64:
		return &schema.Schema{Types: []string{"number"}, Maximum: mostHours}
	}
	s := &schema.Schema{Types: []string{"string"}, MaxLength: longest(f)}
	if words := f.Tag.Get("one"); words != "" {
		s.Enum, s.MaxLength = strings.Split(words, "|"), 0
	}
	s.Pattern = forms[f.Tag.Get("is")].pattern
	return s
}

// define adds the definition of a group where it is not there yet, and returns its name.
func (m *maker) define(t reflect.Type) string {
	name := strings.ToLower(t.Name())
	for _, d := range m.defs {
		if d.Name == name {
			return name
		}
	}
	at := len(m.defs)
	m.defs = append(m.defs, schema.Property{Name: name})
	m.defs[at].Schema = m.group(t)
	return name
}

// longest is how many characters a text of a field has at the most.
func longest(f reflect.StructField) int {
	if form := forms[f.Tag.Get("is")]; form.longest > 0 {
		return form.longest
	}
	if f.Type.Kind() == reflect.Slice {
		return longestWord
	}
	return most(f)
}

// most is what the tag `max` says: of how many items a list is, or a text of characters.
func most(f reflect.StructField) int {
	n, err := strconv.Atoi(f.Tag.Get("max"))
	if err != nil && f.Tag.Get("one") == "" {
		panic(fmt.Sprintf("export: how long may %s be?", f.Name))
	}
	return n
}

// compiled is the schema, ready to hold a log against.
var compiled = sync.OnceValue(func() *jsonschema.Schema {
	text, err := Schema().JSON()
	if err != nil {
		panic(err) // it is our own, and a test writes it
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		panic(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(Path, doc); err != nil {
		panic(err)
	}
	return c.MustCompile(Path)
})
