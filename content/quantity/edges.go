package quantity

import (
	"strings"

	"hussif/content/near"
)

// A Whole says what a figure is counted on. The zero value says nothing.
type Whole int

// What a figure may be counted on. A seam has two edges.
const (
	EachEdge Whole = iota + 1
	EachSeam
	AllRound
)

var wholes = [...]string{EachEdge: "each edge", EachSeam: "each seam", AllRound: "all round"}

// String returns the words for it, "" for the zero value.
func (w Whole) String() string {
	if w < 0 || int(w) >= len(wholes) {
		return ""
	}
	return wholes[w]
}

// Edges is a change along seams, with what it is counted on: 3/8 in on each
// edge is 3/4 in in each seam.
type Edges struct {
	By Length
	Of Whole
}

// ParseEdges reads a length followed by "each edge", "each seam" or "all round":
// "3/8 in each edge", "1 1/2 in all round". "Per", "an" and "a" may stand for
// "each", and "on", "at" or "in" before it. A figure that does not say which is
// refused: taking one for the other halves or doubles a let-out.
func ParseEdges(text string, bare Unit) (Edges, error) {
	return parse(text, func(s *scanner) (Edges, *Error) {
		r, e := s.reading()
		if e != nil {
			return Edges{}, e
		}
		by, e := s.close(r, bare)
		if e != nil {
			return Edges{}, e
		}
		of, e := s.whole()
		return Edges{by, of}, e
	})
}

// whole reads what a figure is counted on, up to the end of the text.
func (s *scanner) whole() (Whole, *Error) {
	end := s.at
	s.skipSpace()
	start := s.at
	words := strings.ToLower(strings.Join(strings.Fields(s.text[start:]), " "))
	for _, before := range []string{"on ", "at ", "in "} {
		words = strings.TrimPrefix(words, before)
	}
	switch words {
	case "each edge", "per edge", "an edge":
		return EachEdge, nil
	case "each seam", "per seam", "a seam":
		return EachSeam, nil
	case "all round", "all around":
		return AllRound, nil
	}
	offer := near.Of(words, wholes[EachEdge:])
	reason := "cannot tell what this is counted on: say each edge, each seam, or all round"
	if words == "" {
		start = end
		reason = "this could be either: say each edge, each seam, or all round"
	}
	if offer == nil {
		offer = wholes[EachEdge:]
	}
	var instead []string
	for _, whole := range offer {
		instead = append(instead, s.text[:end]+" "+whole)
	}
	return 0, s.fail(start, reason, instead...)
}
