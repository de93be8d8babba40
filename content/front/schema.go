package front

import (
	"fmt"
	"reflect"
	"strings"

	"hussif/content/source"
)

// A Reader turns a [Node] into a value of one Go type. Make one with [As].
type Reader struct {
	typ  reflect.Type
	form Form
	read func(*Decoder, Node, reflect.Value) bool
}

// As makes a Reader from a function, and says in a form what that takes. The
// function reports what is wrong to the decoder and then returns false; the field
// keeps its zero value.
func As[T any](form Form, read func(*Decoder, Node) (T, bool)) Reader {
	return Reader{
		typ:  reflect.TypeFor[T](),
		form: form,
		read: func(d *Decoder, n Node, dst reflect.Value) bool {
			v, ok := read(d, n)
			if ok {
				dst.Set(reflect.ValueOf(&v).Elem())
			}
			return ok
		},
	}
}

// A Schema knows how front matter fills Go structs. It is made once, never
// changed, and may be shared by workers.
//
// A struct takes part by embedding [Where] with a tag that names it in messages,
// as in
//
//	type Seam struct {
//		front.Where `noun:"a seam"`
//		Name  string          `field:"name,needed,short" doc:"what it is called" eg:"side back"`
//		Now   quantity.Length `field:"now" doc:"allowance on each edge"`
//	}
//
// "doc" and "eg" tell an editor what a field is and how it looks; see [Shape].
// "needed" refuses a group without the field, "short" lets a single value stand
// for a group with that field alone, and a field named "*" is given all keys
// that no other field takes, as one Map. Structs embedded without a field tag
// lend their fields, and may be given the noun of the struct that embeds them. A
// slice takes a list, or one value without the brackets.
type Schema struct {
	readers map[reflect.Type]Reader
	plans   map[reflect.Type]*plan
}

type plan struct {
	noun   string
	fields []fieldPlan
	byName map[string]int
	short  int   // index into fields, or -1
	rest   []int // index path of the field that takes all other keys, or nil
	where  []int // index path of the embedded Where
}

type fieldPlan struct {
	name   string
	index  []int
	needed bool
}

// NewSchema prepares the types of the roots and all that they hold. It panics
// where a type cannot be read: that is a fault in the program.
func NewSchema(readers []Reader, roots ...any) *Schema {
	s := &Schema{readers: make(map[reflect.Type]Reader), plans: make(map[reflect.Type]*plan)}
	for _, r := range readers {
		s.readers[r.typ] = r
	}
	for _, root := range roots {
		s.prepare(reflect.TypeOf(root))
	}
	return s
}

func (s *Schema) prepare(t reflect.Type) {
	if _, ok := s.readers[t]; ok || s.plans[t] != nil || t.Kind() == reflect.String {
		return
	}
	switch t.Kind() {
	case reflect.Slice:
		s.prepare(t.Elem())
		return
	case reflect.Struct:
	default:
		panic(fmt.Sprintf("front: no reader for %v", t))
	}
	p := &plan{byName: make(map[string]int), short: -1}
	s.plans[t] = p
	s.collect(p, t, nil)
	if p.where == nil {
		panic(fmt.Sprintf("front: %v does not embed front.Where", t))
	}
}

func (s *Schema) collect(p *plan, t reflect.Type, path []int) {
	for i := range t.NumField() {
		f := t.Field(i)
		index := append(path[:len(path):len(path)], i)
		tag, tagged := f.Tag.Lookup("field")
		switch {
		case f.Type == reflect.TypeFor[Where]():
			p.where = index
			if noun := f.Tag.Get("noun"); noun != "" {
				p.noun = noun
			}
		case f.Anonymous && !tagged && f.Type.Kind() == reflect.Struct:
			s.collect(p, f.Type, index)
			if noun := f.Tag.Get("noun"); noun != "" {
				p.noun = noun
			}
		case tagged:
			s.prepare(f.Type)
			name, options, _ := strings.Cut(tag, ",")
			if name == "*" {
				p.rest = index
				continue
			}
			if strings.Contains(options, "short") {
				p.short = len(p.fields)
			}
			p.byName[name] = len(p.fields)
			p.fields = append(p.fields, fieldPlan{name: name, index: index, needed: strings.Contains(options, "needed")})
		}
	}
}

// Fields returns the names that a struct's group may have, in the order declared.
func (s *Schema) Fields(of any) []string {
	var names []string
	for _, f := range s.plans[reflect.TypeOf(of)].fields {
		names = append(names, f.name)
	}
	return names
}

// Where is where a group and its fields stand in their file.
type Where struct {
	Span   source.Span
	fields []placed
}

type placed struct {
	name       string
	key, value source.Span
	unread     bool
}

// Key returns the place of a field's name, or that of the group where it is not
// given.
func (w Where) Key(field string) source.Span {
	for _, f := range w.fields {
		if f.name == field {
			return f.key
		}
	}
	return w.Span
}

// Value returns the place of a field's value, or that of the group where it is
// not given.
func (w Where) Value(field string) source.Span {
	for _, f := range w.fields {
		if f.name == field {
			return f.value
		}
	}
	return w.Span
}

// Has reports whether a field is given and not empty.
func (w Where) Has(field string) bool {
	for _, f := range w.fields {
		if f.name == field {
			return true
		}
	}
	return false
}

// Unread reports whether a field is given and could not be read, so that its zero
// value means nothing.
func (w Where) Unread(field string) bool {
	for _, f := range w.fields {
		if f.name == field {
			return f.unread
		}
	}
	return false
}
