package near

import "strings"

// Usual returns the way of writing a name that most use, the first of several. The
// number of blanks makes no difference.
func Usual(names []string) string {
	written := make([]string, len(names))
	count := make(map[string]int)
	for i, name := range names {
		written[i] = strings.Join(strings.Fields(name), " ")
		count[written[i]]++
	}
	best := ""
	for _, name := range written {
		if count[name] > count[best] {
			best = name
		}
	}
	return best
}
