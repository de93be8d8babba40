package audience

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/content/source"
)

// party has pages that are seen, and some that are not.
const party = `
-- journal.yaml --
share: public
-- people/ada.md --
-- people/bea.md --
---
share: self
---
-- builds/grey-jacket/build.md --
---
for: ada
---
# Cut out

Next time: cut it wider.

Private: Next time: hide this.
-- builds/grey-jacket/2026-03-01-fitting.md --
---
photos: [{file: shown.png, alt: a, face: no}, {file: face.png, alt: b, face: yes}]
---
-- builds/secret-gown/build.md --
---
for: bea
---
-- techniques/piping.md --
-- builds/grey-jacket/shown.png --
-- builds/grey-jacket/face.png --
-- notes/2026-04-01-all.md --
`

func shareText(t testing.TB, who journal.Audience, body string) (string, bool) {
	t.Helper()
	f := archive(t, party).with("notes/2026-04-01-all.md", "---\n---\n"+body)
	s := f.share(t, who)
	_, text, _ := strings.Cut(string(s.Folder.Texts["notes/2026-04-01-all.md"]), "\n---\n")
	return text, len(s.Cut) == 0
}

func TestWhatIsHiddenIsCutOutOfATextCleanly(t *testing.T) {
	for _, c := range []struct{ written, want string }{
		{"One.\n\nTwo.\n", "One.\n\nTwo.\n"},
		{"One.\n\nPrivate: x\n\nTwo.\n", "One.\n\n\nTwo.\n"},
		{"One.\nPrivate: x\ny\nNext time: two\n", "One.\nNext time: two\n"},
		{"- one\n- Private: x\n  - y\n- two\n", "- one\n- two\n"},
		{"- Private: x\n", ""},
		{"1. Private: x\n2. two\n3. three\n", "1. two\n3. three\n"},
		{"7. one\n8. Private: x\n9. three\n", "7. one\n9. three\n"},
		{"> one\n> Private: x\n> y\n\nTwo.\n", "> one\n\nTwo.\n"},
		{"Private: x\n```\ny\n```\n\nTwo.\n", "\nTwo.\n"},
		{"Private: x\n| a |\n|---|\n| b |\n\nTwo.\n", "\nTwo.\n"},
		{"- Private: x\n\n  y\n  ===\n- two\n", "- two\n"},
		{"One.[^1]\n\nPrivate: x[^2]\n\n[^1]: a\n\n[^2]: y\n", "One.[^1]\n\n\n[^1]: a\n\n"},
		{"One [[secret-gown]] two.\n", "One " + Elsewhere + " two.\n"},
		{"One [[builds/secret-gown|the gown]] two.\n", "One " + Elsewhere + " two.\n"},
		{"One [the *gown*](../builds/secret-gown/build.md \"a title\") two.\n", "One " + Elsewhere + " two.\n"},
		{"One [a](<../people/bea.md>) two, [b](../people/ada.md).\n", "One " + Elsewhere + " two, [b](../people/ada.md).\n"},
		{"[[grey-jacket#next-1]] and [[grey-jacket#cut-out]]\n", "[[grey-jacket#next-cut-wider]] and [[grey-jacket#cut-out]]\n"},
		{"| a |\n|---|\n| [[secret-gown\\|x]] |\n", "| a |\n|---|\n| " + Elsewhere + " |\n"},
		{"One ![x](../builds/grey-jacket/face.png \"y\") two.\n", "One  two.\n"},
		{"One.\n\n![x](../builds/grey-jacket/face.png)\n\nTwo.\n", "One.\n\n\nTwo.\n"},
		{"- ![x](../builds/grey-jacket/face.png)\n- two\n", "- two\n"},
		{"![x](../builds/grey-jacket/shown.png)\n", "![x](../builds/grey-jacket/shown.png)\n"},
		{"Next time: one (person: bea; technique: piping).\n", "Next time: one.\n"},
		{"Next time: one (technique: piping)\n", "Next time: one (technique: piping)\n"},
		{"One.\n\n```work spacing\nlength: 13 in\n```\n\nTwo.\n", "One.\n\n\nTwo.\n"},
		{"- ~~~ work spacing\n  length: 13 in\n  ~~~\n- two\n", "- two\n"},
		{"One\r\n\r\nPrivate: x\r\n\r\nTwo\r\n", "One\r\n\r\n\r\nTwo\r\n"},
		{"Circle: one\n", "Circle: one\n"},
		{"Decided: one\n- **private:** x\n- two\n", "Decided: one\n- two\n"},
	} {
		got, whole := shareText(t, journal.Circle, c.written)
		if got != c.want || !whole {
			t.Errorf("%q: left %q, want %q; whole %t", c.written, got, c.want, whole)
		}
	}
}

func TestWhatIsForTheCircleIsCutForThePublic(t *testing.T) {
	for _, c := range []struct{ written, want string }{
		{"One.\n\nCircle: x\ny\n\nTwo.\n", "One.\n\n\nTwo.\n"},
		{"- one\n- **Circle:** x\n", "- one\n"},
		{"    Circle: in code\n", "    Circle: in code\n"},
		{"One.\n\n## Circle: x\n", "One.\n\n## Circle: x\n"},
		{"Circle skirts: r is C over 2 pi.\n", "Circle skirts: r is C over 2 pi.\n"},
	} {
		if got, whole := shareText(t, journal.Public, c.written); got != c.want || !whole {
			t.Errorf("%q: left %q, want %q; whole %t", c.written, got, c.want, whole)
		}
	}
}

// Where a secret cannot be cut out cleanly more is left out, never less.
func TestWhatCannotBeCutCleanlyTakesMoreWithIt(t *testing.T) {
	for _, written := range []string{
		"- - Private: secret\n  - b\n\nTwo.\n",
		"One [the gown][g] two.\n\n[g]: ../builds/secret-gown/build.md\n\nTwo.\n",
		"* a\n\n  1. Private: secret\n     > b\n",
		"Text [[secret-gown|a\nsecret]] more.\n",
		"[![a](../builds/grey-jacket/face.png)](../people/bea.md)\n",
	} {
		got, _ := shareText(t, journal.Circle, written)
		file, _ := source.Load("x.md", []byte(got))
		doc := prose.Read(file, file.Whole(), prose.Start{})
		if strings.Contains(got, "Private") || strings.Contains(got, "secret") && !strings.HasPrefix(got, "\n") && !strings.Contains(got, "[g]:") || len(doc.Pictures) > 0 {
			t.Errorf("%q: left %q", written, got)
		}
		for _, l := range doc.Links {
			t.Errorf("%q: there is still a link to %s", written, l.To)
		}
	}
}

// FuzzText joins what may stand in a text at random, secrets among it: none is read
// afterwards, and no link or picture that is hidden is left.
func FuzzText(f *testing.F) {
	for seed := range uint64(120) {
		f.Add(seed)
	}
	bits := []string{
		"Private: SECRET", "private: SECRET\nSECRET", "- **Private:** SECRET\n  SECRET", "One.", "- one", "  two", "> three", "1. four", "2. five",
		"Next time: six", "Decided: seven", "```\neight\n```", "# nine", "| a |\n|---|\n| b |", "[[secret-gown|SECRET]]",
		"ten [SECRET](../people/bea.md)", "![SECRET](../builds/grey-jacket/face.png)", "eleven[^1]", "Private: SECRET[^2]", "[^1]: twelve", "[^2]: SECRET",
		"> - Private: SECRET", "thirteen (person: bea)", "Next time: fourteen (person: bea)", "[[grey-jacket|the jacket]]", "    fifteen", "***", "<b>sixteen</b>", "- [ ] Private: SECRET",
		"```work spacing\nlength: SECRET\n```", "[SECRET][g]", "[g]: ../people/bea.md",
	}
	joins := []string{"\n", "\n\n", "\n", " ", "\n  ", "\n> ", "\r\n"}
	f.Fuzz(func(t *testing.T, seed uint64) {
		random := rand.New(rand.NewPCG(seed, 7))
		var b strings.Builder
		for range 2 + random.IntN(12) {
			b.WriteString(bits[random.IntN(len(bits))] + joins[random.IntN(len(joins))])
		}
		body := b.String()
		file, _ := source.Load("x.md", []byte(body))
		doc := prose.Read(file, file.Whole(), prose.Start{})
		secret := false
		for _, r := range doc.Remarks {
			secret = secret || r.Private
		}
		j := archive(t, party).with("notes/2026-04-01-all.md", "---\n---\n"+body)
		if !j.sound(t) {
			return
		}
		text, _ := shareText(t, journal.Circle, body)
		after, _ := source.Load("x.md", []byte(text))
		left := prose.Read(after, after.Whole(), prose.Start{})
		for _, r := range left.Remarks {
			if r.Private {
				t.Errorf("%q: private is left in %q", body, text)
			}
		}
		for _, l := range left.Links {
			if strings.Contains(l.To, "secret") || strings.Contains(l.To, "bea") {
				t.Errorf("%q: a link to %s is left in %q", body, l.To, text)
			}
		}
		for _, w := range left.Works {
			t.Errorf("%q: the worksheet %s is left in %q", body, w.Name, text)
		}
		for _, p := range left.Pictures {
			t.Errorf("%q: the picture %s is left in %q", body, p.To, text)
		}
		if fmt.Sprint(left) != "" && !secret && !strings.Contains(body, "secret-gown") && !strings.Contains(body, "bea") && !strings.Contains(body, "face") && len(doc.Works) == 0 && text != body {
			t.Errorf("%q: nothing is hidden in it, and left is %q", body, text)
		}
	})
}
