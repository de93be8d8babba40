package fit

import (
	"fmt"
	"strings"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// Words says the verdict on one measure: "fits", "short by 1 1/4 in", "too close
// to call (short by 1/8 in, error 3/8 in)", "fits: lace to a 1 1/2 in gap". The
// fault is always the garment's.
func (r Row) Words(f quantity.Format) string {
	switch r.Verdict {
	case Fits:
		if how := r.Adjusted.words(f); how != "" {
			return "fits: " + how
		}
		return "fits"
	case Short, Ample:
		words := r.off(f)
		if end := r.Adjusted.end(f); end != "" {
			words += " " + end
		}
		if r.Accepted {
			words += ", and that is accepted"
		}
		return words
	case TooClose:
		return fmt.Sprintf("too close to call (%s, error %s)", r.off(f), f.Length(r.Error))
	case NoEase:
		return r.had(f) + ", and no ease is named as wanted"
	case UnreadEase:
		return r.had(f) + ", and the ease wanted cannot be read"
	case NoWearer:
		return "nobody is named as its wearer"
	case NoGarment:
		return "garment not measured"
	case GarmentLater:
		return "garment not measured before " + r.Garment.Later.String()
	case UnknownGarment:
		return "measure of the garment unknown"
	case UnsureGarment:
		return "garment altered since it was measured, by how much is not known"
	case NoBody:
		return "no body measure"
	case NoBodyOver:
		return "no body measure " + over(r.Over)
	case BodyLater:
		return fmt.Sprintf("no body measure %s before %s", over(r.Over), r.Body.Later)
	case UnknownBody:
		return "body measure unknown"
	}
	return ""
}

// Word says a verdict without a figure: "short". It is empty for what is no verdict.
func (v Verdict) Word() string {
	switch v {
	case Fits:
		return "fits"
	case Short:
		return "short"
	case Ample:
		return "ample"
	case TooClose:
		return "too close to call"
	}
	return ""
}

// Word says the verdict on one measure without a figure.
func (r Row) Word() string {
	word := r.Verdict.Word()
	if r.Verdict == Ample && r.Accepted {
		word += ", and that is accepted"
	}
	return word
}

// off says to which side the garment differs, and by how much.
func (r Row) off(f quantity.Format) string {
	side := "ample"
	if r.Delta < 0 {
		side = "short"
	}
	by := f.Length(max(r.Delta, -r.Delta))
	if by == f.Length(0) {
		return side + " by a hair"
	}
	return side + " by " + by
}

// had says what ease there is.
func (r Row) had(f quantity.Format) string {
	if r.Had.Least < 0 && r.Had.Most <= 0 {
		return f.Range(quantity.Range{Least: -r.Had.Most, Most: -r.Had.Least}) + " less than the body"
	}
	return f.Range(r.Had) + " of ease"
}

// words says how to wear what can be adjusted: "lace to a 1 1/2 in gap and pin
// with a 3/4 in lap".
func (a *Adjusted) words(f quantity.Format) string {
	if a == nil {
		return ""
	}
	var said []string
	for _, s := range a.Settings {
		said = append(said, s.Words(f))
	}
	return strings.Join(said, " and ")
}

// Words says how to wear one adjustment: "lace closed", "lace to a 1 1/2 in gap",
// "pin with a 3/4 in lap".
func (s Setting) Words(f quantity.Format) string {
	how := s.Adjust.How
	switch {
	case s.Adjust.Laced():
		how = "lace"
	case strings.HasPrefix(strings.ToLower(how), "pin"):
		how = "pin"
	default:
		how = "set the " + how
	}
	size := f.Length(s.Size)
	switch {
	case s.Adjust.Lap && s.Size == 0:
		return how + " edge to edge"
	case s.Adjust.Lap:
		return how + " with " + article(size) + " lap"
	case s.Size == 0:
		return how + " closed"
	}
	return how + " to " + article(size) + " gap"
}

// end says how far a garment was adjusted that does not fit even so.
func (a *Adjusted) end(f quantity.Format) string {
	if a == nil {
		return ""
	}
	var said []string
	for _, s := range a.Settings {
		size := f.Length(s.Size)
		switch {
		case s.Adjust.Lap:
			said = append(said, article(size)+" lap")
		case s.Size == 0:
			said = append(said, s.Adjust.How+" closed")
		default:
			said = append(said, article(size)+" gap")
		}
	}
	return "with " + strings.Join(said, " and ")
}

// Caution is the usual caution for what the row advises; "" where there is none.
func (r Row) Caution() string {
	if r.Adjusted == nil {
		return ""
	}
	for _, s := range r.Adjusted.Settings {
		if s.Adjust.Laced() {
			return "lace by steps, never tighter than is easy to breathe, sit and eat in, and open the lacing at once on feeling faint or numb"
		}
	}
	return ""
}

// article puts "a" or "an" before a length, as it is spoken.
func article(size string) string {
	number, _, _ := strings.Cut(size, " ")
	if strings.HasPrefix(number, "8") || number == "11" || number == "18" {
		return "an " + size
	}
	return "a " + size
}

func over(f measure.Foundation) string {
	if words := f.String(); words != measure.Foundation(nil).String() {
		return "over " + words
	}
	return "unclothed"
}

// Words says what to do: "measure bust girth and hip girth over shift and stays".
func (m Missing) Words() string {
	points := list(m.Points)
	switch m.Why {
	case NoWearer:
		return "name the wearer"
	case NoGarment, GarmentLater, UnknownGarment:
		return "measure the garment: " + points
	case UnsureGarment:
		return "measure the garment again: " + points
	case NoEase:
		return "name the ease wanted: " + points
	case UnreadEase:
		return "put right the ease wanted: " + points
	}
	return "measure " + points + " " + over(m.Over)
}

func list(points []measure.Point) string {
	var b strings.Builder
	for i, p := range points {
		switch {
		case i == 0:
		case i == len(points)-1:
			b.WriteString(" and ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(p.String())
	}
	return b.String()
}
