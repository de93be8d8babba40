package output

import (
	"os"

	"hussif/build/keep"
)

// Current reports whether a folder already holds the whole site that this
// recipe stands for, without making any of it: its mark carries the recipe, and
// every file that the mark names has the size and the time stamp noted there,
// and nothing else is in the folder. Then nothing is left for [Write] to do, and
// the report counts the files. Whatever keeps it from being sure is a no.
func Current(dir string, recipe keep.Recipe) (Report, bool) {
	if recipe == (keep.Recipe{}) {
		return Report{}, false
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return Report{}, false
	}
	defer root.Close()
	m, err := readMark(root)
	if err != nil || m == nil || m.Recipe != keep.Sum(recipe) {
		return Report{}, false
	}
	found, err := scan(dir, root, m)
	if err != nil {
		return Report{}, false
	}
	for _, e := range m.Files {
		if info := found[e.Path]; info == nil || !e.matches(info) {
			return Report{}, false
		}
	}
	return Report{Kept: len(m.Files)}, true
}
