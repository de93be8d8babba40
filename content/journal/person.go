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
	Measured []Session `field:"measured"`
	ShowsFit FitShown  `field:"shows fit"`     // what others may see of the fit
	Usual    []string  `field:"usual changes"` // made over a pattern maker's sizes every time
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
	Date        edtf.Day `field:"date"`           // a session written in a note has the note's date
	Of          Ref      `field:"of" to:"person"` // in a note, if not the build's wearer
	Over        []Word   `field:"over"`
	By          Word     `field:"by"`
	Remarks     string   `field:"remarks"`
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
