package schema

import (
	"fmt"
	"reflect"
	"strings"

	"hussif/content/front"
	"hussif/content/journal"
)

// draft names the JSON Schema that is written.
const draft = "https://json-schema.org/draft/2020-12/schema"

// Mark begins the comment of every schema that is written, so that a file may be
// told from one of the maker's own.
const Mark = "made by hussif schema"

// Of returns the schema of the front matter of a kind of page.
func Of(kind journal.Kind) *Schema {
	m := maker{shapes: journal.Shapes()}
	s := m.root(kind.Type())
	s.Title = "front matter of " + m.shapes.Shape(kind.Type()).Group.Noun
	for _, p := range s.Properties {
		if p.Name == "kind" {
			// What says that it is of another kind is no page for this schema.
			*p.Schema = Schema{About: p.Schema.About, Types: []string{"string", "null"}, AnyOf: []*Schema{
				{Enum: []string{string(kind)}}, {Pattern: front.AnyCase(string(kind))},
			}}
		}
	}
	return s
}

// Settings returns the schema of the settings file.
func Settings() *Schema {
	m := maker{shapes: journal.SettingsShapes()}
	s := m.root(reflect.TypeFor[journal.Settings]())
	s.Title = journal.SettingsFile + ": what holds for the whole journal"
	return s
}

// A maker gathers the definitions that a schema refers to.
type maker struct {
	shapes *front.Schema
	defs   Properties
	of     map[string]reflect.Type // what each is of
}

func (m *maker) root(t reflect.Type) *Schema {
	m.of = make(map[string]reflect.Type)
	s := m.group(m.shapes.Shape(t).Group)
	s.Version, s.Comment, s.Types, s.Defs = draft, Mark+"; change nothing here, for it is written anew", []string{"object", "null"}, m.defs
	return s
}

// value is the schema of a value of a type where it is used. The types of JSON
// that it may have stand there and not in its definition, so that a list of it and
// one of it can share that: keywords for groups, lists and text each pass by what
// is none of theirs.
func (m *maker) value(t reflect.Type, given bool) *Schema {
	shape := m.shapes.Shape(t)
	if shape.Item != nil {
		one := m.value(shape.Item, given)
		one.Items = m.value(shape.Item, false)
		one.Types = append([]string{"array"}, one.Types...)
		return one
	}
	s := &Schema{Ref: "#/$defs/" + m.define(t, shape), Types: m.types(shape)}
	if shape.Form != nil && shape.Form.Named {
		s.Items = &Schema{Types: []string{"string", "number", "null"}}
	}
	if !given {
		s.Types = append(s.Types, "null")
	}
	return s
}

// types returns the types of JSON that a value may have, a list of it apart.
func (m *maker) types(shape front.Shape) []string {
	if shape.Group != nil {
		types := []string{"object"}
		for _, f := range shape.Group.Fields {
			if f.Name == shape.Group.Short {
				types = append(types, m.types(m.shapes.Shape(f.Type))...)
			}
		}
		return types
	}
	switch form := shape.Form; {
	case form.Named:
		return []string{"object", "array", "string", "number"}
	case form.Each != nil:
		return []string{"object"}
	default:
		return bareTypes[form.Bare]
	}
}

var bareTypes = map[front.Bare][]string{
	front.BareText:   {"string"},
	front.BareNumber: {"string", "number"},
	front.BareAny:    {"string", "number", "boolean"},
	front.BareAnswer: {"string", "boolean"},
	front.BareCount:  {"string", "integer"},
}

// define adds the definition of a type where it is not there yet, and returns its
// name.
func (m *maker) define(t reflect.Type, shape front.Shape) string {
	var name string
	if shape.Group != nil {
		name = shape.Group.Noun
	} else {
		name = shape.Form.Name
	}
	name = strings.Join(strings.Fields(strings.ReplaceAll(strings.TrimPrefix(strings.TrimPrefix(name, "a "), "an "), ",", "")), "-")
	switch of, ok := m.of[name]; {
	case ok && of == t || ok && shape.Form != nil && reflect.DeepEqual(shape.Form, m.shapes.Shape(of).Form):
		return name
	case ok:
		panic(fmt.Sprintf("schema: %v and %v are both called %q", of, t, name))
	}
	m.of[name] = t
	at := len(m.defs)
	m.defs = append(m.defs, Property{Name: name})
	if shape.Group != nil {
		m.defs[at].Schema = m.group(shape.Group)
	} else {
		m.defs[at].Schema = m.form(shape.Form)
	}
	return name
}

func (m *maker) group(g *front.Group) *Schema {
	s := &Schema{Others: false}
	for _, f := range g.Fields {
		s.Properties = append(s.Properties, Property{f.Name, m.field(f)})
		if f.Needed {
			s.Required = append(s.Required, f.Name)
		}
		if f.Name == g.Short {
			form := m.shapes.Shape(f.Type).Form
			s.Pattern, s.Unmatched = form.Pattern, unmatched(form)
		}
	}
	if g.Rest != nil {
		rest := m.form(m.shapes.Shape(g.Rest).Form)
		s.Properties, s.Others = append(s.Properties, rest.Properties...), rest.Others
	}
	return s
}

// field is the schema of a field. What it is stands here and not in the definition
// of its type, which an editor would show instead.
func (m *maker) field(f front.FieldShape) *Schema {
	s := m.value(f.Type, f.Needed)
	s.About = f.Doc
	form := m.single(f.Type)
	switch {
	case f.To != "":
		s.About += ": the name of a page of the kind " + f.To
	case form != nil && len(form.Words) > 0:
		s.About += ": " + strings.Join(form.Words, ", ")
	case form != nil && form.Doc != "":
		s.About += ": " + form.Name + " (" + form.Doc + ")"
	case form != nil && form.Pattern != "":
		s.About += ": " + form.Name
	}
	examples := f.Examples
	if len(examples) == 0 && form != nil {
		examples = form.Examples
	}
	for _, example := range examples {
		s.Examples = append(s.Examples, exampleOf(example))
	}
	return s
}

// single returns the form of a type, or of what a list of it holds; nil where that
// is a group.
func (m *maker) single(t reflect.Type) *front.Form {
	shape := m.shapes.Shape(t)
	if shape.Item != nil {
		return m.single(shape.Item)
	}
	return shape.Form
}

func (m *maker) form(f *front.Form) *Schema {
	s := &Schema{}
	switch {
	case f.Each != nil:
		each := reflect.TypeOf(f.Each)
		for _, key := range f.Keys {
			v := m.value(each, false)
			v.About = key.Doc
			s.Properties = append(s.Properties, Property{key.Name, v})
		}
		s.Others = m.value(each, false)
	case len(f.Words) > 0:
		// The words are there to be completed; capitals and blanks are free.
		s.AnyOf = []*Schema{{Enum: f.Words}, {Pattern: f.Pattern}}
	default:
		s.Pattern, s.Unmatched = f.Pattern, unmatched(f)
	}
	if f.Bare == front.BareCount {
		s.Minimum = 1
	}
	return s
}

// unmatched says what should stand where a text does not match a form's pattern.
func unmatched(f *front.Form) string {
	switch {
	case f.Pattern == "":
		return ""
	case len(f.Examples) == 0:
		return "here stands " + f.Name
	}
	return "here stands " + f.Name + ", such as " + strings.Join(f.Examples, " or ")
}
