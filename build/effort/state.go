package effort

import (
	"hussif/content/edtf"
	"hussif/content/journal"
)

// State returns where a build stands on a day: as its page says, or else finished
// where a note finishes it or tells of its being worn, under way where there is any
// dated note, and planned.
func State(b *journal.Build, day edtf.Day) journal.State {
	if b.State != "" {
		return b.State
	}
	if b.Finished != 0 && b.Finished <= day {
		return journal.StateFinished
	}
	state := journal.StatePlanned
	for _, n := range b.Notes {
		if n.Date == 0 || n.Date > day {
			continue
		}
		if b.Finished == 0 && (n.Stage == "finishing" || n.Stage == "worn") {
			return journal.StateFinished
		}
		state = journal.StateUnderWay
	}
	return state
}

// firstFinish returns the last day of the making of a garment that is finished, or 0
// where nobody knows.
func firstFinish(b *journal.Build, day edtf.Day) edtf.Day {
	if b.Finished != 0 {
		return b.Finished
	}
	var finished, last edtf.Day
	for _, n := range b.Notes {
		if n.Date == 0 || n.Date > day {
			continue
		}
		switch {
		case n.Stage == "finishing":
			finished = n.Date
		case finished != 0:
			return finished
		case n.Stage == "worn":
			return n.Date - 1
		}
		last = n.Date
	}
	if finished != 0 {
		return finished
	}
	return last
}
