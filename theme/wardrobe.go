package theme

import "slices"

// A WardrobeGroup is the garments that have the same answer.
type WardrobeGroup struct {
	Anchor   string
	Title    string
	Garments []Garment
}

// A Garment is one garment against one body, today and on the day it was made.
type Garment struct {
	Today Answer
	Made  *Answer // nil where that is not known
}

// waiting is the mark of a garment that cannot be worn as it stands.
const waiting = "waiting"

// answers are the marks of verdicts with what they mean to somebody who wants to
// get dressed, what can be worn first.
var answers = [...]struct{ mark, title string }{
	{"fits", "Can be worn"},
	{"ample", "Can be worn, and is ample"},
	{"close", "Too close to call: try it on"},
	{"short", "Wants room first"},
	{"unknown", "Not known"},
	{waiting, "Not ready to wear"},
}

// Groups returns the wearer's own garments by what the answer is. One whose
// verdict has no mark, or another, is with those of which nothing is known.
func (w Wardrobe) Groups() []WardrobeGroup {
	var groups []WardrobeGroup
	for _, answer := range answers {
		group := WardrobeGroup{Anchor: answer.mark, Title: answer.title}
		for _, own := range w.Own {
			if own.mark() == answer.mark {
				group.Garments = append(group.Garments, Garment{own, find(w.Made, own)})
			}
		}
		if len(group.Garments) > 0 {
			groups = append(groups, group)
		}
	}
	return groups
}

// Alone returns what is said of the day garments were made without a word on how
// they fit today.
func (w Wardrobe) Alone() []Answer {
	var alone []Answer
	for _, made := range w.Made {
		if find(w.Own, made) == nil {
			alone = append(alone, made)
		}
	}
	return alone
}

// mark returns the mark of the group that a garment belongs to.
func (a Answer) mark() string {
	if a.Waits {
		return waiting
	}
	for _, answer := range answers {
		if answer.mark == a.Verdict.Mark {
			return answer.mark
		}
	}
	return "unknown"
}

// find returns the answer about the same build, nil where there is none.
func find(among []Answer, as Answer) *Answer {
	i := slices.IndexFunc(among, func(a Answer) bool {
		return a.Build.Href == as.Build.Href && a.Build.Text == as.Build.Text
	})
	if i < 0 {
		return nil
	}
	return &among[i]
}
