package near

import "strings"

// Folded returns the name with capitals and the number of blanks made no matter:
// two names a maker means to be the same fold to the same.
func Folded(name string) string {
	return strings.ToLower(strings.Join(strings.Fields(name), " "))
}
