package journal

import (
	"path"
	"slices"

	"hussif/content/near"
	"hussif/content/source"
)

// target finds what a link means and reports where it means nothing or too much.
func (l *linker) target(ref Ref, kinds []Kind) (Record, bool) {
	to, at := ref.To, ref.Span
	found := l.j.candidates(to, kinds)
	if len(found) == 1 {
		return found[0], true
	}
	var f source.Finding
	switch others := l.j.candidates(to, nil); {
	case len(found) > 1:
		f = source.Found(at, source.Error, UnclearLink, "several pages are called %q", to)
		f.Instead = someIDs(found)
	case len(others) > 0:
		f = source.Found(at, source.Error, BrokenLink, "%q is %s; this field wants %s", to, others[0].Head().Kind.withArticle(), kinds[0].withArticle())
		f.Instead = l.nearest(to, kinds)
	default:
		f = source.Found(at, source.Error, BrokenLink, "no page is called %q", to)
		if f.Instead = append(l.moved(ref.Anchor, kinds, l.j.Name), l.nearest(to, kinds)...); len(f.Instead) == 0 {
			f.Help = "a page is called after its file, or its build's folder"
		}
	}
	l.found = append(l.found, f)
	return nil, false
}

type nearKey struct {
	to   string
	kind Kind // "" for any
}

// mostGuesses is for how many broken links a name is looked for: each costs a look
// at every name of the journal, and nobody reads more than a few.
const mostGuesses = 500

// nearest returns what a link that leads nowhere could have meant: names of
// records of one kind, or of any, and whole IDs where several have one name.
func (l *linker) nearest(to string, kinds []Kind) []string {
	// A page that was renamed may have been linked to from thousands of notes.
	key := nearKey{to: to}
	if len(kinds) > 0 {
		key.kind = kinds[0]
	}
	if out, ok := l.near[key]; ok || len(l.near) == mostGuesses {
		return out
	}
	var out []string
	for _, name := range near.Of(path.Base(to), l.namesOf(kinds)) {
		if found := l.j.candidates(name, kinds); len(found) == 1 {
			out = append(out, name)
		} else {
			out = append(out, someIDs(found)...)
		}
	}
	l.near[key] = out
	return out
}

// someIDs returns as many IDs as a maker can take in: notes of one day in a
// hundred builds have one name.
func someIDs(records []Record) []string {
	var out []string
	for _, r := range records[:min(len(records), 4)] {
		out = append(out, string(r.Head().ID))
	}
	return out
}

// namesOf returns the names of the records of one kind, or of all.
func (l *linker) namesOf(kinds []Kind) []string {
	var names []string
	for _, r := range l.j.records {
		if page := r.Head(); len(kinds) == 0 || slices.Contains(kinds, page.Kind) {
			names = append(names, page.ID.Name())
		}
	}
	return names
}
