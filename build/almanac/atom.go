package almanac

import (
	"fmt"
	"slices"
	"time"

	"github.com/gorilla/feeds"

	"hussif/content/journal"
)

// AtomFile is what the feed is called in the site's top folder, from where its links
// lead.
const AtomFile = "notes.atom"

// newest is how many notes the feed holds.
const newest = 30

// A feed is the library's feed with what that has no fields for.
type feed struct {
	Base  string `xml:"xml:base,attr,omitempty"`
	Links []feeds.AtomLink
	feeds.AtomFeed
}

// FeedXml implements feeds.XmlFeed.
func (f *feed) FeedXml() any { return f }

// Atom returns an Atom feed of the newest notes, at most 30, each with its opening
// words as its summary. A note without a day is left out. A feed without notes says
// that it was last changed on 1970-01-01. A base address that is none is an error.
func Atom(j *journal.Journal, at Pages) ([]byte, error) {
	base, err := at.base()
	if err != nil {
		return nil, err
	}
	notes := datedNotes(j)
	notes = notes[max(0, len(notes)-newest):]
	f := &feed{AtomFeed: feeds.AtomFeed{
		Xmlns:   "http://www.w3.org/2005/Atom",
		Title:   titleOf(j),
		Id:      iri(nameOf(j, "feed", "")),
		Updated: updated(time.Unix(0, 0)),
		Author:  &feeds.AtomAuthor{AtomPerson: feeds.AtomPerson{Name: titleOf(j)}},
	}}
	f.Links = append(f.Links, page("index.html"))
	if base != nil {
		f.Base = base.String()
		f.Links = append(f.Links, feeds.AtomLink{Href: base.JoinPath(AtomFile).String(), Rel: "self", Type: "application/atom+xml"})
	}
	for _, n := range slices.Backward(notes) {
		f.Entries = append(f.Entries, entry(j, n, at))
	}
	if len(notes) > 0 {
		f.Updated = f.Entries[0].Updated
	}
	text, err := feeds.ToXML(f)
	if err != nil {
		return nil, fmt.Errorf("writing the feed: %w", err)
	}
	return []byte(text + "\n"), nil
}

func entry(j *journal.Journal, n *journal.Note, at Pages) *feeds.AtomEntry {
	e := &feeds.AtomEntry{
		Title:   n.Title,
		Id:      iri(nameOf(j, "note", n.ID)),
		Updated: updated(start(n.Date)),
		Links:   []feeds.AtomLink{page(at.Path(n.ID))},
	}
	if n.Of != nil {
		e.Title = n.Of.Title + ": " + n.Title
	}
	if n.Text.Opening != "" {
		e.Summary = &feeds.AtomSummary{Type: "text", Content: j.Titled(n.Text.Opening)}
	}
	return e
}

// page links to a page of the site from its top folder.
func page(path string) feeds.AtomLink {
	return feeds.AtomLink{Href: relative(path).String(), Rel: "alternate", Type: "text/html"}
}

// iri writes a name as RFC 4287 wants it, which takes no relative one (4.2.6).
func iri(u uuid) string { return "urn:uuid:" + u.String() }

// updated writes an instant as RFC 3339 has it.
func updated(t time.Time) string { return t.UTC().Format(time.RFC3339) }

// datedNotes returns the notes whose day can be written, oldest first.
func datedNotes(j *journal.Journal) []*journal.Note {
	return slices.DeleteFunc(slices.Clone(j.Notes()), func(n *journal.Note) bool { return !writable(n.Date) })
}
