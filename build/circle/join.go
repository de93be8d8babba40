package circle

import (
	"cmp"
	"slices"
	"strings"

	"hussif/build/export"
	"hussif/build/search"
	"hussif/content/near"
)

// A telling is a thing of one maker's log as it may be one with others.
type telling[T any] struct {
	by            *Maker
	id            string // of the log
	title, source string // source is "" where none is said
	says          *T
}

func patternsOf(m *Maker) []telling[export.Pattern] {
	var out []telling[export.Pattern]
	for i := range m.Log.Patterns {
		p := &m.Log.Patterns[i]
		out = append(out, telling[export.Pattern]{m, p.ID, p.Title, p.From, p})
	}
	return out
}

func techniquesOf(m *Maker) []telling[export.Technique] {
	var out []telling[export.Technique]
	for i := range m.Log.Techniques {
		t := &m.Log.Techniques[i]
		out = append(out, telling[export.Technique]{m, t.ID, t.Title, "", t})
	}
	return out
}

// oneLine leaves one blank between words.
func oneLine(title string) string { return strings.Join(strings.Fields(title), " ") }

// folded is the same for names that differ in nothing that tells things apart.
func folded(name string) string {
	return search.Fold(near.Folded(strings.NewReplacer("\u200c", "", "\u200d", "").Replace(name)))
}

// join finds which things of several logs are one, gives each a place in a section of
// the site, and lets each maker know hers by ID.
func join[T any](makers []*Maker, paths *paths, section string, of func(*Maker) []telling[T], hers func(*Maker) *map[string]*Common[T]) []*Common[T] {
	byTitle := make(map[string][]telling[T])
	for _, m := range makers {
		*hers(m) = make(map[string]*Common[T])
		hadBy := make(map[[2]string]bool)
		for _, t := range of(m) {
			title, source := folded(t.title), folded(t.source)
			if hadBy[[2]string{title, source}] {
				title += "\n" + t.id // to its maker it is another
			}
			hadBy[[2]string{title, source}] = true
			byTitle[title] = append(byTitle[title], t)
		}
	}
	var all []*Common[T]
	for _, alike := range byTitle {
		first := len(all)
		for _, group := range bySource(alike) {
			c := &Common[T]{Title: usual(group), Source: sourceOf(group)}
			for _, t := range group {
				c.Told = append(c.Told, Told[T]{t.by, t.says})
				(*hers(t.by))[t.id] = c
			}
			all = append(all, c)
		}
		for i, c := range all[first:] {
			c.Namesakes = slices.Delete(slices.Clone(all[first:]), i, i+1)
		}
	}
	slices.SortStableFunc(all, func(a, b *Common[T]) int {
		return cmp.Or(cmp.Compare(search.Fold(a.Title), search.Fold(b.Title)), cmp.Compare(a.Title, b.Title), cmp.Compare(a.Told[0].By.Path, b.Told[0].By.Path))
	})
	for _, c := range all {
		c.Path = paths.new(section, strings.TrimSpace(c.Title+" "+c.Source))
	}
	return all
}

// bySource parts things of one title by where they are from.
func bySource[T any](alike []telling[T]) [][]telling[T] {
	groups := make(map[string][]telling[T])
	var sources []string
	for _, t := range alike {
		source := folded(t.source)
		if _, ok := groups[source]; !ok && source != "" {
			sources = append(sources, source)
		}
		groups[source] = append(groups[source], t)
	}
	if len(sources) == 1 {
		return [][]telling[T]{alike}
	}
	var out [][]telling[T]
	for _, source := range append(sources, "") {
		if len(groups[source]) > 0 {
			out = append(out, groups[source])
		}
	}
	return out
}

// sourceOf returns where things are from that are one; "" where nobody says.
func sourceOf[T any](group []telling[T]) string {
	for _, t := range group {
		if t.source != "" {
			return oneLine(t.source)
		}
	}
	return ""
}

// usual returns the title that most give.
func usual[T any](group []telling[T]) string {
	var titles []string
	for _, t := range group {
		titles = append(titles, t.title)
	}
	return near.Usual(titles)
}

// Users returns who made something with a thing, and who tells of it and made nothing
// with it yet, each by name.
func (c *Common[T]) Users() (users, others []*Maker) {
	for _, t := range c.Told {
		used := slices.ContainsFunc(c.Builds, func(b *Build) bool { return b.Maker == t.By })
		switch {
		case used && !slices.Contains(users, t.By):
			users = append(users, t.By)
		case !used && !slices.Contains(others, t.By):
			others = append(others, t.By)
		}
	}
	return users, others
}
