package amend

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"go.yaml.in/yaml/v3"

	"hussif/content/front"
)

func session() front.Node {
	return Group(
		front.Field{Key: "date", Value: Text("2026-11-25")},
		front.Field{Key: "over", Value: List("shift", "stays")},
		front.Field{Key: "bust", Value: Text(`36 1/2 in`)},
	)
}

const (
	inBlock = "  - date: 2026-11-25\n    over: [shift, stays]\n    bust: 36 1/2 in\n"
	inFlow  = "{date: 2026-11-25, over: [shift, stays], bust: 36 1/2 in}"
)

// Each page has its place for the new entry marked; everything else must stay, byte
// for byte, also with CR LF and after a byte order mark.
func TestAppend(t *testing.T) {
	for _, c := range []struct{ name, before, after string }{
		{"an empty file", "", "---\nmeasured:\n" + inBlock + "---\n"},
		{"no front matter", "Tall.\n", "---\nmeasured:\n" + inBlock + "---\nTall.\n"},
		{"a body that begins with a blank line", "\n\n  Tall.", "---\nmeasured:\n" + inBlock + "---\n\n\n  Tall."},
		{"empty front matter", "---\n---\nTall.\n", "---\nmeasured:\n" + inBlock + "---\nTall.\n"},
		{"front matter of comments", "---\n# to do\n---\n", "---\n# to do\nmeasured:\n" + inBlock + "---\n"},
		{"no list", "---\ntitle: Wren # who else\nshare: circle\n\n# the end\n---\nTall.",
			"---\ntitle: Wren # who else\nshare: circle\n\n# the end\nmeasured:\n" + inBlock + "---\nTall."},
		{"fields that are all indented", "---\n   title: Wren\n---\n",
			"---\n   title: Wren\n   measured:\n     - date: 2026-11-25\n       over: [shift, stays]\n       bust: 36 1/2 in\n---\n"},
		{"a list without entries", "---\nmeasured:   # none yet\n#  - date: 2026-01-10\n#    waist: 29 in\nshare: self\n---\n",
			"---\nmeasured:   # none yet\n" + inBlock + "#  - date: 2026-01-10\n#    waist: 29 in\nshare: self\n---\n"},
		{"at the end", "---\nmeasured:\n  - date: 2026-01-10\n    waist: 29 in   # snug\n---\nTall.\n",
			"---\nmeasured:\n  - date: 2026-01-10\n    waist: 29 in   # snug\n" + inBlock + "---\nTall.\n"},
		{"amidst fields, with comments of either",
			"---\nmeasured:\n  - date: 2026-01-10\n    waist: 29 in\n    # after lunch\n\n# who may see it\nshare: self\n---\n",
			"---\nmeasured:\n  - date: 2026-01-10\n    waist: 29 in\n    # after lunch\n" + inBlock + "\n# who may see it\nshare: self\n---\n"},
		{"dashes at the very left, values far right", "---\nmeasured:\n-   date:    2026-01-10\n    'waist': \"29 in\"\nshare: self\n---\n",
			"---\nmeasured:\n-   date:    2026-01-10\n    'waist': \"29 in\"\n-   date: 2026-11-25\n    over: [shift, stays]\n    bust: 36 1/2 in\nshare: self\n---\n"},
		{"a dash alone on its line", "---\nmeasured:\n  -\n    date: 2026-01-10\n---\n",
			"---\nmeasured:\n  -\n    date: 2026-01-10\n" + inBlock + "---\n"},
		{"a list behind a key apart", "---\n? measured\n: - date: 2026-01-10\n---\n", "---\n? measured\n: - date: 2026-01-10\n" + inBlock + "---\n"},
		{"an entry with nothing in it", "---\nmeasured:\n  -\nshare: self\n---\n", "---\nmeasured:\n  -\n" + inBlock + "share: self\n---\n"},
		{"entries in brackets", "---\nmeasured:\n  - {date: 2026-01-10, remarks: 'it''s } new'}  # ö\nshare: self\n---\n",
			"---\nmeasured:\n  - {date: 2026-01-10, remarks: 'it''s } new'}  # ö\n  - " + inFlow + "\nshare: self\n---\n"},
		{"a block of text at the end", "---\nmeasured:\n  - date: 2026-01-10\n    remarks: |\n      one\n\n      # two\nshare: self\n---\n",
			"---\nmeasured:\n  - date: 2026-01-10\n    remarks: |\n      one\n\n      # two\n" + inBlock + "share: self\n---\n"},
		{"a block that keeps its blank lines", "---\nmeasured:\n  - date: 2026-01-10\n    remarks: |+\n      one\n\nshare: self\n---\n",
			"---\nmeasured:\n  - date: 2026-01-10\n    remarks: |+\n      one\n\n" + inBlock + "share: self\n---\n"},
		{"a value over several lines", "---\nmeasured:\n  - date: 2026-01-10\n    remarks: one\n      two\n    by: \"j\n      k\"\nshare: self\n---\n",
			"---\nmeasured:\n  - date: 2026-01-10\n    remarks: one\n      two\n    by: \"j\n      k\"\n" + inBlock + "share: self\n---\n"},
		{"an empty list in brackets", "---\nmeasured: [] # none\n---\n", "---\nmeasured: [" + inFlow + "] # none\n---\n"},
		{"a list in brackets", "---\nmeasured: [{date: 2026-01-10, by: the tailor's man}]\n---\n",
			"---\nmeasured: [{date: 2026-01-10, by: the tailor's man}, " + inFlow + "]\n---\n"},
		{"a list in brackets over lines", "---\nmeasured: [\n  {date: 2026-01-10},  # first\n  {date: 2026-02-10}   # no, second\n]\n---\n",
			"---\nmeasured: [\n  {date: 2026-01-10},  # first\n  {date: 2026-02-10},   # no, second\n  " + inFlow + "\n]\n---\n"},
		{"and with a comma at its end", "---\nmeasured: [\n  {date: 2026-01-10},  # first ]\n]\n---\n",
			"---\nmeasured: [\n  {date: 2026-01-10},  # first ]\n  " + inFlow + ",\n]\n---\n"},
		{"and closed on the last line", "---\nmeasured: [{date: 2026-01-10},\n  {date: 2026-02-10}]\n---\n",
			"---\nmeasured: [{date: 2026-01-10},\n  {date: 2026-02-10}, " + inFlow + "]\n---\n"},
		{"one entry without a list", "---\nmeasured: {date: 2026-01-10, by: \"a \\\" }\"} # mine\n---\n",
			"---\nmeasured: [{date: 2026-01-10, by: \"a \\\" }\"}, " + inFlow + "] # mine\n---\n"},
		{"all fields in brackets", "---\n{title: Wren, share: self}\n---\n", "---\n{title: Wren, share: self, measured: [" + inFlow + "]}\n---\n"},
		{"all fields in brackets, with a comma", "---\n{title: Wren,}\n---\n", "---\n{title: Wren,measured: [" + inFlow + "]}\n---\n"},
		{"no fields in brackets", "---\n{}\n---\n", "---\n{measured: [" + inFlow + "]}\n---\n"},
		{"a key without a value in brackets", "---\n{measured: , title: Wren}\n---\n", "---\n{measured: [" + inFlow + "] , title: Wren}\n---\n"},
		{"other fields before and after, quoted", "---\n\"title\": 'Wr''en'\n'measured':\n  - {date: 2026-01-10}\n'share': self\n---\n",
			"---\n\"title\": 'Wr''en'\n'measured':\n  - {date: 2026-01-10}\n  - " + inFlow + "\n'share': self\n---\n"},
		{"blanks after the fences", "--- \ntitle: Ö\n---\t\nTall.\n", "--- \ntitle: Ö\nmeasured:\n" + inBlock + "---\t\nTall.\n"},
	} {
		for _, mark := range []string{"", "\ufeff"} {
			for _, end := range []string{"\n", "\r\n"} {
				if end == "\r\n" && !strings.Contains(c.before, "\n") {
					continue // nothing in it tells how its lines end
				}
				before := mark + strings.ReplaceAll(c.before, "\n", end)
				after := mark + strings.ReplaceAll(c.after, "\n", end)
				got, err := Append("people/wren.md", []byte(before), "measured", session())
				if err != nil {
					t.Errorf("%s: %v", c.name, err)
				} else if diff := cmp.Diff(after, string(got)); diff != "" {
					t.Errorf("%s, line end %q: %s", c.name, end, diff)
				}
			}
		}
	}
}

// A second entry goes below the first that was put in.
func TestAppendAgain(t *testing.T) {
	for _, page := range []string{"Tall.\n", "---\nmeasured: []\n---\n", "---\n{a: b}\n---\n", "---\nmeasured: {date: 2026-01-10}\n---\n"} {
		data := []byte(page)
		for range 3 {
			var err error
			if data, err = Append("people/wren.md", data, "measured", session()); err != nil {
				t.Fatalf("%q: %v", page, err)
			}
		}
		if n := strings.Count(string(data), "2026-11-25"); n != 3 {
			t.Errorf("%q has %d entries:\n%s", page, n, data)
		}
	}
}

func TestAppendRefuses(t *testing.T) {
	for _, c := range []struct{ name, page, want string }{
		{"no YAML", "---\ntitle: Wren\na: b: c\n---\n", "people/wren.md:3: the fields cannot be read"},
		{"a field given twice", "---\nmeasured: []\nmeasured: []\n---\n", `people/wren.md:3: "measured" is given twice`},
		{"an open fence", "---\ntitle: Wren\n", "people/wren.md:1: the front matter opens here and is never closed"},
		{"an entry without a dash", "---\nmeasured:\n  date: 2026-01-10\n---\n", "people/wren.md:3: `measured:` holds one entry without a dash; put `- `"},
		{"a word", "---\nmeasured: none\n---\n", "people/wren.md:2: `measured:` holds a single value where a list should be"},
		{"a word for nothing", "---\nmeasured: ~\n---\n", "people/wren.md:2: `measured:` says \"~\"; take that word out"},
		{"no fields", "---\njust words\n---\n", "people/wren.md:2: the front matter has no fields"},
		{"an alias", "---\nshare: &x self\nby: *x\n---\n", "people/wren.md:2: anchors"},
		{"a zero byte", "Tall.\x00", "people/wren.md:1: a zero byte"},
		{"a group below a key apart", "---\n? measured\n:\n---\n", "people/wren.md:2: an entry cannot be put under `measured:`"},
	} {
		_, err := Append("people/wren.md", []byte(c.page), "measured", session())
		var refusal *Refusal
		if !errors.As(err, &refusal) {
			t.Errorf("%s: %v", c.name, err)
		} else if !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// Whatever is to be written is read back the same, whatever it is that YAML would
// make of it without quotes.
func TestAwkwardWords(t *testing.T) {
	words := []string{
		`36"`, "about 12 in", "95,3 cm", "it's", "a: b", "a #b", "#b", "- a", "? a", "[a", "{a}", "@x", "%x", "`x", "&x", "*x", "!x", "|", ">",
		"null", "~", "", " a ", "a\nb", "a\tb", "yes", "2026-01-10", "½ in", "\u2028", "\u0085", "\ufeff", "'", `"`, `\`, "a:", ":a", "---", "...", "=", "<<", "a,", "1e3",
	}
	for _, page := range []string{"", "---\nmeasured: []\n---\n"} {
		for _, word := range words {
			entry := Group(front.Field{Key: "by", Value: Text(word)}, front.Field{Key: "k" + word, Value: List(word, "z")})
			if _, err := Append("people/wren.md", []byte(page), "measured", entry); err != nil {
				t.Errorf("%q: %v", word, err)
			}
		}
	}
}

func TestYAML(t *testing.T) {
	if diff := cmp.Diff("measured:\n"+inBlock, YAML("measured", session())); diff != "" {
		t.Error(diff)
	}
}

// FuzzAppend has another reader of YAML, which knows nothing of places, compare the
// front matter before and after.
func FuzzAppend(f *testing.F) {
	for _, seed := range []string{
		"", "Tall.\n", "---\n---\n", "---\ntitle: Wren\nmeasured:\n  - date: 2026-01-10 # x\n    remarks: |+\n      a\n\nshare: self\n---\nTall.\n",
		"---\r\nmeasured: [{a: 'b'}, # c\r\n  {a: \"d\"}]\r\n---\r\n", "---\n{measured: {a: b}, c: [d, {e: f}]}\n---\n",
		"---\nmeasured:\n- a: [b,\nc]\n-\n# d\n---\n", "\ufeff---\n'measured' :\n---\n", "---\nmeasured: [ # x\n]\n---\n", "---\n? measured\n: - a\n---\n", "---\n!\n---",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, before string) {
		after, err := Append("people/wren.md", []byte(before), "measured", session())
		if err != nil {
			return
		}
		kept := 0
		for _, c := range after {
			if kept < len(before) && before[kept] == c {
				kept++
			}
		}
		if kept != len(before) {
			t.Fatalf("bytes of %q are gone from %q", before, after)
		}
		old, now := fields(t, before), fields(t, string(after))
		list, ok := now["measured"].([]any)
		if !ok || len(list) == 0 {
			t.Fatalf("no list: %v", now)
		}
		switch was := old["measured"].(type) {
		case nil:
			old["measured"] = []any{list[len(list)-1]}
		case []any:
			old["measured"] = append(was, list[len(list)-1])
		default:
			old["measured"] = []any{was, list[len(list)-1]}
		}
		if diff := cmp.Diff(old, now); diff != "" {
			t.Fatal(diff)
		}
	})
}

// fields has the library alone read the front matter of a page.
func fields(t *testing.T, text string) map[string]any {
	t.Helper()
	p, err := read("people/wren.md", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]any{}
	if err := yaml.Unmarshal([]byte(p.parts.Front.Text()), &out); err != nil {
		t.Skip(err) // it minds what does not matter to a tree, such as a date that is none
	}
	if out == nil {
		out = map[string]any{} // of front matter that is a word for nothing
	}
	return out
}
