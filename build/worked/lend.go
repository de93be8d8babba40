package worked

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"hussif/build/fit"
	"hussif/build/worksheet"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A lent is a figure taken from the record.
type lent struct {
	text   string // read by the worksheet
	shown  string
	from   string // says of what, over what and as of which day
	since  string // says that it was measured again; "" where it was not, or did not change
	record journal.Record
}

// newest is a day after all others, for texts without a date.
const newest = edtf.Day(math.MaxInt32)

// dayOf returns the day as of which a text takes its figures.
func dayOf(r journal.Record) edtf.Day {
	if n, ok := r.(*journal.Note); ok && n.Date != 0 {
		return n.Date
	}
	return newest
}

// buildOf returns the build that a text belongs to, or nil.
func buildOf(r journal.Record) *journal.Build {
	switch r := r.(type) {
	case *journal.Build:
		return r
	case *journal.Note:
		return r.Of
	}
	return nil
}

// Lend takes a figure from the record for one that was typed at a prompt, as of the
// newest day.
func (r Room) Lend(b *journal.Borrowed) (worksheet.Item, error) {
	l, err := r.lend(nil, b)
	return worksheet.Item{Text: l.text, Shown: l.shown, From: l.from}, err
}

// lend takes a figure from the record for a text, or for none.
func (r Room) lend(to journal.Record, b *journal.Borrowed) (lent, error) {
	if b.What != journal.Measured {
		return r.material(b)
	}
	build := buildOf(to)
	var from journal.Record
	switch {
	case b.This && build == nil:
		return lent{}, errors.New("there is no build here that could be meant; name one")
	case b.Wearer:
		p := r.Journal.Person(build.For)
		if p == nil {
			return lent{}, fmt.Errorf("%s names no wearer", build.Title)
		}
		from = p
	case b.This:
		from = build
	default:
		found, ok := r.Journal.Find(b.From.To, b.Kinds()...)
		if !ok {
			return lent{}, fmt.Errorf("no person and no build is called %q", b.From.To)
		}
		from = found
	}
	day := dayOf(to)
	if b.On != 0 {
		day = b.On
	}
	out, err := r.measure(from, build, b, day)
	if err != nil || b.On != 0 {
		return out.lent, err
	}
	if later, err := r.measure(from, build, b, newest); err == nil && later.length != out.length {
		out.since = fmt.Sprintf("%s was measured again on %s: %s; this sheet keeps to the figure of its day", out.what, later.day, later.shown)
	}
	return out.lent, nil
}

// A measured is a measure taken from the record.
type measured struct {
	lent
	what   string
	length quantity.Length
	day    edtf.Day
}

func (r Room) measure(from journal.Record, build *journal.Build, b *journal.Borrowed, day edtf.Day) (measured, error) {
	if p, ok := from.(*journal.Person); ok {
		over := b.Over
		if !b.OverGiven && build != nil {
			over = build.Foundation()
		}
		return r.body(p, b.Point, over, day)
	}
	return r.garment(from.(*journal.Build), b.Point, day)
}

// body takes a measure of a body over a foundation.
func (r Room) body(p *journal.Person, point measure.Point, over measure.Foundation, day edtf.Day) (measured, error) {
	t := fit.Compute(fit.Input{
		Wearer: p.ID, Day: day, Foundation: over, Body: fit.Sessions(r.Journal, p),
		Wanted: []fit.Wanted{{Point: point}}, Errors: r.Journal.Settings.Errors, Catalogue: r.Journal.Settings.Catalogue,
	})
	what := point.String() + " of " + p.Title
	for _, row := range t.Rows {
		v := row.Body
		switch {
		case row.Point != point:
		case v.Read.Known():
			how := "measured"
			if v.Estimated() {
				how = "estimated from what was measured over " + v.Over.String()
			}
			if v.Read.State == quantity.About {
				how = "about, " + how
			}
			return r.told(p, what, what+" over "+over.String()+", "+how+" on "+v.Day.String(), v.Length, v.Day)
		case len(v.Apart) > 0:
			return measured{}, fmt.Errorf("%s is known over %s, which cannot be compared with %s; say over what, or measure both on one day", what, v.Apart[0], over)
		case v.Later != 0:
			return measured{}, fmt.Errorf("%s was first measured over %s on %s, after this; add `on %s` to take that", what, over, v.Later, v.Later)
		}
	}
	return measured{}, fmt.Errorf("%s was never measured over %s", what, over)
}

// garment takes a measure of a garment.
func (r Room) garment(b *journal.Build, point measure.Point, day edtf.Day) (measured, error) {
	in := fit.InputFor(r.Journal, b, nil, day)
	in.Wanted = append(in.Wanted, fit.Wanted{Point: point})
	what := point.String() + " of " + b.Title
	for _, row := range fit.Compute(in).Rows {
		v := row.Garment
		switch {
		case row.Point != point:
		case v.Measured.Known() && len(v.Unsure) > 0:
			return measured{}, fmt.Errorf("%s was altered since it was measured, by how much is not told; measure it again", what)
		case v.Measured.Known():
			how := "measured on " + v.Day.String()
			if v.Expected() {
				how = "expected: " + how + ", with the alterations since"
			}
			return r.told(b, what, what+", "+how, v.Length, v.Day)
		case v.Later != 0:
			return measured{}, fmt.Errorf("%s was first measured on %s, after this; add `on %s` to take that", what, v.Later, v.Later)
		}
	}
	return measured{}, fmt.Errorf("%s was never measured", what)
}

func (r Room) told(record journal.Record, what, from string, l quantity.Length, day edtf.Day) (measured, error) {
	if l <= 0 {
		return measured{}, fmt.Errorf("%s is nothing", what)
	}
	return measured{lent{text: exactly(l), shown: worksheet.Shown(r.Journal.Settings.Format, l), from: from, record: record}, what, l, day}, nil
}

// material takes a figure of a material.
func (r Room) material(b *journal.Borrowed) (lent, error) {
	m := r.Journal.Material(b.From)
	if m == nil {
		return lent{}, fmt.Errorf("no material is called %q", b.From.To)
	}
	f := r.Journal.Settings.Format
	length := func(l quantity.Length, name string) (lent, error) {
		if l <= 0 {
			return lent{}, fmt.Errorf("%s does not say its %s; add `%s: ...` to its page", m.Title, name, name)
		}
		return lent{text: exactly(l), shown: worksheet.Shown(f, l), from: name + " of " + m.Title, record: m}, nil
	}
	switch b.What {
	case journal.ClothWidth:
		return length(m.Width, "width")
	case journal.ClothThickness:
		return length(m.Thickness, "thickness")
	}
	best, found := quantity.Size{}, lent{}
	area := func(s quantity.Size) float64 { return float64(s.Width) * float64(s.Length) }
	for _, piece := range r.Stock(m.ID).Left() {
		if area(piece.Size) <= area(best) {
			continue
		}
		best = piece.Size
		found = lent{text: exactly(best.Width) + " x " + exactly(best.Length), shown: f.Size(best), record: m}
		found.from = "the largest piece left over of " + m.Title
		if piece.Day != 0 {
			found.from += ", of " + piece.Day.String()
		}
		if strings.TrimSpace(piece.Grain) != "" {
			found.from += ", grain: " + piece.Grain
		}
	}
	if found.record == nil {
		return lent{}, fmt.Errorf("nothing of a known size is left over of %s", m.Title)
	}
	return found, nil
}
