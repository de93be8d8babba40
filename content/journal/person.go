package journal

import (
	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/content/source"
)

// A Person is someone who wears what is built.
type Person struct {
	Page     `noun:"a person"`
	Measured []Session `field:"measured" tells:"body" doc:"measurings of the body" eg:"[{date: 2026-01-10, over: [shift, stays], waist girth: 29 in}]"`
	ShowsFit FitShown  `field:"shows fit" tells:"sharing" doc:"what others may see of the fit; nothing where not given"`
	Measures Audience  `field:"shows measures" tells:"sharing" doc:"who may see the measures of the body, and what gives them away; self where not given"`
	Money    Audience  `field:"shows money" tells:"sharing" doc:"who may see what was paid for what is made for this person; self where not given"`
	Usual    []string  `field:"usual changes" tells:"body" doc:"what is changed on a pattern maker's sizes every time" eg:"[longer in the back]"`
}

// FitShown is how much of a wearer's fit a shared site may show.
type FitShown string

// What a wearer may allow.
const (
	FitNothing FitShown = "nothing"
	FitWords   FitShown = "words"
	FitDeltas  FitShown = "deltas"
)

// A Session is one measuring of a body. Values hold only over the same
// foundation.
type Session struct {
	front.Where `noun:"a measuring session"`
	Date        edtf.Day `field:"date" doc:"the day of measuring; in a note, the note's date where not given" eg:"2026-01-10"`
	Of          Ref      `field:"of" to:"person" doc:"who was measured; in a note, the build's wearer where not given" eg:"wren"`
	Over        []Word   `field:"over" doc:"the foundation worn while measuring, in dressing order" eg:"[shift, stays]"`
	By          Word     `field:"by" doc:"who held the tape" eg:"ottilie"`
	Remarks     string   `field:"remarks" doc:"what else was noticed" eg:"after dinner"`
	Readings    Readings `field:"*"`
}

// Foundation returns what was worn while measuring.
func (s *Session) Foundation() measure.Foundation { return foundation(s.Over) }

func foundation(words []Word) measure.Foundation {
	var f measure.Foundation
	for _, w := range words {
		f = append(f, w.Text)
	}
	return f
}

// A Reading is one measure with its value.
type Reading struct {
	Point measure.Point
	Value quantity.Estimate
	Key   source.Span // of the measure's name
	Span  source.Span // of the value
}

// Readings are the measures taken at one time, in the order written.
type Readings []Reading
