package worksheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"hussif/content/near"
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

// A Number is a plain number, such as a ratio; as a share it is written as a
// percentage.
type Number struct {
	Is    float64
	Known bool

	over, most float64
	share      bool
}

func (n *Number) set(to float64) { n.Is, n.Known = to, true }

// between bounds a number: more than over, up to most.
func (n *Number) between(over, most float64) *Number { n.over, n.most = over, most; return n }

// percent makes a number a share of the whole: 5 % or 5 is 0.05.
func (n *Number) percent() *Number { n.share = true; return n }

func (n *Number) read(items []Item, _ quantity.Unit) (int, error) {
	text := strings.TrimSpace(items[0].Text)
	bare := text
	if n.share {
		bare = strings.TrimSpace(strings.TrimSuffix(text, "%"))
	}
	amount, err := quantity.ParseAmount(bare, quantity.NoUnit)
	if err != nil || amount.Kind != quantity.ByCount || amount.Thing != "" {
		return 0, refuse(text, "this has to be a number, such as "+map[bool]string{false: "2 1/2", true: "5 %"}[n.share])
	}
	value := float64(amount.Number.Num) / float64(amount.Number.Den)
	if n.share {
		value /= 100
	}
	if value < n.over || value == n.over && !n.share || value > n.most {
		if n.share {
			return 0, refuse(text, fmt.Sprintf("this has to be from %g to %g %%", n.over*100, n.most*100))
		}
		return 0, refuse(text, fmt.Sprintf("this has to be more than %g, up to %g", n.over, n.most))
	}
	n.set(value)
	return 0, nil
}

func (n *Number) given() bool { return n.Known }
func (n *Number) words() string {
	if n.share {
		return "a percentage"
	}
	return "a number"
}
func (n *Number) many() bool             { return false }
func (n *Number) schema() map[string]any { return map[string]any{"type": []string{"number", "string"}} }

// A Choice is one of a few words. Is is the place of the chosen one among them.
type Choice struct {
	Is    int
	Known bool

	options [][]string // each with its other spellings
}

// of lists the options, each with its other spellings after a bar: "half|1/2".
func (c *Choice) of(options ...string) *Choice {
	c.options = nil
	for _, o := range options {
		c.options = append(c.options, strings.Split(o, "|"))
	}
	return c
}

func (c *Choice) read(items []Item, _ quantity.Unit) (int, error) {
	text := Plain(items[0].Text)
	var names []string
	for i, option := range c.options {
		for _, spelling := range option {
			if spelling == text {
				c.Is, c.Known = i, true
				return 0, nil
			}
		}
		names = append(names, option[0])
	}
	return 0, &quantity.Error{Text: items[0].Text, Reason: "this has to be " + list(names, "or"), Instead: near.Of(text, names)}
}

// yesNo makes a choice of yes and no.
func (c *Choice) yesNo() *Choice { return c.of("no|false", "yes|true") }

func (c *Choice) yes() bool { return c.Known && c.Is == 1 }

func (c *Choice) names() []string {
	var names []string
	for _, o := range c.options {
		names = append(names, o[0])
	}
	return names
}

func (c *Choice) given() bool   { return c.Known }
func (c *Choice) words() string { return list(c.names(), "or") }
func (c *Choice) many() bool    { return false }
func (c *Choice) schema() map[string]any {
	var all []any
	for _, o := range c.options {
		for _, spelling := range o {
			all = append(all, spelling)
		}
	}
	if c.options[0][0] == "no" {
		return map[string]any{"enum": append(all, true, false)}
	}
	return map[string]any{"enum": all}
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
