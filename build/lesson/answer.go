package lesson

import (
	"cmp"
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
)

// A State is what has become of a lesson.
type State string

// States of a lesson.
const (
	Open     State = "open"
	Carried  State = "carried"
	SetAside State = "set aside"
)

// An Answer is what one build, or one note that belongs to none, made of a lesson.
type Answer struct {
	State   State      // Carried or SetAside
	From    journal.ID // the build or note that says so
	Build   journal.ID // that it is, or belongs to; may be empty
	Day     edtf.Day   // of the note; 0 where the build's own page says it
	Because string     // why it is set aside
}

// State returns what has become of a lesson anywhere: it is carried where any work
// carries it.
func (l Lesson) State() State { return stateOf(l.Answers) }

// By returns a build's own answer to the lesson.
func (l Lesson) By(build journal.ID) (Answer, bool) { return by(l.Answers, build) }

func by(answers []Answer, build journal.ID) (Answer, bool) {
	for _, a := range answers {
		if a.Build == build && build != "" {
			return a, true
		}
	}
	return Answer{}, false
}

func stateOf(answers []Answer) State {
	state := Open
	for _, a := range answers {
		if a.State == Carried {
			return Carried
		}
		state = SetAside
	}
	return state
}

// answer hands the lessons what builds and notes say of them.
func (l *List) answer(j *journal.Journal) {
	places := make(map[part]int)
	for at, lesson := range l.All {
		places[part{lesson.From, lesson.Anchor}] = at
	}
	give := func(ref journal.Ref, a Answer) {
		r, ok := j.Find(ref.To)
		if !ok {
			return
		}
		anchor, _ := journal.Anchor(r, ref.Anchor)
		if at, ok := places[part{r.Head().ID, anchor}]; ok {
			l.All[at].Answers = append(l.All[at].Answers, a)
		}
	}
	all := func(from Answer, carries []journal.Ref, aside []journal.SetAside) {
		from.State = SetAside
		for _, s := range aside {
			from.Because = s.Because
			give(s.Note, from)
		}
		from.State, from.Because = Carried, ""
		for _, ref := range carries {
			give(ref, from)
		}
	}
	for _, b := range j.Builds() {
		all(Answer{From: b.ID, Build: b.ID}, b.Carries, b.SetAside)
	}
	for _, n := range j.Notes() {
		a := Answer{From: n.ID, Day: n.Date}
		if n.Of != nil {
			a.Build = n.Of.ID
		}
		all(a, n.Carries, n.SetAside)
	}
	for at := range l.All {
		l.All[at].Answers = lastWords(l.All[at].Answers)
	}
}

// lastWords leaves one answer of each build: that of the latest day, and of one
// day one that carries.
func lastWords(answers []Answer) []Answer {
	slices.SortStableFunc(answers, func(a, b Answer) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), -cmp.Compare(a.State, b.State))
	})
	of := func(a Answer) journal.ID { return cmp.Or(a.Build, a.From) }
	var last []Answer
	for i, a := range answers {
		if !slices.ContainsFunc(answers[i+1:], func(b Answer) bool { return of(b) == of(a) }) {
			last = append(last, a)
		}
	}
	return last
}
