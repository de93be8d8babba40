package prose

import (
	"bytes"
	"html"
	"regexp"
	"strings"
	"sync"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
)

// plainText returns the words of a block or of an inline node on one line,
// without markup. Blocks are set apart, and remarks inside n are left out: they
// are listed on their own, and one of them may be private.
func plainText(n ast.Node, src []byte) string {
	w := wordsPool.Get().(*words)
	defer wordsPool.Put(w)
	w.src, w.said, w.block = src, w.said[:0], w.block[:0]
	w.gather(n)
	w.endBlock()
	w.src = nil
	return string(w.said)
}

// wordsPool keeps what was room enough for the words of other blocks.
var wordsPool = sync.Pool{New: func() any { return new(words) }}

type words struct {
	src   []byte
	said  []byte
	block []byte // the words of the block that is being gathered
}

func (w *words) gather(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			if value := c.Segment.Value(w.src); c.IsRaw() {
				w.block = append(w.block, value...)
			} else {
				w.block = appendUnescaped(w.block, value)
			}
			if c.SoftLineBreak() || c.HardLineBreak() {
				w.block = append(w.block, ' ')
			}
		case *ast.String:
			w.block = append(w.block, c.Value...)
		case *ast.RawHTML:
			w.block = append(w.block, WithoutComments(c.Segments.Value(w.src))...)
		case *PictureNode:
			w.block = append(w.block, c.Picture.Alt...)
		case *LinkNode:
			switch {
			case c.HasChildren():
			case c.Link.Form == Tie && c.Link.Text == "":
				w.block = append(w.block, asWritten(c.Link)...)
			default:
				w.block = append(w.block, wordsOf(c.Link)...)
			}
			w.gather(c)
		case *RemarkNode:
		case *ast.Paragraph, *ast.TextBlock, *east.TableCell:
			w.endBlock()
			w.gather(c)
		default:
			w.gather(c)
		}
	}
}

// endBlock adds the block's words to what was said before, with a semicolon
// between where that does not end in a mark of its own.
func (w *words) endBlock() {
	begun := false
	for word := range bytes.FieldsSeq(w.block) {
		if !begun && len(w.said) > 0 {
			if last, _ := utf8.DecodeLastRune(w.said); !strings.ContainsRune(".,:;!?…", last) {
				w.said = append(w.said, ';')
			}
		}
		if len(w.said) > 0 {
			w.said = append(w.said, ' ')
		}
		begun = true
		w.said = append(w.said, word...)
	}
	w.block = w.block[:0]
}

var entity = regexp.MustCompile(`^&(?:#[xX][0-9a-fA-F]{1,6}|#[0-9]{1,7}|[a-zA-Z][a-zA-Z0-9]{0,31});`)

// unescape takes out backslash escapes and character references (CommonMark
// 0.31.2, 2.4 and 2.5), in one pass so that \&amp; stays "&amp;".
func unescape(s []byte) string { return string(appendUnescaped(nil, s)) }

// appendUnescaped adds to dst what unescape returns.
func appendUnescaped(dst, s []byte) []byte {
	if bytes.IndexByte(s, '\\') < 0 && bytes.IndexByte(s, '&') < 0 {
		return append(dst, s...)
	}
	for i := 0; i < len(s); i++ {
		switch {
		case s[i] == '\\' && i+1 < len(s) && util.IsPunct(s[i+1]):
			i++
			dst = append(dst, s[i])
			continue
		case s[i] == '&':
			found := string(entity.Find(s[i:min(len(s), i+40)]))
			if _, named := util.LookUpHTML5EntityByName(strings.Trim(found, "&;")); named || strings.HasPrefix(found, "&#") {
				dst = append(dst, html.UnescapeString(found)...)
				i += len(found) - 1
				continue
			}
		}
		dst = append(dst, s[i])
	}
	return dst
}

// WithoutComments returns raw HTML without its comments. A comment is the one
// thing in it that its writer meant not to be seen.
func WithoutComments(raw []byte) []byte {
	return comment.ReplaceAll(raw, nil)
}

var comment = regexp.MustCompile(`(?s)<!--(?:-?>|.*?(?:-->|$))`)

const summaryLength = 200

// summary shortens a paragraph's words for a summary.
func summary(words string) string {
	if utf8.RuneCountInString(words) <= summaryLength {
		return words
	}
	cut := 0
	for i := range words {
		if cut == summaryLength {
			words = words[:i]
			break
		}
		cut++
	}
	if blank := strings.LastIndexByte(words, ' '); blank > 0 {
		words = words[:blank]
	}
	return strings.TrimRight(words, " ,;:.") + "…"
}
