package front

import "hussif/content/source"

// A Kind tells the three shapes of a [Node] apart.
type Kind int

// The shapes. An absent or empty value is None.
const (
	None Kind = iota
	Text
	List
	Map
)

func (k Kind) String() string {
	return [...]string{"nothing", "a single value", "a list", "a group of fields"}[k]
}

// A Node is a value in the front matter with its place.
type Node struct {
	Kind   Kind
	Text   string      // of a Text, without quotes
	Items  []Node      // of a List
	Fields []Field     // of a Map, in the order written
	Span   source.Span // a Text's bytes; the bracket or first key or dash of the others
	quoted bool        // quotes or a block: bytes of Text are not those of the file
}

// A Field is one key of a Map with its value.
type Field struct {
	Key     string
	KeySpan source.Span
	Value   Node
}

// At returns the place of length bytes that start offset bytes into a Text, or
// the whole of it where it was quoted and the bytes do not match.
func (n Node) At(offset, length int) source.Span {
	if n.quoted {
		return n.Span
	}
	return n.Span.At(offset, length)
}
