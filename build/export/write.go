package export

import (
	"bytes"
	"encoding/json"
	"reflect"
	"unicode/utf8"
)

// Write returns a log as it is handed over: what is in it that the schema does not take
// is cut to what it does.
func Write(log Log) ([]byte, error) {
	log.Version = Version
	shorten(reflect.ValueOf(&log).Elem())
	each(&log, func(_ []string, f reflect.StructField, text string) string {
		if f.Tag.Get("one") != "" {
			return text
		}
		text = cut(text, longest(f))
		if f.Tag.Get("is") != "html" {
			return text
		}
		text, err := cleanHTML(text)
		if err != nil {
			return "" // no page of ours is that deep, and nobody could read it
		}
		return cut(text, longest(f))
	})
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetIndent("", " ")
	e.SetEscapeHTML(false)
	if err := e.Encode(log); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// shorten cuts lists to as many items as they may have.
func shorten(group reflect.Value) {
	for i := range group.NumField() {
		list := group.Field(i)
		if list.Kind() != reflect.Slice {
			continue
		}
		if most := most(group.Type().Field(i)); list.Len() > most {
			list.Set(list.Slice(0, most))
		}
		if list.Type().Elem().Kind() == reflect.Struct {
			for i := range list.Len() {
				shorten(list.Index(i))
			}
		}
	}
}

// cut returns text with no more than n characters, its end marked where it is cut.
func cut(text string, n int) string {
	if len(text) <= n || utf8.RuneCountInString(text) <= n {
		return text
	}
	runes := []rune(text)
	return string(runes[:n-1]) + "…"
}
