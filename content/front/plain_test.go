package front

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
)

// The YAML library is the judge: what is read without it must be what is read by it,
// to the byte.
func judge(t *testing.T, text string) (plain bool) {
	t.Helper()
	file, faults := source.Load("n.md", []byte("head\n"+text))
	if len(faults) > 0 {
		return false
	}
	span := file.Span(len("head\n"), len(file.Data))
	got, plain := plainly(span)
	if !plain {
		return false
	}
	want, findings := parseAny(span)
	if len(findings) > 0 {
		t.Fatalf("%q was read, but %s", text, findings[0].Text)
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(Node{}, source.File{}), cmp.Comparer(func(a, b source.Span) bool { return a == b })); diff != "" {
		t.Fatalf("%q: %s", text, diff)
	}
	return true
}

// plainSamples are front matter that is read without the library.
var plainSamples = []string{
	"date: 2026-03-01\nstage: fitting\nhours: 3.5\n",
	"title: Größe – »neu«\nfor: wren # the wearer\n# all of it\n\nera: 1780/1789\n",
	"measured: {bust girth: 36 3/4 in, waist: 27 1/2 in}\nphotos:\n  - {file: photos/back.jpg, caption: After, alt: Back view; the side}\n",
	"seams:\n  - name: side\n    count: 2\n    joins: [back, front]\n    crosses:\n      bust girth: {now: 2 in, keep: 1/4 in}\n    caught by: [armhole]\n  - {name: sleeve, crosses: {upper arm girth: 5/8 in}}\nlast: yes\n",
	"pieces:\n- back\n-\n- front #not a remark\n- 'it''s'\nmarks: []\nnone: {}\nnext: \"a: b\"\nempty:\nalso: ~\n",
	"decided:\n  - question: \"Which, or what?\"\n    chose: the older one\n    rests on: [plate-1, 'plate-2', [a, {b: c}]]\n",
	"  a: http://b.c/d#e\n  b: -1/4 in\n  c: .5\n  d: 37½\"\n  e: --- f\n  g: it's {so}, [so]?",
	"a: null\nb: [null, ~]\nc: <<\nd:  # nothing\ne:\n  # deeper\n  f: g\n  # between\n",
}

func TestPlainly(t *testing.T) {
	for _, text := range plainSamples {
		if !judge(t, text) {
			t.Errorf("%q was left to the library", text)
		}
	}
}

// What is not plain, or wrong, is the library's.
func TestPlainlyLeaves(t *testing.T) {
	for _, text := range []string{
		"", "# only a remark\n", "a", "- a\n", "a: b\na: c\n", "a: |\n  b\n", "a: b\n  c\n", "a:\n  b\n", "a: [b,\n  c]\n", "a: \"\\u2028\"\n",
		"a: &x b\n", "a: *x\n", "a: !!str b\n", "? a\n: b\n", "a: b: c\n", "a:\tb\n", "a: [b\n", "a: {b}\n", "a: {b: }\n", "a: [b: c]\n", "a: [b,]\n",
		"a: {b: keep it?, c: d}\n", "a: 'b' c\n", "a: 'b\n", "a: [b]c\n", "a: [b]#c\n", " a: b\nc: d\n", "a: b\n- c\n", "a:\n  b: c\n d: e\n",
		"- - a\n", "a:\n  - - b\n", "a:\n  - b\n  c: d\n", "---\na: b\n", "a: b\n...\n", "a: b\n--- c\n", "a: b\r\nc: d\r\n", "a: b\u2028c: d\n",
		"null: a\n", "'a': b\n", "a : b\n", "a: @b\n", "a: %b\n", "%a: b\n", "a: - b\n", "{a: b}\n", "a:\n  -\n    b: c\n", "a: {b: c, b: d}\n",
		"a: " + strings.Repeat("[", 30) + strings.Repeat("]", 30) + "\n", strings.Repeat("a", 300) + ": b\n",
	} {
		if judge(t, text) {
			t.Errorf("%q was read", text)
		}
	}
}

// Joining and cutting what makers write gives what no table thinks of.
func TestPlainlyOnScraps(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	scraps := strings.Split("a|b c|: |:|- |-|, |,|[|]|{|}|\n|\n  |\n    |\n- | |#| #|'|\"|?|~|null|é|---|&|*|!|||>|%|x: y|\nk: v|\\|...|''|\t|<<|=|`|@|½", "|")
	read := 0
	for range 200_000 {
		var b strings.Builder
		if random.IntN(2) == 0 {
			b.WriteString("k: ")
		}
		for range 1 + random.IntN(9) {
			b.WriteString(scraps[random.IntN(len(scraps))])
		}
		if judge(t, b.String()) {
			read++
		}
	}
	if read < 5_000 {
		t.Errorf("no more than %d were plain", read)
	}
}

func FuzzPlainly(f *testing.F) {
	for _, text := range plainSamples {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) { judge(t, text) })
}

func BenchmarkParse(b *testing.B) {
	file, _ := source.Load("n.md", []byte(strings.Join(plainSamples[:4], "")))
	text := strings.ReplaceAll(string(file.Data), "title", "name")
	file, _ = source.Load("n.md", []byte(text))
	for name, parse := range map[string]func(source.Span) (Node, []source.Finding){"plain": Parse, "any": parseAny} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				parse(file.Whole())
			}
		})
	}
}
