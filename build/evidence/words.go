package evidence

import (
	"fmt"
	"strconv"
	"strings"

	"hussif/content/edtf"
)

// Words gives the verdict with what it rests on: "supported: shown by 3 inside the
// era, 1 perhaps inside it; lacked by 1 inside it". What overlaps an era is perhaps
// of it.
func (j Judgement) Words() string {
	reason := j.Reason()
	if reason == "" {
		return string(j.Verdict)
	}
	return string(j.Verdict) + ": " + reason
}

// Reason is what the verdict rests on; empty where there is nothing.
func (j Judgement) Reason() string {
	era := "the era"
	var said []string
	for _, side := range []struct {
		verb string
		Counts
	}{{"shown", j.Shown}, {"lacked", j.Lacked}} {
		var parts []string
		for _, place := range []struct {
			n     int
			where string
		}{{side.Inside, "inside "}, {side.Overlapping, "perhaps inside "}, {side.Before, "before "}, {side.After, "after "}} {
			if place.n > 0 {
				parts = append(parts, strconv.Itoa(place.n)+" "+place.where+era)
				era = "it"
			}
		}
		if len(parts) > 0 {
			said = append(said, side.verb+" by "+strings.Join(parts, ", "))
		}
	}
	if j.Unsure > 0 {
		said = append(said, fmt.Sprintf("%d dated with a question mark", j.Unsure))
	}
	if n := j.Shown.Undated + j.Lacked.Undated; n > 0 {
		said = append(said, fmt.Sprintf("%d without a date not counted", n))
	}
	if j.Disputed > 0 {
		said = append(said, fmt.Sprintf("%d said both to show and to lack it not counted", j.Disputed))
	}
	return strings.Join(said, "; ")
}

// Words gives the claim's verdict with what it rests on, and for a departure its
// reason and then what the references say.
func (c Claim) Words() string {
	if c.Verdict != Departure {
		return c.Evidence.Words()
	}
	return string(Departure) + ": " + c.Departs + " (" + c.Evidence.Words() + ")"
}

// Words says in sentences what shows the feature and what lacks it, as the text
// alternative of a drawing needs it: "Shown by A plate, 1786. Lacked by nothing."
func (f Feature) Words() string {
	var said []string
	for _, side := range []struct {
		verb    string
		objects []*Object
	}{{"Shown by ", f.Shown}, {"Lacked by ", f.Lacked}, {"Said both to be shown and to be lacked by ", f.Disputed}} {
		var names []string
		for _, o := range side.objects {
			names = append(names, o.Title()+", "+o.Words())
		}
		switch {
		case len(names) > 0:
			said = append(said, side.verb+strings.Join(names, "; ")+".")
		case len(said) < 2: // that nothing is disputed need not be said
			said = append(said, side.verb+"nothing.")
		}
	}
	return strings.Join(said, " ")
}

// Title names the object as the first of its pages does.
func (o *Object) Title() string { return o.References[0].Title }

// Words says when the object is dated, and as what that is counted where it is
// widened or where the page cannot tell: "about 1785, counted as 1780 to 1790".
func (o *Object) Words() string {
	switch {
	case o.Date.IsZero():
		return "without a date"
	case o.Date.Earliest == o.Span.Earliest && o.Date.Latest == o.Span.Latest:
		return o.Date.String()
	}
	return o.Date.String() + ", counted as " + Years(o.Span)
}

// Years says in years what a date covers: "1780 to 1790", "1786", "up to 1789",
// "1784 or later", "any year". It is empty for no date.
func Years(d edtf.Date) string {
	switch {
	case d.IsZero():
		return ""
	case d.OpenStart && d.OpenEnd:
		return "any year"
	case d.OpenStart:
		return "up to " + year(d.Latest)
	case d.OpenEnd:
		return year(d.Earliest) + " or later"
	}
	first, last := year(d.Earliest), year(d.Latest)
	if first == last {
		return first
	}
	return first + " to " + last
}

func year(d edtf.Day) string {
	y, _, _ := d.Date()
	if y <= 0 {
		return strconv.Itoa(1-y) + " BC"
	}
	return strconv.Itoa(y)
}

// Extent returns a date's ends in years and parts of a year, for drawing: the year
// 1786 is from 1786 to 1787. An open end is 0.
func Extent(d edtf.Date) (from, to float64) {
	if !d.IsZero() && !d.OpenStart {
		from = inYears(d.Earliest)
	}
	if !d.IsZero() && !d.OpenEnd {
		to = inYears(d.Latest + 1)
	}
	return from, to
}

// inYears returns the beginning of a day in years.
func inYears(d edtf.Day) float64 {
	y, _, _ := d.Date()
	first, next := edtf.DayOf(y, 1, 1), edtf.DayOf(y+1, 1, 1)
	return float64(y) + float64(d-first)/float64(next-first)
}
