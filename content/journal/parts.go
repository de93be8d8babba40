package journal

import (
	"cmp"
	"slices"
	"strings"

	"hussif/content/near"
	"hussif/content/source"
)

// part checks that a page has the part that a link to it names. name says how the
// link would be written to another page.
func (l *linker) part(to Record, anchor string, at source.Span, name func(Record) string) {
	if anchor == "" || l.j.Faulty(to) {
		return
	}
	if _, ok := Anchor(to, anchor); ok {
		return
	}
	f := source.Found(at, source.Error, BrokenAnchor, "%s has no part called %q", to.Head().ID.Name(), anchor)
	anchors := Anchors(to)
	f.Instead = append(l.moved(anchor, nil, name), alike(anchor, anchors)...)
	if len(f.Instead) == 0 && len(anchors) > 0 {
		f.Help = "its parts are " + strings.Join(anchors, ", ")
	}
	l.found = append(l.found, f)
}

// moved returns links to the pages that a note or decision may have been moved to:
// those that have one of the very same words.
func (l *linker) moved(anchor string, kinds []Kind, name func(Record) string) []string {
	if anchor == "" {
		return nil
	}
	if l.parts == nil {
		l.parts = make(map[string][]Record)
		for _, r := range l.j.records {
			for _, a := range append(NextAnchors(r), DecisionAnchors(r)...) {
				l.parts[a] = append(l.parts[a], r)
			}
		}
	}
	var out []string
	for _, r := range l.parts[anchor] {
		if isOf(r, kinds) && len(out) < mostMoved {
			out = append(out, name(r)+"#"+anchor)
		}
	}
	return out
}

// mostMoved is in how many places a moved note is looked for: words that many
// notes begin with say nothing of where one went.
const mostMoved = 3

// alike returns the anchors that one could have been meant for: misspelt, or those
// of a note that was put into other words since.
func alike(anchor string, among []string) []string {
	if misspelt := near.Of(anchor, among); len(misspelt) > 0 || Numbered(anchor) {
		return misspelt
	}
	words := strings.Split(anchor, "-")
	shared := make(map[string]int)
	var out []string
	for _, other := range among {
		others := strings.Split(other, "-")
		if others[0] != words[0] { // what makes it a next-time note, or a decision
			continue
		}
		for _, word := range words[1:] {
			if slices.Contains(others[1:], word) {
				shared[other]++
			}
		}
		if least := min(len(words), len(others)) - 1; shared[other] > 0 && 2*shared[other] >= least {
			out = append(out, other)
		}
	}
	slices.SortStableFunc(out, func(a, b string) int { return cmp.Compare(shared[b], shared[a]) })
	return out[:min(len(out), mostMoved)]
}

// Name returns how a link names a record: by the last part of its ID where no
// other has the same, and else by all of it.
func (j *Journal) Name(r Record) string {
	id := r.Head().ID
	if len(j.called(id.Name(), Named)) == 1 {
		return id.Name()
	}
	return string(id)
}
