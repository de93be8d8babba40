package edtf

import (
	"fmt"
	"strings"
)

// An Error tells a maker why a text is no date. [Parse], [Read] and [ParseDay]
// return no other kind.
type Error struct {
	Text    string   // as it was given
	Offset  int      // byte offset in Text where the trouble starts, at most len(Text)
	Reason  string   // lower case, no full stop
	Instead []string // what could stand there, best first; each one is accepted by what refused Text
}

func (e *Error) Error() string {
	message := fmt.Sprintf("%q: %s", e.Text, e.Reason)
	if len(e.Instead) == 0 {
		return message
	}
	quoted := make([]string, len(e.Instead))
	for i, s := range e.Instead {
		quoted[i] = fmt.Sprintf("%q", s)
	}
	return message + "; write " + strings.Join(quoted, " or ")
}

// refuse makes an Error without suggestions.
func refuse(text string, offset int, format string, args ...any) *Error {
	return &Error{Text: text, Offset: offset, Reason: fmt.Sprintf(format, args...)}
}
