package journal

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/source"
)

// A Borrowed is a figure of a worksheet that is taken from the record:
//
//	waist girth of wren over stays       a body's measure, over layers
//	waist girth of the wearer            of this build, over what it is worn over
//	waist of striped-jacket              a garment's measure
//	waist of this build
//	this build                           the measure that the input is called by
//	left over striped-linen              the largest piece left over
//	width of striped-linen               of a material, as thickness is
//
// A name may stand in double brackets, and `on 2026-03-01` at the end of a measure
// says of which day.
type Borrowed struct {
	What      Lending
	Point     measure.Point // of a Measured
	From      Ref           // zero for this build and its wearer
	This      bool          // the build that the text belongs to
	Wearer    bool          // its wearer
	Over      measure.Foundation
	OverGiven bool
	On        edtf.Day // 0 where none is given
}

// A Lending is what a record lends.
type Lending int

// What is lent.
const (
	Measured       Lending = iota // a measure of a person or a build
	LeftOver                      // the largest piece left over of a material
	ClothWidth                    // the width of a material
	ClothThickness                // its thickness
)

var (
	ofSomething = regexp.MustCompile(`^([\pL][^\[\]]*?)\s+of\s+(.+)$`)
	leftOver    = regexp.MustCompile(`^left\s+over\s+(?:of\s+)?(.+)$`)
	onDay       = regexp.MustCompile(`^(.+?)\s+on\s+(\d{4}-\d{2}-\d{2})$`)
	overLayers  = regexp.MustCompile(`^(.+?)\s+over\s+(.+)$`)
	theWearer   = regexp.MustCompile(`^(?:the|this|its) wearer$`)
)

// Borrow reads a figure that was typed at a prompt as one of the record; nil where it
// is none. input is the name of the input that it is for. The error says why one that
// may be meant so cannot be read.
func (s *Settings) Borrow(input, text string) (*Borrowed, error) {
	file, found := source.Load("figure", []byte(text))
	if len(found) > 0 {
		return nil, nil
	}
	b := s.terms().borrowed(input, front.Node{Kind: front.Text, Text: text, Span: file.Whole()}, &found)
	if len(found) > 0 {
		f := found[0]
		if advice := f.Advice(); advice != "" {
			return nil, fmt.Errorf("%s; %s", f.Text, advice)
		}
		return nil, errors.New(f.Text)
	}
	return b, nil
}

// borrowed reads a value as one of the record; nil where it is none, or not one that
// can be read, of which the findings tell.
func (t terms) borrowed(input string, n front.Node, findings *[]source.Finding) *Borrowed {
	text := n.Text
	warn := func(at source.Span, rule, said string, instead ...string) *Borrowed {
		f := source.Found(at, source.Warning, rule, "%s", said)
		f.Instead = instead
		*findings = append(*findings, f)
		return nil
	}
	// part is the place of a piece of the text, which stands in it once.
	part := func(piece string) source.Span { return n.At(strings.LastIndex(text, piece), len(piece)) }
	if strings.TrimSpace(text) == "this build" {
		p, ok := t.catalogue.Find(input)
		if !ok {
			return warn(n.Span, MisreadWork, "say which measure of this build: no measure is called "+input)
		}
		return &Borrowed{This: true, Point: p}
	}
	if m := leftOver.FindStringSubmatch(text); m != nil {
		return &Borrowed{What: LeftOver, From: borrowedRef(m[1], part(m[1]))}
	}
	m := ofSomething.FindStringSubmatch(text)
	if m == nil {
		return nil
	}
	name, whose := strings.Join(strings.Fields(m[1]), " "), m[2]
	switch name {
	case "width":
		return &Borrowed{What: ClothWidth, From: borrowedRef(whose, part(whose))}
	case "thickness":
		return &Borrowed{What: ClothThickness, From: borrowedRef(whose, part(whose))}
	}
	p, ok := t.catalogue.Find(name)
	if !ok {
		return warn(n.At(0, len(m[1])), UnknownMeasure, `no measure is called "`+name+`"`, t.catalogue.Nearest(name)...)
	}
	b := &Borrowed{Point: p}
	if d := onDay.FindStringSubmatch(whose); d != nil {
		day, err := edtf.ParseDay(d[2])
		if err != nil {
			return warn(part(d[2]), NotADay, err.Error())
		}
		whose, b.On = d[1], day
	}
	if o := overLayers.FindStringSubmatch(whose); o != nil {
		whose, b.OverGiven = o[1], true
		for _, layer := range strings.FieldsFunc(o[2], func(r rune) bool { return r == ',' }) {
			for _, one := range strings.Split(layer, " and ") {
				if one = strings.Join(strings.Fields(one), " "); one != "" && one != "nothing" {
					b.Over = append(b.Over, one)
				}
			}
		}
	}
	switch whose = strings.TrimSpace(whose); {
	case whose == "this build":
		b.This = true
	case theWearer.MatchString(whose):
		b.This, b.Wearer = true, true
	default:
		b.From = borrowedRef(whose, part(whose))
	}
	return b
}

// borrowedRef reads the name of a page, in brackets or not.
func borrowedRef(text string, at source.Span) Ref {
	to := strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(text), "[["), "]]")
	to, _, _ = strings.Cut(to, "|")
	to, _, _ = strings.Cut(to, "#")
	return Ref{To: strings.TrimSuffix(strings.TrimSpace(to), ".md"), Span: at}
}

// Kinds returns what kinds of page may lend a figure.
func (b *Borrowed) Kinds() []Kind {
	if b.What == Measured {
		return []Kind{KindPerson, KindBuild}
	}
	return []Kind{KindMaterial}
}
