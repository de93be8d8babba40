package lesson

import (
	"cmp"
	"slices"

	"hussif/content/journal"
	"hussif/content/near"
)

// A Group is the lessons about one thing, newest first.
type Group struct {
	Name    string
	ID      journal.ID // empty for a kind of garment
	Lessons []Lesson
}

// ByPattern groups the lessons by pattern. As in all groupings, groups go by
// name, a lesson about several stands in several, and one about none in none.
func (l List) ByPattern() []Group {
	return l.by(func(lesson Lesson) []journal.ID { return lesson.Patterns })
}

// ByTechnique groups the lessons by technique.
func (l List) ByTechnique() []Group {
	return l.by(func(lesson Lesson) []journal.ID { return lesson.Techniques })
}

// ByMaterial groups the lessons by material.
func (l List) ByMaterial() []Group {
	return l.by(func(lesson Lesson) []journal.ID { return lesson.Materials })
}

// ByPerson groups the lessons by person.
func (l List) ByPerson() []Group {
	return l.by(func(lesson Lesson) []journal.ID { return lesson.People })
}

// ByGarment groups the lessons by kind of garment.
func (l List) ByGarment() []Group {
	return group(l.All, func(lesson Lesson) []string { return lesson.Garments },
		func(garment string) Group { return Group{Name: garment} })
}

func (l List) by(ids func(Lesson) []journal.ID) []Group {
	return group(l.All, ids, func(id journal.ID) Group { return Group{Name: l.titles[id], ID: id} })
}

func group[K comparable](lessons []Lesson, keys func(Lesson) []K, begin func(K) Group) []Group {
	var groups []Group
	var places [][]int // of the lessons of each group
	at := make(map[K]int)
	for place, lesson := range lessons {
		for _, key := range keys(lesson) {
			i, ok := at[key]
			if !ok {
				i = len(groups)
				at[key] = i
				groups, places = append(groups, begin(key)), append(places, nil)
			}
			places[i] = append(places[i], place)
		}
	}
	for i := range groups {
		groups[i].Lessons = pick(lessons, places[i])
	}
	slices.SortFunc(groups, func(a, b Group) int {
		return cmp.Or(cmp.Compare(near.Folded(a.Name), near.Folded(b.Name)), cmp.Compare(a.ID, b.ID))
	})
	return groups
}

// From returns the lessons written in a record, in the order written.
func (l List) From(id journal.ID) []Lesson { return l.pick(l.from[id]) }

// For returns the lessons that bear on a record: those written in it or about it,
// and for a build those of its notes. The newest comes first.
func (l List) For(id journal.ID) []Lesson { return l.pick(l.bearing[id]) }

func (l List) pick(places []int) []Lesson { return pick(l.All, places) }

func pick(from []Lesson, places []int) []Lesson {
	if len(places) == 0 {
		return nil
	}
	found := make([]Lesson, len(places))
	for i, at := range places {
		found[i] = from[at]
	}
	return found
}

// index notes for each record which lessons are written in it and which bear on
// it, since every page asks.
func (l *List) index() {
	l.from = make(map[journal.ID][]int)
	l.bearing = make(map[journal.ID][]int)
	for at, lesson := range l.All {
		l.from[lesson.From] = append(l.from[lesson.From], at)
		bears := func(id journal.ID) {
			if seen := l.bearing[id]; id != "" && (len(seen) == 0 || seen[len(seen)-1] != at) {
				l.bearing[id] = append(seen, at)
			}
		}
		bears(lesson.From)
		bears(lesson.Build)
		for _, ids := range [][]journal.ID{lesson.Patterns, lesson.Techniques, lesson.Materials, lesson.People, lesson.Others} {
			for _, id := range ids {
				bears(id)
			}
		}
	}
}
