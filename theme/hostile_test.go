package theme

import (
	"bytes"
	"encoding/json"
	"html/template"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// hostileValues are texts that would be more than text where one is not escaped, or
// not for the place in which it stands.
var hostileValues = []string{
	`<script>alert(1)</script>`, `</title><script>alert(1)</script>`, `</textarea></style></svg></noscript><img src=x onerror=alert(1)>`,
	`" onmouseover="alert(1)`, `' onmouseover='alert(1)`, "` onmouseover=alert(1)", `"><svg onload=alert(1)>`, `x onload=alert(1) y`,
	`javascript:alert(1)`, `JaVaScRiPt:alert(1)`, " javascript:alert(1)", "java\tscript:alert(1)", "java\nscript:alert(1)", "\x01javascript:alert(1)",
	"javascript\x00:alert(1)", "javascript&colon;alert(1)", "&#106;avascript:alert(1)", "vbscript:msgbox(1)", "data:text/html,<script>alert(1)</script>",
	"data:image/svg+xml,<svg onload=alert(1)>", "//example.org/x", `\\example.org\x`, "https:javascript:alert(1)", "feed:javascript:alert(1)", "blob:x", "file:///etc/passwd",
	`<!--`, `-->`, `<![CDATA[`, `]]>`, `{{.}}`, `${alert(1)}`, `<base href=//example.org>`, `<meta http-equiv=refresh content=0>`, `<style>*{}</style>`,
	"\u2028alert(1)", "\u202etpircs", "1/2<script>3/4</script>", "½\" onload=\"x", "&lt;script&gt;", "\xff<script>\xc0", strings.Repeat("<b>", 300),
}

// An outline is all of a page but its words: its elements with the names of their
// attributes. The marks round a fraction are left out: words may have one.
func outline(t testing.TB, page []byte) string {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for n := range root.Descendants() {
		if n.Type == html.CommentNode {
			b.WriteString("a comment\n")
		}
		if n.Type != html.ElementNode || aroundFraction(n) {
			continue
		}
		b.WriteString(strings.Repeat(" ", depth(n)) + n.Data)
		for _, a := range n.Attr {
			b.WriteString(" " + a.Key)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

func aroundFraction(n *html.Node) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == "class" && a.Val == "fraction" })
}

func depth(n *html.Node) (depth int) {
	for range n.Ancestors() {
		depth++
	}
	return depth
}

// unsafeIn lists what must stand on no page: scripts, what would load or run
// something, and addresses of schemes that a page has no need of, read as browsers
// read them (WHATWG URL Standard, "basic URL parser": control characters and blanks
// at the ends and all tabs and line ends are dropped).
func unsafeIn(t testing.TB, page []byte) []string {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		if slices.Contains([]string{"script", "style", "iframe", "object", "embed", "base", "form", "foreignobject", "template", "noscript", "math"}, strings.ToLower(n.Data)) && !ofSearch(n) && !isData(n) {
			found = append(found, "an element "+n.Data)
		}
		for _, a := range n.Attr {
			key := strings.ToLower(a.Key)
			switch {
			case strings.HasPrefix(key, "on"), key == "style", key == "srcdoc":
				found = append(found, n.Data+" with "+a.Key)
			case slices.Contains([]string{"href", "src", "srcset", "action", "formaction", "poster", "cite", "data", "background", "ping"}, key):
				if !isHarmless(a.Val) {
					found = append(found, n.Data+" leading to "+a.Val)
				}
			}
		}
	}
	return found
}

// ofSearch reports whether an element is part of the search that every page leads to:
// its form, and on its own page scripts of files beside it and what stands there
// where none run.
func ofSearch(n *html.Node) bool {
	attr := make(map[string]string)
	for _, a := range n.Attr {
		attr[a.Key] = a.Val
	}
	switch n.Data {
	case "form":
		return attr["class"] == "seek" && strings.HasSuffix(attr["action"], "search.html")
	case "script":
		return n.FirstChild == nil && attr["src"] != "" && !strings.Contains(attr["src"], ":") && !strings.HasPrefix(attr["src"], "/")
	case "noscript":
		return n.PrevSibling != nil && n.PrevSibling.PrevSibling != nil && n.PrevSibling.PrevSibling.Data == "form"
	}
	return false
}

// isData reports whether an element is a block of data, whole, which no browser runs
// (HTML Living Standard, "Data blocks").
func isData(n *html.Node) bool {
	return n.Data == "script" && len(n.Attr) == 1 && n.Attr[0].Key == "type" && n.Attr[0].Val == "application/ld+json" &&
		n.FirstChild != nil && json.Valid([]byte(n.FirstChild.Data))
}

func isHarmless(address string) bool {
	address = strings.TrimFunc(address, func(r rune) bool { return r <= ' ' })
	address = strings.NewReplacer("\t", "", "\n", "", "\r", "").Replace(address)
	address = strings.ReplaceAll(address, `\`, "/")
	if strings.HasPrefix(address, "//") {
		return false // a host that nobody named
	}
	scheme, _, ok := strings.Cut(address, ":")
	if !ok || strings.ContainsAny(scheme, "/?#") {
		return true
	}
	return slices.Contains([]string{"http", "https", "mailto"}, strings.ToLower(scheme))
}

// madeBySite matches what is no maker's text: counts of folders, parts of the index,
// and pictures named for their content.
var madeBySite = regexp.MustCompile(`-Frame-Root$|-Parts-\d$|-Photos?(-\d)?-(Src|Srcset|Full)$`)

// Whatever stands in any text of a view, the page has the elements that it has with
// an ordinary word there, and nothing on it runs.
func FuzzViews(f *testing.F) {
	for _, value := range hostileValues {
		f.Add(value)
	}
	look := newTheme(f)
	print := func(t testing.TB, view any, value string) []byte {
		var page bytes.Buffer
		if err := look.Render(&page, withoutHTML(filled(view, func(path string) string {
			if madeBySite.MatchString(path) {
				return "../"
			}
			return value
		}))); err != nil {
			t.Fatal(err)
		}
		return page.Bytes()
	}
	plain := make([]string, len(views()))
	for i, view := range views() {
		plain[i] = outline(f, print(f, view, "word"))
	}
	f.Fuzz(func(t *testing.T, value string) {
		if value == "" || len(value) > 1000 {
			t.Skip("nothing is another page, and much is no other case")
		}
		look.menus.Clear()
		for i, view := range views() {
			page := print(t, view, value)
			if got := outline(t, page); got != plain[i] {
				t.Errorf("%T with %q has other elements:\n%s", view, value, firstDifference(plain[i], got))
			}
			if found := unsafeIn(t, page); len(found) > 0 {
				t.Errorf("%T with %q has %q", view, value, found)
			}
		}
	})
}

// withoutHTML returns a view without what is HTML already: that is for others to
// escape.
func withoutHTML(view any) any {
	v := reflect.New(reflect.TypeOf(view)).Elem()
	v.Set(reflect.ValueOf(view))
	var clear func(reflect.Value)
	clear = func(v reflect.Value) {
		switch {
		case v.Type() == reflect.TypeFor[template.HTML]():
			v.SetString("")
		case v.Kind() == reflect.Struct:
			for i := range v.NumField() {
				clear(v.Field(i))
			}
		case v.Kind() == reflect.Slice:
			for i := range v.Len() {
				clear(v.Index(i))
			}
		case v.Kind() == reflect.Pointer && !v.IsNil():
			clear(v.Elem())
		}
	}
	clear(v)
	return v.Interface()
}

func firstDifference(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return "want " + a[i] + "\ngot  " + b[i]
		}
	}
	return "one is longer"
}
