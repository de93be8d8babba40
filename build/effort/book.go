package effort

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// A Book is the hours and costs of all builds of a journal as of one day.
type Book struct {
	Day   edtf.Day
	works []Work
	byID  map[journal.ID]int
}

// A Work is what one build took and has still to take.
type Work struct {
	Build    journal.ID
	Day      edtf.Day // as of which all this is
	State    journal.State
	Finished edtf.Day      // first; 0 where it is not finished, or nobody knows when
	Planned  time.Duration // 0 where no hours are planned
	Stages   []StageHours  // in the order of the work, hours without a stage last
	Made     time.Duration // to its first finish, or until now
	Since    time.Duration // after it
	Rest     time.Duration // of what was planned; 0 once finished
	Pace     time.Duration // a week; 0 where nothing was done in the last 28 days
	Forecast Forecast      // zero where finished or not planned
	Next     Next
	Outlook  Outlook
	Cost     Cost
	Wearings int
}

// A StageHours is the hours of one stage.
type StageHours struct {
	Stage journal.Stage // empty where the notes do not say
	Made  time.Duration
	Since time.Duration // after the first finish
}

// Gather works out the hours and costs of all builds as of a day.
func Gather(j *journal.Journal, day edtf.Day) Book {
	book := Book{day, make([]Work, 0, len(j.Builds())), make(map[journal.ID]int, len(j.Builds()))}
	worn := wearings(j, day)
	var past []Past
	for i, b := range j.Builds() {
		w := logged(b, day)
		w.Cost = costs(b, day, w.Finished)
		w.Wearings = worn[b.ID]
		w.Next = nextOccasion(j, b, day)
		if w.done() && w.Planned > 0 && w.Made > 0 {
			past = append(past, Past{b.ID, kindOf(b), float64(w.Made) / float64(w.Planned)})
		}
		book.works = append(book.works, w)
		book.byID[b.ID] = i
	}
	ratios := pastRatios(past)
	for i, b := range j.Builds() {
		w := &book.works[i]
		if !w.done() && w.Planned > 0 {
			w.Rest = max(w.Planned-w.Made, 0)
			w.Forecast = forecast(w, ratios.of(kindOf(b)))
		}
		w.Outlook = w.look()
	}
	return book
}

// Of returns what a build took and has still to take.
func (b Book) Of(build journal.ID) Work {
	if i, ok := b.byID[build]; ok {
		return b.works[i]
	}
	return Work{Build: build, Day: b.Day}
}

// Late returns the builds that cannot be ready for their next occasion at the present
// pace, in the order of the journal.
func (b Book) Late() []Work {
	return slices.DeleteFunc(slices.Clone(b.works), func(w Work) bool { return w.Outlook.Verdict != Late })
}

// kindOf returns the kind of garment a build is, "" where none is named.
func kindOf(b *journal.Build) string {
	return strings.Join(strings.Fields(strings.ToLower(b.Garment)), " ")
}

// done reports whether the making is over.
func (w *Work) done() bool {
	return w.State != journal.StatePlanned && w.State != journal.StateUnderWay
}

// logged sums the hours of a build's notes.
func logged(b *journal.Build, day edtf.Day) Work {
	w := Work{Build: b.ID, Day: day, State: State(b, day), Planned: b.Planned.Hours}
	if w.done() {
		w.Finished = firstFinish(b, day)
	}
	var recent time.Duration
	for _, n := range b.Notes {
		if n.Date > day || n.Hours == 0 {
			continue
		}
		s := w.stage(n.Stage)
		work := n.Hours
		if n.Stage == "worn" {
			work = 0
		}
		if w.Finished != 0 && n.Date > w.Finished {
			s.Since += n.Hours
			w.Since += work
		} else {
			s.Made += n.Hours
			w.Made += work
		}
		if n.Date != 0 && n.Date > day-paceDays {
			recent += work
		}
	}
	w.Pace = recent * 7 / paceDays
	slices.SortStableFunc(w.Stages, func(a, b StageHours) int { return cmp.Compare(rank(a.Stage), rank(b.Stage)) })
	return w
}

// paceDays is how many days the pace is taken from.
const paceDays = 28

func (w *Work) stage(s journal.Stage) *StageHours {
	at := slices.IndexFunc(w.Stages, func(h StageHours) bool { return h.Stage == s })
	if at < 0 {
		at = len(w.Stages)
		w.Stages = append(w.Stages, StageHours{Stage: s})
	}
	return &w.Stages[at]
}

func rank(s journal.Stage) int {
	if at := slices.Index(journal.Stages, s); at >= 0 {
		return at
	}
	return len(journal.Stages)
}

// Next is the next occasion that a build is for.
type Next struct {
	Occasion journal.ID // empty where there is none
	Day      edtf.Day   // on which it begins
	Passed   bool       // it is the last one, for none is to come
}

// nextOccasion returns the first occasion of a build that is not over, or else the
// last that is.
func nextOccasion(j *journal.Journal, b *journal.Build, day edtf.Day) Next {
	var next, last Next
	for _, ref := range b.Occasion {
		o := j.Occasion(ref)
		switch {
		case o == nil || o.Date == 0:
		case max(o.Date, o.Until) < day:
			if last.Occasion == "" || o.Date > last.Day {
				last = Next{o.ID, o.Date, true}
			}
		case next.Occasion == "" || o.Date < next.Day:
			next = Next{Occasion: o.ID, Day: o.Date}
		}
	}
	if next.Occasion == "" {
		return last
	}
	return next
}

// sumInto adds money to the sum of its currency; it reports false where that is more
// than can be held.
func sumInto(sums *[]quantity.Money, m quantity.Money) bool {
	if m == (quantity.Money{}) {
		return true
	}
	at, found := slices.BinarySearchFunc(*sums, m.Currency, func(s quantity.Money, code string) int {
		return strings.Compare(s.Currency, code)
	})
	if !found {
		*sums = slices.Insert(*sums, at, quantity.Money{Currency: m.Currency})
	}
	total, err := (*sums)[at].Add(m)
	if err != nil {
		return false
	}
	(*sums)[at] = total
	return true
}
