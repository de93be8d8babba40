package audience

import (
	"path"
	"reflect"
	"regexp"
	"slices"
	"strings"

	"hussif/content/front"
	"hussif/content/journal"
)

// A sieve lets the fields of one page through that the audience may see.
type sieve struct {
	*sight
	record  journal.Record // nil for the settings
	wearers []*journal.Person
}

var (
	refType     = reflect.TypeFor[journal.Ref]()
	wordType    = reflect.TypeFor[journal.Word]()
	sessionType = reflect.TypeFor[journal.Session]()
	photoType   = reflect.TypeFor[journal.Photo]()
	whereType   = reflect.TypeFor[front.Where]()
	byMeasure   = map[reflect.Type]bool{
		reflect.TypeFor[journal.Wants]():     true,
		reflect.TypeFor[journal.Crossings](): true,
		reflect.TypeFor[journal.Levels]():    true,
	}
)

// value returns what is left of a value of a type, if anything is.
func (s *sieve) value(n front.Node, t reflect.Type, field reflect.StructField) (front.Node, bool) {
	switch {
	case n.Kind == front.None:
		return n, false
	case t == refType:
		return s.link(n, journal.Kind(field.Tag.Get("to")))
	case byMeasure[t]:
		return s.measures(n, t.Elem())
	case t.Kind() == reflect.Slice && holdsGroups(t.Elem()):
		return s.list(n, t.Elem(), field)
	case t == sessionType:
		return s.session(n)
	case t == photoType:
		return s.photo(n)
	case isGroup(t):
		return s.group(n, t)
	}
	return s.words(n), true
}

// aTie is a tie in words that are no Markdown.
var aTie = regexp.MustCompile(`\[\[([^\[\]|#]*)(?:#[^\[\]|]*)?(?:\|[^\[\]]*)?\]\]`)

// words takes the ties out of words that lead to what is hidden.
func (s *sieve) words(n front.Node) front.Node {
	switch n.Kind {
	case front.Text:
		if strings.Contains(n.Text, "[[") {
			n.Text = aTie.ReplaceAllStringFunc(n.Text, func(tie string) string {
				r, ok := s.full.Find(strings.TrimSpace(aTie.FindStringSubmatch(tie)[1]))
				if ok && !s.seen[r] {
					return Elsewhere
				}
				return tie
			})
		}
	case front.List:
		n.Items = slices.Clone(n.Items)
		for i := range n.Items {
			n.Items[i] = s.words(n.Items[i])
		}
	case front.Map:
		n.Fields = slices.Clone(n.Fields)
		for i := range n.Fields {
			n.Fields[i].Value = s.words(n.Fields[i].Value)
		}
	}
	return n
}

func holdsGroups(t reflect.Type) bool { return t == refType || isGroup(t) }

// isGroup reports whether a type is read field by field.
func isGroup(t reflect.Type) bool {
	if t.Kind() != reflect.Struct || t == wordType {
		return false
	}
	for i := range t.NumField() {
		if f := t.Field(i); f.Anonymous && (f.Type == whereType || isGroup(f.Type)) {
			return true
		}
	}
	return false
}

func (s *sieve) list(n front.Node, item reflect.Type, field reflect.StructField) (front.Node, bool) {
	if n.Kind != front.List {
		return s.value(n, item, field)
	}
	out := front.Node{Kind: front.List}
	for _, each := range n.Items {
		if left, ok := s.value(each, item, field); ok {
			out.Items = append(out.Items, left)
		}
	}
	return out, len(out.Items) > 0
}

// link lets a link through to what the audience sees.
func (s *sieve) link(n front.Node, kind journal.Kind) (front.Node, bool) {
	ref := journal.ParseRef(n.Text)
	var kinds []journal.Kind
	if kind != "" {
		kinds = append(kinds, kind)
	}
	r, ok := s.full.Find(ref.To, kinds...)
	if !ok || !s.seen[r] {
		return n, false
	}
	name, ok := s.part(r, ref.Anchor)
	if !ok {
		return n, false
	}
	if name == "" {
		return text(ref.To), true
	}
	return text(ref.To + "#" + name), true
}

// measures sifts what stands under the names of measures.
func (s *sieve) measures(n front.Node, each reflect.Type) (front.Node, bool) {
	if n.Kind != front.Map {
		return n, true
	}
	out := front.Node{Kind: front.Map}
	for _, f := range n.Fields {
		if f.Value.Kind == front.Map {
			f.Value, _ = s.group(f.Value, each)
		}
		out.Fields = append(out.Fields, f)
	}
	return out, len(out.Fields) > 0
}

// session sifts one measuring of a body, which may be that of somebody else than the
// wearer.
func (s *sieve) session(n front.Node) (front.Node, bool) {
	of := s.wearers
	for _, f := range n.Fields {
		if f.Key == "of" {
			r, ok := s.full.Find(journal.ParseRef(f.Value.Text).To, journal.KindPerson)
			if !ok {
				return n, false
			}
			of = []*journal.Person{r.(*journal.Person)}
		}
	}
	if !s.allowed(journal.OfBody, of) {
		return n, false
	}
	return s.group(n, sessionType)
}

// photo lets a picture through that may be seen.
func (s *sieve) photo(n front.Node) (front.Node, bool) {
	file := n.Text
	for _, f := range n.Fields {
		if f.Key == "file" {
			file = f.Value.Text
		}
	}
	if !s.photos.shown(path.Join(path.Dir(s.record.Head().File.Name), file)) {
		return n, false
	}
	return s.group(n, photoType)
}

// group sifts the fields of a group, of which nothing is left without those it needs.
func (s *sieve) group(n front.Node, t reflect.Type) (front.Node, bool) {
	fields := fieldsOf(t)
	if n.Kind == front.Text {
		for _, field := range fields {
			if !field.has("short") {
				continue
			}
			if !s.may(field) {
				return n, false
			}
			return s.value(n, field.Type, field.StructField)
		}
		return n, true
	}
	out := front.Node{Kind: front.Map}
	for _, f := range n.Fields {
		field, known := fields[f.Key]
		if !known { // one of those that stand for a group of their own, as readings do
			if rest, ok := fields["*"]; ok && s.may(rest) {
				out.Fields = append(out.Fields, f)
			}
			continue
		}
		left, ok := f.Value, false
		if s.may(field) {
			left, ok = s.value(f.Value, field.Type, field.StructField)
		}
		if !ok {
			if field.has("needed") {
				return n, false
			}
			continue
		}
		f.Value = left
		out.Fields = append(out.Fields, f)
	}
	return out, len(out.Fields) > 0
}

// may reports whether the audience may see a field, by what it tells of. Whose
// measurings are told is known only from each.
func (s *sieve) may(f field) bool {
	if f.Type == reflect.TypeFor[[]journal.Session]() {
		return true
	}
	return s.allowedOn(s.record, journal.Matter(f.Tag.Get("tells")), s.wearers)
}

// A field is one that may stand in front matter.
type field struct {
	reflect.StructField
	options string
}

func (f field) has(option string) bool { return strings.Contains(f.options, option) }

// fieldsOf returns the fields of a group by their names, those of embedded groups
// among them.
func fieldsOf(t reflect.Type) map[string]field {
	fields := make(map[string]field)
	for i := range t.NumField() {
		f := t.Field(i)
		if tag, ok := f.Tag.Lookup("field"); ok {
			name, options, _ := strings.Cut(tag, ",")
			fields[name] = field{f, options}
		} else if f.Anonymous && f.Type != whereType {
			for name, inner := range fieldsOf(f.Type) {
				fields[name] = inner
			}
		}
	}
	return fields
}
