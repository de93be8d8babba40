package intake

import (
	"path"
	"strconv"
	"strings"

	"hussif/content/edtf"
)

// nameFor returns the name that a shot has in the journal where that is free: its
// day, unless the camera named it after that, and the camera's name in small
// letters and digits, which need no quotes in front matter and no escapes in a link.
func nameFor(s Shot) string {
	stem := clean(strings.TrimSuffix(path.Base(s.Path), path.Ext(s.Path)))
	day := s.Day.String()
	if stem != "" && !strings.Contains(strings.ReplaceAll(stem, "-", ""), strings.ReplaceAll(day, "-", "")) {
		stem = "-" + stem
	} else if stem != "" {
		day = ""
	}
	return day + stem + s.Ending
}

// mostName is how many letters of a camera's name are kept.
const mostName = 60

func clean(stem string) string {
	parts := strings.FieldsFunc(strings.ToLower(stem), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	stem = strings.Join(parts, "-")
	return strings.Trim(stem[:min(len(stem), mostName)], "-")
}

// numbered returns a name with a number before its ending, but for the first.
func numbered(name string, n int) string {
	if n == 1 {
		return name
	}
	ending := path.Ext(name)
	return strings.TrimSuffix(name, ending) + "-" + strconv.Itoa(n) + ending
}

// isNumbered reports whether a file has the name, or that with a number.
func isNumbered(file, name string) bool {
	ending := path.Ext(name)
	rest, ok := strings.CutPrefix(strings.TrimSuffix(file, ending), strings.TrimSuffix(name, ending))
	if !ok || path.Ext(file) != ending {
		return false
	}
	_, err := strconv.ParseUint(strings.TrimPrefix(rest, "-"), 10, 32)
	return rest == "" || rest[0] == '-' && err == nil
}

// newNoteName is the name of a new note of a day, where that is free.
func newNoteName(day edtf.Day) string { return day.String() + "-photos.md" }

// A book of names tells which are taken. Some disks take no heed of capitals.
type names map[string]bool

func (n names) take(name string) { n[strings.ToLower(name)] = true }

func (n names) free(name string) bool { return !n[strings.ToLower(name)] }

// relative returns the path of a file as a note in a folder writes it.
func relative(folder, file string) string {
	up := ""
	for folder != "." && !strings.HasPrefix(file, folder+"/") {
		folder = path.Dir(folder)
		up += "../"
	}
	return up + strings.TrimPrefix(file, strings.TrimPrefix(folder+"/", "./"))
}
