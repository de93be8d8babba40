package fit

import (
	"testing"

	"hussif/content/journal"
)

// A session is one session, in a note that both names the wearer and is of a build
// of hers.
func TestASessionIsFoundOnce(t *testing.T) {
	j := open(t, `
-- people/wren.md --
-- builds/jacket/build.md --
---
for: wren
---
-- builds/jacket/2026-02-14.md --
---
body: [{of: wren, bust girth: 36 in}, {bust girth: 37 in}]
---
`)
	if got := Sessions(j, j.Person(journal.Ref{To: "wren"})); len(got) != 2 || got[1].From.Entry != 1 {
		t.Errorf("got %+v", got)
	}
}
