package front

import (
	"fmt"
	"reflect"
	"strings"
)

// A Form says what a [Reader] takes, for those who describe front matter to
// another program. It may promise less than the reader asks for, but never
// refuses what the reader takes.
type Form struct {
	Name     string   // of the kind of value: "a length"
	Doc      string   // how it is written, in a few words
	Examples []string // as they stand in a file
	Words    []string // all that may be written, where that is a few words
	Pattern  string   // of the text, as a regular expression that ECMA-262 and RE2 share
	Bare     Bare     // what else than text an editor may take it for

	// A group of any keys has these instead.
	Keys  []Key // that are known beforehand
	Each  any   // a value of the type under each key, or nil where it is no such group
	Named bool  // whether a list of keys, or one key, may stand for the group
}

// A Key is one that a group of any keys may have.
type Key struct{ Name, Doc string }

// Bare is what YAML takes a value without quotes for.
type Bare int

// What YAML may take a value for. A name may look like a number or like the word
// true, and so may any other text.
const (
	BareText   Bare = iota // text alone
	BareNumber             // text, or a number
	BareAny                // text, a number, or true and false
	BareAnswer             // text, or true and false
	BareCount              // text, or a whole number from 1 up
)

// A Shape is how values of one type are written. Just one of Form, Item and Group
// is set.
type Shape struct {
	Form  *Form
	Item  reflect.Type // of a list, or of one value without the brackets
	Group *Group
}

// A Group is a group of fields.
type Group struct {
	Name   string // of the type
	Noun   string // "a seam"
	Fields []FieldShape
	Short  string       // the field that a single value stands for, or ""
	Rest   reflect.Type // of all other keys as one group, or nil where there are none
}

// A FieldShape is one field of a group.
type FieldShape struct {
	Name     string
	Doc      string // what it is
	Examples []string
	To       string // the kind of page that it links to, or ""
	Needed   bool
	Type     reflect.Type
}

// Shape returns how values of a type are written. It panics where the schema was
// not made for that type.
func (s *Schema) Shape(t reflect.Type) Shape {
	if r, ok := s.readers[t]; ok {
		return Shape{Form: &r.form}
	}
	if t.Kind() == reflect.Slice {
		return Shape{Item: t.Elem()}
	}
	p := s.plans[t]
	if p == nil {
		panic(fmt.Sprintf("front: no shape of %v is known", t))
	}
	g := &Group{Name: t.Name(), Noun: p.noun}
	for i, f := range p.fields {
		field := t.FieldByIndex(f.index)
		shape := FieldShape{Name: f.name, Doc: field.Tag.Get("doc"), To: field.Tag.Get("to"), Needed: f.needed, Type: field.Type}
		if eg, ok := field.Tag.Lookup("eg"); ok {
			shape.Examples = []string{eg}
		}
		g.Fields = append(g.Fields, shape)
		if i == p.short {
			g.Short = f.name
		}
	}
	if p.rest != nil {
		g.Rest = t.FieldByIndex(p.rest).Type
	}
	return Shape{Group: g}
}

// AnyCase returns a pattern of some words, in capitals or not and with any blanks
// between them.
func AnyCase(words ...string) string {
	var either []string
	for _, word := range words {
		var b strings.Builder
		for _, r := range word {
			switch {
			case 'a' <= r && r <= 'z':
				b.WriteString("[" + strings.ToUpper(string(r)) + string(r) + "]")
			case r == ' ':
				b.WriteString(`\s+`)
			case r == '?':
				b.WriteString(`\?`)
			default:
				b.WriteRune(r)
			}
		}
		either = append(either, b.String())
	}
	return `^\s*(` + strings.Join(either, "|") + `)\s*$`
}
