package worksheet

import (
	"errors"
	"fmt"

	"hussif/content/near"
	"hussif/content/quantity"
)

// An Input is one figure that a worksheet is worked with.
type Input struct {
	Name    string // as in a note: "finished"
	Doc     string // what it is, in lower case without a full stop
	Ask     string // the question at a terminal, where Doc would not do
	Into    Value
	Need    Need
	Default string // what stands where it is not given; "" for nothing
	Metric  string // the same for a journal kept in centimetres; "" for no other
	With    string // the input without which this one means nothing; "" for none
	Example string // a value that is read; never ""
}

// usual returns the default in the units of a journal.
func (in Input) usual(metric bool) string {
	if metric && in.Metric != "" {
		return in.Metric
	}
	return in.Default
}

// A Need says when an input must be given. The zero value is an input that may be
// left out.
type Need int

// The needs.
const (
	MayBe  Need = iota // it may be left out
	Always             // nothing can be worked out without it
	Solved             // it may be left out where it follows from others
)

// A Value is where an input is read into: a [Length], a [Count] or another.
type Value interface {
	// read takes what was given. It fails with a [*quantity.Error] where a text
	// cannot be read or lies out of range; at is the item's place among several.
	read(items []Item, bare quantity.Unit) (at int, err error)
	given() bool
	words() string // what it takes: "a length"
	many() bool    // whether it takes several items
	schema() map[string]any
}

// An Item is a figure as it was given, or one of several.
type Item struct {
	Name  string // where the figure is one of a group of named ones
	Text  string
	Shown string // what to show instead of Text, where that was worked out
	From  string // where the figure is from, such as a measuring in the record
}

// An Entry is what was given for an input.
type Entry struct {
	Name  string
	Items []Item
}

// Say makes an entry of plain text.
func Say(name string, texts ...string) Entry {
	e := Entry{Name: name}
	for _, text := range texts {
		e.Items = append(e.Items, Item{Text: text})
	}
	return e
}

// A Fault is what is wrong with one thing that was given, or with what was not.
type Fault struct {
	Input   string // "" where it is about the sheet as a whole
	Item    int    // which of several, from 0; -1 for all of the input
	Name    bool   // it is about the name of the input and not about its value
	Offset  int    // in the item's text
	Text    string // in the maker's words, lower case, no full stop
	Instead []string
	Help    string
}

// Work reads what was given into a sheet and works it out. Where anything is wrong
// the paper has faults and no answers.
func Work(s Sheet, given []Entry, f quantity.Format) *Paper {
	about := s.About()
	p := &Paper{Title: about.Name, Care: about.Care, f: f, metric: metric(f), inputs: s.Inputs()}
	seen := make(map[string]bool)
	for _, e := range given {
		in, ok := find(p.inputs, e.Name)
		switch {
		case !ok:
			p.unknown(about.Name, e.Name)
		case seen[in.Name]:
			p.Faults = append(p.Faults, Fault{Input: e.Name, Item: -1, Name: true, Text: fmt.Sprintf("%q is given twice", in.Name), Help: "keep one of the two"})
		default:
			seen[in.Name] = true
			p.take(in, e)
		}
	}
	for _, in := range p.inputs {
		switch {
		case seen[in.Name]:
		case in.Default != "":
			p.take(in, Entry{Name: in.Name, Items: []Item{{Text: in.usual(p.metric), From: "unless said otherwise"}}})
			if in.With != "" && !seen[in.With] {
				p.Given = p.Given[:len(p.Given)-1]
			}
		case in.Need == Always:
			p.Faults = append(p.Faults, Fault{Item: -1, Text: fmt.Sprintf("%s needs %q: %s", about.Name, in.Name, in.Doc),
				Help: "add `" + in.Name + ": " + in.Example + "`"})
			p.missing = append(p.missing, in.Name)
		}
	}
	if len(p.Faults) == 0 {
		s.Solve(p)
	}
	if len(p.Faults) > 0 {
		p.Answers, p.Formula, p.Cut, p.Cautions, p.Drawings, p.Prints = nil, nil, nil, nil, nil, nil
	}
	return p
}

func (p *Paper) unknown(sheet, name string) {
	var names []string
	for _, in := range p.inputs {
		names = append(names, in.Name)
	}
	fault := Fault{Input: name, Item: -1, Name: true, Text: fmt.Sprintf("%s has nothing called %q", sheet, name)}
	if fault.Instead = near.Of(Plain(name), names); len(fault.Instead) == 0 {
		fault.Help = "it takes " + list(names, "and")
	}
	p.Faults = append(p.Faults, fault)
}

// take reads one entry.
func (p *Paper) take(in Input, e Entry) {
	if len(e.Items) == 0 {
		return
	}
	if len(e.Items) > 1 && !in.Into.many() {
		p.Faults = append(p.Faults, Fault{Input: e.Name, Item: 1, Text: fmt.Sprintf("%q takes %s, not several", in.Name, in.Into.words())})
		return
	}
	at, err := in.Into.read(e.Items, p.f.Unit)
	if err != nil {
		fault := Fault{Input: e.Name, Item: at, Text: err.Error()}
		var slip *quantity.Error
		if errors.As(err, &slip) {
			fault.Offset, fault.Text, fault.Instead = slip.Offset, slip.Reason, slip.Instead
		}
		p.Faults = append(p.Faults, fault)
		return
	}
	p.Given = append(p.Given, given(in.Name, e.Items))
}
