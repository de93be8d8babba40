package worksheet

import (
	"fmt"
	"html/template"
	"math"
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
			text = item.Name + " " + text
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

// size writes an answer to the finer fractions of the trade, and what is lost by
// that where anything is.
func (p *Paper) size(l quantity.Length) string {
	switch {
	case !p.rounds(l):
		return p.trade(l)
	case !p.metric && l%(quantity.Inch/32) == 0:
		return p.exact(l) // half a sixteenth is found on a ruler too
	}
	return p.trade(l) + " (" + p.exact(l) + ")"
}

// trade writes a length as it is marked with a tape.
func (p *Paper) trade(l quantity.Length) string { return Trade(p.f).Length(l) }

// Trade returns how a journal's lengths are shown on a worksheet: in its own unit, to
// a sixteenth of an inch or to the millimetre.
func Trade(f quantity.Format) quantity.Format {
	if metric(f) {
		return f
	}
	return f.Finer()
}

func (p *Paper) rounds(l quantity.Length) bool {
	return l%p.f.Finer().Step() != 0
}

// exact writes a length as it stands in a formula: as a fraction down to 1/64 in or
// else to a thousandth of its unit.
func (p *Paper) exact(l quantity.Length) string {
	unit := p.f.Unit
	if !p.metric {
		if fine := (quantity.Format{Unit: quantity.Inches, Fraction: 64}); l%fine.Step() == 0 {
			return fine.Length(l)
		}
		unit = quantity.Inches
	}
	value := float64(l) / float64(unit.Length())
	return plainNumber(value) + " " + unit.String()
}

// plainNumber writes a number to a thousandth.
func plainNumber(f float64) string {
	f = math.Round(f*1000) / 1000
	sign := ""
	if f < 0 {
		sign, f = "−", -f
	}
	return sign + strconv.FormatFloat(f+0, 'f', -1, 64)
}

// list joins words: "a, b or c".
func list(words []string, last string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + last + " " + words[len(words)-1]
}

// plural puts a count before a word.
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	if strings.HasSuffix(word, "ch") {
		return fmt.Sprintf("%d %ses", n, word)
	}
	return fmt.Sprintf("%d %ss", n, word)
}

func mm(l quantity.Length) float64 { return float64(l) / float64(quantity.Millimetre) }
