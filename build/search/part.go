package search

import (
	"bytes"
	"encoding/json"
	"hash/fnv"
	"maps"
	"slices"
	"strings"
)

// A Page is a page of the site as it is searched.
type Page struct {
	Path  string // from the site's top folder, perhaps with a fragment
	Title string
	Kind  string
	Day   string // may be empty
	Of    string // what it belongs to; may be empty
	Lines []Line
}

// A Line is one thing that a page says.
type Line struct {
	Label  string // what it is: "Next time", "Tags"; empty for how the page's text begins
	Anchor string // of its place on the page; empty where that is the page's top
	Text   string
	Names  bool // names of things, which count for more than running text
}

// The fields of the index. Those that count for more stand first.
const (
	inTitle = iota
	inNames
	inText
	fields
)

// most is how many records a part of the index holds, on average, at the most. Of
// 10,000 notes a part is some 150 kB then.
const most = 400

// Parts returns into how many parts the index of so many records is split: one, or a
// power of two, so that it seldom changes.
func Parts(records int) int {
	n := 1
	for records > n*most {
		n *= 2
	}
	return n
}

// PartOf returns which of so many parts has what is called by a name.
func PartOf(name string, parts int) int {
	h := fnv.New32a()
	h.Write([]byte(name))
	return int(h.Sum32() % uint32(parts))
}

// Script returns a part of the index. The same pages give the same bytes.
func Script(pages []Page) ([]byte, error) {
	x := index{lengths: make([][fields]int, len(pages)), postings: make(map[string]*[fields][]int)}
	shown := make([]any, 0, len(pages))
	for i, p := range pages {
		texts := [fields][]string{inTitle: {p.Title}, inNames: {p.Of}}
		lines := make([][]string, 0, len(p.Lines))
		for _, l := range p.Lines {
			field := inText
			if l.Names {
				field = inNames
			}
			texts[field] = append(texts[field], l.Text)
			lines = append(lines, []string{l.Label, l.Anchor, l.Text})
		}
		for field, said := range texts {
			x.add(i, field, said)
		}
		shown = append(shown, []any{p.Path, p.Title, p.Kind, p.Day, p.Of, lines})
	}
	return script(map[string]any{"pages": shown, "lengths": x.lengths, "words": x.words()})
}

// An index is which words stand on which pages.
type index struct {
	lengths  [][fields]int             // by page, as the library counts them: different words as written
	postings map[string]*[fields][]int // page and count by turns
}

// add adds what a page says in one field.
func (x *index) add(page, field int, said []string) {
	counts, written := make(map[string]int), make(map[string]bool)
	for _, text := range said {
		for _, run := range runs(text) {
			written[run] = true
			for _, word := range spellings(run) {
				counts[word]++
			}
		}
	}
	x.lengths[page][field] = len(written)
	for word, n := range counts {
		if x.postings[word] == nil {
			x.postings[word] = &[fields][]int{{}, {}, {}}
		}
		x.postings[word][field] = append(x.postings[word][field], page, n)
	}
}

// words lists the words in order, each with its pages by field.
func (x *index) words() []any {
	out := make([]any, 0, len(x.postings))
	for _, word := range slices.Sorted(maps.Keys(x.postings)) {
		entry := []any{word}
		for _, posting := range x.postings[word] {
			entry = append(entry, posting)
		}
		out = append(out, entry)
	}
	return out
}

// script hands a value to the search page. A string that is parsed takes a browser
// less time than the same as part of the script.
func script(value any) ([]byte, error) {
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(value); err != nil {
		return nil, err
	}
	quoted := strings.NewReplacer(`\`, `\\`, `'`, `\'`, "\n", ``).Replace(text.String())
	return []byte("hussifSearch.take('" + quoted + "');\n"), nil
}
