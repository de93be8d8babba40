package front

import (
	"bufio"
	"bytes"
	"errors"
	"strings"
	"sync"

	"github.com/adrg/frontmatter"

	"hussif/content/source"
)

// FrontMatter is the rule for front matter that cannot be told from the body.
const FrontMatter = "front matter"

const fence = "---"

// Parts are the two halves of a note. Where there is no front matter, Front is
// empty and the whole file is body.
type Parts struct {
	Front source.Span // what stands between the fences
	Body  source.Span
}

// Split finds the front matter of a file: it opens with a line of three hyphens
// before any other text and ends with the next such line.
func Split(f *source.File) (Parts, []source.Finding) {
	opener, ok := openingFence(f)
	if !ok {
		return Parts{Front: f.Span(0, 0), Body: f.Whole()}, nil
	}
	none := Parts{Front: f.Span(0, 0), Body: f.Span(len(f.Data), len(f.Data))}
	if !isFence(opener.Text()) {
		finding := source.Found(opener, source.Error, FrontMatter,
			"the three hyphens that open the front matter do not stand at the very left, or not alone")
		finding.Help = "take the blanks away; or, if this is no front matter, use three asterisks"
		return none, []source.Finding{finding}
	}
	closer, ok := closingFence(f, opener)
	if !ok {
		finding := source.Found(opener, source.Error, FrontMatter,
			"the front matter opens here and is never closed")
		finding.Help = "put a line of three hyphens after the last field"
		return none, []source.Finding{finding}
	}
	parts := Parts{
		Front: f.Span(lineAfter(f, opener), closer.Start),
		Body:  f.Span(lineAfter(f, closer), len(f.Data)),
	}

	var front []byte
	capture := frontmatter.NewFormat(fence, fence, func(data []byte, v any) error {
		front = data // in a buffer of this one call
		return nil
	})
	// The library takes a buffered reader as it comes. Shown the file as far as our
	// fence, it finds the same end or an earlier one; the body would only be copied.
	reader := readers.Get().(*bufio.Reader)
	defer readers.Put(reader)
	reader.Reset(bytes.NewReader(f.Data[:parts.Body.Start]))
	body, err := frontmatter.MustParse(reader, new(struct{}), capture)
	if err != nil && !errors.Is(err, frontmatter.ErrNotFound) {
		return none, []source.Finding{source.Found(opener, source.Error, FrontMatter,
			"the front matter cannot be told from the body: %v", err)}
	}
	if !sameText(front, f.Data[parts.Front.Start:parts.Front.End]) || len(bytes.TrimSpace(body)) > 0 {
		at := indentedFence(f, parts.Front)
		finding := source.Found(at, source.Error, FrontMatter,
			"a line of three hyphens inside the front matter would end it here")
		finding.Help = "use another mark in the text, such as three asterisks"
		return none, []source.Finding{finding}
	}
	return parts, nil
}

var readers = sync.Pool{New: func() any { return bufio.NewReader(nil) }}

// sameText compares two pieces of a file but for line ends and the blanks round
// them, which the library trims.
func sameText(a, b []byte) bool {
	a, b = bytes.TrimSpace(a), bytes.TrimSpace(b)
	if bytes.Equal(a, b) {
		return true
	}
	lines := func(b []byte) []byte { return bytes.ReplaceAll(b, []byte("\r\n"), []byte("\n")) }
	return bytes.Equal(lines(a), lines(b))
}

// isFence reports whether a line is a fence. Blanks after the hyphens are not
// seen, and so forgiven.
func isFence(line string) bool { return strings.TrimRight(line, " \t") == fence }

// openingFence finds the fence that opens the front matter, or what looks like
// one, after blank lines at the most.
func openingFence(f *source.File) (source.Span, bool) {
	for n := 1; n <= f.Lines(); n++ {
		line := lineSpan(f, n)
		switch text := line.Text(); {
		case strings.TrimSpace(text) == "":
		case strings.TrimSpace(text) == fence:
			return line, true
		default:
			return source.Span{}, false
		}
	}
	return source.Span{}, false
}

func closingFence(f *source.File, opener source.Span) (source.Span, bool) {
	first, _ := opener.Position()
	for n := first + 1; n <= f.Lines(); n++ {
		if line := lineSpan(f, n); isFence(line.Text()) {
			return line, true
		}
	}
	return source.Span{}, false
}

func indentedFence(f *source.File, front source.Span) source.Span {
	first, _ := front.Position()
	last, _ := f.Span(front.End, front.End).Position()
	for n := first; n <= last; n++ {
		if line := lineSpan(f, n); strings.TrimSpace(line.Text()) == fence {
			return line
		}
	}
	return front.At(0, 0)
}

// lineSpan returns a line without its line end.
func lineSpan(f *source.File, n int) source.Span {
	start, end := f.LineStart(n), len(f.Data)
	if n < f.Lines() {
		end = f.LineStart(n + 1)
	}
	return f.Span(start, start+len(bytes.TrimRight(f.Data[start:end], "\r\n")))
}

func lineAfter(f *source.File, line source.Span) int {
	if n, _ := line.Position(); n < f.Lines() {
		return f.LineStart(n + 1)
	}
	return len(f.Data)
}
