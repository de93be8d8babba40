package worksheet

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"hussif/content/quantity"
)

// mostItems is how many items a list takes: more than any garment has.
const mostItems = 100

// A Several is a length, how often it occurs, and its name where it has one.
type Several struct {
	Name  string
	Times int
	Is    quantity.Length
}

// Lengths are several lengths, each by itself, with a name, or as "2 of 17 in".
type Lengths struct {
	All []Several

	one Length // the limits of each
}

// ofEach sets the limits of each length.
func (l *Lengths) ofEach(one Length) *Lengths { l.one = one; return l }

// total returns all of them together.
func (l *Lengths) total() quantity.Length {
	var sum quantity.Length
	for _, s := range l.All {
		sum += s.Is * quantity.Length(s.Times)
	}
	return sum
}

// times is how a number of equal things begins: "2 of", "2 x".
var times = regexp.MustCompile(`^\s*(\d{1,4})\s*(?:of\b|×|x\s)\s*`)

// readTimes splits off how often a thing occurs, which is once where nothing is
// said.
func readTimes(text string) (n int, rest string, at int, err error) {
	m := times.FindStringSubmatchIndex(text)
	if m == nil {
		return 1, text, 0, nil
	}
	n, _ = strconv.Atoi(text[m[2]:m[3]])
	if n < 1 || n > 1000 {
		return 0, "", 0, &quantity.Error{Text: text, Offset: m[2], Reason: "there can be from 1 to 1000 of a thing"}
	}
	return n, text[m[1]:], m[1], nil
}

func (l *Lengths) read(items []Item, bare quantity.Unit) (int, error) {
	l.All = nil
	return eachItem(items, func(item Item) error {
		n, rest, at, err := readTimes(item.Text)
		if err != nil {
			return err
		}
		one := l.one
		if _, err := one.read([]Item{{Text: rest}}, bare); err != nil {
			return moved(err, item.Text, at)
		}
		l.All = append(l.All, Several{item.Name, n, one.Is})
		return nil
	})
}

// eachItem reads the items of a list and returns the place of one that fails.
func eachItem(items []Item, read func(Item) error) (int, error) {
	if len(items) > mostItems {
		return mostItems, refuse(items[mostItems].Text, fmt.Sprintf("a list has at most %d items", mostItems))
	}
	for i, item := range items {
		if err := read(item); err != nil {
			return i, err
		}
	}
	return 0, nil
}

// moved says of a part of a text what is wrong with the whole.
func moved(err error, whole string, by int) error {
	e, ok := err.(*quantity.Error)
	if !ok {
		return err
	}
	out := &quantity.Error{Text: whole, Offset: e.Offset + by, Reason: e.Reason}
	for _, instead := range e.Instead {
		out.Instead = append(out.Instead, whole[:by]+instead)
	}
	return out
}

func (l *Lengths) given() bool   { return len(l.All) > 0 }
func (l *Lengths) words() string { return "one length or several, such as 2 of 17 in" }
func (l *Lengths) many() bool    { return true }
func (l *Lengths) schema() map[string]any {
	return listSchema(map[string]any{"type": []string{"string", "number"}}, true)
}

// listSchema takes one value, a list or a group of named values.
func listSchema(one map[string]any, named bool) map[string]any {
	ways := []any{one, map[string]any{"type": "array", "items": one, "minItems": 1, "maxItems": mostItems}}
	if named {
		ways = append(ways, map[string]any{"type": "object", "additionalProperties": one, "minProperties": 1, "maxProperties": mostItems})
	}
	return map[string]any{"anyOf": ways}
}

// A Cut is a number of pieces of one size.
type Cut struct {
	Name string
	N    int
	Size quantity.Size
}

// Sizes are pieces of cloth, as "2 of 20 in x 31 in", width first.
type Sizes struct{ All []Cut }

func (s *Sizes) read(items []Item, bare quantity.Unit) (int, error) {
	s.All = nil
	return eachItem(items, func(item Item) error {
		n, rest, at, err := readTimes(item.Text)
		if err != nil {
			return err
		}
		size, err := quantity.ParseSize(rest, bare)
		// "2 x 20 x 31" has a size in it, "20 x 31" is one.
		if whole, alone := quantity.ParseSize(item.Text, bare); alone == nil {
			n, size, err = 1, whole, nil
		}
		if err != nil {
			return moved(err, item.Text, at)
		}
		if size.Width > farthest || size.Length > farthest {
			return refuse(item.Text, "this is more than "+atMost(farthest))
		}
		s.All = append(s.All, Cut{item.Name, n, size})
		return nil
	})
}

func (s *Sizes) given() bool   { return len(s.All) > 0 }
func (s *Sizes) words() string { return "one piece or several, such as 2 of 20 in x 31 in" }
func (s *Sizes) many() bool    { return true }
func (s *Sizes) schema() map[string]any {
	return listSchema(map[string]any{"type": "string"}, true)
}

// A Rung is a width at a distance along a seam.
type Rung struct {
	Name      string
	Width, At quantity.Length
}

// Rungs are widths along a seam, as "1 1/2 in at 7 in".
type Rungs struct{ All []Rung }

var at = regexp.MustCompile(`\s+at\s+`)

func (r *Rungs) read(items []Item, bare quantity.Unit) (int, error) {
	r.All = nil
	return eachItem(items, func(item Item) error {
		parts := at.FindStringIndex(item.Text)
		if parts == nil {
			return &quantity.Error{Text: item.Text, Offset: len(item.Text), Reason: "a width needs the place where it is",
				Instead: []string{strings.TrimSpace(item.Text) + " at 0 in"}}
		}
		var width, place Length
		width.orNothing().upTo(20 * quantity.Metre)
		place.orNothing().upTo(20 * quantity.Metre)
		if _, err := width.read([]Item{{Text: item.Text[:parts[0]]}}, bare); err != nil {
			return err
		}
		if _, err := place.read([]Item{{Text: item.Text[parts[1]:]}}, bare); err != nil {
			return moved(err, item.Text, parts[1])
		}
		r.All = append(r.All, Rung{item.Name, width.Is, place.Is})
		return nil
	})
}

func (r *Rungs) given() bool   { return len(r.All) > 0 }
func (r *Rungs) words() string { return "widths, each at a height, such as 1 1/2 in at 7 in" }
func (r *Rungs) many() bool    { return true }
func (r *Rungs) schema() map[string]any {
	return listSchema(map[string]any{"type": "string", "pattern": `\sat\s`}, true)
}

// A Piece is one piece of cloth: its width and its length.
type Piece struct {
	Is    quantity.Size
	Known bool
}

func (s *Piece) read(items []Item, bare quantity.Unit) (int, error) {
	size, err := quantity.ParseSize(items[0].Text, bare)
	if err != nil {
		return 0, err
	}
	if size.Width > farthest || size.Length > farthest {
		return 0, refuse(items[0].Text, "this is more than "+atMost(farthest))
	}
	s.Is, s.Known = size, true
	return 0, nil
}

func (s *Piece) given() bool   { return s.Known }
func (s *Piece) words() string { return "a width and a length, such as 9 in x 31 in" }
func (s *Piece) many() bool    { return false }
func (s *Piece) schema() map[string]any {
	return map[string]any{"type": "string", "pattern": `[x×]|\bby\b`}
}
