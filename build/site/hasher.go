package site

import (
	"fmt"
	"math"
	"reflect"
	"slices"

	"hussif/content/journal"
	"hussif/content/source"
)

// A hasher makes a sum of values. Where something stands in a file does not count.
// A record counts by its ID and its facts.
type hasher struct {
	*source.Hash
	journal *journal.Journal
}

func (h hasher) add(v any) { h.value(reflect.ValueOf(v)) }

var (
	spanType   = reflect.TypeFor[source.Span]()
	fileType   = reflect.TypeFor[*source.File]()
	recordType = reflect.TypeFor[journal.Record]()
)

func (h hasher) value(v reflect.Value) {
	if t := v.Type(); t == spanType || t == fileType {
		return
	}
	switch v.Kind() {
	case reflect.Bool:
		if v.Bool() {
			h.Number(1)
		} else {
			h.Number(0)
		}
	case reflect.String:
		h.Text(v.String())
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		h.Number(uint64(v.Int()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		h.Number(v.Uint())
	case reflect.Float32, reflect.Float64:
		h.Number(math.Float64bits(v.Float()))
	case reflect.Struct:
		for i := range v.NumField() {
			h.value(v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		h.Number(uint64(v.Len()))
		for i := range v.Len() {
			h.value(v.Index(i))
		}
	case reflect.Map:
		h.mapping(v)
	case reflect.Pointer, reflect.Interface:
		h.pointer(v)
	default:
		panic(fmt.Sprintf("site: a %s cannot be told from another", v.Type()))
	}
}

func (h hasher) pointer(v reflect.Value) {
	if v.IsNil() {
		h.Number(0)
		return
	}
	h.Number(1)
	if v.Kind() == reflect.Interface {
		h.Text(v.Elem().Type().String())
		h.value(v.Elem())
		return
	}
	if v.Type().Implements(recordType) {
		id := v.Elem().FieldByName("ID").String()
		sum, _ := h.journal.Answer(journal.Question{About: journal.Facts, Of: id})
		h.Text(id)
		h.Sum(sum)
		return
	}
	h.value(v.Elem())
}

// mapping adds the entries of a map, whatever their order.
func (h hasher) mapping(v reflect.Value) {
	h.Number(uint64(v.Len()))
	var sums []source.Sum
	for _, key := range v.MapKeys() {
		entry := hasher{new(source.Hash), h.journal}
		entry.value(key)
		entry.value(v.MapIndex(key))
		sums = append(sums, entry.Done())
	}
	slices.SortFunc(sums, func(a, b source.Sum) int { return slices.Compare(a[:], b[:]) })
	for _, sum := range sums {
		h.Sum(sum)
	}
}
