package theme

// Search is the page on which the site is searched. Without scripts it is an index
// from A to Z.
type Search struct {
	Frame
	Parts   []string // scripts that hold the index, from the site's top folder
	Letters []LetterGroup
	Beside  []Link // pages that list what is too much for the index
	Empty   string
}

// A LetterGroup is all that begins with one letter.
type LetterGroup struct {
	Letter  string
	Anchor  string
	Entries []IndexEntry
}

// An IndexEntry is a page, or a word with the pages that are meant by it.
type IndexEntry struct {
	Link  Link
	Pages []Link
}

// scripts are those of the search page that are the same on every site, in the order
// in which they run. The parts of the index come after them.
var scripts = []string{"theme/scripts/minisearch.js", "theme/scripts/search.js"}

// searchTop prints the top of the search page.
func (p *printer) searchTop(s Search) {
	p.topWith(s.Frame, SearchPolicy, append(scripts[:len(scripts):len(scripts)], s.Parts...))
}

// Contents returns links to the letters, nil where they are few.
func (s Search) Contents() []Link {
	headings := make([]heading, len(s.Letters))
	for i, l := range s.Letters {
		headings[i] = heading{l.Anchor, l.Letter, true}
	}
	return contents(headings...)
}
