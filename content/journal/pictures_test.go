package journal

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestPictures(t *testing.T) {
	j := sound(t, `
-- builds/cap/build.md --
-- builds/cap/2026-03-01.md --
---
photos:
  - {file: photos/a.jpg, alt: Seen from above, caption: The cap, piece: crown, face: no}
  - ../shared/b.png
---
![The **back** seam](photos/c%20d.jpg "Back") and ![again](photos/a.jpg)
`)
	note := record[*Note](t, j, "builds/cap/2026-03-01")
	want := []Picture{
		{Path: "builds/cap/photos/a.jpg", Written: "photos/a.jpg", Alt: "Seen from above", Caption: "The cap", Piece: "crown", Face: No},
		{Path: "builds/shared/b.png", Written: "../shared/b.png"},
		{Path: "builds/cap/photos/c d.jpg", Written: "photos/c d.jpg", Alt: "The back seam", Caption: "Back", InText: true},
		{Path: "builds/cap/photos/a.jpg", Written: "photos/a.jpg", Alt: "again", InText: true},
	}
	got := Pictures(note)
	if diff := cmp.Diff(want, got, values); diff != "" {
		t.Error(diff)
	}
	for i, span := range []string{"photos/a.jpg", "../shared/b.png", "photos/c%20d.jpg", "photos/a.jpg"} {
		if got[i].Span.Text() != span {
			t.Errorf("picture %d is at %q", i, got[i].Span.Text())
		}
	}
}
