package export

import (
	"errors"
	"regexp"
	"strings"
	"unicode"

	"github.com/microcosm-cc/bluemonday"
	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"
)

// elements are those that HTML in a log may have. A page has its title in h1.
var elements = []string{
	"p", "br", "hr", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "blockquote", "pre", "code",
	"em", "strong", "del", "sup", "table", "thead", "tbody", "tr", "th", "td", "a",
}

// policy lets these elements through, and links that lead to the web or to a mailbox.
var policy = func() *bluemonday.Policy {
	p := bluemonday.NewPolicy()
	p.AllowElements(elements[:len(elements)-1]...)
	p.AllowAttrs("scope").Matching(regexp.MustCompile(`^(row|col)$`)).OnElements("th")
	p.AllowAttrs("start").Matching(bluemonday.Integer).OnElements("ol")
	p.AllowAttrs("href").OnElements("a")
	p.AllowURLSchemes("http", "https", "mailto")
	p.RequireParseableURLs(true)
	p.AllowRelativeURLs(false)
	p.RequireNoReferrerOnLinks(true)
	return p
}()

// errDeep says that HTML is nested more deeply than anybody writes.
var errDeep = errors.New("this is nested too deeply to be shown")

// cleanHTML returns HTML as a log may have it: whole elements, of those named in
// [elements]. Of all others the text stays, but for scripts and styles.
func cleanHTML(text string) (string, error) {
	// What is not closed here would swallow what follows on the page: the parser
	// closes it (HTML Living Standard, 13.4, "Parsing HTML fragments").
	nodes, err := html.ParseFragment(strings.NewReader(cleanText(text)), &html.Node{Type: html.ElementNode, Data: "div", DataAtom: atom.Div})
	if err != nil {
		return "", errDeep
	}
	var whole strings.Builder
	for _, n := range nodes {
		if err := html.Render(&whole, n); err != nil {
			return "", errDeep
		}
	}
	return strings.TrimSpace(policy.Sanitize(whole.String())), nil
}

// cleanText returns text without signs that steer what shows it: control characters
// but for line ends and tabs, and those that turn the direction of writing (Unicode
// Standard Annex 9, explicit formatting characters), by which a name may be made to look
// like another.
func cleanText(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == '\t':
			return r
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r), unicode.Is(unicode.Zl, r), unicode.Is(unicode.Zp, r):
			return -1
		case unicode.Is(unicode.Noncharacter_Code_Point, r):
			return -1
		}
		return r
	}, text)
}
