package amend

import (
	"encoding/json"
	"strings"

	"hussif/content/front"
	"hussif/content/source"
)

// Text returns a node that is a single value.
func Text(value string) front.Node { return front.Node{Kind: front.Text, Text: value} }

// List returns a node that is a list of single values.
func List(values ...string) front.Node {
	n := front.Node{Kind: front.List}
	for _, v := range values {
		n.Items = append(n.Items, Text(v))
	}
	return n
}

// Group returns a node that is a group of fields.
func Group(fields ...front.Field) front.Node { return front.Node{Kind: front.Map, Fields: fields} }

// Inline returns a node as it stands within a line of front matter, with quotes
// where they are needed. What is nothing is written as nothing, to be filled in.
func Inline(n front.Node) string { return flowText(n) }

// YAML returns a field with one entry in its list, as lines to paste into front
// matter.
func YAML(field string, entry front.Node) string {
	return key(field) + ":\n" + blockText(entry, "  ", 1, "\n")
}

// blockText writes a group as an entry of a list, a field on each line: a dash
// after an indent, a gap, and the fields below each other.
func blockText(entry front.Node, indent string, gap int, end string) string {
	var b strings.Builder
	before := indent + "-" + strings.Repeat(" ", gap)
	for _, f := range entry.Fields {
		b.WriteString(before + key(f.Key) + ": " + flowText(f.Value) + end)
		before = indent + strings.Repeat(" ", 1+gap)
	}
	return b.String()
}

// flowText writes a node within a line.
func flowText(n front.Node) string {
	var parts []string
	switch n.Kind {
	case front.List:
		for _, item := range n.Items {
			parts = append(parts, flowText(item))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case front.Map:
		for _, f := range n.Fields {
			parts = append(parts, key(f.Key)+": "+flowText(f.Value))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case front.Text:
		if plain(n.Text, func(text string) bool {
			f, ok := alone(text)
			return ok && f.Value.Kind == front.Text && f.Value.Text == n.Text && f.Value.Span.Text() == n.Text
		}, "a: ", "") {
			return n.Text
		}
		return quote(n.Text)
	}
	return ""
}

// key writes the name of a field.
func key(name string) string {
	if plain(name, func(text string) bool {
		f, ok := alone(text)
		return ok && f.Key == name && f.KeySpan.Text() == name
	}, "", ": a") {
		return name
	}
	return quote(name)
}

// plain reports whether a text means itself without quotes, in brackets and out of
// them, between what stands before and after it.
func plain(text string, means func(string) bool, before, after string) bool {
	return means(before+text+after) && means("{"+before+text+after+"}")
}

// alone reads the one field of a group. Whether a text needs quotes is left to the
// reader: nobody knows YAML's rules better.
func alone(text string) (front.Field, bool) {
	file, found := source.Load("", []byte(text))
	if len(found) > 0 {
		return front.Field{}, false
	}
	n, found := front.Parse(file.Whole())
	if len(found) > 0 || n.Kind != front.Map || len(n.Fields) != 1 {
		return front.Field{}, false
	}
	return n.Fields[0], true
}

// quote puts a text in quotation marks: single ones, in which nothing else has a
// meaning, unless it has a character that only an escape can stand for.
func quote(text string) string {
	for _, r := range text {
		if r < ' ' || r == '\u007f' || r == '\u0085' || r == '\u2028' || r == '\u2029' || r == '\ufeff' {
			// What is escaped in JSON means the same in YAML, which wants more of it.
			if escaped, err := json.Marshal(text); err == nil {
				return moreEscapes.Replace(string(escaped))
			}
		}
	}
	return "'" + strings.ReplaceAll(text, "'", "''") + "'"
}

var moreEscapes = strings.NewReplacer("\u007f", `\u007f`, "\u0085", `\u0085`, "\ufeff", `\ufeff`)
