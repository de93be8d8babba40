package worksheet

import (
	"fmt"
	"html/template"
	"strconv"
	"strings"

	"hussif/content/quantity"
	"hussif/theme/draw"
)

// A Paper is a worksheet that has been worked out, or what is wrong with it.
type Paper struct {
	Title    string
	Given    []Fact // the inputs, as given, and those that were taken for granted
	Formula  []Line
	Answers  []Answer
	Cut      []string // what to cut and to mark, in order
	Cautions []string // about the work
	Care     string   // where the work can hurt
	Drawings []Drawing
	Prints   []Print
	Faults   []Fault

	f       quantity.Format
	metric  bool
	inputs  []Input
	missing []string
}

// A Fact is an input with its value.
type Fact struct {
	Name, Value string
	From        string // where the value is from, where that was not the maker's pen
}

// A Line is a formula in words, with the numbers in, and what comes out.
type Line struct{ Rule, Filled, Out string }

// An Answer is one figure that came out. Only one of Length, Count and Number means
// something, by Kind.
type Answer struct {
	Name   string
	Words  string // in the trade's fractions
	Kind   Kind
	Length quantity.Length
	Count  int
	Number float64
	Main   bool // what the sheet was asked for
}

// A Kind is what an answer is.
type Kind int

// The kinds of answer.
const (
	ALength Kind = iota
	ACount
	ANumber
)

// A Drawing is a picture to scale with its text alternative.
type Drawing struct {
	Title, Desc string
	Draw        func(w draw.Words) template.HTML
}

// A Print is a shape or a strip to be printed at its real size.
type Print struct {
	Name  string // for its address: letters and hyphens
	Title string
	Words []string // what to do with it
	Desc  string
	Sheet func(w draw.Words, paper draw.Paper) (draw.Sheets, error)
}

// Missing returns the inputs without which nothing can be worked out and that were
// not given.
func (p *Paper) Missing() []string { return p.missing }

func metric(f quantity.Format) bool {
	switch f.Unit {
	case quantity.Metres, quantity.Centimetres, quantity.Millimetres:
		return true
	}
	return false
}

func given(name string, items []Item) Fact {
	fact := Fact{Name: name}
	var texts []string
	for _, item := range items {
		text := strings.TrimSpace(item.Text)
		if item.Shown != "" {
			text = item.Shown
		}
		if item.Name != "" {
			text = item.Name + ": " + text
		}
		texts = append(texts, text)
		if item.From != "" {
			fact.From = item.From
		}
	}
	fact.Value = strings.Join(texts, ", ")
	return fact
}

// fault reports that an input cannot be what it is.
func (p *Paper) fault(input, format string, args ...any) {
	p.Faults = append(p.Faults, Fault{Input: input, Item: -1, Text: fmt.Sprintf(format, args...)})
}

// wants reports that figures are missing, and which would do.
func (p *Paper) wants(text string, inputs ...string) {
	p.Faults = append(p.Faults, Fault{Item: -1, Text: text, Help: "add " + list(inputs, "or")})
	p.missing = append(p.missing, inputs...)
}

// say answers with a length.
func (p *Paper) say(name string, l quantity.Length) {
	p.Answers = append(p.Answers, Answer{Name: name, Words: p.size(l), Kind: ALength, Length: l})
}

// count answers with a number of things.
func (p *Paper) count(name string, n int) {
	p.Answers = append(p.Answers, Answer{Name: name, Words: strconv.Itoa(n), Kind: ACount, Count: n})
}

// number answers with a plain number and its words.
func (p *Paper) number(name string, n float64, words string) {
	p.Answers = append(p.Answers, Answer{Name: name, Words: words, Kind: ANumber, Number: n})
}

// main marks the answers that the sheet was asked for.
func (p *Paper) main(names ...string) {
	for i := range p.Answers {
		for _, name := range names {
			if p.Answers[i].Name == name {
				p.Answers[i].Main = true
			}
		}
	}
}

// line writes a formula, with the numbers in, and what came out.
func (p *Paper) line(rule, out, filled string, args ...any) {
	p.Formula = append(p.Formula, Line{rule, fmt.Sprintf(filled, args...), out})
}

func (p *Paper) cut(format string, args ...any) { p.Cut = append(p.Cut, fmt.Sprintf(format, args...)) }

func (p *Paper) caution(format string, args ...any) {
	p.Cautions = append(p.Cautions, fmt.Sprintf(format, args...))
}
