package wardrobe

import (
	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// stateOn returns where a build stands on a day. See the package comment.
func stateOn(b *journal.Build, day edtf.Day) journal.State {
	finish, finished := fit.FirstFinish(b)
	var first, last edtf.Day
	for _, n := range b.Notes {
		if n.Date != 0 && first == 0 {
			first = n.Date
		}
		last = max(last, n.Date)
	}
	switch {
	case first > day:
		return journal.StatePlanned
	case finished && finish > day:
		return journal.StateUnderWay
	case finished && day < last:
		return journal.StateFinished
	case b.State != "":
		return b.State
	case finished:
		return journal.StateFinished
	case first != 0:
		return journal.StateUnderWay
	}
	return journal.StatePlanned
}

// rank orders states by how soon a garment can be worn.
func rank(s journal.State) int {
	switch s {
	case journal.StateFinished:
		return 0
	case journal.StateUnderWay:
		return 1
	case journal.StatePlanned:
		return 2
	case journal.StateRepair:
		return 3
	case journal.StateApart:
		return 4
	}
	return 5
}
