package lesson

import (
	"slices"
	"sort"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
)

// A work is what a build shares with others: the ways by which lessons come to it.
type work struct {
	id         journal.ID
	begun      edtf.Day // of its first note that is not about planning; 0 where there is none
	line       []journal.ID
	patterns   []journal.ID
	techniques []journal.ID
	person     journal.ID
	garment    string
}

func worksOf(j *journal.Journal) map[journal.ID]*work {
	works := make(map[journal.ID]*work, len(j.Builds()))
	for _, b := range j.Builds() {
		w := &work{id: b.ID, begun: begun(b), line: line(j, b), garment: near.Folded(b.Garment)}
		if p := j.Person(b.For); p != nil {
			w.person = p.ID
		}
		for _, ref := range b.Pattern {
			if p := j.Pattern(ref); p != nil {
				w.patterns = append(w.patterns, p.ID)
			}
		}
		techniques := slices.Clone(b.Techniques)
		for _, n := range b.Notes {
			techniques = append(techniques, n.Techniques...)
		}
		for _, ref := range techniques {
			if t := j.Technique(ref); t != nil && !slices.Contains(w.techniques, t.ID) {
				w.techniques = append(w.techniques, t.ID)
			}
		}
		works[b.ID] = w
	}
	return works
}

// begun returns the day on which planning was over.
func begun(b *journal.Build) edtf.Day {
	for _, n := range b.Notes {
		if n.Date != 0 && n.Stage != "planning" {
			return n.Date
		}
	}
	return b.Finished
}

// line returns the builds that one was made anew from or made out of, and those
// that these came from.
func line(j *journal.Journal, b *journal.Build) []journal.ID {
	var out []journal.ID
	rest := []*journal.Build{b}
	for len(rest) > 0 {
		at := rest[0]
		rest = rest[1:]
		for _, ref := range []journal.Ref{at.Remakes, at.Reworks} {
			if from := j.Build(ref); from != nil && from != b && !slices.Contains(out, from.ID) {
				out = append(out, from.ID)
				rest = append(rest, from)
			}
		}
	}
	return out
}

// OpenFor returns the lessons that a build has still to answer, newest first:
// those about its patterns and techniques, and about the garments it was made
// from, that were written before it was begun, not in it, and answered neither by
// it nor for it. See the package comment. There may be thousands: no more than most
// come back, and how many there are.
func (l List) OpenFor(b *journal.Build, most int) ([]Lesson, int) {
	w := l.works[b.ID]
	if w == nil {
		return nil, 0
	}
	// The newest come first, and of a technique there are thousands: those that were
	// written too late are not looked at.
	early := 0
	if w.begun != 0 {
		early = sort.Search(len(l.All), func(at int) bool { return l.All[at].Day < w.begun })
	}
	marked := make([]bool, len(l.All)-early)
	for _, ids := range [][]journal.ID{w.line, w.patterns, w.techniques} {
		for _, id := range ids {
			places := l.bearing[id]
			first, _ := slices.BinarySearch(places, early)
			for _, at := range places[first:] {
				marked[at-early] = true
			}
		}
	}
	var open []int
	count := 0
	for i, is := range marked {
		if !is {
			continue
		}
		lesson := &l.All[early+i]
		if lesson.Build == b.ID || !l.before(lesson, w) || l.stateIn(lesson, w) != Open {
			continue
		}
		if count++; count <= most {
			open = append(open, early+i)
		}
	}
	return l.pick(open), count
}

// CountOpen returns how many of the lessons that bear on a record are open as its
// page sees them: see [List.StateFor].
func (l List) CountOpen(id journal.ID) int {
	n := 0
	for _, at := range l.bearing[id] {
		if l.stateFor(&l.All[at], id) == Open {
			n++
		}
	}
	return n
}

// before reports whether a lesson could be known when a build was begun.
func (l *List) before(lesson *Lesson, w *work) bool {
	if lesson.Day != 0 {
		return w.begun == 0 || lesson.Day < w.begun
	}
	from := l.works[lesson.Build]
	if from == nil || slices.Contains(w.line, from.id) {
		return true // on the page of the pattern or technique itself, or of what it was made from
	}
	return from.begun != 0 && (w.begun == 0 || from.begun < w.begun)
}

// stateIn returns what has become of a lesson for one build.
func (l *List) stateIn(lesson *Lesson, w *work) State {
	if a, ok := by(lesson.Answers, w.id); ok {
		return a.State
	}
	for _, a := range lesson.Answers {
		if a.State != Carried {
			continue
		}
		other := l.works[a.Build]
		if other == nil || shared(lesson.Patterns, w.patterns, other.patterns) || shared(lesson.Techniques, w.techniques, other.techniques) ||
			shared([]journal.ID{lesson.Build}, w.line, other.line) || shared(lesson.Others, w.line, other.line) {
			return Carried
		}
	}
	return Open
}

// shared reports whether three lists have an ID in common.
func shared(a, b, c []journal.ID) bool {
	return slices.ContainsFunc(a, func(id journal.ID) bool { return slices.Contains(b, id) && slices.Contains(c, id) })
}

// StateFor returns what has become of a lesson as the page of a record sees it: a
// build, or a pattern, technique or person, where only what their own builds
// answered counts. For any other record it is the lesson's state anywhere.
func (l List) StateFor(lesson Lesson, id journal.ID) State { return l.stateFor(&lesson, id) }

func (l *List) stateFor(lesson *Lesson, id journal.ID) State {
	if w := l.works[id]; w != nil && lesson.Build != id {
		return l.stateIn(lesson, w)
	}
	if !slices.Contains(lesson.Patterns, id) && !slices.Contains(lesson.Techniques, id) && !slices.Contains(lesson.People, id) {
		return stateOf(lesson.Answers)
	}
	return l.among(lesson, func(w *work) bool {
		return slices.Contains(w.patterns, id) || slices.Contains(w.techniques, id) || w.person == id
	})
}

// StateForGarment returns the same for a kind of garment.
func (l List) StateForGarment(lesson Lesson, garment string) State {
	garment = near.Folded(garment)
	return l.among(&lesson, func(w *work) bool { return w.garment == garment })
}

// among returns what has become of a lesson in some builds, and in work that
// belongs to none.
func (l *List) among(lesson *Lesson, own func(*work) bool) State {
	var answers []Answer
	for _, a := range lesson.Answers {
		if w := l.works[a.Build]; w == nil || own(w) {
			answers = append(answers, a)
		}
	}
	return stateOf(answers)
}
