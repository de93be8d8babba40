package front

import (
	"reflect"
	"slices"
	"strings"

	"hussif/content/near"
	"hussif/content/source"
)

// Rules for fields that do not fit their kind.
const (
	UnknownField = "unknown field"
	NeededField  = "needed field"
	WrongShape   = "wrong shape"
)

// A Decoder fills structs from nodes and gathers what is wrong with them.
type Decoder struct {
	schema   *Schema
	findings []source.Finding // the first of them
	errors   int              // of all
}

// CanDecode reports whether a node can be decoded in spite of what [Parse] found:
// of a field given twice the first holds.
func CanDecode(parsing []source.Finding) bool {
	return !slices.ContainsFunc(parsing, func(f source.Finding) bool { return f.Rule != GivenTwice })
}

// Decode fills the struct that dst points at and returns what is wrong with the node,
// all of it unless that is very much. Fields that could not be read keep their zero
// value.
func (s *Schema) Decode(n Node, dst any) []source.Finding {
	d := &Decoder{schema: s}
	d.Into(n, dst)
	return d.findings
}

// Report adds a finding, unless there are very many already.
func (d *Decoder) Report(f source.Finding) {
	if f.Level == source.Error {
		d.errors++
	}
	if !d.full() {
		d.findings = append(d.findings, f)
	}
}

// mostItems is how many entries of one list are read. Five years of weekly measurings
// are 260.
const mostItems = 2000

// full reports whether there are so many findings that no more are told.
func (d *Decoder) full() bool { return len(d.findings) >= mostFindings }

// Refuse adds an error about a span with what could stand there instead, and
// returns false for a [Reader] to return.
func (d *Decoder) Refuse(span source.Span, rule, text string, instead ...string) bool {
	f := source.Found(span, source.Error, rule, "%s", text)
	f.Instead = instead
	d.Report(f)
	return false
}

// Shape reports that a node should have been of another kind; help shows how.
func (d *Decoder) Shape(n Node, wanted, help string) bool {
	f := source.Found(n.Span, source.Error, WrongShape, "%s stands where %s should", n.Kind, wanted)
	f.Help = help
	d.Report(f)
	return false
}

// Into fills the value that dst points at. It reports whether all went well.
func (d *Decoder) Into(n Node, dst any) bool {
	return d.value(n, reflect.ValueOf(dst).Elem())
}

func (d *Decoder) value(n Node, dst reflect.Value) bool {
	if r, ok := d.schema.readers[dst.Type()]; ok {
		return r.read(d, n, dst)
	}
	switch dst.Kind() {
	case reflect.Slice:
		return d.list(n, dst)
	case reflect.Struct:
		return d.group(n, dst)
	}
	if n.Kind != Text {
		return d.Shape(n, "a single value", "")
	}
	dst.SetString(n.Text)
	return true
}

func (d *Decoder) list(n Node, dst reflect.Value) bool {
	items := n.Items
	if n.Kind != List {
		items = []Node{n}
	}
	ok := true
	if len(items) > mostItems {
		f := source.Found(items[mostItems].Span, source.Error, WrongShape, "this list has more than %d entries", mostItems)
		f.Help = "split the file into several"
		d.Report(f)
		items, ok = items[:mostItems], false
	}
	for _, item := range items {
		if item.Kind == None {
			continue
		}
		v := reflect.New(dst.Type().Elem()).Elem()
		if d.value(item, v) {
			dst.Set(reflect.Append(dst, v))
		} else {
			ok = false
		}
	}
	return ok
}

func (d *Decoder) group(n Node, dst reflect.Value) bool {
	p := d.schema.plans[dst.Type()]
	before := d.errors
	where := Where{Span: n.Span}
	switch {
	case n.Kind == Text && p.short >= 0:
		f := p.fields[p.short]
		read := d.value(n, dst.FieldByIndex(f.index))
		where.fields = []placed{{name: f.name, key: n.Span, value: n.Span, unread: !read}}
	case n.Kind == Map:
		where.fields = make([]placed, 0, len(n.Fields))
		d.fields(n, p, dst, &where)
	case n.Kind == None && len(p.fields) > 0:
	default:
		help := ""
		if len(p.fields) > 0 {
			help = "write it as `" + p.fields[0].name + ": ...`"
		}
		return d.Shape(n, p.noun, help)
	}
	dst.FieldByIndex(p.where).Set(reflect.ValueOf(where))
	for _, f := range p.fields {
		if f.needed && !where.Has(f.name) {
			finding := source.Found(where.Key(f.name), source.Error, NeededField, "%s needs %q", p.noun, f.name)
			finding.Help = "add `" + f.name + ": ...`"
			d.Report(finding)
		}
	}
	return d.errors == before
}

func (d *Decoder) fields(n Node, p *plan, dst reflect.Value, where *Where) {
	var rest []Field
	for _, f := range n.Fields {
		i, known := p.byName[f.Key]
		switch {
		case known && f.Value.Kind != None:
			read := d.value(f.Value, dst.FieldByIndex(p.fields[i].index))
			where.fields = append(where.fields, placed{name: f.Key, key: f.KeySpan, value: f.Value.Span, unread: !read})
		case known:
			// A field without a value is one that the maker has yet to fill in.
		case p.rest != nil:
			rest = append(rest, f)
		default:
			d.unknown(f, p)
		}
	}
	if len(rest) > 0 {
		d.value(Node{Kind: Map, Fields: rest, Span: rest[0].KeySpan}, dst.FieldByIndex(p.rest))
	}
}

func (d *Decoder) unknown(f Field, p *plan) {
	names := make([]string, len(p.fields))
	for i, known := range p.fields {
		names[i] = known.name
	}
	finding := source.Found(f.KeySpan, source.Error, UnknownField, "no field of %s is called %q", p.noun, f.Key)
	if d.full() { // what could stand there takes time to find
		d.Report(finding)
		return
	}
	finding.Instead = near.Of(strings.ToLower(f.Key), names)
	switch {
	case len(finding.Instead) > 0:
	case f.Value.Kind == None && strings.Contains(f.Key, " "):
		finding.Help = "a value with a comma in it needs quotes inside { }"
	default:
		finding.Help = "the fields are " + strings.Join(names, ", ")
	}
	d.Report(finding)
}
