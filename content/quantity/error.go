package quantity

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// An Error says why a text is not the quantity it should be.
type Error struct {
	Text    string   // as given
	Offset  int      // the byte of Text where it goes wrong; len(Text) when something is missing at its end
	Reason  string   // in the maker's words, lower case, no full stop
	Instead []string // whole texts that would be read, best first; may be empty
}

// Error gives the reason and the suggestions in one line.
func (e *Error) Error() string {
	if len(e.Instead) == 0 {
		return e.Reason
	}
	return e.Reason + "; did you mean " + strings.Join(quoteAll(e.Instead), " or ") + "?"
}

// parse runs read on text and keeps only those suggestions that read accepts.
func parse[T any](text string, read func(*scanner) (T, *Error)) (T, error) {
	value, e := read(&scanner{text: text})
	if e == nil {
		return value, nil
	}
	var kept []string
	for _, suggestion := range e.Instead {
		if slices.Contains(kept, suggestion) {
			continue
		}
		if _, again := read(&scanner{text: suggestion}); again == nil {
			kept = append(kept, suggestion)
		}
	}
	e.Instead = kept
	var none T
	return none, e
}

// quote shows a piece of the maker's text within a message, cut short when long.
func quote(text string) string {
	const longest = 40
	text = strings.ToValidUTF8(text, "\uFFFD")
	if utf8.RuneCountInString(text) > longest {
		text = string([]rune(text)[:longest]) + "…"
	}
	return `"` + text + `"`
}

func quoteAll(texts []string) []string {
	quoted := make([]string, len(texts))
	for i, text := range texts {
		quoted[i] = quote(text)
	}
	return quoted
}
