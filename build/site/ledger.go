package site

import (
	"encoding/binary"
	"errors"
	"maps"
	"slices"

	"hussif/build/keep"
	"hussif/content/journal"
	"hussif/content/source"
)

// A ledger is what a workshop knows of the pages it has made, written down for
// another run of the program: the questions with what stood for their answers, and
// each page with its sum and what it asked. It is a version, then three lists of
// numbers, texts and sums; numbers are varints.

const ledgerVersion = 1

var errLedger = errors.New("site: this is no ledger of pages")

// Save returns the ledger of the workshop. given stands for all that decides pages
// beside the journal's records, such as the program and the settings.
func (w *Workshop) Save(given source.Sum) []byte {
	known := &w.kept().known
	numbers := make(map[uint32]uint32)
	var aspects []journal.Aspect
	aspectAt := make(map[journal.Aspect]int)
	var questions []uint32
	for _, m := range w.made {
		for _, q := range m.asked {
			if _, ok := numbers[q]; ok {
				continue
			}
			numbers[q] = uint32(len(questions))
			questions = append(questions, q)
			if about := known.questions[q].About; !has(aspectAt, about) {
				aspectAt[about] = len(aspects)
				aspects = append(aspects, about)
			}
		}
	}
	b := binary.AppendUvarint(nil, ledgerVersion)
	b = append(b, given[:]...)
	b = binary.AppendUvarint(b, uint64(len(aspects)))
	for _, a := range aspects {
		b = appendText(b, string(a))
	}
	b = binary.AppendUvarint(b, uint64(len(questions)))
	for _, q := range questions {
		b = binary.AppendUvarint(b, uint64(aspectAt[known.questions[q].About]))
		b = appendText(b, known.questions[q].Of)
		b = append(b, known.sums[q][:]...)
	}
	b = binary.AppendUvarint(b, uint64(len(w.made)))
	for _, path := range slices.Sorted(maps.Keys(w.made)) {
		m := w.made[path]
		b = appendText(b, path)
		b = append(b, m.sum[:]...)
		b = binary.AppendUvarint(b, uint64(len(m.asked)))
		for _, q := range m.asked {
			b = binary.AppendUvarint(b, uint64(numbers[q]))
		}
	}
	return b
}

func has[K comparable, V any](m map[K]V, key K) bool {
	_, ok := m[key]
	return ok
}

func appendText(b []byte, s string) []byte {
	return append(binary.AppendUvarint(b, uint64(len(s))), s...)
}

// Load has a workshop that was not shown a journal yet go on from a ledger. Where it
// is none, or of other things than given, nothing is taken from it.
func (w *Workshop) Load(data []byte, given source.Sum) error {
	r := ledgerReader{rest: data}
	if r.number() != ledgerVersion || r.sum() != given || r.failed {
		return errLedger
	}
	aspects := make([]journal.Aspect, r.count())
	for i := range aspects {
		aspects[i] = journal.Aspect(r.text())
	}
	var known answers
	known.numbers = make(map[journal.Question]uint32)
	for range r.count() {
		at := r.number()
		q := journal.Question{Of: r.text()}
		sum := r.sum()
		if r.failed || at >= uint64(len(aspects)) {
			return errLedger
		}
		q.About = aspects[at]
		known.add(q, sum)
	}
	pages := make(map[string]made)
	for range r.count() {
		path := r.text()
		m := made{sum: r.sum(), asked: make([]uint32, r.count())}
		for i := range m.asked {
			n := r.number()
			if n >= uint64(len(known.questions)) {
				return errLedger
			}
			m.asked[i] = uint32(n)
		}
		if r.failed {
			return errLedger
		}
		pages[path] = m
	}
	if r.failed || len(r.rest) > 0 {
		return errLedger
	}
	w.before = &before{questions: known.questions, sums: known.sums, numbers: known.numbers, made: pages}
	return nil
}

// A ledgerReader reads a ledger from its start. After a fault it reads zeros.
type ledgerReader struct {
	rest   []byte
	failed bool
}

func (r *ledgerReader) fail() {
	r.failed, r.rest = true, nil
}

func (r *ledgerReader) number() uint64 {
	n, size := binary.Uvarint(r.rest)
	if size <= 0 {
		r.fail()
		return 0
	}
	r.rest = r.rest[size:]
	return n
}

// count reads how many things follow: of which each takes a byte or more.
func (r *ledgerReader) count() int {
	n := r.number()
	if n > uint64(len(r.rest)) {
		r.fail()
		return 0
	}
	return int(n)
}

func (r *ledgerReader) text() string {
	n := r.count()
	s := string(r.rest[:n])
	r.rest = r.rest[n:]
	return s
}

func (r *ledgerReader) sum() (s keep.Sum) {
	if len(r.rest) < len(s) {
		r.fail()
		return s
	}
	copy(s[:], r.rest)
	r.rest = r.rest[len(s):]
	return s
}
