package schema

import (
	"reflect"
	"regexp"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"hussif/content/front"
	"hussif/content/journal"
	"hussif/content/source"
)

// FuzzForms looks for a text that a reader takes and its form's pattern refuses:
// an editor would raise a false alarm.
func FuzzForms(f *testing.F) {
	type written struct {
		shapes  *front.Schema
		of      reflect.Type
		name    string
		pattern *regexp.Regexp
	}
	var forms []written
	pages, settings := journal.Shapes(), journal.SettingsShapes()
	seen := make(map[reflect.Type]bool)
	eachField(func(kind journal.Kind, _ *front.Group, field front.FieldShape) {
		shapes := pages
		if kind == "" {
			shapes = settings
		}
		t := field.Type
		if t.Kind() == reflect.Slice && shapes.Shape(t).Item != nil {
			t = t.Elem()
		}
		form := shapes.Shape(t).Form
		if form == nil || form.Pattern == "" || seen[t] {
			return
		}
		seen[t] = true
		forms = append(forms, written{shapes, t, form.Name, regexp.MustCompile(form.Pattern)})
		for _, example := range append(form.Examples, form.Words...) {
			f.Add(example)
			f.Add(strings.ToUpper(example))
			f.Add("  " + example + " ")
		}
	})
	if len(forms) < 20 {
		f.Fatalf("%d forms with a pattern", len(forms))
	}
	for _, seed := range []string{"½", "−1/2 in", "XXXX", "../1784", "late eighteenth century", "1784-05-17/..", "12:30", "kr 5", "$3", "a@b"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		// What blanks are, and which letters are others in capitals, is not the
		// same for ECMA-262, RE2 and this program beyond ASCII.
		odd := func(r rune) bool {
			return r > unicode.MaxASCII && (unicode.IsSpace(r) || unicode.ToLower(r) <= unicode.MaxASCII || unicode.ToUpper(r) <= unicode.MaxASCII)
		}
		if !utf8.ValidString(text) || strings.ContainsFunc(text, odd) || strings.ContainsRune(text, '\v') {
			return
		}
		file, _ := source.Load("value.yaml", []byte(text))
		node := front.Node{Kind: front.Text, Text: text, Span: file.Whole()}
		for _, w := range forms {
			if len(w.shapes.Decode(node, reflect.New(w.of).Interface())) == 0 && !w.pattern.MatchString(text) {
				t.Errorf("%q is taken for %s, and its pattern refuses it", text, w.name)
			}
		}
	})
}
