package journal

import (
	"fmt"
	"slices"
	"strings"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/near"
	"hussif/content/quantity"
	"hussif/content/source"
)

// ParseSettings reads the settings file. The zero File stands for a journal that
// has none.
func ParseSettings(f *source.File) (*Settings, []source.Finding) {
	plain := &Settings{}
	plain.complete()
	if f == nil {
		return plain, nil
	}
	node, findings := front.Parse(f.Whole())
	if !front.CanDecode(findings) {
		return plain, findings
	}
	// Ease is written in the journal's own unit and measures, which stand in the
	// same file: a first reading finds those, a second one reads all by them.
	first := &Settings{}
	settingsSchema(plain).Decode(node, first)
	first.complete()
	s := &Settings{}
	findings = append(findings, settingsSchema(first).Decode(node, s)...)
	return s, append(findings, s.complete()...)
}

func settingsSchema(s *Settings) *front.Schema {
	t := s.terms()
	readers := append(t.readers(),
		front.As(unitForm, readUnit),
		front.As(currencyForm, readCurrency),
		front.As(yearsForm, readYears),
		front.As(classForm, readClass),
		front.As(shortForm, readShortNames),
		front.As(errorsForm, t.errors),
		front.As(garmentForm, t.garmentEase),
	)
	return front.NewSchema(readers, Settings{}, Want{}, Crossing{}, Level{})
}

// complete fills in the computed settings and says what cannot be had.
func (s *Settings) complete() []source.Finding {
	if s.Unit == quantity.NoUnit {
		s.Unit = quantity.Inches
	}
	s.Format = quantity.Format{Unit: s.Unit, Fraction: 8}
	if s.Finest > 0 && s.Finest < quantity.Inch/8 {
		s.Format.Fraction = 16
	}
	s.Customs = edtf.Customs{Circa: int(s.Circa)}
	if s.Share == "" {
		s.Share = Self
	}
	var own []measure.Measure
	for _, m := range s.Measures {
		class := m.Class
		if class == 0 {
			class = measure.SegmentLength
		}
		own = append(own, measure.Measure{Name: m.Name.Text, Class: class, Aliases: texts(m.Also), Paired: m.Paired == Yes, Taken: m.Taken})
	}
	var faults []measure.Fault
	s.Catalogue, faults = measure.Standard().With(own, s.ShortNames)
	var findings []source.Finding
	for _, fault := range faults {
		f := source.Found(s.placeOf(fault.Name), source.Error, OwnMeasureFault, "%s", fault.Text)
		f.Instead = fault.Instead
		findings = append(findings, f)
	}
	return findings
}

// placeOf returns where the settings give a measure or short form its name.
func (s *Settings) placeOf(name string) source.Span {
	for _, m := range s.Measures {
		for _, w := range append([]Word{m.Name}, m.Also...) {
			if w.Text == name {
				return w.Span
			}
		}
	}
	return s.Value("short names")
}

func texts(words []Word) []string {
	var out []string
	for _, w := range words {
		out = append(out, w.Text)
	}
	return out
}

func (s *Settings) terms() terms {
	return terms{unit: s.Unit, currency: string(s.Currency), customs: s.Customs, catalogue: s.Catalogue}
}

func readUnit(d *front.Decoder, n front.Node) (quantity.Unit, bool) {
	s, ok := text(d, n)
	if !ok {
		return quantity.NoUnit, false
	}
	switch u, _ := quantity.ParseUnit(s); u {
	case quantity.Inches, quantity.Centimetres, quantity.Millimetres:
		return u, true
	}
	return quantity.NoUnit, d.Refuse(n.Span, NotOneOf, fmt.Sprintf("a journal cannot be kept in %q", s), "in", "cm", "mm")
}

func readCurrency(d *front.Decoder, n front.Node) (Currency, bool) {
	s, ok := text(d, n)
	if !ok {
		return "", false
	}
	code := strings.ToUpper(s)
	if _, err := quantity.ParseMoney("1 "+code, ""); err != nil {
		return "", d.Refuse(n.Span, NotMoney, fmt.Sprintf("%q is no currency", s), "EUR", "GBP", "USD")
	}
	return Currency(code), true
}

func readYears(d *front.Decoder, n front.Node) (Years, bool) {
	s, ok := text(d, n)
	if !ok {
		return 0, false
	}
	number := strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(s, "years"), "year"))
	node := n
	node.Text = number
	count, ok := readCount(d, node)
	return Years(count), ok
}

func readClass(d *front.Decoder, n front.Node) (measure.Class, bool) {
	s, ok := text(d, n)
	if !ok {
		return 0, false
	}
	if c, ok := measure.ParseClass(s); ok && c != measure.LaidFlat {
		return c, true
	}
	return 0, refuseClass(d, n.Span, s, measure.Classes())
}

func refuseClass(d *front.Decoder, at source.Span, name string, classes []measure.Class) bool {
	var names []string
	for _, c := range classes {
		names = append(names, c.String())
	}
	f := source.Found(at, source.Error, NotOneOf, "%q is no class of measure", name)
	if f.Instead = near.Of(name, names); len(f.Instead) == 0 {
		f.Help = "one of: " + strings.Join(names, ", ")
	}
	d.Report(f)
	return false
}

// group returns the fields of a node that have been filled in, or reports that it
// is no group.
func group(d *front.Decoder, n front.Node, help string) ([]front.Field, bool) {
	if n.Kind != front.Map {
		return nil, d.Shape(n, "a group of fields", help)
	}
	empty := func(f front.Field) bool { return f.Value.Kind == front.None }
	return slices.DeleteFunc(slices.Clone(n.Fields), empty), true
}

func readShortNames(d *front.Decoder, n front.Node) (ShortNames, bool) {
	fields, ok := group(d, n, "write `waist: waist girth` and so on, a line each")
	out := make(ShortNames, len(fields))
	for _, f := range fields {
		name, good := text(d, f.Value)
		ok = ok && good
		out[f.Key] = name
	}
	return out, ok
}

func (t terms) errors(d *front.Decoder, n front.Node) (measure.Errors, bool) {
	fields, ok := group(d, n, "write `large girth: 9 mm` and so on, a line each")
	out := make(measure.Errors, len(fields))
	for _, f := range fields {
		class, known := measure.ParseClass(f.Key)
		if !known {
			ok = refuseClass(d, f.KeySpan, f.Key, append(measure.Classes(), measure.LaidFlat))
			continue
		}
		v, good := t.length(d, f.Value)
		if good && v < 0 {
			good = d.Refuse(f.Value.Span, NotALength, "an error of measuring cannot be less than nothing")
		}
		ok = ok && good
		out[class] = v
	}
	return out, ok
}

func (t terms) garmentEase(d *front.Decoder, n front.Node) (GarmentEase, bool) {
	fields, ok := group(d, n, "write `jacket: {bust girth: 1 to 2 in}` and so on, a line each")
	out := make(GarmentEase, len(fields))
	for _, f := range fields {
		w, good := t.wants(d, f.Value)
		ok = ok && good
		out[strings.ToLower(f.Key)] = w
	}
	return out, ok
}
