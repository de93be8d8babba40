package prose

import (
	"fmt"
	"regexp"
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

// reserved matches the anchors of remarks and of the parts of a page.
var reserved = regexp.MustCompile(`^(?:(?:next|decided)-[0-9]+$|section-)`)

// anchors hands out the anchors of one body's headings.
type anchors struct {
	taken map[string]bool
	times map[string]int // how often a slug has come up
}

func newAnchors() anchors {
	return anchors{taken: map[string]bool{}, times: map[string]int{}}
}

// claim returns an anchor for a heading that no other place has.
func (a anchors) claim(words string) string {
	base := slug(words)
	if base == "" {
		base = "heading"
	}
	for {
		a.times[base]++
		anchor := base
		if n := a.times[base]; n > 1 {
			anchor = fmt.Sprintf("%s-%d", base, n)
		}
		if reserved.MatchString(anchor) {
			anchor = "heading-" + anchor
		}
		if !a.taken[anchor] {
			a.taken[anchor] = true
			return anchor
		}
	}
}
