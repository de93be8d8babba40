package journal

import (
	"cmp"
	"strconv"
	"strings"

	"hussif/content/prose"
)

// nameParts gives the notes and decisions of a record's front matter their anchors.
func nameParts(r Record) {
	var anchors prose.Anchors
	page := r.Head()
	for i := range page.Next {
		page.Next[i].Anchor = anchors.Next(page.Next[i].Do)
	}
	if note, ok := r.(*Note); ok {
		for i := range note.Decided {
			d := &note.Decided[i]
			d.Anchor = anchors.Decided(cmp.Or(d.Question, d.Chose))
		}
	}
}

// Anchors returns the names of the parts of a record's page that can be linked
// to: its next-time notes, decisions and headings.
func Anchors(r Record) []string {
	anchors := append(NextAnchors(r), DecisionAnchors(r)...)
	for _, h := range r.Head().Text.Headings {
		anchors = append(anchors, h.Anchor)
	}
	for _, w := range r.Head().Text.Works {
		if w.Anchor != "" {
			anchors = append(anchors, w.Anchor)
		}
	}
	return anchors
}

// NextAnchors returns the anchors of a record's next-time notes as they are
// counted: those of the front matter first, then those of the text.
func NextAnchors(r Record) []string {
	var anchors []string
	for _, next := range r.Head().Next {
		anchors = append(anchors, next.Anchor)
	}
	return append(anchors, remarkAnchors(r, prose.NextTime)...)
}

// DecisionAnchors returns the anchors of a record's decisions, counted likewise.
func DecisionAnchors(r Record) []string {
	var anchors []string
	if note, ok := r.(*Note); ok {
		for _, decision := range note.Decided {
			anchors = append(anchors, decision.Anchor)
		}
	}
	return append(anchors, remarkAnchors(r, prose.Decided)...)
}

func remarkAnchors(r Record, kind prose.Kind) []string {
	var anchors []string
	for _, remark := range r.Head().Text.Remarks {
		if remark.Kind == kind && !remark.Private {
			anchors = append(anchors, remark.Anchor)
		}
	}
	return anchors
}

// Anchor returns the anchor of the part of a record's page that a link means. It
// may have been written as it is, as the place of a note or decision in the count
// of the page ("next-2"), or by a heading's own words where these are set apart
// from notes. Where the page has no such part, written comes back with false.
func Anchor(r Record, written string) (string, bool) {
	if kind, place, ok := numbered(written); ok {
		counted := NextAnchors(r)
		if kind == prose.Decided {
			counted = DecisionAnchors(r)
		}
		if place > len(counted) {
			return written, false
		}
		return counted[place-1], true
	}
	if hasAnchor(r, written) {
		return written, true
	}
	if apart := prose.SetApart(written); hasAnchor(r, apart) {
		return apart, true
	}
	return written, false
}

// hasAnchor reports whether [Anchors] has an anchor. Every link to a part of a page
// asks.
func hasAnchor(r Record, anchor string) bool {
	page := r.Head()
	for i := range page.Next {
		if page.Next[i].Anchor == anchor {
			return true
		}
	}
	if note, ok := r.(*Note); ok {
		for i := range note.Decided {
			if note.Decided[i].Anchor == anchor {
				return true
			}
		}
	}
	for i := range page.Text.Remarks {
		if remark := &page.Text.Remarks[i]; remark.Anchor == anchor && !remark.Private && (remark.Kind == prose.NextTime || remark.Kind == prose.Decided) {
			return true
		}
	}
	for i := range page.Text.Headings {
		if page.Text.Headings[i].Anchor == anchor {
			return true
		}
	}
	return false
}

// Numbered reports whether an anchor is a place in the count of a page's notes or
// decisions, which moves when another is put before it.
func Numbered(anchor string) bool {
	_, _, ok := numbered(anchor)
	return ok
}

// numbered takes an anchor such as "decided-2" apart.
func numbered(anchor string) (prose.Kind, int, bool) {
	var kind prose.Kind
	word, digits, _ := strings.Cut(anchor, "-")
	switch word {
	case "next":
		kind = prose.NextTime
	case "decided":
		kind = prose.Decided
	default:
		return 0, 0, false
	}
	if digits == "" || digits[0] < '0' || digits[0] > '9' { // as in nearly all; an error would cost more
		return 0, 0, false
	}
	place, err := strconv.ParseUint(digits, 10, 16)
	if err != nil || place == 0 {
		return 0, 0, false
	}
	return kind, int(place), true
}
