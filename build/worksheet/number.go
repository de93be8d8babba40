package worksheet

import (
	"fmt"
	"strings"

	"hussif/content/near"
	"hussif/content/quantity"
)

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
