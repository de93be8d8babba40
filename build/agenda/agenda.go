package agenda

import (
	"cmp"
	"slices"

	"hussif/build/effort"
	"hussif/build/stock"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// An Agenda is the builds that are planned, under way and waiting for repair.
type Agenda struct {
	Day   edtf.Day
	Tasks []Task // the next occasion first, then those for none; of equals, the one worked on last
}

// A Task is a build that has something to be done to it.
type Task struct {
	Build   journal.ID
	State   journal.State
	Work    effort.Work // with its next occasion, and whether it will be in time
	Holds   []Hold      // none where nothing is known to hold it up
	Stopped Stopped
}

// Of returns what is to be done, as of the day of a book of hours.
func Of(j *journal.Journal, s stock.Stash, book effort.Book) Agenda {
	a := Agenda{Day: book.Day}
	var open, making []*journal.Build
	for _, b := range j.Builds() {
		switch book.Of(b.ID).State {
		case journal.StatePlanned, journal.StateUnderWay, journal.StateRepair:
			open = append(open, b)
		}
	}
	slices.SortStableFunc(open, func(x, y *journal.Build) int {
		return cmp.Or(byOccasion(book.Of(x.ID).Next, book.Of(y.ID).Next), cmp.Compare(lastWorked(y, a.Day), lastWorked(x, a.Day)))
	})
	for _, b := range open {
		if book.Of(b.ID).State != journal.StateRepair {
			making = append(making, b)
		}
	}
	allotment := stock.Allot(j, s, making)
	for _, b := range open {
		w := book.Of(b.ID)
		a.Tasks = append(a.Tasks, Task{
			Build: b.ID, State: w.State, Work: w, Holds: holds(j, b, w, allotment.Of(b.ID)), Stopped: stopped(j, b, a.Day),
		})
	}
	return a
}

// byOccasion puts what is for an occasion to come before what is not.
func byOccasion(a, b effort.Next) int {
	coming := func(n effort.Next) bool { return n.Occasion != "" && !n.Passed }
	switch {
	case coming(a) && coming(b):
		return cmp.Compare(a.Day, b.Day)
	case coming(a):
		return -1
	case coming(b):
		return 1
	}
	return 0
}

// lastWorked returns the day of a build's last note, or 0.
func lastWorked(b *journal.Build, day edtf.Day) edtf.Day {
	if n := lastNote(b, day); n != nil {
		return n.Date
	}
	return 0
}
