package almanac

import (
	"encoding/xml"
	"fmt"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"hussif/content/journal"
	"hussif/content/journal/journaltest"
)

// An element is one of any XML document.
type element struct {
	XMLName  xml.Name
	Attr     []xml.Attr `xml:",any,attr"`
	Words    string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

const atomSpace = "http://www.w3.org/2005/Atom"

func (e element) all(name string) []element {
	var found []element
	for _, c := range e.Children {
		if c.XMLName == (xml.Name{Space: atomSpace, Local: name}) {
			found = append(found, c)
		}
	}
	return found
}

func (e element) attr(name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// one returns the words of the child of that name, of which there must be one.
func (e element) one(t *testing.T, name string) string {
	t.Helper()
	found := e.all(name)
	if len(found) != 1 {
		t.Errorf("%s has %d of %s", e.XMLName.Local, len(found), name)
		return ""
	}
	return found[0].Words
}

func parsedFeed(t *testing.T, data []byte) element {
	t.Helper()
	var feed element
	if err := xml.Unmarshal(data, &feed); err != nil {
		t.Fatalf("%v in\n%s", err, data)
	}
	return feed
}

var (
	urn = regexp.MustCompile(`^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`) // RFC 9562, 4
	// RFC 4287, 3.3: a date-time of RFC 3339 with "T" and "Z" in capitals.
	instant = regexp.MustCompile(`^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$`)
)

// atomKnows are the children that RFC 4287 gives a feed (4.1.1) and an entry
// (4.1.2), of those that are written here, each of which is told of in section 4.2.
var atomKnows = map[string]map[string]bool{
	"feed":  {"author": true, "entry": true, "id": true, "link": true, "title": true, "updated": true},
	"entry": {"id": true, "link": true, "summary": true, "title": true, "updated": true},
}

func mustBeAtom(t *testing.T, data []byte) element {
	t.Helper()
	if !strings.HasPrefix(string(data), `<?xml version="1.0" encoding="UTF-8"?>`) {
		t.Errorf("no declaration at the start of\n%.100s", data)
	}
	feed := parsedFeed(t, data)
	if feed.XMLName != (xml.Name{Space: atomSpace, Local: "feed"}) {
		t.Errorf("the document is a %v", feed.XMLName)
	}
	if authors := feed.all("author"); len(authors) != 1 || authors[0].one(t, "name") == "" { // 4.1.1, 3.2.1
		t.Error("the feed has no author with a name")
	}
	seen := map[string]bool{}
	for _, e := range append([]element{feed}, feed.all("entry")...) {
		for _, c := range e.Children {
			if !atomKnows[e.XMLName.Local][c.XMLName.Local] || c.XMLName.Space != atomSpace {
				t.Errorf("%v may not stand in %s", c.XMLName, e.XMLName.Local)
			}
		}
		if strings.TrimSpace(e.one(t, "title")) == "" {
			t.Errorf("a title is empty")
		}
		id := e.one(t, "id")
		if !urn.MatchString(id) || seen[id] { // 4.2.6: an IRI, never a relative one
			t.Errorf("id %q is no URN of a UUID, or stands twice", id)
		}
		seen[id] = true
		when := e.one(t, "updated")
		if _, err := time.Parse(time.RFC3339, when); err != nil || !instant.MatchString(when) {
			t.Errorf("updated %q: %v", when, err)
		}
		alternate := 0
		for _, l := range e.all("link") { // 4.2.7
			if _, err := url.Parse(l.attr("href")); err != nil || l.attr("href") == "" {
				t.Errorf("link to %q: %v", l.attr("href"), err)
			}
			if l.attr("rel") == "alternate" {
				alternate++
			}
		}
		if alternate != 1 { // 4.1.1 and 4.1.2: one at most of a type; an entry without content has one
			t.Errorf("%s %q has %d alternate links", e.XMLName.Local, e.one(t, "title"), alternate)
		}
		if summaries := e.all("summary"); len(summaries) > 1 || len(summaries) == 1 && summaries[0].attr("type") != "text" {
			t.Errorf("%q has no plain summary", e.one(t, "title"))
		}
	}
	return feed
}

func TestAtomIsAsPublished(t *testing.T) {
	for name, j := range map[string]*journal.Journal{
		"demo": readDemo(t), "market": journaltest.OpenClean(t, market), "empty": {Settings: &journal.Settings{}},
	} {
		for where, at := range map[string]Pages{"disk": fromDisk, "web": onWeb(t)} {
			t.Run(name+"/"+where, func(t *testing.T) {
				data, err := Atom(j, at)
				if err != nil {
					t.Fatal(err)
				}
				mustBeAtom(t, data)
			})
		}
	}
}

func TestAtomHoldsTheNewestNotes(t *testing.T) {
	var archive strings.Builder
	archive.WriteString("-- journal.yaml --\ntitle: <Needle> & thread\n-- builds/jacket/build.md --\n---\ntitle: Jacket\n---\n")
	for day := 1; day <= 31; day++ {
		fmt.Fprintf(&archive, "-- builds/jacket/2026-05-%02d-day.md --\nFirst words & <em>day</em> %d.\n\nPrivate: the key is under the trough.\n", day, day)
	}
	j := journaltest.OpenClean(t, archive.String())
	data, err := Atom(j, fromDisk)
	if err != nil {
		t.Fatal(err)
	}
	feed := mustBeAtom(t, data)
	entries := feed.all("entry")
	if len(entries) != 30 {
		t.Fatalf("%d entries", len(entries))
	}
	for i, e := range entries {
		day := 31 - i
		if got, want := e.one(t, "updated"), fmt.Sprintf("2026-05-%02dT00:00:00Z", day); got != want {
			t.Errorf("entry %d is of %s, want %s", i, got, want)
		}
		if got, want := e.all("link")[0].attr("href"), fmt.Sprintf("builds/jacket/2026-05-%02d-day.html", day); got != want {
			t.Errorf("entry %d leads to %s, want %s", i, got, want)
		}
		if got := e.one(t, "title"); got != "Jacket: Day" {
			t.Errorf("entry %d is called %q", i, got)
		}
	}
	if got := feed.one(t, "title"); got != "<Needle> & thread" {
		t.Errorf("the feed is called %q", got)
	}
	if got := feed.one(t, "updated"); got != "2026-05-31T00:00:00Z" {
		t.Errorf("the feed is of %s", got)
	}
	if got := entries[0].one(t, "summary"); !strings.HasPrefix(got, "First words & ") {
		t.Errorf("the summary is %q", got)
	}
	if strings.Contains(string(data), "trough") {
		t.Error("a private remark is in the feed")
	}
}

// The links of a feed on the web are taken from its base address (RFC 4287, 2, with
// RFC 3986, 5): they lead to the pages, whatever characters their names have.
func TestAtomLinksOnTheWeb(t *testing.T) {
	j := journaltest.OpenClean(t, "-- journal.yaml --\n-- notes/2026-05-01-a.md --\nWords.\n")
	at := onWeb(t)
	at.Path = func(journal.ID) string { return "notes: größe/a?b#c.html" }
	data, err := Atom(j, at)
	if err != nil {
		t.Fatal(err)
	}
	feed := mustBeAtom(t, data)
	base := address(t, feed.attr("base"))
	if base.String() != "https://needle.example/journal/" {
		t.Errorf("the base is %s", base)
	}
	to, err := base.Parse(feed.all("entry")[0].all("link")[0].attr("href"))
	if err != nil {
		t.Fatal(err)
	}
	if to.Path != "/journal/notes: größe/a?b#c.html" || to.Host != "needle.example" || to.RawQuery != "" || to.Fragment != "" {
		t.Errorf("the entry leads to %s", to)
	}
	self := feed.all("link")[1]
	if self.attr("rel") != "self" || self.attr("href") != "https://needle.example/journal/notes.atom" {
		t.Errorf("the feed lies at %v", self.Attr)
	}
}

// Names stay where pages move (RFC 4287, 4.2.6).
func TestAtomKeepsNamesWhenMoved(t *testing.T) {
	j := readDemo(t)
	var ids [2][]string
	for i, at := range []Pages{fromDisk, onWeb(t)} {
		data, err := Atom(j, at)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range parsedFeed(t, data).all("entry") {
			ids[i] = append(ids[i], e.one(t, "id"))
		}
	}
	if len(ids[0]) == 0 || fmt.Sprint(ids[0]) != fmt.Sprint(ids[1]) {
		t.Error("the entries have other names on the web")
	}
}

func TestAtomRefusesAnAddressThatIsNone(t *testing.T) {
	at := Pages{Base: address(t, "mailto:ada@example.org"), Path: fromDisk.Path}
	if _, err := Atom(readDemo(t), at); err == nil || !strings.Contains(err.Error(), "https://example.org/journal/") {
		t.Errorf("%v", err)
	}
}

func TestAlmanacIsTheSameEveryTime(t *testing.T) {
	for _, at := range []Pages{fromDisk, onWeb(t)} {
		for what, write := range map[string]func(j *journal.Journal) ([]byte, error){
			"calendar": func(j *journal.Journal) ([]byte, error) { return Calendar(j, nil, at) },
			"feed":     func(j *journal.Journal) ([]byte, error) { return Atom(j, at) },
		} {
			first, err := write(readDemo(t))
			if err != nil {
				t.Fatal(err)
			}
			for range 5 {
				if again, err := write(readDemo(t)); err != nil || string(again) != string(first) {
					t.Fatalf("the %s differs (%v)", what, err)
				}
			}
		}
	}
}

func TestAtomGolden(t *testing.T) {
	data, err := Atom(journaltest.OpenClean(t, market), onWeb(t))
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "testdata/market.atom", data)
}
