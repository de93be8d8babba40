package site

import (
	"runtime"
	"slices"
	"sync"

	"hussif/content/journal"
	"hussif/content/source"
)

// answers hold every question that was asked, with what stands for its answer. The
// zero value is ready.
type answers struct {
	mu        sync.Mutex
	numbers   map[journal.Question]uint32
	questions []journal.Question
	sums      []source.Sum
}

// number returns the numbers of questions that were asked of a book just now.
func (a *answers) number(b *book, asked []journal.Question) []uint32 {
	out := make([]uint32, len(asked))
	var missing []int
	a.mu.Lock()
	for i, q := range asked {
		n, ok := a.numbers[q]
		if !ok {
			missing = append(missing, i)
		}
		out[i] = n
	}
	a.mu.Unlock()
	for _, i := range missing {
		sum := b.answer(asked[i])
		if sum == (source.Sum{}) {
			panic("site: nobody knows the answer about " + string(asked[i].About))
		}
		out[i] = a.add(asked[i], sum)
	}
	return out
}

func (a *answers) add(q journal.Question, sum source.Sum) uint32 {
	a.mu.Lock()
	defer a.mu.Unlock()
	if n, ok := a.numbers[q]; ok {
		return n
	}
	if a.numbers == nil {
		a.numbers = make(map[journal.Question]uint32)
	}
	n := uint32(len(a.questions))
	a.numbers[q] = n
	a.questions = append(a.questions, q)
	a.sums = append(a.sums, sum)
	return n
}

// again asks one question again and reports whether the answer is another.
func (a *answers) again(b *book, n uint32) bool {
	a.mu.Lock()
	q := a.questions[n]
	a.mu.Unlock()
	sum := b.answer(q) // what is kept may ask more
	a.mu.Lock()
	defer a.mu.Unlock()
	changed := sum != a.sums[n] || sum == (source.Sum{})
	a.sums[n] = sum
	return changed
}

// changes tell by its number whether a question has another answer than before. A
// question that was not known then has none.
type changes []bool

func (c changes) any(asked []uint32) bool {
	return slices.ContainsFunc(asked, func(n uint32) bool { return int(n) < len(c) && c[n] })
}

// renew asks a book those questions again that may have another answer, and returns
// which have.
func (a *answers) renew(b *book, may func(journal.Question) bool) changes {
	var again []uint32
	for n, q := range a.questions {
		if may(q) {
			again = append(again, uint32(n))
		}
	}
	c := make(changes, len(a.questions))
	var group sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		group.Go(func() {
			for i := w; i < len(again); i += workers {
				c[again[i]] = a.again(b, again[i])
			}
		})
	}
	group.Wait()
	return c
}
