package effort

import (
	"fmt"
	"strings"
	"time"

	"hussif/content/quantity"
)

// HoursWords says what was done of what was planned: "26 h of 60 h planned, 34 h
// left", "31 h 45 min of 45 h planned, and 9 h 15 min since".
func (w Work) HoursWords() string {
	words := quantity.FormatDuration(w.Made)
	if w.Planned > 0 {
		words += " of " + quantity.FormatDuration(w.Planned) + " planned"
	}
	switch {
	case w.Since > 0:
		words += ", and " + quantity.FormatDuration(w.Since) + " since"
	case w.done() || w.Planned == 0:
	case w.Rest > 0:
		words += ", " + quantity.FormatDuration(w.Rest) + " left"
	default:
		words += ", none left"
	}
	return words
}

// PaceWords says the pace and what it rests on.
func (w Work) PaceWords() string {
	if w.Pace == 0 {
		return "no pace yet: no hours in the last 28 days"
	}
	return fmt.Sprintf("%s a week: %s in the last 28 days", quantity.FormatDuration(w.Pace), quantity.FormatDuration(w.Pace*paceDays/7))
}

// Words says how many hours are still to come, and by what: "22 h 21 min to 30 h 38 min
// more: 4 past builds of all kinds took 0.71 to 1.00 of what was planned, the middle half
// of them 0.81 to 0.94". It is empty for the zero Forecast.
func (f Forecast) Words() string {
	if f.Ratios.Median == 0 {
		return ""
	}
	hours := spread(f.Least, f.Most) + " more"
	past := f.Ratios.Of
	if len(past) == 0 {
		return hours + ": as planned, for no finished build can tell how long things take"
	}
	kind := "all kinds"
	if f.Ratios.Kind != "" {
		kind = "the kind " + f.Ratios.Kind
	}
	if len(past) == 1 {
		return fmt.Sprintf("%s: the only past build, of %s, took %.2f of what was planned", hours, kind, past[0].Ratio)
	}
	return fmt.Sprintf("%s: %d past builds of %s took %.2f to %.2f of what was planned, the middle half of them %.2f to %.2f",
		hours, len(past), kind, past[0].Ratio, past[len(past)-1].Ratio, f.Ratios.Lower, f.Ratios.Upper)
}

func spread(least, most time.Duration) string {
	first, last := quantity.FormatDuration(least), quantity.FormatDuration(most)
	if first == last {
		return last
	}
	return first + " to " + last
}

// OutlookWords says whether a build will be ready for its next occasion, and when: "in
// time for 2027-04-24: ready 2027-01-14 to 2027-02-01". It is empty once finished.
func (w Work) OutlookWords() string {
	o := w.Outlook
	ready := fmt.Sprintf("ready %s to %s", o.First, o.Last)
	if o.First == o.Last {
		ready = fmt.Sprintf("ready about %s", o.Last)
	}
	switch o.Verdict {
	case InTime:
		return fmt.Sprintf("in time for %s: %s", w.Next.Day, ready)
	case Tight:
		return fmt.Sprintf("tight for %s: %s%s", w.Next.Day, ready, w.needed())
	case Late:
		return fmt.Sprintf("late by %s for %s: %s%s", days(o.LateBy), w.Next.Day, ready, w.needed())
	case NoPace:
		return fmt.Sprintf("no pace yet for %s%s", w.Next.Day, w.needed())
	case NoPlan:
		return fmt.Sprintf("no hours are planned, so nothing can be said for %s", w.Next.Day)
	case PlanUsedUp:
		return fmt.Sprintf("the planned hours are used up, so nothing can be said for %s", w.Next.Day)
	case Passed:
		return fmt.Sprintf("its occasion of %s is over", w.Next.Day)
	case NoOccasion:
		if o.Last == 0 {
			return "for no occasion"
		}
		return "for no occasion: " + ready
	}
	return ""
}

// needed says the pace it takes.
func (w Work) needed() string {
	if w.Outlook.Needed == 0 {
		return ""
	}
	return fmt.Sprintf("; it takes %s a week", quantity.FormatDuration(w.Outlook.Needed))
}

func days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// Words says what a build cost: "55.20 GBP of 90.00 GBP planned, and 14.00 GBP since".
func (c Cost) Words() string {
	words := sum(c.Made)
	if c.Unpriced > 0 {
		words = "at least " + words
	}
	if c.Planned != (quantity.Money{}) {
		words += " of " + c.Planned.String() + " planned"
	}
	if len(c.Since) > 0 {
		words += ", and " + sum(c.Since) + " since"
	}
	if c.Unpriced > 0 {
		words += fmt.Sprintf("; %d bought without a cost", c.Unpriced)
	}
	return words
}

func sum(amounts []quantity.Money) string {
	if len(amounts) == 0 {
		return "nothing"
	}
	var said []string
	for _, m := range amounts {
		said = append(said, m.String())
	}
	return strings.Join(said, " and ")
}

// WearingWords says what each wearing came to: "worn twice, at 20 h 30 min and 34.60 GBP
// each time".
func (w Work) WearingWords() string {
	each := quantity.FormatDuration(w.HoursPerWearing())
	if len(w.Cost.All) > 0 {
		each += " and " + sum(w.CostPerWearing())
	}
	switch w.Wearings {
	case 0:
		return "not worn yet, as far as the journal tells"
	case 1:
		return "worn once, at " + each
	case 2:
		return "worn twice, at " + each + " each time"
	}
	return fmt.Sprintf("worn %d times, at %s each time", w.Wearings, each)
}
