package export

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strconv"
	"strings"

	"hussif/content/source"
)

// place returns where in a file of JSON a value is, by the names and numbers that lead
// to it. Where they lead nowhere it is the last value on the way.
func place(file *source.File, path []string) source.Span {
	d := json.NewDecoder(bytes.NewReader(file.Data))
	at := file.Whole()
	for _, step := range path {
		open, err := d.Token()
		if err != nil {
			return at
		}
		for i := 0; d.More(); i++ {
			key := strconv.Itoa(i)
			if open == json.Delim('{') {
				token, err := d.Token()
				if err != nil {
					return at
				}
				key = token.(string)
			}
			if key == step {
				break
			}
			if err := d.Decode(new(json.RawMessage)); err != nil {
				return at
			}
		}
		at = rest(file, d)
	}
	start := rest(file, d)
	if d.Decode(new(json.RawMessage)) != nil {
		return at
	}
	return file.Span(start.Start, int(d.InputOffset()))
}

// nameBefore returns where the name of a value stands.
func nameBefore(value source.Span, name string) source.Span {
	quoted := strconv.Quote(name)
	if at := bytes.LastIndex(value.File.Data[:value.Start], []byte(quoted)); at >= 0 {
		return value.File.Span(at, at+len(quoted))
	}
	return value
}

// rest returns what a decoder has still to read, from the next value on.
func rest(file *source.File, d *json.Decoder) source.Span {
	start := int(d.InputOffset())
	start += len(file.Data[start:]) - len(bytes.TrimLeft(file.Data[start:], " \t\r\n:,"))
	return file.Span(start, len(file.Data))
}

// typeAt returns the type of what a path leads to, an item for a list, and the field
// that it is of.
func typeAt(path []string) (t reflect.Type, of reflect.StructField) {
	t = reflect.TypeFor[Log]()
	for _, step := range path {
		if t.Kind() != reflect.Struct {
			continue // an item of a list
		}
		for i := range t.NumField() {
			if f := t.Field(i); nameOf(f) == step {
				t, of = f.Type, f
				for t.Kind() == reflect.Slice || t.Kind() == reflect.Pointer {
					t = t.Elem()
				}
				break
			}
		}
	}
	return t, of
}

// fieldsAt returns the names of the fields of what a path leads to.
func fieldsAt(path []string) []string {
	t, _ := typeAt(path)
	var names []string
	for i := range t.NumField() {
		names = append(names, nameOf(t.Field(i)))
	}
	return names
}

// formAt names the form of the text that a path leads to.
func formAt(path []string) string {
	_, of := typeAt(path)
	return of.Tag.Get("is")
}

func nameOf(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}
