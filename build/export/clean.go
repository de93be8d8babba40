package export

import (
	"errors"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"github.com/microcosm-cc/bluemonday"
	"golang.org/x/net/html"
)

// elements are those that HTML in a log may have. A page has its title in h1.
var elements = []string{
	"p", "br", "hr", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "blockquote", "pre", "code",
	"em", "strong", "del", "sup", "table", "thead", "tbody", "tr", "th", "td", "a",
}

// policy lets these elements through, and links that lead to the web or to a mailbox.
var policy = func() *bluemonday.Policy {
	p := bluemonday.NewPolicy()
	p.AllowElements(elements...)
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

// deepest is how deep elements may be nested.
const deepest = 60

// cleanHTML returns HTML as a log may have it: whole elements, of those named in
// [elements]. Of all others the text stays, but for scripts and styles. It is no longer
// than the text but for the ends of elements.
func cleanHTML(text string) (string, error) {
	whole, err := closed(policy.Sanitize(text))
	return strings.TrimSpace(cleanText(whole)), err // signs may have been written as entities
}

// closed returns clean HTML in which every element ends, and nothing ends that did not
// begin: what is not closed here would swallow what follows on the page.
func closed(clean string) (string, error) {
	var b strings.Builder
	var open []string
	end := func(from int) {
		for _, name := range slices.Backward(open[from:]) {
			b.WriteString("</" + name + ">")
		}
		open = open[:from]
	}
	for z := html.NewTokenizer(strings.NewReader(clean)); ; {
		kind := z.Next()
		if kind == html.ErrorToken {
			end(0)
			return b.String(), nil
		}
		raw := string(z.Raw())
		name, _ := z.TagName()
		switch kind {
		case html.StartTagToken:
			b.WriteString(raw)
			if void[string(name)] {
				continue
			}
			if open = append(open, string(name)); len(open) > deepest {
				return "", errDeep
			}
		case html.EndTagToken:
			if at := lastIndex(open, string(name)); at >= 0 {
				end(at)
			}
		case html.TextToken:
			b.WriteString(raw)
		}
	}
}

// Words returns how the text of clean HTML begins, without its elements.
func Words(clean string) string {
	var b strings.Builder
	for z := html.NewTokenizer(strings.NewReader(clean)); b.Len() < mostWords; {
		switch z.Next() {
		case html.ErrorToken:
			return strings.Join(strings.Fields(b.String()), " ")
		case html.TextToken:
			b.Write(z.Text())
		default:
			b.WriteByte(' ')
		}
	}
	return cut(strings.Join(strings.Fields(b.String()), " "), mostWords)
}

// mostWords is how much [Words] returns, in characters.
const mostWords = 600

// void has the elements that have no end.
var void = map[string]bool{"br": true, "hr": true}

func lastIndex(list []string, name string) int {
	for i, other := range slices.Backward(list) {
		if other == name {
			return i
		}
	}
	return -1
}

// cleanText returns text without signs that are not seen and steer what is: control
// characters but for line ends and tabs, those that turn the direction of writing
// (Unicode Standard Annex 9, explicit formatting characters), by which a name may be made
// to look like another, and those without a shape (property Default_Ignorable_Code_Point).
// The two that join letters or keep them apart, as some scripts need, stay.
func cleanText(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == '\t', r == '\u200c', r == '\u200d':
			return r
		case unicode.IsControl(r), unicode.In(r, unseen...):
			return -1
		}
		return r
	}, text)
}

var unseen = []*unicode.RangeTable{
	unicode.Cf, unicode.Zl, unicode.Zp, unicode.Bidi_Control, unicode.Other_Default_Ignorable_Code_Point,
	unicode.Noncharacter_Code_Point, {R16: []unicode.Range16{{Lo: 0x2800, Hi: 0x2800, Stride: 1}}}, // a Braille cell without a dot
}
