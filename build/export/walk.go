package export

import (
	"reflect"
	"strconv"
)

// each calls do with every text of a log, its place in it, and the field it is of. What
// do returns stands in its place.
func each(log *Log, do func(path []string, f reflect.StructField, text string) string) {
	w := walker{do: do}
	w.group(nil, reflect.ValueOf(log).Elem())
}

type walker struct {
	do func([]string, reflect.StructField, string) string
}

func (w walker) group(path []string, v reflect.Value) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		w.value(append(path[:len(path):len(path)], nameOf(f)), f, v.Field(i))
	}
}

func (w walker) value(path []string, f reflect.StructField, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(w.do(path, f, v.String()))
	case reflect.Struct:
		w.group(path, v)
	case reflect.Pointer:
		if !v.IsNil() {
			w.value(path, f, v.Elem())
		}
	case reflect.Slice:
		if v.Len() > 0 { // the list may be part of a journal, which others read
			v.Set(reflect.AppendSlice(reflect.MakeSlice(v.Type(), 0, v.Len()), v))
		}
		for i := range v.Len() {
			w.value(append(path[:len(path):len(path)], strconv.Itoa(i)), f, v.Index(i))
		}
	}
}
