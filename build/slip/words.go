package slip

import (
	"fmt"

	"hussif/content/quantity"
)

// Words says what is doubtful, for "sure?" to follow.
func (d Doubt) Words(f quantity.Format) string {
	r := d.Reading
	if d.Kind == Outside {
		s := r.scope()
		return fmt.Sprintf("%s is no length to be read there (%s): look at the figure and its unit",
			f.Length(r.Value.Length), f.Range(quantity.Range{Least: s.least, Most: s.most}))
	}
	var text string
	if r.Before.known() {
		text = r.Compared(f) + " (more than " + f.Length(r.Limit()) + " is asked after)"
	}
	switch d.Kind {
	case OtherUnit:
		other := quantity.Format{Unit: quantity.Centimetres}
		if r.metric() {
			other = quantity.Format{Unit: quantity.Inches, Fraction: f.Fraction}
		}
		if text == "" {
			return fmt.Sprintf("%s is a good deal for this measure; did you mean %s?", f.Length(r.Value.Length), other.Length(d.Instead))
		}
		return text + "; did you mean " + other.Length(d.Instead) + "?"
	case Swapped:
		return fmt.Sprintf("%s; with its digits the other way round it is %s", r.Compared(f), f.Length(d.Instead))
	case Mark:
		return text + "; did you mean " + f.Length(d.Instead) + ", with the decimal mark elsewhere?"
	case Half:
		return text + "; is it half of the girth, which would be " + f.Length(d.Instead) + "?"
	}
	return text
}

// Compared says how the reading differs from the one before: "1/4 in more than on
// 2026-01-10, within the error of measuring".
func (r Reading) Compared(f quantity.Format) string {
	by := r.Value.Length - r.Before.Value.Length
	when := "on " + r.Before.Day.String()
	if r.Before.Others {
		when += " over other layers"
	}
	switch {
	case by == 0:
		return "as " + when
	case by > 0:
		return f.Finer().Length(by) + " more than " + when
	}
	return f.Finer().Length(-by) + " less than " + when
}

// Within reports whether the difference from the reading before is no larger than
// the error of the two.
func (r Reading) Within() bool { return 3*r.off(r.Value.Length) <= r.threefold() }
