package theme

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

// void are the elements without an end tag (HTML Living Standard, 13.1.2).
var void = map[atom.Atom]bool{
	atom.Area: true, atom.Base: true, atom.Br: true, atom.Col: true, atom.Embed: true, atom.Hr: true, atom.Img: true,
	atom.Input: true, atom.Link: true, atom.Meta: true, atom.Source: true, atom.Track: true, atom.Wbr: true,
}

func TestGallery(t *testing.T) {
	dir := hang(t)
	for name := range gallery() {
		page, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		t.Run(name, func(t *testing.T) {
			checkNesting(t, page)
			checkPage(t, page)
		})
	}
}

// checkNesting holds each end tag against its start tag: a parser of HTML would
// mend in silence what does not match.
func checkNesting(t *testing.T, page []byte) {
	t.Helper()
	var open []string
	tokens := html.NewTokenizer(bytes.NewReader(page))
	for {
		switch tokens.Next() {
		case html.ErrorToken:
			if tokens.Err() != io.EOF || len(open) > 0 {
				t.Errorf("the page ends with %v inside %v", tokens.Err(), open)
			}
			return
		case html.StartTagToken:
			token := tokens.Token()
			if !void[token.DataAtom] {
				open = append(open, token.Data)
			}
		case html.EndTagToken:
			token := tokens.Token()
			if len(open) == 0 || open[len(open)-1] != token.Data {
				t.Fatalf("</%s> inside %v", token.Data, open)
			}
			open = open[:len(open)-1]
		}
	}
}

// checkPage holds a page against what every page promises.
func checkPage(t *testing.T, page []byte) {
	t.Helper()
	tree, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]*html.Node{}
	count := map[string]int{}
	level := 0
	for n := range tree.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		if n.Data != "title" || n.Namespace == "" { // a drawing has a title of its own
			count[n.Data]++
		}
		if id := attr(n, "id"); id != "" {
			if ids[id] != nil {
				t.Errorf("two places are called %s", id)
			}
			ids[id] = n
		}
		switch n.Data {
		case "h1", "h2", "h3", "h4", "h5", "h6":
			next := int(n.Data[1] - '0')
			if next > level+1 {
				t.Errorf("%s %q follows a heading of level %d", n.Data, text(n), level)
			}
			level = next
		case "img":
			if !has(n, "alt") {
				t.Errorf("the picture %s has no alt", attr(n, "src"))
			}
		case "th":
			if attr(n, "scope") == "" {
				t.Errorf("the heading %q of a table has no scope", text(n))
			}
		}
		if attr(n, "class") == "section" && !strings.HasPrefix(attr(n, "id"), "section-") {
			t.Errorf("a section is called %q", attr(n, "id"))
		}
		checkAttributes(t, n)
		if n.Data == "script" {
			checkScript(t, n, page)
		}
	}
	for _, one := range []string{"h1", "main", "header", "footer", "title"} {
		if count[one] != 1 {
			t.Errorf("the page has %d of <%s>, want 1", count[one], one)
		}
	}
	if count["style"]+count["iframe"] > 0 {
		t.Error("the page holds a style or frame")
	}
	if count["form"] != 1 {
		t.Errorf("the page has %d forms, want the one that searches", count["form"])
	}
	checkTargets(t, tree, ids)
	checkContents(t, tree, ids)
}

// checkScript refuses a script that the page's own policy would, and one that stands
// in the way of the page.
func checkScript(t *testing.T, n *html.Node, page []byte) {
	t.Helper()
	if attr(n, "type") == "application/ld+json" {
		var data map[string]any
		if err := json.Unmarshal([]byte(text(n)), &data); err != nil || data["@context"] != "https://schema.org" {
			t.Errorf("the page's data are %s: %v", text(n), err)
		}
		return
	}
	if n.FirstChild != nil || attr(n, "src") == "" || !has(n, "defer") {
		t.Error("a script is not a file of the site's, to be run when the page is there")
	}
	if !bytes.Contains(page, []byte(SearchPolicy)) {
		t.Error("a page that is not the search page has a script")
	}
}

// checkAttributes refuses what could run or be fetched from elsewhere.
func checkAttributes(t *testing.T, n *html.Node) {
	t.Helper()
	for _, a := range n.Attr {
		switch a.Key {
		case "style":
			t.Errorf("<%s> has a style of its own: %s", n.Data, a.Val)
		case "href", "src", "action":
			address, err := url.Parse(a.Val)
			if err == nil && n.Data == "a" && address.Scheme == "https" {
				continue // a source on the web: nothing is fetched before the reader follows it
			}
			if err != nil || address.Scheme != "" || address.Host != "" || strings.HasPrefix(a.Val, "/") {
				t.Errorf("<%s> leads to %s, which is not relative", n.Data, a.Val)
			}
		}
		if strings.HasPrefix(a.Key, "on") {
			t.Errorf("<%s> has %s", n.Data, a.Key)
		}
	}
}

// checkTargets looks for what the page's own links and labels point at.
func checkTargets(t *testing.T, tree *html.Node, ids map[string]*html.Node) {
	t.Helper()
	for n := range tree.Descendants() {
		for _, a := range n.Attr {
			var targets []string
			switch {
			case a.Key == "href" && strings.HasPrefix(a.Val, "#") && a.Val != "#":
				target, err := url.PathUnescape(a.Val[1:])
				if err != nil {
					t.Error(err)
				}
				targets = []string{target}
			case a.Key == "for", a.Key == "aria-labelledby", a.Key == "aria-describedby", a.Key == "aria-controls":
				targets = strings.Fields(a.Val)
			}
			for _, target := range targets {
				if ids[target] == nil {
					t.Errorf("%s of <%s> points at %q, which is nowhere", a.Key, n.Data, target)
				}
			}
		}
	}
}

// checkContents compares the list of a page's sections with its sections.
func checkContents(t *testing.T, tree *html.Node, ids map[string]*html.Node) {
	t.Helper()
	var listed, standing []string
	for n := range tree.Descendants() {
		if n.Data == "a" && within(n, "contents") {
			listed = append(listed, attr(n, "href")+" "+text(n))
		}
		if n.Data == "h2" && attr(n.Parent, "class") == "section" {
			standing = append(standing, "#"+attr(n.Parent, "id")+" "+text(n))
		}
	}
	if len(standing) <= few {
		standing = nil
	}
	if !slices.Equal(listed, standing) {
		t.Errorf("the page lists its sections as\n%s\nand has\n%s", strings.Join(listed, "\n"), strings.Join(standing, "\n"))
	}
}

// Text out of a journal stays text wherever it lands: the page of a view full of
// markup has the same elements and attributes as that of a view full of words.
func TestHostileTextStaysText(t *testing.T) {
	look := newTheme(t)
	for _, hostile := range []string{
		`<script>alert(1)</script>`,
		`"><img src=x onerror=alert(1)>`,
		`' onmouseover='alert(1)`,
		`javascript:alert(1)`,
		`JaVaScRiPt:alert(1)//`,
		`data:text/html,<script>alert(1)</script>`,
		`</title></caption></pre></main>`,
		`{{.Frame}} <!-- --> ]]>`,
		"\x00\ufffd\u202e\xff",
		`x 2x, javascript:alert(1) 3x`,
	} {
		for _, view := range views() {
			plain := render(t, look, filled(view, func(path string) string { return sayUnlessHTML(path, "word") }))
			page := render(t, look, filled(view, func(path string) string { return sayUnlessHTML(path, hostile) }))
			checkNesting(t, page)
			want, got := skeleton(t, plain), skeleton(t, page)
			if want != got {
				t.Errorf("%T with %q changes the page from\n%s\nto\n%s", view, hostile, want, got)
			}
			for n := range parsed(t, page).Descendants() {
				for _, key := range []string{"href", "src", "srcset"} {
					value := strings.ToLower(attr(n, key))
					if strings.Contains(value, "javascript:") || strings.HasPrefix(value, "data:") {
						t.Errorf("%T: %s of <%s> is %s", view, key, n.Data, value)
					}
				}
			}
		}
	}
}

var markup = regexp.MustCompile(`-(Body|Drawing|Scale)$|^Start-Intro$|^Documentation-About$|^Tiles-Pages-\d$`)

// sayUnlessHTML leaves the fields of type template.HTML be, whose text is escaped
// by those who make it.
func sayUnlessHTML(path, words string) string {
	if markup.MatchString(path) {
		return "<p>body</p>"
	}
	return words
}

// skeleton returns the elements of a page with the names of their attributes.
func skeleton(t *testing.T, page []byte) string {
	t.Helper()
	var b strings.Builder
	for n := range parsed(t, page).Descendants() {
		if n.Type == html.ElementNode {
			fmt.Fprintf(&b, "<%s", n.Data)
			for _, a := range n.Attr {
				b.WriteString(" " + a.Key)
			}
			b.WriteString(">")
		}
	}
	return b.String()
}

func render(t *testing.T, look *Theme, view any) []byte {
	t.Helper()
	var page bytes.Buffer
	if err := look.Render(&page, view); err != nil {
		t.Fatal(err)
	}
	return page.Bytes()
}

func parsed(t *testing.T, page []byte) *html.Node {
	t.Helper()
	tree, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	return tree
}

func attr(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func has(n *html.Node, key string) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == key })
}

func within(n *html.Node, class string) bool {
	for up := range n.Ancestors() {
		if attr(up, "class") == class {
			return true
		}
	}
	return false
}

func text(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return b.String()
}
