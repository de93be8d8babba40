package worksheet

import (
	"regexp"
	"strings"
)

var (
	apart    = regexp.MustCompile(`\s*(?:;|,\s)\s*`) // a comma alone may stand in a number
	itemName = regexp.MustCompile(`^([\pL][\pL\pN _-]*?):\s*`)
)

// Typed makes an entry of what was typed at a prompt. An input that takes several
// items takes them with a comma and a blank or a semicolon between, each with its
// name before it where it has one: "front: 38 in, back: 40 in".
func (in Input) Typed(texts ...string) Entry {
	e := Entry{Name: in.Name}
	for _, text := range texts {
		if !in.Into.many() {
			e.Items = append(e.Items, Item{Text: text})
			continue
		}
		text = strings.Trim(text, "[]{} \t")
		for _, part := range apart.Split(text, -1) {
			item := Item{Text: part}
			if m := itemName.FindStringSubmatch(part); m != nil {
				item = Item{Name: m[1], Text: part[len(m[0]):]}
			}
			e.Items = append(e.Items, item)
		}
	}
	return e
}

// Options returns the words that an input may be, nil where it is no choice.
func (in Input) Options() []string {
	if c, ok := in.Into.(*Choice); ok {
		return c.names()
	}
	return nil
}

// Flag returns the name of an input with hyphens, as it stands at a prompt.
func (in Input) Flag() string { return Flag(in.Name) }

// Flag returns a name with hyphens.
func Flag(name string) string { return strings.ReplaceAll(name, " ", "-") }

// Takes returns in one word what an input takes.
func (in Input) Takes() string {
	switch in.Into.(type) {
	case *Length, *Change:
		return "length"
	case *Count, *Number:
		return "number"
	case *Choice:
		return "word"
	case *Piece:
		return "size"
	case *Lengths:
		return "lengths"
	case *Sizes:
		return "sizes"
	}
	return "widths"
}
