package lesson

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
)

// Five jackets: the first two are made, of which the second remakes the first;
// three are to come.
const life = `
-- people/wren.md --
---
next time: measure her over the new stays
---
-- patterns/draft.md --
---
next time: true the shoulder
---
-- patterns/other.md --
-- techniques/piping.md --
-- techniques/gauging.md --
-- builds/first/build.md --
---
for: wren
garment: jacket
pattern: draft
techniques: piping
next time: ask for the cuffs sooner
---
-- builds/first/2024-03-01-cut.md --
---
stage: cutting
next time:
  - cut the sleeve wider
  - {do: cord thinner, technique: piping, pattern: other}
  - {do: cut the peplum longer, pattern: other, technique: gauging}
---
-- builds/first/2024-05-01-worn.md --
---
stage: worn
---
Next time: face the hem.
-- builds/second/build.md --
---
garment: jacket
pattern: draft
remakes: first
carries: first/2024-03-01-cut#next-cut-sleeve-wider
set aside: [{note: "first/2024-05-01-worn#next-1", because: it is too heavy}]
---
-- builds/second/2025-02-01-plans.md --
---
stage: planning
---
Next time: draw it twice.
-- builds/second/2025-03-01-cut.md --
---
stage: cutting
set aside: [{note: first#next-ask-cuffs-sooner, because: there are none}]
---
-- builds/third/build.md --
---
pattern: draft
---
-- builds/piped/build.md --
---
techniques: piping
remakes: second
---
-- builds/piped/2026-01-01-begun.md --
---
stage: cutting
techniques: gauging
carries: [first/2024-03-01-cut#next-cut-sleeve-wider, "first#next-ask-cuffs-sooner"]
---
Next time: baste it.
-- builds/plain/build.md --
---
for: wren
garment: gown
---
-- builds/plain/2026-02-01-begun.md --
-- notes/2026-04-01-paper.md --
---
carries: [draft#next-true-shoulder]
---
`

func find(t *testing.T, list List, text string) Lesson {
	t.Helper()
	for _, l := range list.All {
		if strings.HasPrefix(l.Text, text) {
			return l
		}
	}
	t.Fatalf("no lesson %q", text)
	panic("unreached")
}

func TestAnswers(t *testing.T) {
	list := Gather(journaltest.Open(t, life))
	for text, want := range map[string]string{
		"cut the sleeve wider":     "carried: carried by builds/second; carried by builds/piped/2026-01-01-begun on 2026-01-01",
		"face the hem":             "set aside: set aside by builds/second, it is too heavy",
		"ask for the cuffs sooner": "carried: set aside by builds/second/2025-03-01-cut on 2025-03-01, there are none; carried by builds/piped/2026-01-01-begun on 2026-01-01",
		"true the shoulder":        "carried: carried by notes/2026-04-01-paper on 2026-04-01",
		"cord thinner":             "open: ",
	} {
		l := find(t, list, text)
		var said []string
		for _, a := range l.Answers {
			line := fmt.Sprintf("%s by %s", a.State, a.From)
			if a.Day != 0 {
				line += " on " + a.Day.String()
			}
			if a.Because != "" {
				line += ", " + a.Because
			}
			said = append(said, line)
		}
		if got := string(l.State()) + ": " + strings.Join(said, "; "); got != want {
			t.Errorf("%s\ngot  %s\nwant %s", text, got, want)
		}
	}
}

func TestOpenFor(t *testing.T) {
	j := journaltest.Open(t, life)
	list := Gather(j)
	for _, test := range []struct {
		build string
		want  []string
	}{
		{"first", nil}, // begun before anything was written elsewhere; the pattern's own is answered
		// Its own set aside, its own carried; what other patterns are for comes by the line.
		{"second", []string{"cut the peplum longer", "cord thinner"}},
		// What the second carried is answered for the pattern; what it set aside is not.
		{"third", []string{"draw it twice.", "face the hem.", "ask for the cuffs sooner"}},
		// From the line, though it is cut from no pattern, and by the technique of a note.
		{"piped", []string{"draw it twice.", "face the hem.", "cord thinner", "cut the peplum longer"}},
		{"plain", nil}, // the wearer alone is no way to a lesson
	} {
		var got []string
		open, all := list.OpenFor(j.Build(journal.Ref{To: test.build}), 10)
		if first, same := list.OpenFor(j.Build(journal.Ref{To: test.build}), 1); same != all || len(first) != min(all, 1) {
			t.Errorf("%s has %d open, but %d with the first alone", test.build, all, same)
		}
		for _, l := range open {
			got = append(got, l.Text)
		}
		slices.Sort(got)
		slices.Sort(test.want)
		if !slices.Equal(got, test.want) {
			t.Errorf("%s has open %q, want %q", test.build, got, test.want)
		}
	}
}

func TestStateFor(t *testing.T) {
	list := Gather(journaltest.Open(t, life))
	for _, test := range []struct {
		text string
		id   journal.ID
		want State
	}{
		{"cut the sleeve wider", "patterns/draft", Carried},
		{"cut the sleeve wider", "people/wren", Open}, // no later build for her
		{"cut the sleeve wider", "builds/third", Carried},
		{"cut the sleeve wider", "builds/plain", Open},
		{"cut the sleeve wider", "builds/first", Carried}, // where it was written: anywhere
		{"face the hem", "builds/second", SetAside},
		{"face the hem", "builds/third", Open},
		{"face the hem", "patterns/draft", SetAside},
		{"ask for the cuffs sooner", "patterns/draft", SetAside}, // carried only by one of no pattern
		{"ask for the cuffs sooner", "techniques/piping", Carried},
		{"true the shoulder", "builds/plain", Carried}, // work of no build answers for all
		{"measure her", "people/wren", Open},
	} {
		if got := list.StateFor(find(t, list, test.text), test.id); got != test.want {
			t.Errorf("%q is %s for %s, want %s", test.text, got, test.id, test.want)
		}
	}
	l := find(t, list, "cut the sleeve wider")
	if got := list.StateForGarment(l, "Jacket"); got != Carried {
		t.Errorf("for jackets it is %s", got)
	}
	if got := list.StateForGarment(l, "gown"); got != Open {
		t.Errorf("for gowns it is %s", got)
	}
}

// The last day has the last word, and of one day what is carried.
func TestLastWord(t *testing.T) {
	for _, test := range []struct{ name, build, first, second, want string }{
		{"later set aside", "", "carries: hem#next-1", "set aside: [{note: hem#next-1, because: x}]", "set aside"},
		{"later carried", "", "set aside: [{note: hem#next-1, because: x}]", "carries: hem#next-1", "carried"},
		{"the build's own page is no day", "set aside: [{note: hem#next-1, because: x}]", "carries: hem#next-1", "", "carried"},
		{"both on one page", "{carries: hem#next-1, set aside: [{note: hem#next-1, because: x}]}", "", "", "carried"},
	} {
		list := Gather(journaltest.Open(t, "-- patterns/hem.md --\nNext time: face it.\n-- builds/b/build.md --\n---\n"+test.build+
			"\n---\n-- builds/b/2026-01-01.md --\n---\n"+test.first+"\n---\n-- builds/b/2026-01-02.md --\n---\n"+test.second+"\n---\n"))
		l := list.All[0]
		if len(l.Answers) != 1 || string(l.State()) != test.want {
			t.Errorf("%s: %+v", test.name, l.Answers)
		}
		if a, ok := l.By("builds/b"); !ok || string(a.State) != test.want {
			t.Errorf("%s: by the build %+v", test.name, a)
		}
	}
}

func TestCountOpen(t *testing.T) {
	list := Gather(journaltest.Open(t, life))
	for _, id := range []journal.ID{"patterns/draft", "techniques/piping", "people/wren", "builds/first", "builds/third", "builds/nothing"} {
		want := 0
		for _, l := range list.For(id) {
			if list.StateFor(l, id) == Open {
				want++
			}
		}
		if got := list.CountOpen(id); got != want {
			t.Errorf("%s has %d open, want %d", id, got, want)
		}
	}
}
