package journal

import (
	"reflect"
	"slices"
	"strings"

	"hussif/content/front"
)

// eachRef visits the links in a record's fields, with the name of the field and
// the kinds of record that it may lead to; none means any.
func (l *linker) eachRef(r Record, visit func(field string, kinds []Kind, ref Ref)) {
	v := reflect.ValueOf(r).Elem()
	l.fieldsOf(v.Type()).each(v, "", visit)
}

// refFields are the fields of a type that hold links, or groups that do.
type refFields struct{ list []refField }

type refField struct {
	index  int
	name   string
	own    bool // the name says more about a link than that of the group does
	kinds  []Kind
	within *refFields // of a group, or of each in a list of groups
}

// ownName lists the fields inside a group that say more about a link than the
// name of the group does.
var ownName = []string{"rests on"}

// fieldsOf works out which fields of a type to look into, once for all records.
func (l *linker) fieldsOf(t reflect.Type) *refFields {
	if fields, ok := l.fields[t]; ok {
		return fields
	}
	fields := new(refFields)
	l.fields[t] = fields
	for i := range t.NumField() {
		f := t.Field(i)
		name, tagged := f.Tag.Lookup("field")
		name, _, _ = strings.Cut(name, ",")
		if !tagged && !f.Anonymous || f.Type == reflect.TypeFor[front.Where]() {
			continue
		}
		field := refField{index: i, name: name, own: slices.Contains(ownName, name)}
		if to := f.Tag.Get("to"); to != "" {
			field.kinds = []Kind{Kind(to)}
		}
		if f.Type != reflect.TypeFor[Ref]() && f.Type != reflect.TypeFor[[]Ref]() {
			group := f.Type
			if group.Kind() == reflect.Slice {
				group = group.Elem()
			}
			if group.Kind() != reflect.Struct {
				continue
			}
			if field.within = l.fieldsOf(group); len(field.within.list) == 0 {
				continue
			}
		}
		fields.list = append(fields.list, field)
	}
	return fields
}

func (fields *refFields) each(v reflect.Value, group string, visit func(string, []Kind, Ref)) {
	for i := range fields.list {
		f := &fields.list[i]
		name, at := f.name, v.Field(f.index)
		if group != "" && !f.own {
			name = group
		}
		switch {
		case f.within != nil && at.Kind() == reflect.Slice:
			for i := range at.Len() {
				f.within.each(at.Index(i), name, visit)
			}
		case f.within != nil:
			f.within.each(at, name, visit)
		case at.Kind() == reflect.Slice:
			for _, ref := range *at.Addr().Interface().(*[]Ref) {
				visit(name, f.kinds, ref)
			}
		default:
			if ref := at.Addr().Interface().(*Ref); !ref.IsZero() {
				visit(name, f.kinds, *ref)
			}
		}
	}
}
