package audience

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"

	"hussif/content/front"
	"hussif/content/journal"
)

// page returns the file of a page as the audience may read it, and whether its text is
// there but for what is hidden in it.
func (s *sight) page(r journal.Record) (file []byte, whole bool) {
	body, whole := s.text(r)
	return append(s.front(r), body...), whole
}

// front returns the front matter of a page as the audience may read it.
func (s *sight) front(r journal.Record) []byte {
	head := r.Head()
	out := front.Node{Kind: front.Map, Fields: []front.Field{
		{Key: "kind", Value: text(string(head.Kind))},
		{Key: "title", Value: text(head.Title)},
	}}
	if parts, _ := front.Split(head.File); parts.Front.Start < parts.Front.End {
		node, _ := front.Parse(parts.Front)
		sieve := &sieve{sight: s, record: r, wearers: s.wearers(r)}
		left, _ := sieve.group(node, reflect.TypeOf(r).Elem())
		for _, f := range left.Fields {
			if f.Key != "kind" && f.Key != "title" && s.mayField(r, f.Key) {
				out.Fields = append(out.Fields, f)
			}
		}
	}
	return matter(out)
}

// settings returns the settings file as the audience may read it. The ease that is
// wanted of a kind of garment goes with any body that is hidden.
func (s *sight) settings() []byte {
	settings := s.full.Settings
	out := front.Node{Kind: front.Map, Fields: []front.Field{{Key: "share", Value: text(string(s.who))}}}
	if file := settings.Where.Span.File; file != nil {
		var people []*journal.Person
		for _, b := range s.full.Builds() {
			people = append(people, s.full.Person(b.For))
		}
		node, _ := front.Parse(file.Whole())
		sieve := &sieve{sight: s, wearers: people}
		left, _ := sieve.group(node, reflect.TypeFor[journal.Settings]())
		out.Fields = append(out.Fields, left.Fields...)
	}
	var b bytes.Buffer
	for _, f := range out.Fields {
		write(&b, f)
	}
	return b.Bytes()
}

func text(words string) front.Node { return front.Node{Kind: front.Text, Text: words} }

// matter writes front matter with its fences.
func matter(n front.Node) []byte {
	var b bytes.Buffer
	b.WriteString("---\n")
	for _, f := range n.Fields {
		write(&b, f)
	}
	b.WriteString("---\n")
	return b.Bytes()
}

func write(b *bytes.Buffer, f front.Field) {
	b.WriteString(quoted(f.Key) + ": ")
	writeNode(b, f.Value)
	b.WriteByte('\n')
}

// writeNode writes a node in one line, with all words in quotes: of the two ways to
// write each thing the one in which no word can be taken for anything else.
func writeNode(b *bytes.Buffer, n front.Node) {
	switch n.Kind {
	case front.Text:
		b.WriteString(quoted(n.Text))
	case front.List:
		b.WriteByte('[')
		for i, item := range n.Items {
			if i > 0 {
				b.WriteString(", ")
			}
			writeNode(b, item)
		}
		b.WriteByte(']')
	case front.Map:
		b.WriteByte('{')
		for i, f := range n.Fields {
			if i > 0 {
				b.WriteString(", ")
			}
			b.WriteString(quoted(f.Key) + ": ")
			writeNode(b, f.Value)
		}
		b.WriteByte('}')
	default:
		b.WriteString("null")
	}
}

// quoted puts words into double quotes, with escapes that JSON (RFC 8259) and YAML 1.2
// (5.7 and 10.2) have in common.
func quoted(words string) string {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(words); err != nil {
		panic(err) // a string has no other outcome
	}
	return strings.TrimSuffix(b.String(), "\n")
}
