package theme

import (
	"encoding/json"
	"fmt"
	"maps"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"hussif/content/prose"
	"hussif/content/source"
)

// A site of tests has a page for every id that does not begin with "no-", and a
// photo for every such picture.
type testLinker struct{}

func (testLinker) Tie(l prose.Link) (href, text string, ok bool) {
	if strings.HasPrefix(l.To, "no-") {
		return "", "", false
	}
	if l.To != "" {
		href = "to/" + url.PathEscape(l.To)
	}
	if l.Anchor != "" || href == "" {
		href += "#" + l.Anchor
	}
	return href, "Title of " + l.To, true
}

// Answer answers the one remark that the tests tell of.
func (testLinker) Answer(anchor string) (words string, link Link) {
	if anchor == "next-answered-elsewhere" {
		return "carried into", Link{Href: "elsewhere.html", Text: "Elsewhere"}
	}
	return "", Link{}
}

// Worksheet works nothing out, but knows two sheets.
func (testLinker) Worksheet(w prose.Work) (Worksheet, bool) {
	sheet := Worksheet{ID: w.Anchor, Name: w.Name, Typed: w.Lines.Text()}
	switch w.Name {
	case "sums & <b>":
		sheet.Given = []WorkInput{{Name: "a", Value: "1/2 in", From: "unless said otherwise"}, {Name: "b", Value: "1 in", From: "waist", Source: Link{Href: "to/a", Text: "A <i>"}}}
		sheet.Formula = []WorkLine{{"c = a + b", "1/2 in + 1 in", "1 1/2 in"}}
		sheet.Main, sheet.Others = []Fact{{Name: "c", Value: "1 1/2 in"}}, []Fact{{Name: "d", Value: "<"}}
		sheet.Cut, sheet.Cautions, sheet.Care = []string{"cut it"}, []string{"mind it"}, "Cut away from yourself."
		sheet.Prints, sheet.PrintsOf = []Link{{Href: "a4.html", Text: "A4"}}, "the sum"
		return sheet, true
	case "faulty":
		sheet.Faults = []WorkFault{{Line: 3, Words: "this is <nothing>", Advice: "did you mean 1/2 in?"}}
		return sheet, true
	}
	return Worksheet{}, false
}

func (testLinker) Picture(p prose.Picture) (Photo, bool) {
	if strings.HasPrefix(p.To, "no-") {
		return Photo{}, false
	}
	name := url.PathEscape(p.To)
	return Photo{
		Src: "s/" + name, Srcset: "s/" + name + " 400w, l/" + name + " 1600w", Sizes: "40em",
		Width: 400, Height: 300, Alt: p.Alt, Title: p.Title, Full: "l/" + name,
	}, true
}

func printed(t testing.TB, text string) string {
	t.Helper()
	f := &source.File{Name: "a.md", Data: []byte("---\n---\n" + text)}
	span := f.Span(8, len(f.Data))
	body, err := Prose(prose.Tree(f, span, prose.Start{}), f.Data[span.Start:span.End])
	if err != nil {
		t.Fatal(err)
	}
	return string(body.With(testLinker{}))
}

func TestProse(t *testing.T) {
	for _, c := range []struct{ name, body, want string }{
		{"worksheet", "```work sums & <b>\na: 1/2 in\n```", `<section class="worksheet" aria-label="Worksheet: sums &amp; &lt;b&gt;" id="work-sums-b"> <p class="worksheet-name"><span class="label">Worksheet</span> sums &amp; &lt;b&gt;</p>` +
			` <dl class="facts worked-main"> <div><dt>c</dt><dd>1 <span class="fraction">1/2</span> in</dd></div> </dl>` +
			` <p class="lead-in">To cut and to mark</p> <ul class="missed"> <li>cut it</li> </ul>` +
			` <div class="cautions" role="note" aria-label="Take care"> <p class="label">Take care</p> <ul class="worked-cautions"> <li>mind it</li> <li>Cut away from yourself.</li> </ul> </div>` +
			` <p class="tags"><span class="label">In full size</span> the sum: <a href="a4.html">A4</a></p>` +
			` <p class="lead-in">Worked with</p> <ul class="worked-with"> <li>a <b><span class="fraction">1/2</span> in</b> <small class="aside">unless said otherwise</small></li>` +
			` <li>b <b>1 in</b> <small class="aside">waist</small> <small class="aside">see <a href="to/a">A &lt;i&gt;</a></small></li> </ul>` +
			` <ol class="formula"> <li>c = a + b<br>= <span class="fraction">1/2</span> in + 1 in = <b>1 <span class="fraction">1/2</span> in</b></li> </ol>` +
			` <dl class="facts worked-others"> <div><dt>d</dt><dd>&lt;</dd></div> </dl> </section>`},
		{"worksheet with a fault", "```work faulty\na: <\n```", `<section class="worksheet" aria-label="Worksheet: faulty" id="work-faulty"> <p class="worksheet-name"><span class="label">Worksheet</span> faulty</p> <pre><code>a: &lt; </code></pre>` +
			` <div class="cautions" role="note" aria-label="Not worked out"> <p class="label">Not worked out</p> <ul> <li>line 3: this is &lt;nothing&gt; <small class="aside">did you mean <span class="fraction">1/2</span> in?</small></li> </ul> </div> </section>`},
		{"worksheet nobody knows", "```work else\na: <\n```", `<pre><code>a: &lt; </code></pre>`},
		{"headings", "# A\n###### B", `<h2 id="a">A</h2> <h6 id="b">B</h6>`},
		{"tie", "[[a]]", `<p><a href="to/a">Title of a</a></p>`},
		{"tie with words", "[[a#b|c & d]]", `<p><a href="to/a#b">c &amp; d</a></p>`},
		{"place of this page", "[[#b]]", `<p><a href="#b">Title of </a></p>`},
		{"broken tie", "[[no-a]] [[no-a|b]]", `<p><span class="broken">no-a</span> <span class="broken">b</span></p>`},
		{"relative", "[*a*](b.md#c 'd')", `<p><a href="to/b.md#c" title="d"><em>a</em></a></p>`},
		{"broken relative", "[*a*](no-b.md)", `<p><span class="broken"><em>a</em></span></p>`},
		{"outside", "[a](https://example.org/ü?b&c 'd')", `<p><a href="https://example.org/%C3%BC?b&amp;c" title="d" rel="noreferrer noopener">a</a></p>`},
		{"bare address", "<a@example.org>", `<p><a href="mailto:a@example.org" rel="noreferrer noopener">a@example.org</a></p>`},
		{"refused", "[*a*](javascript:b) <file:///c>", `<p><em>a</em> file:///c</p>`},
		{"picture", "![a \"b\"](c.jpg 'd')", `<p><a href="l/c.jpg"><img src="s/c.jpg" srcset="s/c.jpg 400w, l/c.jpg 1600w" sizes="40em" width="400" height="300" alt="a &#34;b&#34;" title="d" loading="lazy" decoding="async"></a></p>`},
		{"picture without words", "![](c.jpg)", `<p><a href="l/c.jpg" aria-label="the picture in full"><img src="s/c.jpg" srcset="s/c.jpg 400w, l/c.jpg 1600w" sizes="40em" width="400" height="300" alt="" loading="lazy" decoding="async"></a></p>`},
		{"picture in a link", "[![a](c.jpg)](b.md)", `<p><a href="to/b.md"><img src="s/c.jpg" srcset="s/c.jpg 400w, l/c.jpg 1600w" sizes="40em" width="400" height="300" alt="a" loading="lazy" decoding="async"></a></p>`},
		{"missing picture", "![a](no-c.jpg)", `<p><span class="broken">a</span></p>`},
		{"picture from elsewhere", "![a](https://example.org/c.jpg)", `<p><a href="https://example.org/c.jpg" rel="noreferrer noopener">a</a></p>`},
		{"picture from elsewhere in a link", "[![a](https://example.org/c.jpg)](b.md)", `<p><a href="to/b.md">a</a></p>`},
		{"refused picture", "![a](data:image/png;base64,AA)", `<p>a</p>`},
		{"remark", "Next time: a (pattern: b, no-c; garment: no-d)", `<aside role="note" class="remark next-time" id="next-a"><strong class="label">Next time</strong> <p>a</p> <p class="about">pattern: <a href="to/b">Title of b</a>, no-c; garment: no-d</p> </aside>`},
		{"remarks on two lines", "a\nDecided: b\nPrivate: c", `<p>a</p> <aside role="note" class="remark decided" id="decided-b"><strong class="label">Decided</strong> <p>b</p> </aside> <aside role="note" class="remark private"><strong class="label">Private</strong> <p>c</p> </aside>`},
		{"answered remark", "Next time: answered elsewhere", `<aside role="note" class="remark next-time" id="next-answered-elsewhere"><strong class="label">Next time</strong> <p>answered elsewhere</p> <small class="aside answer">carried into <a href="elsewhere.html">Elsewhere</a></small></aside>`},
		{"item that is a remark", "- Next time: a\n  - b\n- c", `<ul> <li class="remark next-time" id="next-b"><strong class="label">Next time</strong> a <ul> <li>b</li> </ul> </li> <li>c</li> </ul>`},
		{"item of two remarks", "- Next time: a\n  Next time: b", `<ul> <li><aside role="note" class="remark next-time" id="next-a"><strong class="label">Next time</strong> a</aside> <aside role="note" class="remark next-time" id="next-b"><strong class="label">Next time</strong> b</aside> </li> </ul>`},
		{"tasks", "- [ ] a\n- [x] Next time: b", `<ul> <li><input type="checkbox" disabled aria-label="to do"> a</li> <li class="remark next-time" id="next-b"><input type="checkbox" disabled checked aria-label="done"> <strong class="label">Next time</strong> b</li> </ul>`},
		{"table", "| a | b |\n|---|--:|\n| c | [[d\\|e]] |\n\n|f|\n|-|", `<div class="wide" tabindex="0" role="group" aria-label="table"> <table> <thead> <tr> <th scope="col">a</th> <th scope="col" class="right">b</th> </tr> </thead> <tbody> <tr> <td>c</td> <td class="right"><a href="to/d">e</a></td> </tr> </tbody> </table> </div> <div class="wide" tabindex="0" role="group" aria-label="table 2"> <table> <thead> <tr> <th scope="col">f</th> </tr> </thead> </table> </div>`},
		{"footnotes", "a[^x] b[^x]\n\n[^x]: c", `<p>a<sup id="fnref:1"><a href="#fn:1" class="footnote-ref" role="doc-noteref">1</a></sup> b<sup id="fnref1:1"><a href="#fn:1" class="footnote-ref" role="doc-noteref">1</a></sup></p> <section class="footnotes" role="doc-endnotes" aria-label="footnotes"> <ol> <li id="fn:1"> <p>c&#160;<a href="#fnref:1" class="footnote-backref" role="doc-backlink" aria-label="back to the mark of footnote 1">↩</a>&#160;<a href="#fnref1:1" class="footnote-backref" role="doc-backlink" aria-label="back to the mark of footnote 1, place 2">↩</a></p> </li> </ol> </section>`},
		{"struck", "~~a~~", `<p><del>a</del></p>`},
		{"raw HTML in a line", "a <b onclick='c'>d</b> <!-- e -->f", `<p>a &lt;b onclick=&#39;c&#39;&gt;d&lt;/b&gt; f</p>`},
		{"raw HTML as a block", "<div>\n<!-- a\nb -->c\n</div>\n\nd", `<pre class="typed">&lt;div&gt; c &lt;/div&gt;</pre> <p>d</p>`},
		{"raw HTML with its end", "<script>\na\n\nb</script>", `<pre class="typed">&lt;script&gt; a b&lt;/script&gt;</pre>`},
		{"a comment", "<!-- waist 29 -->\n\na", `<p>a</p>`},
		{"an open comment", "<!-- waist 29\n\na", ``},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := printed(t, c.body)
			if squeezed := strings.Join(strings.Fields(got), " "); squeezed != c.want {
				t.Errorf("got  %s\nwant %s", squeezed, c.want)
			}
			checkHTML(t, got)
		})
	}
}

// Nothing that a note holds may run or load anything.
func TestProseIsInert(t *testing.T) {
	for _, body := range []string{
		"<script>alert(1)</script>",
		"a <script src=//example.org/x></script>",
		"<img src=x onerror=alert(1)>",
		"<svg/onload=alert(1)>\n\n<iframe src=javascript:alert(1)>",
		"<style>@import '//example.org'</style>",
		"<a href=\"javascript:alert(1)\">x</a>",
		"[x](javascript:alert(1))",
		"[x](JaVaScRiPt:alert(1))",
		"[x](java&#x73;cript:alert(1))",
		"[x](java&Tab;script:alert(1))",
		"[x](java&NewLine;script:alert(1))",
		"[x](&#x6A;&#x61;&#x76;&#x61;&#x73;&#x63;&#x72;&#x69;&#x70;&#x74;&#x3A;alert(1))",
		"[x](javascript&colon;alert(1))",
		"[x](javascript%3Aalert(1))",
		"[x](&#1;javascript:alert(1))",
		"[x](vbscript:x) [x](data:text/html;base64,PHNjcmlwdD4=) [x](blob:x) [x](file:///x)",
		"<javascript:alert(1)> <data:text/html,x>",
		"[x]\n\n[x]: javascript:alert(1) 'y'",
		"![x](javascript:alert(1)) ![x](\"onerror=\"alert(1))",
		"![x\" onerror=\"alert(1)](a.jpg '\" onload=\"alert(1)')",
		"[x](a.md '\" onclick=\"alert(1)')",
		"[[a|\" onclick=\"alert(1)]] [[a|<script>]]",
		"[[no-a|<script>alert(1)</script>]]",
		"# <img onerror=x>\n## \" onclick=\"x",
		"```\" onclick=\"alert(1)\n<script>\n```",
		"`<script>` &lt;script&gt; \\<script>",
		"Next time: x (pattern: <script>, \" onclick=\"x; about: &lt;b&gt;)",
		"| <script> | \" onclick=\"x |\n|---|---|\n",
		"x[^<script>]\n\n[^<script>]: <script>",
		"https://example.org/<script>\"onclick=x www.example.org/'\"><b>",
	} {
		t.Run(body, func(t *testing.T) { checkHTML(t, printed(t, body)) })
	}
}

// TestSpecification compares with the published answers of CommonMark 0.31.2,
// by number of example. Ours differ in the headings' levels and ids, and show no
// comments.
func TestSpecification(t *testing.T) {
	for _, c := range []struct {
		number     int
		body, want string
	}{
		{1, "\tfoo\tbaz\t\tbim\n", "<pre><code>foo\tbaz\t\tbim\n</code></pre>\n"},
		{9, " - foo\n   - bar\n\t - baz\n", "<ul>\n<li>foo\n<ul>\n<li>bar\n<ul>\n<li>baz</li>\n</ul>\n</li>\n</ul>\n</li>\n</ul>\n"},
		{14, "\\*not emphasized*\n\\<br/> not a tag\n\\[not a link](/foo)\n\\`not code`\n1\\. not a list\n\\* not a list\n\\# not a heading\n\\[foo]: /url \"not a reference\"\n\\&ouml; not a character entity\n",
			"<p>*not emphasized*\n&lt;br/&gt; not a tag\n[not a link](/foo)\n`not code`\n1. not a list\n* not a list\n# not a heading\n[foo]: /url &quot;not a reference&quot;\n&amp;ouml; not a character entity</p>\n"},
		{15, "\\\\*emphasis*\n", "<p>\\<em>emphasis</em></p>\n"},
		{25, "&nbsp; &amp; &copy; &AElig; &Dcaron;\n&frac34; &HilbertSpace; &DifferentialD;\n&ClockwiseContourIntegral; &ngE;\n", "<p>\u00a0 &amp; © Æ Ď\n¾ ℋ ⅆ\n∲ ≧̸</p>\n"},
		{42, "- `one\n- two`\n", "<ul>\n<li>`one</li>\n<li>two`</li>\n</ul>\n"},
		{43, "***\n---\n___\n", "<hr>\n<hr>\n<hr>\n"},
		{57, "- foo\n***\n- bar\n", "<ul>\n<li>foo</li>\n</ul>\n<hr>\n<ul>\n<li>bar</li>\n</ul>\n"},
		{80, "Foo *bar*\n=========\n\nFoo *bar*\n---------\n", "<h1>Foo <em>bar</em></h1>\n<h2>Foo <em>bar</em></h2>\n"},
		{119, "```\n<\n >\n```\n", "<pre><code>&lt;\n &gt;\n</code></pre>\n"},
		{142, "```ruby\ndef foo(x)\n  return 3\nend\n```\n", "<pre><code class=\"language-ruby\">def foo(x)\n  return 3\nend\n</code></pre>\n"},
		{219, "aaa\n\nbbb\n", "<p>aaa</p>\n<p>bbb</p>\n"},
		{228, "> # Foo\n> bar\n> baz\n", "<blockquote>\n<h1>Foo</h1>\n<p>bar\nbaz</p>\n</blockquote>\n"},
		{233, "> bar\nbaz\n> foo\n", "<blockquote>\n<p>bar\nbaz\nfoo</p>\n</blockquote>\n"},
		{254, "1.  A paragraph\n    with two lines.\n\n        indented code\n\n    > A block quote.\n", "<ol>\n<li>\n<p>A paragraph\nwith two lines.</p>\n<pre><code>indented code\n</code></pre>\n<blockquote>\n<p>A block quote.</p>\n</blockquote>\n</li>\n</ol>\n"},
		{302, "1. foo\n2. bar\n3) baz\n", "<ol>\n<li>foo</li>\n<li>bar</li>\n</ol>\n<ol start=\"3\">\n<li>baz</li>\n</ol>\n"},
		{308, "- foo\n- bar\n\n<!-- -->\n\n- baz\n- bim\n", "<ul>\n<li>foo</li>\n<li>bar</li>\n</ul>\n<!-- -->\n<ul>\n<li>baz</li>\n<li>bim</li>\n</ul>\n"},
		{328, "`foo`\n", "<p><code>foo</code></p>\n"},
		{338, "`foo\\`bar`\n", "<p><code>foo\\</code>bar`</p>\n"},
		{350, "*foo bar*\n", "<p><em>foo bar</em></p>\n"},
		{417, "foo******bar*********baz\n", "<p>foo<strong><strong><strong>bar</strong></strong></strong>***baz</p>\n"},
		{429, "**foo*bar*baz**\n", "<p><strong>foo<em>bar</em>baz</strong></p>\n"},
		{633, "foo  \nbaz\n", "<p>foo<br>\nbaz</p>\n"},
		{648, "foo\nbaz\n", "<p>foo\nbaz</p>\n"},
		{650, "hello $.;'there\n", "<p>hello $.;'there</p>\n"},
	} {
		t.Run(fmt.Sprint(c.number), func(t *testing.T) {
			got := printed(t, c.body)
			checkHTML(t, got)
			if g, w := plainHTML(t, got, 1), plainHTML(t, c.want, 0); g != w {
				t.Errorf("got  %s\nwant %s", g, w)
			}
		})
	}
}

// plainHTML reduces HTML to tags and text, headings moved up by a number of levels.
func plainHTML(t *testing.T, s string, shift int) string {
	var b strings.Builder
	for z := html.NewTokenizer(strings.NewReader(s)); ; {
		switch z.Next() {
		case html.ErrorToken:
			return strings.ReplaceAll(strings.TrimSpace(b.String()), "  ", " ")
		case html.TextToken:
			b.WriteString(strings.ReplaceAll(string(z.Text()), "\n", " "))
			continue
		case html.CommentToken:
			continue
		}
		token := z.Token()
		if len(token.Data) == 2 && token.Data[0] == 'h' && token.Data != "hr" {
			token.Data = fmt.Sprintf("h%d", int(token.Data[1]-'0')-shift)
			token.Attr = nil
		}
		b.WriteString(token.String())
	}
}

// TestWholeSpecification prints every example of the specification, from
// goldmark's own copy of it, alone and within our constructs. Where there is no
// link, picture or raw HTML, of which we print less, the answer is compared too.
func TestWholeSpecification(t *testing.T) {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/yuin/goldmark").Output()
	if err != nil {
		t.Skip("the source of goldmark is not at hand:", err)
	}
	data, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(dir)), "_test", "spec.json"))
	if err != nil {
		t.Skip("the source of goldmark is not at hand:", err)
	}
	var examples []struct {
		Markdown, HTML string
		Example        int
	}
	if err := json.Unmarshal(data, &examples); err != nil {
		t.Fatal(err)
	}
	if len(examples) < 600 {
		t.Errorf("only %d examples", len(examples))
	}
	ours := map[int]string{
		62:  "a heading of level 6 cannot be lowered",
		226: "goldmark leaves blanks before a hard break",
		548: "a tie",
		590: "a tie",
		611: "a bare address is a link",
		612: "a bare address is a link",
		635: "goldmark leaves blanks before a hard break",
	}
	compared := 0
	for _, e := range examples {
		if plain := !strings.Contains(e.Markdown, "<") && !strings.Contains(e.HTML, "<a") && !strings.Contains(e.HTML, "<img"); plain {
			compared++
			want := plainHTML(t, strings.ReplaceAll(e.HTML, " />", ">"), 0)
			switch got := plainHTML(t, printed(t, e.Markdown), 1); {
			case got != want && ours[e.Example] == "":
				t.Errorf("example %d: %q\ngot  %s\nwant %s", e.Example, e.Markdown, got, want)
			case got == want && ours[e.Example] != "":
				t.Errorf("example %d is as published; it is listed as different: %s", e.Example, ours[e.Example])
			}
		}
		for _, body := range []string{e.Markdown, "Private: " + e.Markdown, "- Next time: a\n" + e.Markdown, "> " + e.Markdown} {
			if out := printed(t, body); !checkHTML(t, out) {
				t.Errorf("example %d: %q\n%s", e.Example, body, out)
			}
		}
	}
	if compared < 400 {
		t.Errorf("only %d examples were compared", compared)
	}
}

func TestProseIsShared(t *testing.T) {
	want := printed(t, printedNote)
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for range 20 {
				if got := printed(t, printedNote); got != want {
					t.Error("two printings differ")
				}
			}
		})
	}
	group.Wait()
}

func TestHiddenProseHoldsNoSecret(t *testing.T) {
	body := "Open one.[^a]\nPrivate: SECRET one[^b]\n- SECRET two\n\n# Between\n\n- Next time: open two\n  - **private:** SECRET three ![SECRET](SECRET.jpg)\n\n" +
		"> *Private : SECRET four\n> more SECRET*\n\n[^a]: Open three\n    Private: SECRET five\n\n[^b]: SECRET six [[SECRET]]\n"
	f := &source.File{Name: "a.md", Data: []byte(body)}
	tree := prose.Tree(f, f.Whole(), prose.Start{})
	prose.HidePrivate(tree)
	printed, err := Prose(tree, f.Data)
	if err != nil {
		t.Fatal(err)
	}
	out := printed.With(testLinker{})
	checkHTML(t, string(out))
	if strings.Contains(string(out), "SECRET") || strings.Contains(string(out), "rivate") {
		t.Errorf("left: %s", out)
	}
	for _, open := range []string{"Open one", "Between", "open two", "Open three", "doc-backlink"} {
		if !strings.Contains(string(out), open) {
			t.Errorf("%q is gone: %s", open, out)
		}
	}
}

// allowed holds the elements a body may have and their attributes.
var allowed = map[string]string{
	"a": "href title rel class role aria-label", "aside": "role class id", "blockquote": "", "br": "", "code": "class",
	"del": "", "div": "class tabindex role aria-label", "em": "", "h2": "id", "h3": "id", "h4": "id", "h5": "id", "h6": "id",
	"hr": "", "img": "src srcset sizes width height alt title loading decoding", "input": "type disabled checked aria-label",
	"b": "", "dd": "", "dl": "class", "dt": "", "li": "class id", "ol": "start class", "p": "class", "pre": "class", "section": "class role aria-label id", "span": "class",
	"small": "class", "strong": "class", "sup": "id", "table": "", "tbody": "", "td": "class", "th": "scope class", "thead": "", "tr": "", "ul": "class",
}

var hasScheme = regexp.MustCompile(`^[a-z][a-z0-9+.-]*:`)

// checkHTML checks that HTML is well-formed, that a parser of HTML finds nothing
// to mend in its nesting, and that it holds only what a body may.
func checkHTML(t testing.TB, s string) bool {
	t.Helper()
	ok := true
	fail := func(format string, args ...any) {
		t.Helper()
		t.Errorf(format, args...)
		ok = false
	}
	if !utf8.ValidString(s) {
		fail("no UTF-8: %q", s)
	}
	ids := map[string]bool{}
	var tags, open []string
	for z := html.NewTokenizer(strings.NewReader(s)); ; {
		kind := z.Next()
		if kind == html.ErrorToken {
			break
		}
		switch token := z.Token(); kind {
		case html.StartTagToken:
			tags = append(tags, "<"+token.Data)
			attrs, known := allowed[token.Data]
			if !known {
				fail("element %s in %s", token.Data, s)
			}
			for _, a := range token.Attr {
				if !slices.Contains(strings.Fields(attrs), a.Key) {
					fail("attribute %s of %s in %s", a.Key, token.Data, s)
				}
				switch a.Key {
				case "id":
					if ids[a.Val] || a.Val == "" || strings.ContainsAny(a.Val, " \t\n") {
						fail("id %q in %s", a.Val, s)
					}
					ids[a.Val] = true
				case "href", "src":
					address := strings.ToLower(a.Val)
					switch scheme := hasScheme.FindString(address); {
					case strings.HasPrefix(address, "/"), strings.HasPrefix(address, `\`), strings.ContainsAny(address, "\t\r\n\x00 "):
						fail("address %q in %s", a.Val, s)
					case scheme != "" && !slices.Contains([]string{"http:", "https:", "mailto:"}, scheme):
						fail("address %q in %s", a.Val, s)
					}
				}
			}
			if !slices.Contains([]string{"br", "hr", "img", "input"}, token.Data) {
				open = append(open, token.Data)
			}
		case html.EndTagToken:
			tags = append(tags, ">"+token.Data)
			if len(open) == 0 || open[len(open)-1] != token.Data {
				fail("%s ends within %v in %s", token.Data, open, s)
				return false
			}
			open = open[:len(open)-1]
		case html.CommentToken, html.DoctypeToken, html.SelfClosingTagToken:
			fail("%v in %s", token, s)
		}
	}
	if len(open) > 0 {
		fail("%v never ends in %s", open, s)
	}
	main := &html.Node{Type: html.ElementNode, Data: "main", DataAtom: atom.Main}
	nodes, err := html.ParseFragment(strings.NewReader(s), main)
	if err != nil {
		fail("%v in %s", err, s)
		return false
	}
	var parsed []string
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		if n.Type != html.ElementNode {
			return
		}
		parsed = append(parsed, "<"+n.Data)
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
		if !slices.Contains([]string{"br", "hr", "img", "input"}, n.Data) {
			parsed = append(parsed, ">"+n.Data)
		}
	}
	for _, n := range nodes {
		walk(n)
	}
	if !slices.Equal(tags, parsed) {
		fail("a parser mends the nesting of %s\nwritten %v\nread    %v", s, tags, parsed)
	}
	return ok
}

// The checker must find what it is there to find.
func TestCheckHTML(t *testing.T) {
	for _, bad := range []string{
		"<p><p>a</p></p>", "<p><div>a</div></p>", "<p>a", "a</p>", "<a href='x'><a href='y'>z</a></a>", "<p><em>a</p></em>",
		"<script>a</script>", "<p onclick='x'>a</p>", "<a href='javascript:x'>y</a>", "<a href='//x'>y</a>",
		"<p><ul><li>a</li></ul></p>", "<table><tr><td>a</td></tr></table>", "<h2 id='a'>b</h2><h2 id='a'>b</h2>", "<!-- a -->",
	} {
		silent := &silentTB{TB: t}
		checkHTML(silent, bad)
		if !silent.failed {
			t.Errorf("nothing found in %s", bad)
		}
	}
	if keys := slices.Sorted(maps.Keys(allowed)); slices.Contains(keys, "script") {
		t.Error("scripts are allowed")
	}
}

// A silentTB remembers that a test failed.
type silentTB struct {
	testing.TB
	failed bool
}

func (s *silentTB) Errorf(string, ...any) { s.failed = true }

const printedNote = "Fitted over the [[blue-stays|blue stays]].[^1]\n\n## What moved\n\nThe sleeve binds, see [here](a.md#sleeve).\n\n" +
	"| level | now |\n|-------|----:|\n| bust  | 3/4 in |\n\n- [x] mark it in **red thread**\n- [ ] Next time: wider (pattern: draft; garment: jacket)\n" +
	"- press the seams; the iron is hot, mind the fingers\n\nDecided: plain wrist.\nPrivate: b\n- c\n\n![Back](back.jpg \"Back\")\n\n> At https://example.org.\n\n" +
	"[^1]: By half an inch, see [[first-jacket#next-2]].\n"

func FuzzProse(f *testing.F) {
	for _, seed := range []string{
		printedNote, "<div>\n<!-- a\n-->\n</div> <b> <?c?>\n", "[x [[y]] <a@b.cd> ![z[^1]](v)](w)\n\n[^1]: [u][]\n\n[u]: t\n",
		"- [ ] Private: a\n\n      b\n- [[no-c]] ![no-d](no-e)\n", "> 1. *a **b* c** ~~d~~ `e`\n\n***\n```f\"g\nh\n```\n",
		"[a](java&#115;cript:b \"c'd\") <javascript:e> ![f](//g)\n", "|a|b\n|-|:-:\n|`\\|`|[[c\\|d]]|e\n", "a\\\nb  \nc\n=\n# next 1\n",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, body string) {
		if !utf8.ValidString(body) || strings.ContainsRune(body, 0) || len(body) > 20_000 {
			t.Skip("is refused when the file is loaded")
		}
		checkHTML(t, printed(t, body))
	})
}

// BenchmarkGoldmarkPrint is the floor: goldmark parses and prints the same note
// without our constructs.
func BenchmarkGoldmarkPrint(b *testing.B) {
	md := goldmark.New(goldmark.WithExtensions(extension.GFM, extension.Footnote))
	src := []byte(benchmarkNote)
	b.SetBytes(int64(len(src)))
	b.ReportAllocs()
	for b.Loop() {
		var out strings.Builder
		if err := md.Convert(src, &out); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkProse(b *testing.B) {
	b.SetBytes(int64(len(benchmarkNote)))
	b.ReportAllocs()
	for b.Loop() {
		printed(b, benchmarkNote)
	}
}

// benchmarkNote has the length of an ordinary note, 1.8 kB.
var benchmarkNote = printedNote + strings.Repeat("\nThe lining was cut on the straight grain and basted to the outside before the seams were run up.", 12)
