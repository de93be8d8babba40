package lesson

import (
	"reflect"
	"strings"
	"testing"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
)

func TestSameLooksAtEveryField(t *testing.T) {
	for i := range reflect.TypeFor[Lesson]().NumField() {
		var a, b Lesson
		f := reflect.ValueOf(&b).Elem().Field(i)
		switch f.Kind() {
		case reflect.String:
			f.SetString("other")
		case reflect.Slice:
			f.Set(reflect.MakeSlice(f.Type(), 1, 1))
		default:
			f.SetInt(1)
		}
		if same(&a, &b) {
			t.Errorf("two lessons with another %s are the same", reflect.TypeFor[Lesson]().Field(i).Name)
		}
	}
}

func TestSince(t *testing.T) {
	before := Gather(journaltest.Open(t, life))
	if c := Gather(journaltest.Open(t, life)).Since(before); !c.None() || c.Bears("patterns/draft") || c.Opens("builds/third") {
		t.Errorf("the same journal: %+v", c.ids)
	}
	another := Gather(journaltest.Open(t, strings.Replace(life, "Next time: face the hem.", "Next time: face the hem twice.", 1)))
	c := another.Since(before)
	for id, want := range map[journal.ID]bool{
		"builds/first": true, "builds/first/2024-05-01-worn": true, "patterns/draft": true, "patterns/other": false, "techniques/gauging": false,
	} {
		if c.Bears(id) != want {
			t.Errorf("%s: %t", id, !want)
		}
	}
	if !c.Opens("builds/third") || c.Opens("builds/plain") {
		t.Error("the third jacket is cut from the draft, the gown is not")
	}
	if c := Gather(journaltest.Open(t, strings.Replace(life, "garment: gown", "garment: cloak", 1))).Since(before); !c.Opens("builds/plain") || !c.Bears("people/wren") {
		t.Error("what a build shares with others has changed")
	}
}
