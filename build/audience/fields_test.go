package audience

import (
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"hussif/content/front"
	"hussif/content/journal"
	"hussif/content/source"
)

// A spot is the value of one field in a file of the fixture, or a part of it.
type spot struct {
	of, field string // "Note", "spent"
	tells     string
	at        source.Span
	typ       reflect.Type
}

// spots returns all values in the front matter of a record, each with what the
// fields that it is in tell of.
func spots(r journal.Record) []spot {
	parts, _ := front.Split(r.Head().File)
	node, _ := front.Parse(parts.Front)
	var out []spot
	var walk func(n front.Node, t reflect.Type, s spot)
	walk = func(n front.Node, t reflect.Type, s spot) {
		for t.Kind() == reflect.Slice && n.Kind != front.Map {
			if n.Kind != front.List {
				t = t.Elem()
				continue
			}
			for _, item := range n.Items {
				walk(item, t.Elem(), s)
			}
			return
		}
		switch n.Kind {
		case front.Text:
			s.at, s.typ = n.Span, t
			out = append(out, s)
		case front.Map:
			for _, f := range n.Fields {
				inner, typ := s, t
				if t.Kind() == reflect.Slice {
					typ = t.Elem() // by measure
				} else if field, ok := fieldsOf(t)[f.Key]; ok {
					typ = field.Type
					inner.field = f.Key
					if s.of == "" {
						inner.of = t.Name()
					} else {
						inner.field = s.field + ": " + f.Key
					}
					if tells := field.Tag.Get("tells"); tells != "" && s.tells == "" {
						inner.tells = tells
					}
				}
				walk(f.Value, typ, inner)
			}
		}
	}
	walk(node, reflect.TypeOf(r).Elem(), spot{})
	return out
}

var (
	figures = regexp.MustCompile(`[1-9]`)
	aDay    = regexp.MustCompile(`^\d{4}-\d{2}-\d{2}$`)
	numbers int
)

// others returns texts that could stand in the place of one, those that differ most
// first.
func others(text string) []string {
	numbers++
	out := []string{fmt.Sprintf("qz%dzq", numbers)}
	if aDay.MatchString(text) {
		return append(out, strings.Replace(text, "20", "19", 1))
	}
	return append(out,
		figures.ReplaceAllStringFunc(text, func(d string) string { return string(d[0]%9 + '1') }),
		"yes", "no", "self", "circle", "public", "words", "deltas", "kept", "changed", "right upper arm girth", "blue-gown", "unknown")
}

// vary returns the files with another text at a spot, where one goes there.
func vary(t *testing.T, f files, s spot) (files, bool) {
	t.Helper()
	name, at := s.at.File.Name, s.at
	whole := string(at.File.Data)
	for _, other := range others(at.Text()) {
		changed := f.with(name, whole[:at.Start]+other+whole[at.End:])
		if other != at.Text() && changed.sound(t) {
			return changed, true
		}
	}
	return nil, false
}

// Whatever stands in a field that tells of what an audience may not know, what it
// sees is the same to the byte: so nothing that is made from it can tell.
func TestWhatAFieldTellsMakesNoDifference(t *testing.T) {
	f := every(t)
	j, errors := f.open(t)
	for _, e := range errors {
		t.Fatalf("%s: %s", e.Span, e.Text)
	}
	varied, shown := 0, 0
	tells := make(map[string]bool)
	for _, who := range []journal.Audience{journal.Circle, journal.Public} {
		want := f.share(t, who).print()
		for _, r := range j.Records() {
			for _, s := range spots(r) {
				hidden := s.tells != "" && (s.tells != string(journal.OfPlace) || who == journal.Public)
				if s.tells == string(journal.OfSharing) {
					continue // it decides what is seen
				}
				if !hidden && (who == journal.Circle || s.typ != reflect.TypeFor[string]()) {
					continue
				}
				changed, ok := vary(t, f, s)
				if !ok {
					continue
				}
				same := changed.share(t, who).print() == want
				if hidden && !same {
					t.Errorf("the %s can tell what stands in %s, %s (%s)", who, s.of, s.field, s.at)
				}
				if hidden {
					varied++
					tells[s.of+": "+s.field] = true
				} else if !same {
					shown++
				}
			}
		}
	}
	if varied < 60 || len(tells) < 30 {
		t.Errorf("only %d values of %d fields were varied", varied, len(tells))
	}
	if shown < 30 {
		t.Errorf("only %d of the words that may be seen made a difference: much is lost", shown)
	}
}

// Every field can be hidden by the page itself, and then makes no difference.
func TestAFieldHiddenByItsPageMakesNoDifference(t *testing.T) {
	f := every(t)
	j, _ := f.open(t)
	fields := make(map[string]bool)
	for _, r := range j.Records() {
		name := r.Head().File.Name
		for _, s := range spots(r) {
			top, _, _ := strings.Cut(s.field, ":")
			if s.tells != "" || strings.Contains("kind title date build", top) {
				continue
			}
			hide := func(f files) files {
				return f.with(name, strings.Replace(f[name], "---\n", "---\nshare fields: {"+top+": circle}\n", 1))
			}
			changed, ok := vary(t, f, s)
			if !ok {
				continue
			}
			fields[s.of+": "+top] = true
			if hide(f).share(t, journal.Public).print() != hide(changed).share(t, journal.Public).print() {
				t.Errorf("the public can tell what stands in the hidden %s of a %s (%s)", s.field, s.of, s.at)
			}
		}
	}
	if len(fields) < 45 {
		t.Errorf("only %d fields were hidden", len(fields))
	}
}

// What the wearer allows is seen.
func TestWhatAWearerAllowsIsSeen(t *testing.T) {
	for _, c := range []struct {
		says, file string
		who        journal.Audience
		sees       []string
		not        []string
	}{
		{"", "builds/striped-jacket/2026-02-14-fitting.md", journal.Circle, []string{`"hours"`, `"opened"`, `"used"`}, []string{"measured", "body", "altered", "fitted", "moves", "spent", "40"}},
		{"shows fit: words", "builds/striped-jacket/2026-02-14-fitting.md", journal.Circle, []string{`"fitted"`, `"moves"`}, []string{"measured", `"body"`, "altered", "pattern changed"}},
		{"shows fit: deltas", "builds/striped-jacket/2026-02-14-fitting.md", journal.Public, []string{`"fitted"`, `"altered"`, `"pattern changed"`}, []string{"measured", `"body"`}},
		{"shows measures: circle", "builds/striped-jacket/2026-02-14-fitting.md", journal.Circle, []string{`"measured"`, `"body"`, `"altered"`}, []string{"spent"}},
		{"shows measures: circle", "builds/striped-jacket/2026-02-14-fitting.md", journal.Public, nil, []string{"measured", `"body"`, "altered"}},
		{"shows money: public", "builds/striped-jacket/2026-02-14-fitting.md", journal.Public, []string{`"spent"`, `"cost": "40"`}, []string{"measured", "the fair"}},
		{"shows measures: public", "people/wren.md", journal.Public, []string{"92 1/2", "usual changes"}, []string{"shows"}},
		{"", "people/wren.md", journal.Circle, []string{"Wren Alder"}, []string{"92 1/2", "usual", "shows", "share"}},
		{"shows money: public", "materials/striped-linen.md", journal.Public, []string{"140"}, []string{"20 EUR", "fair"}},
		{"", "materials/striped-linen.md", journal.Circle, []string{"the fair"}, []string{"20 EUR"}},
	} {
		f := every(t)
		f.replace("people/wren.md", "shows money: self", "")
		f = f.with("people/wren.md", strings.Replace(f["people/wren.md"], "---\n", "---\n"+c.says+"\n", 1))
		text := string(f.share(t, c.who).Folder.Texts[c.file])
		for _, words := range c.sees {
			if !strings.Contains(text, words) {
				t.Errorf("%s, %s, %q: %s is not seen in\n%s", c.who, c.file, c.says, words, text)
			}
		}
		for _, words := range c.not {
			if strings.Contains(text, words) {
				t.Errorf("%s, %s, %q: %s is seen in\n%s", c.who, c.file, c.says, words, text)
			}
		}
	}
}
