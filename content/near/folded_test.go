package near

import (
	"strings"
	"testing"
)

func TestFolded(t *testing.T) {
	for name, want := range map[string]string{
		"":                    "",
		" \t\n":               "",
		"side back":           "side back",
		"  Side\tBACK \r\n ":  "side back",
		"side\u00a0back":      "side back",
		"side-back":           "side-back",
		"Échancrure du Corps": "échancrure du corps",
	} {
		if got := Folded(name); got != want {
			t.Errorf("Folded(%q) = %q, want %q", name, got, want)
		}
	}
}

// A name that is folded already is not folded again, and comes out the same.
func FuzzFolded(f *testing.F) {
	for _, name := range []string{"", " ", "a", "a b", " a", "a ", "a  b", "A b", "a\tb", "a\u00a0b", "é", "a\x7f"} {
		f.Add(name)
	}
	f.Fuzz(func(t *testing.T, name string) {
		if got, want := Folded(name), strings.ToLower(strings.Join(strings.Fields(name), " ")); got != want {
			t.Errorf("Folded(%q) = %q, want %q", name, got, want)
		}
	})
}
