package near

import "strings"

// Folded returns the name with capitals and the number of blanks made no matter:
// two names a maker means to be the same fold to the same.
func Folded(name string) string {
	if isFolded(name) {
		return name
	}
	return strings.ToLower(strings.Join(strings.Fields(name), " "))
}

// isFolded reports whether a name folds to itself and has nothing but letters of
// English and single blanks, as most have.
func isFolded(name string) bool {
	blank := true // one more may not follow
	for i := range len(name) {
		c := name[i]
		switch {
		case c == ' ' && blank, c < ' ', c > '~', 'A' <= c && c <= 'Z':
			return false
		}
		blank = c == ' '
	}
	return name == "" || !blank
}
