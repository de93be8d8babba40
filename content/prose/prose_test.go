package prose

import (
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"hussif/content/source"
)

// front stands before every body under test, so that an offset in the body cannot
// pass for one in the file.
const front = "---\ntitle: Prüfstück\n---\n"

func load(t testing.TB, body string) (*source.File, source.Span) {
	t.Helper()
	f, findings := source.Load("notes/a.md", []byte(front+body))
	if len(findings) > 0 {
		t.Fatalf("%q: %v", body, findings)
	}
	return f, f.Span(len(front), len(f.Data))
}

func readBody(t testing.TB, body string) Doc {
	t.Helper()
	f, span := load(t, body)
	return Read(f, span, Start{})
}

// noSpans compares facts without their places.
var noSpans = cmp.Options{
	cmpopts.IgnoreTypes(source.Span{}),
	cmpopts.EquateEmpty(),
}

func TestOpening(t *testing.T) {
	long := strings.Repeat("backstitch ", 30)
	for _, c := range []struct{ name, body, want string }{
		{"plain", "Cut the lining *today*.\nAll of it.\n\nMore.", "Cut the lining today. All of it."},
		{"after a heading and a list", "# Day\n\n- one\n\nThen `cut`.", "Then cut."},
		{"not a remark", "Next time: a\n\nPrivate: b\n\nOpen.", "Open."},
		{"before a private line", "Open.\nPrivate: b", "Open."},
		{"not a picture", "![back](back.jpg)\n\nThe back.", "The back."},
		{"a picture among words", "See ![the back](back.jpg) now", "See the back now"},
		{"ties", "As in [[a-b]] and [[c|the coat]].", "As in [[a-b]] and the coat."},
		{"escapes", `1\*2 &amp; \&amp; &frac12;`, "1*2 & &amp; ½"},
		{"a comment", "One<!-- waist 29 --> two.", "One two."},
		{"nothing", "", ""},
		{"whole words", long, strings.TrimSpace(strings.Repeat("backstitch ", 18)) + "…"},
		{"one long word", strings.Repeat("ü", 300), strings.Repeat("ü", 200) + "…"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := readBody(t, c.body).Opening; got != c.want {
				t.Errorf("got  %q\nwant %q", got, c.want)
			}
		})
	}
}

// TestShared runs the one parser on many goroutines, for the race detector.
func TestShared(t *testing.T) {
	f, span := load(t, note)
	want := Read(f, span, Start{Taken: []string{"next-a"}})
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for range 20 {
				if diff := cmp.Diff(want, Read(f, span, Start{Taken: []string{"next-a"}}), cmp.Comparer(sameSpan)); diff != "" {
					t.Error(diff)
				}
			}
		})
	}
	group.Wait()
}

func sameSpan(a, b source.Span) bool { return a == b }

// note is about 1.8 kB, the length of an ordinary one.
var note = `Fitted the *second* toile over the [[blue-stays|blue stays]] and two petticoats.

## What moved

The front closes with ` + "`1/4 in`" + ` to spare, see [the first fitting](../striped-jacket/2026-02-14-first-fitting.md#sleeve).
The sleeve binds when the arm is raised.[^1]

| level | was | now |
|-------|----:|----:|
| bust  | 1 in | 3/4 in |
| waist | 3/4 in | 1/4 in |

- [x] mark the new line in **red thread**
- [ ] Next time: cut the sleeve an inch wider (pattern: short-jacket-draft; garment: jacket)
- press the seams open; the iron is hot, mind the fingers

Decided: plain wrist instead of a cuff, because the strip is too narrow.

![Back view, the side seams hang straight](photos/back.jpg "Back")

> The cloth was bought at https://example.org/linen in 2024.

` + strings.Repeat("The lining was cut on the straight grain and basted to the outside before the seams were run up. ", 8) + `

Private: Wren would rather her waist stayed between us.

[^1]: By about half an inch, see [[first-jacket#next-2]].
`

func TestNoteIsOfOrdinaryLength(t *testing.T) {
	if len(note) < 1600 || len(note) > 2000 {
		t.Errorf("the note of the benchmarks has %d bytes", len(note))
	}
}
