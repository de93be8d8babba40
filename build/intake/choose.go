package intake

import (
	"cmp"
	"fmt"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
)

// choose returns the build that was worked on about a day, and why it is that one:
// the build with the nearest note, a note before the day being nearer than one as
// many days after it. Where that is the same for several the next nearest notes
// tell, and at last the builds' names. There is none where no build has a note,
// unless the journal has only one build.
func choose(j *journal.Journal, day edtf.Day) (*journal.Build, string) {
	var builds []candidate
	for _, b := range j.Builds() {
		builds = append(builds, candidateOf(j, b, day))
	}
	slices.SortStableFunc(builds, candidate.compare)
	switch {
	case len(builds) == 1:
		return builds[0].build, "the only build"
	case len(builds) == 0 || len(builds[0].far) == 0:
		return nil, ""
	}
	first := builds[0]
	others := 0
	for _, b := range builds[1:] {
		if len(b.far) > 0 && b.far[0] == first.far[0] {
			others++
		}
	}
	why := fmt.Sprintf("its note of %s is the nearest", first.nearest)
	if first.far[0] == 0 {
		why = "it has a note of that day"
	}
	switch {
	case others == 1:
		why += ", as has one more build"
	case others > 1:
		why += fmt.Sprintf(", as have %d more builds", others)
	}
	return first.build, why
}

// A candidate is a build with how far its notes are from a day, nearest first.
type candidate struct {
	build   *journal.Build
	far     []int
	nearest edtf.Day
}

func candidateOf(j *journal.Journal, b *journal.Build, day edtf.Day) candidate {
	c := candidate{build: b}
	for _, n := range b.Notes {
		if j.Faulty(n) {
			continue // its date may not have been read
		}
		far := 2 * int(day-n.Date)
		if far < 0 {
			far = 1 - far
		}
		if len(c.far) == 0 || far < slices.Min(c.far) {
			c.nearest = n.Date
		}
		c.far = append(c.far, far)
	}
	slices.Sort(c.far)
	return c
}

func (c candidate) compare(d candidate) int {
	for i := range min(len(c.far), len(d.far)) {
		if order := cmp.Compare(c.far[i], d.far[i]); order != 0 {
			return order
		}
	}
	return cmp.Or(cmp.Compare(len(d.far), len(c.far)), cmp.Compare(c.build.ID, d.build.ID))
}
