package near

import "testing"

func TestUsual(t *testing.T) {
	for _, c := range []struct {
		names []string
		want  string
	}{
		{nil, ""},
		{[]string{"Back lacing"}, "Back lacing"},
		{[]string{"back lacing", "Back lacing", "back  lacing "}, "back lacing"},
		{[]string{"Back lacing", "back lacing"}, "Back lacing"},
	} {
		if got := Usual(c.names); got != c.want {
			t.Errorf("Usual(%q) is %q, want %q", c.names, got, c.want)
		}
	}
}
