// Package citation answers how a source is named, so that whoever reads a garment's
// documentation can find it: one form for every kind of reference.
//
// The form is this project's own, and plain:
//
//	Creator. Title (date). Type. Holder, accession number N. Publisher. Address
//
// What is not known is left out together with its punctuation. The date keeps the
// words of a caption as the maker wrote them; one written in EDTF is put in words,
// since who reads a citation need not know that code. Each part begins with a
// capital, but for the date and the address, which is last and has no full stop
// behind it that could be taken for a part of it.
//
// Creator, title, date, type and publisher have the meanings of the elements of
// those names in the Dublin Core Metadata Element Set (ISO 15836-1:2017); accession
// number and address are identifiers in its sense. For the holder, whoever keeps
// the thing, it has no element.
package citation

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"hussif/content/journal"
)

// An Element is what a part of a citation says.
type Element string

// Elements, in their order in a citation.
const (
	Creator   Element = "creator"
	Title     Element = "title"
	Date      Element = "date"
	Type      Element = "type"
	Holder    Element = "holder"
	Accession Element = "accession number"
	Publisher Element = "publisher"
	Address   Element = "address"
)

// A Part is a piece of a citation: an element, or the punctuation between two.
type Part struct {
	Element Element // empty for punctuation and the words that belong to it
	Text    string
}

// Cite returns the citation of a reference on one line.
func Cite(r *journal.Reference) string {
	var b strings.Builder
	for _, p := range Parts(r) {
		b.WriteString(p.Text)
	}
	return b.String()
}

// Parts returns the pieces that make up the citation when they are put together,
// for pages that make links of its title and address.
func Parts(r *journal.Reference) []Part {
	w := writer{}
	w.sentence(Creator, r.Creator)
	w.sentence(Title, r.Title)
	w.date(r.Date.String())
	w.sentence(Type, string(r.Type))
	w.sentence(Holder, r.Holder)
	w.accession(r.Accession)
	w.sentence(Publisher, r.Publisher)
	w.close()
	w.address(string(r.Address))
	return w.parts
}

// A writer puts a citation together. What was written last may still lack its full
// stop.
type writer struct {
	parts []Part
	open  bool
}

// sentence begins a new sentence with an element, unless it says nothing.
func (w *writer) sentence(e Element, text string) {
	text = tidy(text)
	if text == "" {
		return
	}
	w.close()
	if len(w.parts) > 0 {
		w.add("", " ")
	}
	w.add(e, capital(text))
	w.open = true
}

// date adds a date to the title.
func (w *writer) date(text string) {
	if text = tidy(text); text == "" {
		return
	}
	if len(w.parts) > 0 && w.parts[len(w.parts)-1].Element != Title {
		w.close()
	}
	if len(w.parts) > 0 {
		w.add("", " ")
	}
	w.add("", "(")
	w.add(Date, text)
	w.add("", ")")
	w.open = true
}

// accession adds the number to the holder, or makes a sentence of it.
func (w *writer) accession(text string) {
	const named = "accession number "
	switch text = tidy(text); {
	case text == "":
		return
	case len(w.parts) > 0 && w.parts[len(w.parts)-1].Element == Holder:
		w.add("", ", "+named)
	default:
		w.close()
		if len(w.parts) > 0 {
			w.add("", " ")
		}
		w.add("", capital(named))
	}
	w.add(Accession, text)
	w.open = true
}

func (w *writer) address(text string) {
	if text = tidy(text); text == "" {
		return
	}
	if len(w.parts) > 0 {
		w.add("", " ")
	}
	w.add(Address, text)
}

// close ends a sentence that has no mark at its end yet.
func (w *writer) close() {
	if !w.open {
		return
	}
	w.open = false
	said := strings.TrimRight(w.parts[len(w.parts)-1].Text, `"'”’»`)
	if !strings.HasSuffix(said, ".") && !strings.HasSuffix(said, "?") && !strings.HasSuffix(said, "!") && !strings.HasSuffix(said, "…") {
		w.add("", ".")
	}
}

func (w *writer) add(e Element, text string) { w.parts = append(w.parts, Part{e, text}) }

// tidy puts words on one line, without punctuation that waits for more.
func tidy(text string) string {
	return strings.TrimRight(strings.Join(strings.Fields(text), " "), ",;: ")
}

func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}
