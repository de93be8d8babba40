package output

import (
	"strings"
	"testing"
)

// What stands in a mark is not trusted: whatever it is, it names no file outside the
// folder, and none twice.
func FuzzParseMark(f *testing.F) {
	f.Add([]byte(`{"version":1,"files":[{"path":"index.html","size":3,"sum":"00","modified":1}]}`))
	for _, path := range []string{"../x", "/etc/passwd", `a\\..\\b`, "a/../../b", "C:/x", "a//b", ".", "", "con", "a\u0000b", "a:b", ".git/config"} {
		f.Add([]byte(`{"version":1,"files":[{"path":"` + path + `"}]}`))
	}
	f.Add([]byte(`{"version":2}`))
	f.Add([]byte(`{"version":1}{"version":1}`))
	f.Add([]byte(strings.Repeat("[", 20_000)))
	f.Fuzz(func(t *testing.T, text []byte) {
		m, err := parseMark(text)
		if err != nil {
			return
		}
		seen := make(map[string]bool)
		for _, e := range m.Files {
			if strings.HasPrefix(e.Path, "/") || strings.ContainsAny(e.Path, `\:`+"\x00") || seen[e.Path] {
				t.Errorf("took %q", e.Path)
			}
			for _, part := range strings.Split(e.Path, "/") {
				if part == "" || part == "." || part == ".." {
					t.Errorf("took %q", e.Path)
				}
			}
			seen[e.Path] = true
		}
	})
}
