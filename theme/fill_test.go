package theme

import (
	"bytes"
	"fmt"
	"html"
	"reflect"
	"regexp"
	"strings"
	"testing"
)

// filled returns a view of the same kind in which each string is what say makes
// of the path of its field, each list has two members and each number is 7.
func filled(view any, say func(path string) string) any {
	v := reflect.New(reflect.TypeOf(view)).Elem()
	fill(v, v.Type().Name(), say)
	return v.Interface()
}

func fill(v reflect.Value, path string, say func(path string) string) {
	switch v.Kind() {
	case reflect.String:
		v.SetString(say(path)) // template.HTML too, since it is for the caller to escape
	case reflect.Int:
		v.SetInt(7)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), path, say)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range v.Len() {
			fill(v.Index(i), fmt.Sprintf("%s-%d", path, i), say)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), path+"-"+v.Type().Field(i).Name, say)
		}
	default:
		panic("views have no " + v.Kind().String())
	}
}

// unshown matches the fields that a page does not show while all others are
// filled, with the reason why not.
var unshown = regexp.MustCompile(`-Frame-Section$` + // compared only
	`|^(List|NextTime|Decisions|ToDo|Search)-Empty$` + // said where there is nothing
	`|-(Facts|Faults|Needs|Closures|Hours|Hands|Short)-\d-Value$` + // links are shown in its place
	`|-(Bodies|Sessions)-\d-Table-Title$` + // a session has a title of its own
	`|-Effects-\d-Links-` + // an effect is a figure
	`|-Short-\d-Links-\d-(Href|Note)$` + // plain text, to be pasted
	`|^Tiles-Paper$` + // the size of the printed pages
	`|-Cells-\d-Delta-Text$` + // the verdict's words have it
	`|-((OnTable|Wears|NotFit|Cards|Builds|Newest|Log|Wardrobe|Own|Made|Borrow)-\d|Stopped)-Photo-(Full|Caption|Piece)$`) // a small picture beside words

// No field of a view is forgotten by its template: what build/site fills in is
// there to be read.
func TestEveryFieldIsOnThePage(t *testing.T) {
	look := newTheme(t)
	for _, view := range views() {
		var said []string
		full := filled(view, func(path string) string {
			said = append(said, path)
			return path
		})
		var page bytes.Buffer
		if err := look.Render(&page, full); err != nil {
			t.Fatal(err)
		}
		text := html.UnescapeString(page.String())
		for _, path := range said {
			if !shows(text, path) && !unshown.MatchString(path) {
				t.Errorf("%T: no sign of %s", view, path)
			}
		}
	}
}

// shows says whether a path stands in a text and not only as the start of a
// longer one.
func shows(text, path string) bool {
	for {
		at := strings.Index(text, path)
		if at < 0 {
			return false
		}
		text = text[at+len(path):]
		if text == "" || text[0] != '-' {
			return true
		}
	}
}
