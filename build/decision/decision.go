// Package decision answers why a garment was made as it was, and whether that
// proved right: it gathers every decision of a journal, from front matter and text
// alike, with what later notes say of how it turned out.
//
// A decision is about the garment, wearer and patterns of the build that its page
// is or belongs to, and about the techniques that its page names, or else those of
// the build. One in the text may name others in brackets after it, and these count
// then. Links that lead nowhere are left out here and reported by the checker.
//
// What stands in a private remark is not gathered.
package decision

import (
	"cmp"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/prose"
)

// A Decision is a question that was settled, and why.
type Decision struct {
	Question  string // empty where only the choice was written
	Chose     string // empty where only the question was
	InsteadOf []string
	Because   string
	RestsOn   []journal.Ref

	From   journal.ID // the record it is written in
	Anchor string     // of its place there, such as "decided-keep-cuffs"
	Day    edtf.Day   // of the note or occasion; 0 where written in any other record
	Build  journal.ID // that the record is, or belongs to; may be empty

	Garments   []string     // kinds of garment in lower case
	Wearers    []journal.ID // of the build, or as named behind it
	Patterns   []journal.ID
	Techniques []journal.ID
	Others     []journal.ID // other records that it is written about

	Outcomes []Outcome // what was said of it since, newest first
}

// An Outcome is how a decision turned out, as a later note has it.
type Outcome struct {
	How     journal.Verdict
	Because string
	From    journal.ID
	Day     edtf.Day
}

// Outcome returns how a decision turned out by the newest word on it, and false
// where nothing has been said.
func (d Decision) Outcome() (Outcome, bool) {
	if len(d.Outcomes) == 0 {
		return Outcome{}, false
	}
	return d.Outcomes[0], true
}

// A List is all the decisions of a journal.
type List struct {
	All    []Decision // newest first, those without a day last
	titles map[journal.ID]string

	bearing map[journal.ID][]int // places in All
}

// Gather returns every decision of a journal. The same journal gives the same
// list: those of one day go by the ID of their record and then as written, front
// matter before text. It is worked out once for a journal.
func Gather(j *journal.Journal) List {
	return journal.Known(j, gathered{}, func() List { return gather(j.Traced(nil)) })
}

type gathered struct{} // the key of the list

func gather(j *journal.Journal) List {
	list := List{titles: make(map[journal.ID]string)}
	for _, r := range j.Records() {
		page := r.Head()
		list.titles[page.ID] = page.Title
		if note, ok := r.(*journal.Note); ok {
			for _, c := range note.Decided {
				d := Decision{
					Question: c.Question, Chose: c.Chose, InsteadOf: c.InsteadOf, Because: c.Because,
					RestsOn: c.RestsOn, Anchor: c.Anchor,
				}
				d.belong(j, r)
				list.All = append(list.All, d)
			}
		}
		for _, remark := range page.Text.Remarks {
			if remark.Kind != prose.Decided || remark.Private {
				continue
			}
			d := Decision{Chose: remark.Text, Anchor: remark.Anchor}
			d.readTail(j, remark.About)
			d.belong(j, r)
			list.All = append(list.All, d)
		}
	}
	slices.SortStableFunc(list.All, func(a, b Decision) int { return newestFirst(a.Day, b.Day) })
	list.turnOut(j)
	list.index(j)
	return list
}

// newestFirst keeps what has no day for last: a day of 0 is older than all.
func newestFirst(a, b edtf.Day) int {
	if (a == 0) != (b == 0) {
		if a == 0 {
			return 1
		}
		return -1
	}
	return cmp.Compare(b, a)
}

// turnOut hands the decisions what later notes say of them.
func (l *List) turnOut(j *journal.Journal) {
	type part struct {
		in     journal.ID
		anchor string
	}
	places := make(map[part]int)
	for at, d := range l.All {
		places[part{d.From, d.Anchor}] = at
	}
	for _, n := range slices.Backward(j.Notes()) {
		for _, o := range slices.Backward(n.TurnedOut) {
			r, ok := j.Find(o.Decision.To)
			if !ok {
				continue
			}
			anchor, _ := journal.Anchor(r, o.Decision.Anchor)
			if at, ok := places[part{r.Head().ID, anchor}]; ok {
				d := &l.All[at]
				d.Outcomes = append(d.Outcomes, Outcome{How: o.How, Because: o.Because, From: n.ID, Day: n.Date})
			}
		}
	}
}
