package almanac

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	ics "github.com/arran4/golang-ical"

	"hussif/content/edtf"
	"hussif/content/journal"
)

// longestLine is how many octets a line of a calendar may have before its end
// (RFC 5545, 3.1).
const longestLine = 75

// A Ready is a forecast of the day on which a build can be worn.
type Ready struct {
	Build                    journal.ID
	Reckoned                 edtf.Day // when the forecast was made
	Earliest, Likely, Latest edtf.Day
}

// Calendar returns an iCalendar with an all-day event for each occasion, in the
// order of their days, and one for each forecast, in the order given, on its likely
// day. What has no day, or none with a year of four digits, is left out. A forecast
// of a build that the journal does not have is an error, and so are days that run
// backwards or a base address that is none.
func Calendar(j *journal.Journal, ready []Ready, at Pages) ([]byte, error) {
	base, err := at.base()
	if err != nil {
		return nil, err
	}
	cal := ics.NewCalendar()
	cal.SetProductId("-//hussif//almanac//EN")
	cal.SetName(clean(titleOf(j)))
	link := func(e *ics.VEvent, id journal.ID) {
		if base != nil {
			e.SetURL(base.ResolveReference(relative(at.Path(id))).String())
		}
	}
	written := lastWritten(j)
	for _, o := range j.Occasions() {
		if writable(o.Date) {
			e := cal.AddEvent(nameOf(j, "occasion", o.ID).String())
			e.SetDtStampTime(start(cmp.Or(written, o.Date)))
			describe(e, j, o)
			link(e, o.ID)
		}
	}
	for _, r := range ready {
		b := j.Build(journal.Ref{To: string(r.Build)})
		if b == nil {
			return nil, fmt.Errorf("a forecast is for %q, which is no build of the journal", r.Build)
		}
		if r.Earliest > r.Likely || r.Likely > r.Latest {
			return nil, fmt.Errorf("the forecast for %q runs backwards: %s, %s, %s", r.Build, r.Earliest, r.Likely, r.Latest)
		}
		if writable(r.Likely) && writable(r.Reckoned) {
			e := cal.AddEvent(nameOf(j, "ready", b.ID).String())
			foretell(e, b, r)
			link(e, b.ID)
		}
	}
	var out bytes.Buffer
	if err := cal.SerializeTo(&out, ics.WithLineLength(longestLine), ics.WithNewLineWindows); err != nil {
		return nil, fmt.Errorf("writing the calendar: %w", err)
	}
	return out.Bytes(), nil
}

// describe fills in the event of an occasion.
func describe(e *ics.VEvent, j *journal.Journal, o *journal.Occasion) {
	last := o.Date
	if o.Until > last && writable(o.Until) {
		last = o.Until
	}
	allDay(e, o.Date, last)
	e.SetSummary(clean(o.Title))
	if o.Place != "" {
		e.SetLocation(clean(o.Place))
	}
	var lines []string
	say := func(what, words string) {
		if words != "" {
			lines = append(lines, what+words)
		}
	}
	say("", j.Titled(o.Text.Opening))
	say("Portrays: ", o.Portrays.String())
	worn, planned := dressed(j, o)
	say("Worn: ", strings.Join(worn, ", "))
	say("Meant for it: ", strings.Join(planned, ", "))
	if len(lines) > 0 {
		e.SetDescription(clean(strings.Join(lines, "\n")))
	}
}

// foretell fills in the event of a forecast, which keeps no day busy.
func foretell(e *ics.VEvent, b *journal.Build, r Ready) {
	e.SetDtStampTime(start(r.Reckoned))
	allDay(e, r.Likely, r.Likely)
	e.SetSummary(clean(b.Title + " ready (forecast)"))
	words := "Reckoned on " + r.Reckoned.String()
	if r.Earliest < r.Latest {
		words = fmt.Sprintf("Between %s and %s, as reckoned on %s", r.Earliest, r.Latest, r.Reckoned)
	}
	e.SetDescription(words)
	e.SetStatus(ics.ObjectStatusTentative)
	e.SetTimeTransparency(ics.TransparencyTransparent)
}

// allDay sets the days of an event. The end is the day after the last
// (RFC 5545, 3.6.1).
func allDay(e *ics.VEvent, first, last edtf.Day) {
	e.SetAllDayStartAt(start(first))
	e.SetAllDayEndAt(start(last + 1))
}

// lastWritten returns the day of the newest note, or 0.
func lastWritten(j *journal.Journal) edtf.Day {
	if dated := datedNotes(j); len(dated) > 0 {
		return dated[len(dated)-1].Date
	}
	return 0
}

// dressed returns the titles of the builds that an occasion says were worn, and of
// others that are meant for it.
func dressed(j *journal.Journal, o *journal.Occasion) (worn, planned []string) {
	listed := make(map[*journal.Build]bool)
	for _, ref := range o.Worn {
		if b := j.Build(ref); b != nil && !listed[b] {
			listed[b] = true
			worn = append(worn, b.Title)
		}
	}
	for _, b := range j.Builds() {
		meant := slices.ContainsFunc(b.Occasion, func(ref journal.Ref) bool { return j.Occasion(ref) == o })
		if meant && !listed[b] {
			planned = append(planned, b.Title)
		}
	}
	return worn, planned
}

// clean makes text that a calendar can hold: no control characters but line breaks
// and tabs (RFC 5545, 3.1 and 3.3.11), and U+FFFD for what is no UTF-8. The library
// escapes the rest.
func clean(s string) string {
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(s)
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\n' && r != '\t' {
			return -1
		}
		return r
	}, s)
}
