// Package lesson answers what was to be done differently next time: it gathers
// every next-time note of a journal, from front matter and text alike, and finds
// those that bear on a pattern, a technique, a kind of garment, a person or a
// material before the next one is begun.
//
// What a lesson is about is what its maker wrote. Where she wrote of no pattern,
// garment or person, those of the build count that the note belongs to; where of
// no technique, those that the note names. What a page of a pattern, technique,
// material or person says is about that one. Links that lead nowhere are left
// out here and reported by the checker.
//
// What stands in a private remark is not gathered: it stays where it was written.
//
// A lesson stands open until some work carries it. A build that carries one
// answers it for all it shares with others: a lesson about a pattern that one
// build from it has carried is answered for the next build from it, and likewise
// for a technique, and for the garments of one line of remakes. For a build that
// comes to the lesson by another way it still stands open. A note that belongs to
// no build, as of a correction on the paper, answers for all. To set a lesson
// aside answers it for the one build that does, and for no other: its reason may
// not hold there. Where a build says both, its latest note has the last word, and
// on one day what is carried counts.
package lesson

import (
	"cmp"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/prose"
)

// A Lesson is one thing to do another time.
type Lesson struct {
	Text   string
	From   journal.ID // the record it is written in
	Anchor string     // of its place there, such as "next-cut-sleeve-wider"
	Day    edtf.Day   // of the note or occasion; 0 where written in any other record
	Build  journal.ID // that the record is, or belongs to; may be empty

	Patterns   []journal.ID
	Techniques []journal.ID
	Materials  []journal.ID
	People     []journal.ID
	Garments   []string     // kinds of garment in lower case
	Others     []journal.ID // builds, notes, references and occasions it is written about

	Answers []Answer // one for each build that answers it, oldest first
}

// A part is the place of a lesson on a page.
type part struct {
	in     journal.ID
	anchor string
}

// A List is all the lessons of a journal.
type List struct {
	All    []Lesson // newest first, those without a day last
	titles map[journal.ID]string

	from, bearing map[journal.ID][]int // places in All
	works         map[journal.ID]*work // by build
}

// Gather returns every next-time note of a journal. The same journal gives the
// same list: those of one day go by the ID of their record and then as written,
// front matter before text. It is worked out once for a journal.
func Gather(j *journal.Journal) List {
	return journal.Known(j, gathered{}, func() List { return gather(j.Traced(nil)) })
}

type gathered struct{} // the key of the list

func gather(j *journal.Journal) List {
	records := j.Records()
	list := List{titles: make(map[journal.ID]string, len(records))}
	var all []*Lesson // which take less moving about than the lessons themselves
	for _, r := range records {
		page := r.Head()
		list.titles[page.ID] = page.Title
		for i := range page.Next {
			next := &page.Next[i]
			l := begin(r, next.Do, next.Anchor)
			l.readFields(j, next)
			l.inherit(j, r)
			all = append(all, &l)
		}
		for _, remark := range page.Text.Remarks {
			if remark.Kind != prose.NextTime || remark.Private {
				continue
			}
			l := begin(r, remark.Text, remark.Anchor)
			l.readTail(j, remark.About)
			l.inherit(j, r)
			all = append(all, &l)
		}
	}
	slices.SortStableFunc(all, newestFirst)
	list.All = make([]Lesson, len(all))
	for i, l := range all {
		list.All[i] = *l
	}
	list.index()
	list.works = worksOf(j)
	list.answer(j)
	return list
}

// newestFirst keeps those without a day for last.
func newestFirst(a, b *Lesson) int {
	switch {
	case a.Day == b.Day:
		return 0
	case a.Day == 0:
		return 1
	case b.Day == 0:
		return -1
	}
	return cmp.Compare(b.Day, a.Day)
}

func begin(r journal.Record, text, anchor string) Lesson {
	l := Lesson{Text: text, Anchor: anchor, From: r.Head().ID}
	switch r := r.(type) {
	case *journal.Note:
		l.Day = r.Date
		if r.Of != nil {
			l.Build = r.Of.ID
		}
	case *journal.Build:
		l.Build = r.ID
	case *journal.Occasion:
		l.Day = r.Date
	}
	return l
}
