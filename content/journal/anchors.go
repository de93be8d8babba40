package journal

import (
	"slices"
	"strings"

	"hussif/content/near"
	"hussif/content/source"
)

// Anchors returns the names of the parts of a record's page that can be linked
// to: its headings, next-time notes and decisions.
func Anchors(r Record) []string {
	page := r.Head()
	var anchors []string
	for i := range page.Next {
		anchors = append(anchors, NextAnchor(i))
	}
	if note, ok := r.(*Note); ok {
		for i := range note.Decided {
			anchors = append(anchors, DecisionAnchor(i))
		}
	}
	for _, remark := range page.Text.Remarks {
		if remark.Anchor != "" {
			anchors = append(anchors, remark.Anchor)
		}
	}
	for _, h := range page.Text.Headings {
		anchors = append(anchors, h.Anchor)
	}
	return anchors
}

func (l *linker) anchor(to Record, anchor string, at source.Span) {
	if anchor == "" || l.j.Faulty(to) {
		return
	}
	anchors := Anchors(to)
	if slices.Contains(anchors, anchor) {
		return
	}
	f := source.Found(at, source.Error, BrokenAnchor, "%s has no part called %q", to.Head().ID.Name(), anchor)
	if f.Instead = near.Of(anchor, anchors); len(f.Instead) == 0 && len(anchors) > 0 {
		f.Help = "its parts are " + strings.Join(anchors, ", ")
	}
	l.findings = append(l.findings, f)
}
