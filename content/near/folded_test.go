package near

import "testing"

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
