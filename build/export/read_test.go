package export

import (
	"bytes"
	"strconv"
	"strings"
	"testing"

	"hussif/content/source"
)

const sound = `{
 "hussif_circle": 1,
 "day": "2026-03-01",
 "maker": "Ada",
 "builds": [
  {
   "id": "builds/jacket",
   "page": "builds/jacket.html",
   "title": "Striped jacket",
   "era": {"edtf": "178X", "words": "1780s"},
   "state": "under way",
   "hours": 3.5,
   "patterns": ["patterns/draft"],
   "about": "<p>Cut <em>long</em>.</p>",
   "fit": {"rows": [{"measure": "bust girth", "verdict": "short", "words": "short"}]},
   "photos": [{"file": "pictures/0123456789ab-1600.jpg", "alt": "Seen from behind"}]
  }
 ],
 "patterns": [{"id": "patterns/draft", "page": "patterns/draft.html", "title": "Draft"}]
}
`

// print writes findings as a person sees them.
func print(t testing.TB, found []source.Finding) string {
	t.Helper()
	var b bytes.Buffer
	if err := source.Print(&b, found, source.Palette{}); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestReadWhatWasWritten(t *testing.T) {
	log, found := Read(Path, []byte(sound))
	if len(found) > 0 {
		t.Fatal(print(t, found))
	}
	text, err := Write(*log)
	if err != nil {
		t.Fatal(err)
	}
	again, found := Read(Path, text)
	if len(found) > 0 {
		t.Fatal(print(t, found))
	}
	more, err := Write(*again)
	if err != nil || string(more) != string(text) {
		t.Errorf("%v\n%s\n%s", err, text, more)
	}
}

// TestWriteLeavesWhatItIsGiven: lists of a log may be those of a journal.
func TestWriteLeavesWhatItIsGiven(t *testing.T) {
	tools := []string{strings.Repeat("a", longestWord+1)}
	if _, err := Write(Log{Day: "2026-03-01", Techniques: []Technique{{ID: "a", Page: "a.html", Title: "A", Tools: tools}}}); err != nil {
		t.Fatal(err)
	}
	if len(tools[0]) != longestWord+1 {
		t.Errorf("a tool of %d letters is left", len(tools[0]))
	}
}

func TestReadRefuses(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		{"no JSON", `"maker": "Ada",`, `"maker": "Ada"`, "circle.json:5:2: error: this is no JSON"},
		{"cut short", sound[len(sound)/2:], "", "the file breaks off here"},
		{"another file", `"hussif_circle": 1,`, ``, "this is nothing that `hussif site --for circle` wrote"},
		{"a later version", `"hussif_circle": 1,`, `"hussif_circle": 2,`, "circle.json:2:19: error: this is of version 2, and this hussif knows version 1 [not a circle's log]\n  2 |  \"hussif_circle\": 2,\n    |                   ^\n    | bring the older"},
		{"a field misspelt", `"title": "Striped`, `"tilte": "Striped`, "circle.json:9:4: error: there is no field \"tilte\" here [not a circle's log]\n  9 |    \"tilte\": \"Striped jacket\",\n    |    ^^^^^^^\n    | did you mean \"title\"?"},
		{"a field missing", `"title": "Striped jacket",`, ``, "circle.json:6:3: error: the field \"title\" is missing"},
		{"another type", `"hours": 3.5`, `"hours": "3.5"`, "circle.json:12:13: error: this is a value of type string, and should be of type number"},
		{"too many hours", `"hours": 3.5`, `"hours": 1e300`, "12:13: error: this is more than 100000"},
		{"no such state", `"under way"`, `"finishd"`, "11:13: error: finishd is none of planned, under way, finished, waiting for repair, taken apart, gone [not a circle's log]\n  11 |    \"state\": \"finishd\",\n     |             ^^^^^^^^^\n     | did you mean \"finished\"?"},
		{"no such verdict", `"verdict": "short"`, `"verdict": "fat"`, "error: fat is none of fits, short, ample, too close to call"},
		{"no day", `"day": "2026-03-01"`, `"day": "2026-02-30"`, "3:9: error: "},
		{"no date", `"178X"`, `"soonish"`, "10:20: error: "},
		{"a picture elsewhere", `pictures/0123456789ab-1600.jpg`, `../../../etc/passwd.jpg`, "is not the path of a picture in the site"},
		{"a picture on the web", `pictures/0123456789ab-1600.jpg`, `https://example.org/a.jpg`, "is not the path of a picture in the site"},
		{"a page that runs", `"page": "builds/jacket.html"`, `"page": "javascript:alert(1)//.html"`, "is not a path from the site's top folder"},
		{"a site that runs", `"maker": "Ada",`, `"site": "javascript:alert(1)",`, "is not an address on the web"},
		{"a long name", `"Ada"`, `"` + strings.Repeat("a", 101) + `"`, "this has 101 characters, and 100 are the most"},
		{"a long list", `["patterns/draft"]`, `[` + strings.Repeat(`"a",`, 20) + `"a"]`, "this has 21 items, and 20 are the most"},
		{"an ID given twice", `"patterns": [{`, `"patterns": [{"id": "patterns/draft", "page": "a.html", "title": "A"}, {`, "the ID \"patterns/draft\" is given twice"},
		{"deep text", `<em>long</em>`, strings.Repeat("<blockquote>", 3000), "nested too deeply"},
		{"deep JSON", `"maker": "Ada",`, `"maker": ` + strings.Repeat("[", 20000) + strings.Repeat("]", 20000) + `,`, "error: "},
		{"a title that is not seen", `"Striped jacket"`, `"\u200b\u3164\u2800"`, "9:13: error: there is nothing to be read here"},
		{"no title", `"Striped jacket"`, `""`, "9:13: error: \"\" is not a name that can be read"},
		{"a year beyond all", `"178X"`, `"Y17000000000000"`, "is not a date of a year with four digits"},
		{"thousands of features", `"state": "under way",`, `"state": "under way", "features": [` + features(201) + `],`, "this has 201 items, and 200 are the most"},
		{"a zero byte", `Ada`, "A\x00da", "this is no text file"},
		{"no UTF-8", `Ada`, "A\xffda", "is not UTF-8"},
		{"too large", `Ada`, strings.Repeat("a", MaxSize), "larger than 16 MB"},
	} {
		text := strings.Replace(sound, c.old, c.new, 1)
		if text == sound {
			t.Fatalf("%s: nothing is changed", c.name)
		}
		log, found := Read(Path, []byte(text))
		if got := print(t, found); source.Count(found, source.Error) == 0 || !strings.Contains(got, c.want) {
			t.Errorf("%s: %v\n%.400s\nwant %s", c.name, log != nil, got, c.want)
		}
	}
}

func TestReadCleans(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{`<em>long</em>`, `<script>alert(1)</script><b onclick='x()'>long</b>`, "<p>Cut long.</p>"},
		{`<em>long</em>`, `<a href='javascript:alert(1)'>a</a> <a href='https://example.org/?a=1&amp;b=2' target=_top>b</a>`, `<p>Cut a <a href="https://example.org/?a=1&amp;b=2" rel="noreferrer">b</a>.</p>`},
		{`<em>long</em>`, `<a href='../up.html'>a</a><img src=x onerror=alert(1)><svg><script>1</script></svg><iframe src=x></iframe><form><input></form>`, "<p>Cut a.</p>"},
		{`<em>long</em>.</p>`, `</p></div></main><h1>Title</h1><h2>Part<table><tr><td>1`, "<p>Cut </p>Title<h2>Part<table><tr><td>1</td></tr></table></h2>"},
		{`<em>long</em>`, `<style>p{display:none}</style><base href=//example.org><meta http-equiv=refresh content=0><link rel=stylesheet href=x>`, "<p>Cut .</p>"},
		{`<em>long</em>`, `&#x202e;a&rlm;&#x2066;&#x7;&#8203;b`, "<p>Cut ab.</p>"},
		{`<em>long</em>`, `<p id=section-page class=page style='position:fixed'>a<!-- b -->`, "<p>Cut <p>a.</p></p>"},
	} {
		log, found := Read(Path, []byte(strings.Replace(sound, c.old, strings.ReplaceAll(c.new, `"`, `\"`), 1)))
		if len(found) > 0 {
			t.Errorf("%s: %s", c.new, print(t, found))
			continue
		}
		if got := log.Builds[0].About; got != c.want {
			t.Errorf("%s\ngot  %s\nwant %s", c.new, got, c.want)
		}
	}
	log, _ := Read(Path, []byte(strings.Replace(sound, "Ada", `A\u001b[31mda\u202e\u2066\u200f`, 1)))
	if log.Maker != "A[31mda" {
		t.Errorf("the maker is called %q", log.Maker)
	}
}

func features(n int) string {
	return strings.TrimSuffix(strings.Repeat(`{"what": "a"},`, n), ",")
}

// Elements that a parser of pages would open again and again cost no more than they are
// long.
func TestReadTakesNoMoreThanItIsGiven(t *testing.T) {
	for _, open := range []string{`<b a=%d>`, `<strong>`, `<a href='https://example.org/%d'>`, `<font size=%d>`} {
		text := "<p>"
		for i := range 480 {
			text += strings.ReplaceAll(open, "%d", strconv.Itoa(i))
		}
		text += strings.Repeat("<p>x", 40_000)
		clean, err := cleanHTML(text)
		if err == nil && len(clean) > 4*len(text) {
			t.Errorf("%s: %d bytes became %d", open, len(text), len(clean))
		}
	}
}

// A name that is given twice is what it is the last time, and of the first nothing
// stays that the schema has not seen.
func TestReadTakesOneOfTwo(t *testing.T) {
	first := `"builds": [{"id": "a", "page": "javascript:a//x.html", "title": "t", "state": "lost", "era": {"edtf": "1780", "words": "hidden"}, "photos": [{"file": "../../etc/passwd"}]}],`
	log, found := Read(Path, []byte(strings.Replace(sound, `"builds"`, first+`"builds"`, 1)))
	if len(found) > 0 {
		t.Fatal(print(t, found))
	}
	text, err := Write(*log)
	if err != nil {
		t.Fatal(err)
	}
	for _, smuggled := range []string{"javascript", "lost", "hidden", "passwd"} {
		if bytes.Contains(text, []byte(smuggled)) {
			t.Errorf("%s came through: %s", smuggled, text)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(sound))
	f.Add([]byte(`{"hussif_circle": 1, "day": "2026-03-01", "builds": [{"about": "<table><a href=x>"}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		log, found := Read(Path, data)
		print(t, found)
		if log == nil || source.Count(found, source.Error) > 0 {
			return
		}
		text, err := Write(*log)
		if err != nil {
			t.Fatal(err)
		}
		if _, found := Read(Path, text); len(found) > 0 {
			t.Errorf("what was read and written cannot be read: %s\n%s", print(t, found), text)
		}
	})
}

func FuzzCleanHTML(f *testing.F) {
	f.Add("<p>a <b>b</p> <table><td><a href=https://example.org>x")
	f.Add("<svg><style><img src=x onerror=alert(1)></style></svg><math><mi><!--")
	f.Add("<noscript><p title=\"</noscript><img src=x onerror=alert(1)>\">")
	f.Fuzz(func(t *testing.T, text string) {
		clean, err := cleanHTML(text)
		if err != nil {
			return
		}
		checkHTML(t, clean)
		again, err := cleanHTML(clean)
		if err != nil {
			t.Fatal(err)
		}
		checkHTML(t, again)
	})
}
