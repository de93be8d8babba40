package fold

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The widths of letters are those of Unicode Standard Annex #11; that combining
// marks and joined characters take the columns of one is by Annex #29.
func TestWidth(t *testing.T) {
	for text, want := range map[string]int{
		"":                        0,
		"jacket":                  6,
		"37½″":                    4,
		"着物":                      4, // wide
		"ﾊｵﾘ":                     3, // halfwidth
		"Ａ４":                      4, // fullwidth
		"e\u0301toffe":            6, // e with a combining acute
		"한복":                      4,
		"\u1112\u1161\u11ab":      2, // the same syllable as 한, from its parts
		"👩‍🎨":                     2, // two characters joined into one
		"\x1b[1mbold\x1b[0m":      4,
		"\x1b[1;31merror\x1b[0m:": 6,
	} {
		if got := Width(text); got != want {
			t.Errorf("%q takes %d columns, want %d", text, got, want)
		}
	}
}

func TestLines(t *testing.T) {
	for _, c := range []struct {
		name  string
		text  string
		width int
		hang  string
		want  []string
	}{
		{"short enough", "let out side", 12, "  ", []string{"let out side"}},
		{"between words", "let out the side seam", 12, "  ", []string{"let out the", "  side seam"}},
		{"an indented line", "    let out side", 12, "      ", []string{"    let out", "      side"}},
		{"wide blanks are kept within a line", "a  b  c  d", 7, "", []string{"a  b  c", "d"}},
		{"a figure stays with its fraction", "short by 28 1/4 in here", 12, "", []string{"short by", "28 1/4 in", "here"}},
		{"a figure stays with its unit", "in 7 h, 34 in in all", 6, "", []string{"in", "7 h,", "34 in", "in all"}},
		{"a number of a list does not", "plan 2 inverted", 8, "", []string{"plan 2", "inverted"}},
		{"no terminal", "let out the side seam", 0, "", []string{"let out the side seam"}},
		{"a name stays whole", "see grey-wool-jacket for more", 18, "", []string{"see", "grey-wool-jacket", "for more"}},
		{"a path longer than a line", "in builds/grey-wool-jacket/photos now", 20, "", []string{"in", "builds/grey-wool-jacket/photos", "now"}},
		{"wide letters have no blanks", "羽織の袖を直す", 8, "", []string{"羽織の袖", "を直す"}},
		{"no mark is parted from its letter", "か\u3099か\u3099か\u3099", 4, "", []string{"か\u3099か\u3099", "か\u3099"}},
		{"colour takes no column", "\x1b[1mlet out\x1b[0m side", 12, "", []string{"\x1b[1mlet out\x1b[0m side"}},
		{"more indent than there is room", "            side seam", 8, "", []string{"    side", "seam"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, Lines(c.text, c.width, c.hang)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestLongest(t *testing.T) {
	for text, want := range map[string]int{"": 0, "side back": 4, "12 3/4 in est.": 9, "a 羽織": 2, "builds/x": 8} {
		if got := Longest(text); got != want {
			t.Errorf("%q needs %d columns, want %d", text, got, want)
		}
	}
}

func TestCut(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  string
	}{
		{"title: Sleeves", 14, "title: Sleeves"}, {"title: Sleeves", 10, "title: Sl…"}, {"羽織の袖", 6, "羽織…"}, {"cafe\u0301s", 4, "caf…"},
	} {
		if got := Cut(c.text, c.width); got != c.want {
			t.Errorf("%q cut to %d columns is %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

func TestHang(t *testing.T) {
	for line, want := range map[string]int{
		"short by 1 in": 2, "  side: 1 in": 4, "  - cut wider": 4, "  [ ] 2. armhole": 9, "  [ ] sleeve": 6, "12. side": 4, "  fit    how it fits": 9,
	} {
		if got := len(Hang(line)); got != want {
			t.Errorf("%q hangs by %d, want %d", line, got, want)
		}
	}
}

func TestParagraphs(t *testing.T) {
	got := Paragraphs("check reads every\nfile of a journal.\n\n  an example that is long\n\nAnd more.", 20)
	want := []string{"check reads every", "file of a journal.", "", "  an example that is", "    long", "", "And more."}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// FuzzLines keeps every character that is no blank, in order, and lets no line
// grow too wide.
func FuzzLines(f *testing.F) {
	f.Add("let out side: at natural waist girth", 12)
	f.Add("羽織 の袖e\u0301を", 3)
	f.Add("  [ ] 1. builds/grey-wool-jacket/photos/a-long-name.jpg", 10)
	f.Fuzz(func(t *testing.T, text string, width int) {
		if width < 2 || width > 300 || strings.ContainsAny(text, "\x1b\n\r\v\f\u0085\u2028\u2029\t") {
			return
		}
		lines := Lines(text, width, "  ")
		bare := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got := strings.Join(lines, ""); bare(got) != bare(text) {
			t.Fatalf("%q came out as %q", text, lines)
		}
		for _, line := range lines {
			// What may not be broken may be wider than a line.
			indent := len(text) - len(strings.TrimLeft(text, " "))
			if Width(line) > width && Width(line) > max(indent, 2)+Longest(text) {
				t.Errorf("%q takes %d columns of %d", line, Width(line), width)
			}
		}
	})
}
