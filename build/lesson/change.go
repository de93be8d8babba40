package lesson

import (
	"reflect"
	"slices"

	"hussif/content/journal"
)

// A Change is what sets one list apart from the one before it.
type Change struct {
	ids   map[journal.ID]bool // what lessons bear on that are new, gone or other
	works bool                // what builds share with others
	list  List
}

// Since returns what sets a list apart from an earlier one of the same journal.
func (l List) Since(before List) Change {
	c := Change{ids: make(map[journal.ID]bool), works: !reflect.DeepEqual(l.works, before.works), list: l}
	were := make(map[part]*Lesson, len(before.All))
	for i := range before.All {
		was := &before.All[i]
		were[part{was.From, was.Anchor}] = was
	}
	for i := range l.All {
		is := &l.All[i]
		key := part{is.From, is.Anchor}
		was := were[key]
		delete(were, key)
		if was == nil || !same(was, is) {
			c.add(is)
			c.add(was)
		}
	}
	for _, gone := range were {
		c.add(gone)
	}
	return c
}

func (c *Change) add(l *Lesson) {
	if l == nil {
		return
	}
	c.ids[l.From], c.ids[l.Build] = true, true
	for _, ids := range [][]journal.ID{l.Patterns, l.Techniques, l.Materials, l.People, l.Others} {
		for _, id := range ids {
			c.ids[id] = true
		}
	}
}

// None reports whether nothing has changed.
func (c Change) None() bool { return len(c.ids) == 0 && !c.works }

// Bears reports whether [List.For] or [List.From] may return something else for a
// record than before, or these lessons be in another state.
func (c Change) Bears(id journal.ID) bool { return c.works || c.ids[id] }

// Opens reports whether [List.OpenFor] may return something else for a build than
// before.
func (c Change) Opens(build journal.ID) bool {
	w := c.list.works[build]
	if c.works || w == nil {
		return true
	}
	return slices.ContainsFunc(slices.Concat(w.line, w.patterns, w.techniques), func(id journal.ID) bool { return c.ids[id] })
}

// same reports whether two lessons say the same. A test sees to it that it looks at
// every field.
func same(a, b *Lesson) bool {
	return a.Text == b.Text && a.From == b.From && a.Anchor == b.Anchor && a.Day == b.Day && a.Build == b.Build &&
		slices.Equal(a.Patterns, b.Patterns) && slices.Equal(a.Techniques, b.Techniques) && slices.Equal(a.Materials, b.Materials) &&
		slices.Equal(a.People, b.People) && slices.Equal(a.Garments, b.Garments) && slices.Equal(a.Others, b.Others) &&
		slices.Equal(a.Answers, b.Answers)
}
