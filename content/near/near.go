// Package near answers "did you mean ...?": which known words lie nearest to a
// word nobody knows.
//
// Nearness is the number of slips of the pen between two words: a letter wrong,
// missing, too many, or two neighbours swapped. These four are the slips F. J.
// Damerau counted ("A technique for computer detection and correction of
// spelling errors", Communications of the ACM 7, 1964). A pair once swapped is
// not edited again, which is called the optimal string alignment distance.
package near

import (
	"cmp"
	"slices"
	"unicode"
)

// most is how many suggestions a maker can take in at a glance.
const most = 3

type candidate struct {
	text  string
	slips int
}

// Of returns the words among those given that lie nearest to word, best first,
// at most three, equally near ones in alphabetical order. Capitals make no
// difference. A word of one or two letters is near only to itself; one of up to
// six letters may hold one slip, up to ten two, and any longer one three; and a
// word with twice the slips of the nearest is left out, so that nothing
// far-fetched is offered. Where nothing is near the answer is nil.
func Of(word string, among []string) []string {
	var found []candidate
	m := newMeter(word)
	limit := m.allowed()
	for _, text := range among {
		slips := m.slips(text, limit)
		if slips > limit {
			continue
		}
		c := candidate{text, slips}
		at, known := slices.BinarySearchFunc(found, c, compare)
		if known || at == most {
			continue
		}
		found = slices.Insert(found[:min(len(found), most-1)], at, c)
		limit = min(limit, worst(found[0].slips))
		if len(found) == most {
			limit = min(limit, found[most-1].slips)
		}
	}
	var texts []string
	for _, c := range found {
		if c.slips <= limit {
			texts = append(texts, c.text)
		}
	}
	return texts
}

// worst is the most slips a word may hold to be offered beside the nearest one.
func worst(nearest int) int {
	return max(nearest, 2*nearest-1)
}

func compare(a, b candidate) int {
	return cmp.Or(cmp.Compare(a.slips, b.slips), cmp.Compare(a.text, b.text))
}

// A meter counts the slips between one word and many others, reusing its rows.
type meter struct {
	word, other        []rune
	row, above, above2 []int
}

func newMeter(word string) *meter {
	return &meter{word: appendLower(nil, word)}
}

// allowed is how many slips the word may hold and still be recognised.
func (m *meter) allowed() int {
	switch n := len(m.word); {
	case n <= 2:
		return 0
	case n <= 6:
		return 1
	case n <= 10:
		return 2
	default:
		return 3
	}
}

// slips counts the slips between the meter's word and text. It stops as soon as
// there must be more than limit and then returns limit + 1.
func (m *meter) slips(text string, limit int) int {
	tooMany := limit + 1
	// A letter takes one to four bytes, so these two lengths rule most words
	// out before they are decoded.
	if len(text) < len(m.word)-limit || len(text) > 4*(len(m.word)+limit) {
		return tooMany
	}
	m.other = appendLower(m.other[:0], text)
	a, b := m.word, m.other
	if len(b) < len(a)-limit || len(b) > len(a)+limit {
		return tooMany
	}
	m.above2 = resize(m.above2, len(b)+1)
	m.above = resize(m.above, len(b)+1)
	m.row = resize(m.row, len(b)+1)
	for j := range m.row {
		m.row[j] = j
	}
	before := 0
	for i := 1; i <= len(a); i++ {
		m.above2, m.above, m.row = m.above, m.row, m.above2
		// A path that strays further than limit from the diagonal has spent
		// more than limit already; the cells beside the band say so.
		from, to := max(1, i-limit), min(len(b), i+limit)
		m.row[from-1] = tooMany
		if from == 1 {
			m.row[0] = i
		}
		least := m.row[from-1]
		for j := from; j <= to; j++ {
			n := m.above[j-1]
			if a[i-1] != b[j-1] {
				n++
			}
			n = min(n, m.row[j-1]+1)
			if j < i+limit {
				n = min(n, m.above[j]+1)
			}
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				n = min(n, m.above2[j-2]+1)
			}
			m.row[j] = n
			least = min(least, n)
		}
		// A swap reaches back two rows, so one hopeless row alone decides nothing.
		if least > limit && before >= limit {
			return tooMany
		}
		before = least
	}
	return min(m.row[len(b)], tooMany)
}

func resize(row []int, n int) []int {
	return slices.Grow(row[:0], n)[:n]
}

func appendLower(letters []rune, text string) []rune {
	for _, r := range text {
		letters = append(letters, unicode.ToLower(r))
	}
	return letters
}
