package effort

import (
	"math"
	"time"

	"hussif/content/edtf"
)

// An Outlook is when a build will be ready, and whether that is in time.
type Outlook struct {
	Verdict   Verdict
	AsPlanned edtf.Day // by the planned hours that are left; 0 where there is no pace
	// By the lower quartile, median and upper quartile of what past builds took; 0
	// where there is no pace.
	First, Middle, Last edtf.Day
	LateBy              int           // days, of Middle after the occasion; of Late only
	Needed              time.Duration // a week to be ready by the middle forecast; 0 where no occasion is to come
}

// A Verdict compares the outlook with the next occasion. Zero is that of a build that
// is finished or waits for repair, whose plan is over.
type Verdict int

// The verdicts.
const (
	InTime     Verdict = iota + 1
	Tight              // the occasion lies within the forecast
	Late               // even the first day of the forecast comes after it
	NoPace             // nothing was done in the last 28 days
	NoPlan             // no hours are planned
	PlanUsedUp         // logged more than past builds would have taken; what is left cannot be told
	NoOccasion         // it is for none
	Passed             // all that it is for are over
)

// look works out the outlook of a build.
func (w *Work) look() Outlook {
	var o Outlook
	if w.done() {
		return o
	}
	coming := w.Next.Occasion != "" && !w.Next.Passed
	if days := int64(w.Next.Day - w.Day); coming && days > 0 {
		o.Needed = time.Duration(float64(w.Forecast.Middle) * 7 / float64(days))
	}
	usedUp := w.Planned > 0 && w.Forecast.Most == 0
	if w.Planned > 0 && w.Pace > 0 && !usedUp {
		o.AsPlanned = w.readyAfter(w.Rest)
		o.First, o.Middle, o.Last = w.readyAfter(w.Forecast.Least), w.readyAfter(w.Forecast.Middle), w.readyAfter(w.Forecast.Most)
	}
	switch {
	case w.Next.Occasion == "":
		o.Verdict = NoOccasion
	case w.Next.Passed:
		o.Verdict = Passed
	case w.Planned == 0:
		o.Verdict = NoPlan
	case usedUp:
		o.Verdict = PlanUsedUp
	case w.Pace == 0:
		o.Verdict = NoPace
	case o.Last <= w.Next.Day:
		o.Verdict = InTime
	case o.First <= w.Next.Day:
		o.Verdict = Tight
	default:
		o.Verdict = Late
		o.LateBy = int(o.Middle - w.Next.Day)
	}
	return o
}

// readyAfter returns the day on which so many more hours are done at the present
// pace, a hundred years on at the latest.
func (w *Work) readyAfter(rest time.Duration) edtf.Day {
	const furthest = 100 * 365
	return w.Day + edtf.Day(math.Min(float64(rest)*7/float64(w.Pace), furthest))
}
