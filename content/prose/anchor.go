package prose

import (
	"fmt"
	"strings"
	"unicode"
)

// slug turns the words of a heading into an anchor: letters and digits of any
// script in lower case, with a hyphen for each run of anything between them that
// parts words.
func slug(words string) string {
	var b strings.Builder
	parted := false
	for _, r := range words {
		switch {
		case unicode.IsLetter(r), unicode.IsNumber(r), unicode.IsMark(r):
			if parted && b.Len() > 0 {
				b.WriteByte('-')
			}
			parted = false
			b.WriteRune(unicode.ToLower(r))
		case unicode.IsSpace(r), r == '-', r == '_', r == '/', r == '–', r == '—':
			parted = true
		}
	}
	return b.String()
}

// What the anchors of next-time notes and decisions begin with.
const (
	nextPrefix    = "next-"
	decidedPrefix = "decided-"
)

// reserved reports whether an anchor is of a sort that no heading has: that of a
// note, or of a part that is printed beside the text.
func reserved(anchor string) bool {
	return strings.HasPrefix(anchor, nextPrefix) || strings.HasPrefix(anchor, decidedPrefix) || strings.HasPrefix(anchor, "section-")
}

// SetApart returns the anchor of a heading whose own words would make one of
// another sort: a heading "Next 1" is at "heading-next-1".
func SetApart(anchor string) string { return "heading-" + anchor }

// Anchors hands out the anchors of one page, none of them twice. The zero value
// is a page without any.
type Anchors struct {
	taken map[string]bool
	times map[string]int // how often a base has come up
}

// Next returns an anchor for a next-time note that says words. It is made of the
// note's own first words and so stays when others are put before it; only one that
// begins like another of the page is told from it by a number.
func (a *Anchors) Next(words string) string { return a.note(nextPrefix, words) }

// Decided returns an anchor for a decision, as [Anchors.Next] does.
func (a *Anchors) Decided(words string) string { return a.note(decidedPrefix, words) }

func (a *Anchors) note(prefix, words string) string {
	gist := gist(words)
	if strings.Trim(gist, "0123456789") == "" {
		// A number alone would be taken for a place in the count of notes.
		gist = strings.TrimSuffix("note-"+gist, "-")
	}
	return a.claim(prefix+gist, false)
}

// heading returns an anchor for a heading.
func (a *Anchors) heading(words string) string {
	base := slug(words)
	if base == "" {
		base = "heading"
	}
	if reserved(base) {
		base = SetApart(base)
	}
	return a.claim(base, true)
}

// claim returns base, or base with a number where another place has it.
func (a *Anchors) claim(base string, heading bool) string {
	if a.taken == nil {
		a.taken, a.times = make(map[string]bool), make(map[string]int)
	}
	for {
		a.times[base]++
		anchor := base
		if n := a.times[base]; n > 1 {
			anchor = fmt.Sprintf("%s-%d", base, n)
		}
		if heading && reserved(anchor) { // as the second "Next" of a page
			anchor = SetApart(anchor)
		}
		if !a.taken[anchor] {
			a.taken[anchor] = true
			return anchor
		}
	}
}

// take keeps anchors from being handed out.
func (a *Anchors) take(anchors []string) {
	for _, anchor := range anchors {
		if a.taken == nil {
			a.taken, a.times = make(map[string]bool), make(map[string]int)
		}
		a.taken[anchor] = true
	}
}
