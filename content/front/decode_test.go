package front

import (
	"fmt"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/content/source"
)

type coat struct {
	head   `noun:"a coat"`
	Stage  stage    `field:"stage"`
	Pieces []piece  `field:"pieces"`
	Sleeve piece    `field:"sleeve"`
	Marks  []string `field:"marks"`
	Length int      `field:"length"`
	Seen   string   // no field of the front matter
}

type head struct {
	Where
	Title string `field:"title"`
}

type stage string

type piece struct {
	Where `noun:"a piece"`
	Name  string            `field:"name,needed,short"`
	Cut   int               `field:"cut"`
	Other map[string]string `field:"*"`
}

type button struct {
	Where `noun:"a button"`
	Name  string `field:"name,needed"`
	Side  string `field:"side,needed"`
}

func readNumber(d *Decoder, n Node) (int, bool) {
	if n.Kind != Text {
		return 99, d.Shape(n, "a number", "write 3")
	}
	i, err := strconv.Atoi(n.Text)
	if err != nil {
		return 99, d.Refuse(n.Span, "not a number", fmt.Sprintf("%q is no number", n.Text), "3")
	}
	return i, true
}

func readOther(d *Decoder, n Node) (map[string]string, bool) {
	out := map[string]string{}
	for _, f := range n.Fields {
		out[f.Key] = f.Value.Text
	}
	return out, true
}

var coats = NewSchema([]Reader{As(Form{Name: "a number", Pattern: "^[0-9]+$"}, readNumber), As(Form{}, readOther)}, coat{}, button{})

func decode(t testing.TB, text string, dst any) []source.Finding {
	t.Helper()
	n, findings := Parse(load(t, text).Whole())
	if !CanDecode(findings) {
		t.Fatalf("%q: %s", text, findings[0].Text)
	}
	return append(findings, coats.Decode(n, dst)...)
}

func TestDecode(t *testing.T) {
	var c coat
	findings := decode(t, `title: The grey coat
stage: sewing
pieces:
  - back
  - {name: front, cut: 2, grain: bias}
  -
sleeve: {name: sleeve, cut: 2}
marks: one alone
length:
`, &c)
	for _, f := range findings {
		t.Errorf("%s: %s", f.Span, f.Text)
	}
	if c.Title != "The grey coat" || c.Stage != "sewing" || c.Sleeve.Cut != 2 || c.Length != 0 {
		t.Errorf("got %+v", c)
	}
	if len(c.Pieces) != 2 || c.Pieces[0].Name != "back" || c.Pieces[1].Cut != 2 || c.Pieces[1].Other["grain"] != "bias" {
		t.Errorf("pieces: %+v", c.Pieces)
	}
	if len(c.Marks) != 1 || c.Marks[0] != "one alone" {
		t.Errorf("marks: %q", c.Marks)
	}
}

func TestWhere(t *testing.T) {
	var c coat
	decode(t, "title: Ünder\nstage: sewing\nlength:\npieces: [back, {cut: 2, name: front}]\n", &c)
	for _, check := range []struct{ what, got, want string }{
		{"a field's name", c.Key("stage").String(), "n.md:2:1"},
		{"a field's value", c.Value("stage").Text(), "sewing"},
		{"the name of a field not given", c.Key("sleeve").String(), "n.md:1:1"},
		{"the value of a field not given", c.Value("sleeve").String(), "n.md:1:1"},
		{"a value that stands for a group", c.Pieces[0].Value("name").Text(), "back"},
		{"within a group", c.Pieces[1].Value("cut").Text(), "2"},
		{"a group", c.Pieces[1].Span.String(), "n.md:4:16"},
	} {
		if check.got != check.want {
			t.Errorf("%s: got %s, want %s", check.what, check.got, check.want)
		}
	}
	if !c.Has("stage") || c.Has("sleeve") || c.Has("length") || !c.Pieces[0].Has("name") || c.Pieces[0].Has("cut") {
		t.Error("Has is wrong")
	}
}

func TestDecodeFaults(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a misspelt field", "stge: sewing", `1:1 no field of a coat is called "stge" [unknown field] did you mean "stage"?`},
		{"a capital", "Stage: sewing", `1:1 no field of a coat is called "Stage" [unknown field] did you mean "stage"?`},
		{"a field like no other", "buttons: 3", `1:1 no field of a coat is called "buttons" [unknown field] the fields are title, stage, pieces, sleeve, marks, length`},
		{"a comma in a value", "sleeve: {name: a, cut: 2}\nstage: x\nsize of: ", `3:1 no field of a coat is called "size of" [unknown field] a value with a comma in it needs quotes inside { }`},
		{"not a Go field", "Seen: x", `1:1 no field of a coat is called "Seen" [unknown field] the fields are title, stage, pieces, sleeve, marks, length`},
		{"a needed field", "pieces:\n  - {cut: 2}", `2:5 a piece needs "name" [needed field] add ` + "`name: ...`"},
		{"a needed field left empty", "pieces:\n  - {name: , cut: 2}", `2:5 a piece needs "name" [needed field] add ` + "`name: ...`"},
		{"a list for a value", "title: [a]", `1:8 a list stands where a single value should [wrong shape] `},
		{"a group for a value", "stage: {a: b}", `1:8 a group of fields stands where a single value should [wrong shape] `},
		{"a list for a group", "sleeve: [a, b]", `1:9 a list stands where a piece should [wrong shape] write it as ` + "`name: ...`"},
		{"a list in a list", "marks: [[a]]", `1:9 a list stands where a single value should [wrong shape] `},
		{"words for the whole", "just words", "1:1 a single value stands where a coat should [wrong shape] write it as `title: ...`"},
		{"a reader's fault", "length: two", `1:9 "two" is no number [not a number] did you mean "3"?`},
		{"a reader's shape", "length: [2]", `1:9 a list stands where a number should [wrong shape] write 3`},
		{"given twice", "length: 1\nlength: 2", `2:1 "length" is given twice [given twice] keep one of the two`},
	} {
		t.Run(c.name, func(t *testing.T) {
			var dst coat
			var got []string
			for _, f := range decode(t, c.text, &dst) {
				line, column := f.Span.Position()
				got = append(got, fmt.Sprintf("%d:%d %s [%s] %s", line, column, f.Text, f.Rule, f.Advice()))
			}
			if diff := cmp.Diff([]string{c.want}, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A maker mends a file once, so all that is wrong must be told at once, and what
// is right be read.
func TestDecodeTellsAll(t *testing.T) {
	var c coat
	findings := decode(t, `titel: x
stage: [sewing]
pieces: [{cut: two}, {name: front, cut: 2}, [a]]
sleeve: {cut: many}
length: long
stage: fitting
`, &c)
	want := []string{
		"6:1 given twice", "1:1 unknown field", "2:8 wrong shape", "3:16 not a number", "3:10 needed field",
		"3:45 wrong shape", "4:15 not a number", "4:9 needed field", "5:9 not a number",
	}
	if diff := cmp.Diff(want, said(findings)); diff != "" {
		t.Error(diff)
	}
	if len(c.Pieces) != 1 || c.Pieces[0].Name != "front" {
		t.Errorf("pieces: %+v", c.Pieces)
	}
	if c.Length != 0 || c.Stage != "" {
		t.Errorf("a value was kept that could not be read: %+v", c)
	}
}

func TestDecodeNeedsAll(t *testing.T) {
	var b button
	if diff := cmp.Diff([]string{"1:1 needed field", "1:1 needed field"}, said(decode(t, "", &b))); diff != "" {
		t.Error(diff)
	}
}

func TestFields(t *testing.T) {
	want := []string{"title", "stage", "pieces", "sleeve", "marks", "length"}
	if diff := cmp.Diff(want, coats.Fields(coat{})); diff != "" {
		t.Error(diff)
	}
}

func TestNewSchemaRefuses(t *testing.T) {
	type nowhere struct {
		Name string `field:"name"`
	}
	type unread struct {
		Where `noun:"a thing"`
		At    float64 `field:"at"`
	}
	for _, root := range []any{nowhere{}, unread{}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%T was taken", root)
				}
			}()
			NewSchema(nil, root)
		}()
	}
}

// A schema is shared by all workers.
func TestDecodeAtOnce(t *testing.T) {
	n, _ := Parse(load(t, "pieces: [back, {name: front, cut: 2}]\n").Whole())
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			for range 100 {
				var c coat
				if findings := coats.Decode(n, &c); len(findings) > 0 || len(c.Pieces) != 2 {
					t.Error("decoded wrong")
					return
				}
			}
		})
	}
	wait.Wait()
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"---\ntitle: Größe\npieces: [back, {name: front, cut: 2}]\n---\nCut.\n",
		"---\r\nä: |\r\n  one\r\nb: 'it''s'\r\n---\r\n",
		"---\na: \"x\\u2028y\"\nb: x\u2028c: y\n---\n",
		"---\na: &x b\nc: *x\nd: !!str e\n? [f]\n: g\n---\n",
		"---\na: >-\n  one\n  two\nb: one\n  two\nc:\n- d\n-\n- {e: , f}\n---\n",
		"---\n%YAML 1.1\n...\na: b\n--- c\n---\n",
		"---\n'a\n b': c\n\"d\": ~\n---\n",
		"\n---\na: [\n---\n", " ---\na: b\n---\n",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		file, findings := source.Load("n.md", []byte(text))
		if len(findings) > 0 {
			return
		}
		within := func(s source.Span, whole source.Span) {
			if s.File != file || s.Start < whole.Start || s.Start > s.End || s.End > whole.End {
				t.Fatalf("%d to %d lies outside %d to %d", s.Start, s.End, whole.Start, whole.End)
			}
			if strings.ToValidUTF8(s.Text(), "") != s.Text() {
				t.Fatalf("%q cuts a character", s.Text())
			}
		}
		parts, findings := Split(file)
		within(parts.Front, file.Whole())
		within(parts.Body, file.Whole())
		for _, part := range []source.Span{parts.Front, file.Whole()} {
			n, more := Parse(part)
			var visit func(Node)
			visit = func(n Node) {
				within(n.Span, part)
				if n.Kind == Text && !n.quoted && n.Span.Text() != n.Text {
					t.Fatalf("%q claims the bytes %q", n.Text, n.Span.Text())
				}
				for _, item := range n.Items {
					visit(item)
				}
				for _, f := range n.Fields {
					within(f.KeySpan, part)
					visit(f.Value)
				}
			}
			visit(n)
			var c coat
			findings = append(findings, more...)
			findings = append(findings, coats.Decode(n, &c)...)
		}
		for _, f := range findings {
			within(f.Span, file.Whole())
			for _, r := range f.Related {
				within(r.Span, file.Whole())
			}
		}
	})
}
