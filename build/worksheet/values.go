package worksheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"hussif/content/quantity"
)

// farthest is more than any cloth, and small enough that no sum of lengths of a
// worksheet leaves the range of exact numbers.
const farthest = 1000 * quantity.Metre

// A Length is a length that is given or worked out. Without limits of its own it is
// more than nothing, up to a kilometre.
type Length struct {
	Is    quantity.Length
	Known bool

	zero bool            // may be nothing
	most quantity.Length // 0 for a kilometre
}

// orNothing lets a length be nothing.
func (l *Length) orNothing() *Length { l.zero = true; return l }

// upTo bounds a length.
func (l *Length) upTo(most quantity.Length) *Length { l.most = most; return l }

func (l *Length) set(to quantity.Length) { l.Is, l.Known = to, true }

func (l *Length) read(items []Item, bare quantity.Unit) (int, error) {
	value, err := quantity.ParseLength(items[0].Text, bare)
	if err != nil {
		return 0, err
	}
	if err := l.within(value, items[0].Text); err != nil {
		return 0, err
	}
	l.set(value)
	return 0, nil
}

func (l *Length) within(value quantity.Length, text string) error {
	most := l.most
	if most == 0 {
		most = farthest
	}
	switch {
	case value < 0:
		return refuse(text, "this cannot be less than nothing")
	case value == 0 && !l.zero:
		return refuse(text, "this has to be more than nothing")
	case value > most:
		return refuse(text, "this is more than "+atMost(most))
	}
	return nil
}

// atMost writes a limit, which is a round number of centimetres or metres.
func atMost(l quantity.Length) string {
	if l >= quantity.Metre {
		return fmt.Sprintf("%d m", l/quantity.Metre)
	}
	return fmt.Sprintf("%d cm", l/quantity.Centimetre)
}

func refuse(text, reason string) error { return &quantity.Error{Text: text, Reason: reason} }

func (l *Length) given() bool   { return l.Known }
func (l *Length) words() string { return "a length" }
func (l *Length) many() bool    { return false }
func (l *Length) schema() map[string]any {
	return map[string]any{"type": []string{"string", "number"}, "description": "a length; a bare number takes the journal's unit"}
}

// A Count is a whole number of things, from 1 up to 10 000 or the least and most of
// its own.
type Count struct {
	Is    int
	Known bool

	least, most int
}

func (c *Count) set(to int) { c.Is, c.Known = to, true }

// from bounds a count.
func (c *Count) from(least, most int) *Count { c.least, c.most = least, most; return c }

func (c *Count) limits() (least, most int) {
	if c.most == 0 {
		return 1, 10_000
	}
	return c.least, c.most
}

func (c *Count) read(items []Item, _ quantity.Unit) (int, error) {
	text := strings.TrimSpace(items[0].Text)
	n, err := strconv.Atoi(text)
	least, most := c.limits()
	switch {
	case err != nil:
		return 0, refuse(text, "this has to be a whole number")
	case n < least || n > most:
		return 0, refuse(text, fmt.Sprintf("this has to be from %d to %d", least, most))
	}
	c.set(n)
	return 0, nil
}

func (c *Count) given() bool   { return c.Known }
func (c *Count) words() string { return "a whole number" }
func (c *Count) many() bool    { return false }
func (c *Count) schema() map[string]any {
	least, most := c.limits()
	return map[string]any{"type": []string{"integer", "string"}, "minimum": least, "maximum": most}
}

// rounded returns a figure that no formula keeps exact, to the nanometre.
func rounded(f float64) quantity.Length { return quantity.Length(math.Round(f)) }

// A Change is a length that may be less than nothing.
type Change struct {
	Is    quantity.Length
	Known bool
}

func (c *Change) set(to quantity.Length) { c.Is, c.Known = to, true }

func (c *Change) read(items []Item, bare quantity.Unit) (int, error) {
	value, err := quantity.ParseLength(items[0].Text, bare)
	if err != nil {
		return 0, err
	}
	if max(value, -value) > farthest {
		return 0, refuse(items[0].Text, "this is more than "+atMost(farthest))
	}
	c.set(value)
	return 0, nil
}

func (c *Change) given() bool            { return c.Known }
func (c *Change) words() string          { return "a length, with a minus sign to make smaller" }
func (c *Change) many() bool             { return false }
func (c *Change) schema() map[string]any { return (&Length{}).schema() }
