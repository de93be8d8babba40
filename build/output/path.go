package output

import (
	"errors"
	"io/fs"
	"path"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// checkPath says why a path cannot be that of a site's file on every system. It
// is also what keeps a hostile mark from naming things outside the folder.
func checkPath(p string) error {
	if !fs.ValidPath(p) || p == "." {
		return errors.New("it must lead from the site's folder downwards, such as builds/jacket.html")
	}
	for part := range strings.SplitSeq(p, "/") {
		switch {
		case part[0] == '.':
			return errors.New("names that begin with a dot are left to the maker")
		case strings.ContainsFunc(part, unusable):
			return errors.New(`some disks cannot hold names with \ : * ? " < > | or invisible characters`)
		case strings.HasSuffix(part, ".") || strings.HasSuffix(part, " "):
			return errors.New("some disks cannot hold names that end with a dot or a space")
		case len(part) > 255:
			return errors.New("no disk can hold a name so long; 255 bytes is the most")
		case isDevice(part):
			return errors.New("it is the name of a device on some systems")
		}
	}
	return nil
}

func unusable(r rune) bool {
	return r < ' ' || r == 0x7f || strings.ContainsRune(`\:*?"<>|`, r)
}

// isDevice reports whether Windows takes a name for a device, whatever follows
// its first dot. Source: Microsoft, "Naming Files, Paths, and Namespaces".
func isDevice(name string) bool {
	stem, _, _ := strings.Cut(strings.ToUpper(name), ".")
	stem = strings.TrimRight(stem, " ")
	switch stem {
	case "CON", "PRN", "AUX", "NUL":
		return true
	}
	port, ok := strings.CutPrefix(stem, "COM")
	if !ok {
		port, ok = strings.CutPrefix(stem, "LPT")
	}
	return ok && strings.Contains("0 1 2 3 4 5 6 7 8 9 ¹ ² ³", port) && strings.TrimSpace(port) != ""
}

// A folder turns a path into one that is equal for all paths that some disk
// takes for the same: those that differ in case or in how accents are composed.
type folder struct{ caser cases.Caser }

func newFolder() folder { return folder{cases.Fold()} }

func (f folder) fold(p string) string {
	ascii := true
	for i := range len(p) {
		ascii = ascii && p[i] < utf8.RuneSelf
	}
	if ascii {
		return strings.ToLower(p) // which is p itself for most
	}
	return norm.NFC.String(f.caser.String(norm.NFC.String(p)))
}

// parents calls yield for each folder above a path, the nearest first.
func parents(p string) func(yield func(string) bool) {
	return func(yield func(string) bool) {
		for dir := path.Dir(p); dir != "."; dir = path.Dir(dir) {
			if !yield(dir) {
				return
			}
		}
	}
}
