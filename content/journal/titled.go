package journal

import (
	"regexp"
	"strings"
)

// bareTie is a tie without words of its own, as plain text still has it.
var bareTie = regexp.MustCompile(`\[\[([^\[\]|#]*)(?:#[^\[\]|]*)?\]\]`)

// Titled returns plain text of a record in which each tie without words of its own
// reads as the title of what it leads to, or as it was written where that is
// nothing.
func (j *Journal) Titled(words string) string {
	if !strings.Contains(words, "[[") {
		return words
	}
	return bareTie.ReplaceAllStringFunc(words, func(tie string) string {
		to := bareTie.FindStringSubmatch(tie)[1]
		if r, ok := j.Named(strings.TrimSpace(to)); ok {
			return r.Head().Title
		}
		return strings.Trim(tie, "[]")
	})
}
