package amend

import (
	"bytes"
	"fmt"

	"hussif/content/front"
	"hussif/content/source"
)

// A Refusal says why an entry cannot be put into a page without touching anything
// else.
type Refusal struct {
	At     source.Span
	Reason string // lower case, no full stop
	Help   string // what to do first; may be empty
}

func (r *Refusal) Error() string {
	line, _ := r.At.Position()
	text := fmt.Sprintf("%s:%d: %s", r.At.File.Name, line, r.Reason)
	if r.Help != "" {
		text += "; " + r.Help
	}
	return text
}

// Append returns the bytes of a page with an entry more at the end of the list
// that a field of its front matter holds. The field, and the front matter, are made
// where they are missing. The entry is a group of fields; of its nodes only kind,
// text, items and fields count. The page's name is for messages. The error is a
// [*Refusal].
func Append(name string, data []byte, field string, entry front.Node) ([]byte, error) {
	p, err := read(name, data)
	if err != nil {
		return nil, err
	}
	ways, expected, err := p.ways(field, entry)
	if err != nil {
		return nil, err
	}
	mark := data[:len(data)-len(p.file.Data)] // of the byte order, which a file is read without
	for _, way := range ways {
		text := apply(p.file.Data, way)
		if p.holds(text, expected) {
			return append(bytes.Clone(mark), text...), nil
		}
	}
	return nil, &Refusal{p.parts.Front.At(0, 0), fmt.Sprintf("an entry cannot be put under `%s:` without touching what is there", field), ""}
}

// A page is a file whose front matter could be read.
type page struct {
	file  *source.File
	parts front.Parts
	tree  front.Node
}

func read(name string, data []byte) (page, error) {
	file, found := source.Load(name, data)
	p := page{file: file}
	if len(found) == 0 {
		p.parts, found = front.Split(file)
	}
	if len(found) == 0 {
		p.tree, found = front.Parse(p.parts.Front)
	}
	if len(found) > 0 {
		return page{}, &Refusal{found[0].Span, found[0].Text, found[0].Advice()}
	}
	return p, nil
}

// bare reports whether the page has no front matter, not even an empty one.
func (p page) bare() bool { return p.parts.Body.Start == 0 }

// holds reports whether a text has the tree that is expected and below it what the
// page has.
func (p page) holds(text []byte, expected front.Node) bool {
	after, err := read(p.file.Name, text)
	return err == nil && same(after.tree, expected) && after.parts.Body.Text() == p.parts.Body.Text()
}

// same compares two trees but for their places.
func same(a, b front.Node) bool {
	if a.Kind != b.Kind || a.Text != b.Text || len(a.Items) != len(b.Items) || len(a.Fields) != len(b.Fields) {
		return false
	}
	for i := range a.Items {
		if !same(a.Items[i], b.Items[i]) {
			return false
		}
	}
	for i := range a.Fields {
		if a.Fields[i].Key != b.Fields[i].Key || !same(a.Fields[i].Value, b.Fields[i].Value) {
			return false
		}
	}
	return true
}

// An edit is bytes that are put in.
type edit struct {
	at   int // offset in the page
	text string
}

// apply returns the data with all edits, which stand in the order of their places.
func apply(data []byte, edits []edit) []byte {
	var out []byte
	from := 0
	for _, e := range edits {
		out = append(append(out, data[from:e.at]...), e.text...)
		from = e.at
	}
	return append(out, data[from:]...)
}
