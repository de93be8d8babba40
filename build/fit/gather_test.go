package fit

import (
	"testing"
	"testing/fstest"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
)

// An ease that cannot be read is not an ease of nothing.
func TestUnreadEase(t *testing.T) {
	for _, ease := range []string{"bust girth: 1 to 0 in", "bust girth: {ease: an inch, accepts: ample}"} {
		j, findings, err := journal.Open(fstest.MapFS{
			"people/wren.md":              {Data: []byte("---\nmeasured: [{date: 2026-01-10, bust girth: 36 in}]\n---\n")},
			"builds/jacket/build.md":      {Data: []byte("---\nfor: wren\ngarment: jacket\nfit:\n  " + ease + "\n---\n")},
			"builds/jacket/2026-02-14.md": {Data: []byte("---\nmeasured: {bust girth: 35 in}\n---\n")},
			"journal.yaml":                {Data: []byte("unit: in\nease: {jacket: {bust girth: 1 in}}\n")},
		})
		if err != nil || len(findings) == 0 {
			t.Fatal(findings, err)
		}
		table := Of(j, j.Builds()[0], day("2026-03-01"))
		if r := table.Rows[0]; r.Verdict != UnreadEase || r.Words(inches) != "1 in less than the body, and the ease wanted cannot be read" {
			t.Errorf("%s: %s", ease, r.Words(inches))
		}
		if got := table.Missed[0].Words(); got != "put right the ease wanted: bust girth" {
			t.Errorf("%s: %s", ease, got)
		}
	}
}

// A session is one session, in a note that both names the wearer and is of a build
// of hers.
func TestASessionIsFoundOnce(t *testing.T) {
	j := journaltest.Open(t, `
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
