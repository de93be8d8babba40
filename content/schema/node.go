package schema

import (
	"bytes"
	"encoding/json"
)

// A Schema is a JSON Schema, or one within another.
type Schema struct {
	Version    string     `json:"$schema,omitempty"`
	Comment    string     `json:"$comment,omitempty"`
	Title      string     `json:"title,omitempty"`
	About      string     `json:"description,omitempty"`
	Ref        string     `json:"$ref,omitempty"`
	Types      []string   `json:"type,omitempty"`
	AnyOf      []*Schema  `json:"anyOf,omitempty"`
	Enum       []string   `json:"enum,omitempty"`
	Const      any        `json:"const,omitempty"`
	Pattern    string     `json:"pattern,omitempty"`
	Unmatched  string     `json:"patternErrorMessage,omitempty"` // no word of the standard; editors say it
	Minimum    int        `json:"minimum,omitempty"`
	Maximum    int        `json:"maximum,omitempty"`
	MaxLength  int        `json:"maxLength,omitempty"` // in characters
	MaxItems   int        `json:"maxItems,omitempty"`
	Properties Properties `json:"properties,omitempty"`
	Required   []string   `json:"required,omitempty"`
	Others     any        `json:"additionalProperties,omitempty"` // *Schema or false
	Items      *Schema    `json:"items,omitempty"`
	Examples   []any      `json:"examples,omitempty"`
	Defs       Properties `json:"$defs,omitempty"`
}

// Properties are schemas by name, in the order in which they are printed.
type Properties []Property

// A Property is a schema with its name.
type Property struct {
	Name   string
	Schema *Schema
}

// MarshalJSON writes an object whose keys keep their order.
func (p Properties) MarshalJSON() ([]byte, error) {
	var o object
	for _, property := range p {
		o = append(o, member{property.Name, property.Schema})
	}
	return o.MarshalJSON()
}

// An object is one of JSON whose keys keep their order.
type object []member

type member struct {
	name  string
	value any
}

// MarshalJSON writes the object.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		name, err := plain(m.name)
		if err != nil {
			return nil, err
		}
		value, err := plain(m.value)
		if err != nil {
			return nil, err
		}
		b.Write(name)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// JSON returns the schema as it is written to a file.
func (s *Schema) JSON() ([]byte, error) {
	data, err := plain(s)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := json.Indent(&b, data, "", "  "); err != nil {
		return nil, err
	}
	b.WriteByte('\n')
	return b.Bytes(), nil
}

// plain is json.Marshal that leaves <, > and & as they are.
func plain(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), err
}
