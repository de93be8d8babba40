package prose

import (
	"cmp"
	"regexp"
	"strings"
	"unicode/utf8"
)

// How long the words of a note's anchor may be: enough to know the note by, and
// short enough to be written by hand.
const (
	gistWords   = 6
	gistLetters = 40
)

// gist returns the first words of a text that carry its meaning, as an anchor:
// "cut the sleeve an inch wider" is cut-sleeve-inch-wider. Where a text has none
// but small words, those are taken.
func gist(words string) string {
	// Words past these cannot matter, and a remark may go on for pages.
	words = firstLetters(words, 20*gistLetters)
	if strings.Contains(words, "[[") {
		words = writtenTie.ReplaceAllStringFunc(words, func(tie string) string {
			found := writtenTie.FindStringSubmatch(tie)
			return cmp.Or(found[2], found[1])
		})
	}
	all := strings.Split(slug(words), "-")
	if chosen := joined(all, func(word string) bool { return !small[word] }); chosen != "" {
		return chosen
	}
	return joined(all, func(string) bool { return true })
}

// writtenTie is a tie in plain text or a field. It stands for its own words or else
// for the id, which unlike the title of what it leads to does not change.
var writtenTie = regexp.MustCompile(`\[\[([^\[\]|#]*)(?:#[^\[\]|]*)?(?:\|([^\[\]]*))?\]\]`)

// joined puts as many of the words that are wanted together as an anchor holds.
// It cuts a word only where that is the first.
func joined(words []string, wanted func(string) bool) string {
	out, count, letters := "", 0, 0
	for _, word := range words {
		if !wanted(word) || word == "" {
			continue
		}
		length := utf8.RuneCountInString(word)
		switch {
		case count == gistWords || count > 0 && letters+1+length > gistLetters:
			return out
		case count > 0:
			out += "-"
			letters++
		}
		out += firstLetters(word, gistLetters)
		letters += length
		count++
	}
	return out
}

func firstLetters(s string, most int) string {
	n := 0
	for i := range s {
		if n == most {
			return s[:i]
		}
		n++
	}
	return s
}

// small are words that say nothing of what a note is about. "not", "no" and words
// of place such as "before" are not among them: they turn the meaning round.
var small = setOf(`a an the this that these those it its they them their he his she her i my me we our us you your
	is are was were be been being am has have had do does did will would shall should can could may might must
	of to in on at for with by from as and or so but if than then there when which who whom what where
	just very really quite`)

func setOf(words string) map[string]bool {
	set := make(map[string]bool)
	for _, word := range strings.Fields(words) {
		set[word] = true
	}
	return set
}
