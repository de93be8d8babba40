package journal

import (
	"reflect"
	"slices"
	"strings"

	"hussif/content/front"
)

// eachRef visits the links in a record's fields, with the name of the field and
// the kinds of record that it may lead to; none means any.
func eachRef(v reflect.Value, field string, visit func(field string, kinds []Kind, ref Ref)) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		name, tagged := f.Tag.Lookup("field")
		name, _, _ = strings.Cut(name, ",")
		if !tagged && !f.Anonymous || f.Type == reflect.TypeFor[front.Where]() {
			continue
		}
		if field != "" && !slices.Contains(ownName, name) {
			name = field
		}
		var kinds []Kind
		if to := f.Tag.Get("to"); to != "" {
			kinds = []Kind{Kind(to)}
		}
		switch f.Type {
		case reflect.TypeFor[Ref]():
			if ref := v.Field(i).Interface().(Ref); !ref.IsZero() {
				visit(name, kinds, ref)
			}
		case reflect.TypeFor[[]Ref]():
			for _, ref := range v.Field(i).Interface().([]Ref) {
				visit(name, kinds, ref)
			}
		default:
			eachWithin(v.Field(i), name, visit)
		}
	}
}

// ownName lists the fields inside a group that say more about a link than the
// name of the group does.
var ownName = []string{"rests on"}

func eachWithin(v reflect.Value, field string, visit func(string, []Kind, Ref)) {
	switch v.Kind() {
	case reflect.Struct:
		eachRef(v, field, visit)
	case reflect.Slice:
		if v.Type().Elem().Kind() == reflect.Struct {
			for i := range v.Len() {
				eachRef(v.Index(i), field, visit)
			}
		}
	}
}
