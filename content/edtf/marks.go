package edtf

// marks say how far a date, or a part of one, is to be trusted.
type marks uint8

const (
	uncertain   marks = 1 << iota // "?"
	approximate                   // "~"
)

// markOf returns what a character of EDTF marks, 0 for any other character.
func markOf(c byte) marks {
	switch c {
	case '?':
		return uncertain
	case '~':
		return approximate
	case '%':
		return uncertain | approximate
	}
	return 0
}

// String returns the mark as EDTF writes it.
func (m marks) String() string { return [...]string{"", "?", "~", "%"}[m] }
