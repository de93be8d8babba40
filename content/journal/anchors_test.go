package journal

import (
	"slices"
	"strings"
	"testing"
)

func TestAnchor(t *testing.T) {
	j := sound(t, linked+`
-- builds/gown/build.md --
---
next time: [cut the skirt longer, 7, "2"]
---
## Next steps

Next time: cut the skirt longer.

Private: not for others

- Private: x
  - Next time: keep this hidden

Next time: press it.
`)
	gown := record[*Build](t, j, "builds/gown")
	fitting := record[*Note](t, j, "builds/grey-jacket/2026-03-01-fitting")
	for _, c := range []struct {
		in            Record
		written, want string // "" where there is no such part
	}{
		{gown, "next-1", "next-cut-skirt-longer"},
		{gown, "next-2", "next-note-7"},
		{gown, "next-3", "next-note-2"},
		{gown, "next-4", "next-cut-skirt-longer-2"},
		{gown, "next-5", "next-press"},
		{gown, "next-6", ""},
		{gown, "next-0", ""},
		{gown, "next-99999999999999999999", ""},
		{gown, "decided-1", ""},
		{gown, "next-cut-skirt-longer-2", "next-cut-skirt-longer-2"},
		{gown, "next-keep-hidden", ""},
		{gown, "next-steps", "heading-next-steps"},
		{gown, "heading-next-steps", "heading-next-steps"},
		{fitting, "decided-1", "decided-keep-cuffs"},
		{fitting, "decided-2", "decided-no-collar"},
		{fitting, "", ""},
	} {
		got, ok := Anchor(c.in, c.written)
		if ok != (c.want != "") || ok && got != c.want || !ok && got != c.written {
			t.Errorf("%s#%s means %q, %t; want %q", c.in.Head().ID, c.written, got, ok, c.want)
		}
	}
}

// A note of the front matter keeps its anchor wherever another is put in, and so
// do those of the text.
func TestAnchorsStay(t *testing.T) {
	notes := []string{"cut it longer", "line the sleeve", "3/4 in less", "keep the cuffs"}
	anchors := func(front, text []string) []string {
		archive := "-- builds/cap/2026-03-01.md --\n---\n"
		for _, field := range []string{"next time", "decided"} {
			archive += field + ": [" + strings.Join(front, ", ") + "]\n"
		}
		archive += "---\n"
		for _, words := range text {
			archive += "Next time: " + words + ".\n\nDecided: " + words + ".\n\n"
		}
		return Anchors(record[*Note](t, sound(t, archive), "builds/cap/2026-03-01"))
	}
	for split := range len(notes) + 1 {
		front, text := notes[:split], notes[split:]
		before := anchors(front, text)
		for at := range len(notes) + 1 {
			var after []string
			if at <= split {
				after = anchors(slices.Insert(slices.Clone(front), at, "press it"), text)
			} else {
				after = anchors(front, slices.Insert(slices.Clone(text), at-split, "press it"))
			}
			want := append(slices.Clone(before), "next-press", "decided-press")
			slices.Sort(want)
			if slices.Sort(after); !slices.Equal(want, after) {
				t.Fatalf("with another at %d of %d and %d: %q, want %q", at, len(front), len(text), after, want)
			}
		}
	}
}

func TestName(t *testing.T) {
	j := sound(t, linked)
	for id, want := range map[ID]string{
		"people/wren": "wren", "materials/piping": "materials/piping", "builds/grey-jacket": "grey-jacket",
		"builds/cap/2026-03-01-fitting": "builds/cap/2026-03-01-fitting",
	} {
		if got := j.Name(record[Record](t, j, id)); got != want {
			t.Errorf("%s is called %q, want %q", id, got, want)
		}
	}
}
