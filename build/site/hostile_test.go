package site_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"hussif/build/photo/phototest"
	"hussif/build/site/sitetest"
	"hussif/content/front"
	"hussif/content/journal"
	"hussif/theme"
	"hussif/theme/browsertest"
)

// evil would be an element, close the page's title, leave an attribute, and be an
// address that runs, wherever it is not escaped.
const evil = `</title></svg><evil-element onclick="pwned=1">"'><script>pwned=1</script><img src=x onerror=pwned=1>`

// evilBody has scripts in every place where Markdown takes an address or words.
const evilBody = evil + `

# ` + evil + ` {onclick=pwned=1}

[a](javascript:pwned=1) [b](JaVaScRiPt:pwned=1 "` + `t') <script>") [c](java&#115;cript:pwned=1) [d](&#x6a;avascript&colon;pwned=1)
[e](<java	script:pwned=1>) [f](<javascript:pwned=1>) [g](data:text/html,<script>pwned=1</script>) [h](vbscript:pwned=1)
[i](\javascript:pwned=1) [j](javascript\:pwned=1) [k](//example.org/x) [l](\\\\example.org/x) [m](%6aavascript:pwned=1) [n](https:javascript:pwned=1)
[o][evil] [evil] [p](<https://example.org/"onmouseover=pwned=1 x="> 'q"r') [z](feed:javascript:pwned=1) [y](file:///etc/passwd)

![a](javascript:pwned=1) ![b](data:image/svg+xml,<svg/onload=pwned=1>) ![c](https://example.org/x.png"onerror=pwned=1) ![` + `" onerror="pwned=1](../pic.jpg "` + `' onload=pwned=1")

<javascript:pwned=1> <vbscript:pwned=1> <data:text/html,x> <https://example.org/"onclick=pwned=1> https://example.org/"onclick="pwned=1 www.example.org/'onclick='pwned=1
<a href=javascript:pwned=1>x</a> <!-- --><script>pwned=1</script> <![CDATA[<script>pwned=1</script>]]> <?x?>

<script>
pwned=1
</script>

<div onclick=pwned=1><style>*{}</style><iframe srcdoc="<script>parent.pwned=1</script>"></iframe>

| a | ` + "`<script>`" + ` |
|:-:|---|
| <script>pwned=1</script> | x^[y] |

` + "```\"><script>pwned=1</script>\n</code></pre><script>pwned=1</script>\n```" + `

- [ ] Next time: ` + evil + `

Decided: ` + evil + `

[^1] term

[^1]: ` + evil + `

[evil]: javascript:pwned=1 "` + `x"
`

// notText are fields of words that must name something else, or be one of a few words.
var notText = []string{"kind", "caught by", "share", "share fields", "file", "decision", "carries", "set aside", "turned out", "by", "about", "build"}

// evilFields returns front matter in which every text of a record's fields is evil,
// every link leads to the record of its kind, and all else is as the example of its
// field has it.
func evilFields(t reflect.Type) string {
	var b strings.Builder
	for f := range fieldsOf(t) {
		if value, ok := evilValue(f, 0); ok {
			fmt.Fprintf(&b, "%s: %s\n", strconv.Quote(nameOf(f)), value)
		}
	}
	return b.String()
}

func nameOf(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("field"), ",")
	return name
}

func fieldsOf(t reflect.Type) func(func(reflect.StructField) bool) {
	return func(yield func(reflect.StructField) bool) {
		for _, f := range reflect.VisibleFields(t) {
			if name := nameOf(f); name != "" && name != "*" && !yield(f) {
				return
			}
		}
	}
}

var (
	wordType    = reflect.TypeFor[journal.Word]()
	refType     = reflect.TypeFor[journal.Ref]()
	addressType = reflect.TypeFor[journal.Address]()
	whereType   = reflect.TypeFor[front.Where]()
)

func evilValue(f reflect.StructField, depth int) (string, bool) {
	if slices.Contains(notText, nameOf(f)) {
		if nameOf(f) == "file" {
			return "../pic.jpg", true
		}
		return "", false
	}
	of := f.Type
	if of.Kind() == reflect.Slice && of.Name() == "" {
		of = of.Elem()
	}
	quoted := strconv.Quote(evil)
	switch {
	case of == refType:
		if to := f.Tag.Get("to"); to != "" {
			if to == "build" {
				return "first", true
			}
			return "evil-" + to, true
		}
		return "evil-reference", true
	case of == addressType:
		return strconv.Quote(`https://example.org/"onclick="pwned=1'><script>pwned=1</script>`), true
	case of == wordType, of == reflect.TypeFor[string]():
		return quoted, true
	case of.Kind() == reflect.Struct:
		if at, ok := of.FieldByName("Where"); ok && at.Type == whereType {
			var inner []string
			for g := range fieldsOf(of) {
				if value, ok := evilValue(g, depth+1); ok {
					inner = append(inner, strconv.Quote(nameOf(g))+": "+value)
				}
			}
			group := "{" + strings.Join(inner, ", ") + "}"
			if of != f.Type {
				group = "[" + group + "]"
			}
			return group, true
		}
	}
	eg := f.Tag.Get("eg")
	return eg, eg != ""
}

// evilJournal is a journal with a record of each kind that is evil in all it says.
func evilJournal() fstest.MapFS {
	kinds := map[string]any{
		"people/evil-person": journal.Person{}, "builds/evil-build/build": journal.Build{}, "builds/evil-build/2026-02-14-evil-note": journal.Note{},
		"patterns/evil-pattern": journal.Pattern{}, "references/evil-reference": journal.Reference{}, "materials/evil-material": journal.Material{},
		"techniques/evil-technique": journal.Technique{}, "occasions/evil-occasion": journal.Occasion{},
	}
	files := fstest.MapFS{
		"journal.yaml":    {Data: []byte("title: " + strconv.Quote(evil) + "\nunit: in\n")},
		"pic.jpg":         {Data: phototest.JPEG(1, "", "")},
		"builds/pic.jpg":  {Data: phototest.JPEG(2, "", "")},
		"builds/first.md": {Data: []byte("The one before.")},
	}
	for name, record := range kinds {
		text := "---\n" + evilFields(reflect.TypeOf(record)) + "---\n" + evilBody
		files[name+".md"] = &fstest.MapFile{Data: []byte(text)}
	}
	return files
}

// TestEvilJournal: whatever a journal says in any of its texts, its pages hold it as
// words only.
func TestEvilJournal(t *testing.T) {
	dir := makeSite(t, evilJournal())
	pages := sitetest.Pages(t, dir)
	words := 0
	for _, p := range pages {
		for _, found := range sitetest.Active(p.Root) {
			t.Errorf("%s has %s", p.Path, found)
		}
		words += strings.Count(sitetest.Text(p.Root), "<evil-element onclick")
	}
	if words < 300 {
		t.Errorf("the evil words stand on the pages only %d times", words)
	}
	for _, kind := range journal.Kinds() {
		name := "evil-" + string(kind) + ".html"
		if !slices.ContainsFunc(slices.Collect(maps.Keys(pages)), func(path string) bool {
			return strings.HasSuffix(path, name) && strings.Contains(sitetest.Text(pages[path].Root), evil[:40])
		}) {
			t.Errorf("no page of %s says what it says", kind)
		}
	}
	feed, err := os.ReadFile(filepath.Join(dir, theme.FeedPath))
	if err != nil {
		t.Fatal(err)
	}
	for d := xml.NewDecoder(bytes.NewReader(feed)); ; {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("the feed: %v", err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			if strings.Contains(token.Name.Local, "evil") || token.Name.Local == "script" {
				t.Errorf("the feed has an element %s", token.Name.Local)
			}
		case xml.CharData: // HTML again where it is escaped twice
			root, err := html.Parse(bytes.NewReader(token))
			if err == nil && strings.Contains(string(token), "&lt;") {
				for _, found := range sitetest.Active(root) {
					t.Errorf("the feed has %s", found)
				}
			}
		}
	}
}

// TestNothingRuns opens evil pages in a browser. Nothing of them runs and nothing is
// refused, for there is nothing; and what is put into a page by force is refused by
// the page's policy.
func TestNothingRuns(t *testing.T) {
	if testing.Short() {
		t.Skip("opens pages in a browser")
	}
	dir := makeSite(t, evilJournal())
	b := browsertest.Open(t)
	visit := func(name string) {
		t.Helper()
		b.Visit(browsertest.File(t, filepath.Join(dir, filepath.FromSlash(name))), 1280, false)
		b.Shot() // fetches the pictures further down
		if browsertest.Ask[bool](b, `"pwned" in window`) {
			t.Errorf("%s: a script has run", name)
		}
	}
	for name := range sitetest.Pages(t, dir) {
		visit(name)
		if said := b.Said(); len(said) > 0 {
			t.Errorf("%s: the browser says %q", name, said)
		}
	}
	for what, forced := range map[string]string{
		"inline script":   `<script>pwned=1</script>`,
		"script file":     `<script src="forced.js"></script>`,
		"event handler":   `<img src="forced.png" onerror="pwned=1">`,
		"inline style":    `<p style="color:red">x</p>`,
		"style element":   `<style>*{color:red}</style>`,
		"frame":           `<iframe src="index.html"></iframe>`,
		"object":          `<object data="index.html"></object>`,
		"another's image": `<img src="http://127.0.0.1:9/x.png">`,
	} {
		page, err := os.ReadFile(filepath.Join(dir, "index.html"))
		if err != nil {
			t.Fatal(err)
		}
		page = bytes.Replace(page, []byte("</main>"), []byte(forced+"</main>"), 1)
		for file, data := range map[string][]byte{"forced.html": page, "forced.js": []byte("pwned=1")} {
			if err := os.WriteFile(filepath.Join(dir, file), data, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		visit("forced.html")
		if said := strings.Join(b.Said(), "; "); !strings.Contains(said, "Content Security Policy") {
			t.Errorf("%s: the browser says %q", what, said)
		}
	}
}
