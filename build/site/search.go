package site

import (
	"slices"
	"strconv"
	"strings"

	"hussif/build/address"
	"hussif/build/search"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/theme"
)

// inParts sorts records under the part of the index of words that they are in: that of
// the build that they belong to, since a page that reads one note reads all of them.
func inParts(records []journal.Record) [][]journal.Record {
	parts := make([][]journal.Record, search.Parts(len(records)))
	for _, r := range records {
		n := search.PartOf(string(journal.Family(r)), len(parts))
		parts[n] = append(parts[n], r)
	}
	return parts
}

// searchParts returns the paths of the parts of the index of words. The first is of
// what is no record.
func (b *book) searchParts() []string {
	b.trace.Ask(askParts, "")
	n := len(b.facts.shelved)
	paths := make([]string, n+1)
	for i := range paths {
		paths[i] = address.SearchPart(i, n)
	}
	return paths
}

func (b *book) searchPart(number int) ([]byte, error) {
	d := b.at(address.Search) // whose links they are
	if number == 0 {
		return search.Script(d.searchedNames())
	}
	var pages []search.Page
	for _, r := range b.inPart(number - 1) {
		pages = append(pages, d.searched(r))
	}
	return search.Script(pages)
}

// inPart returns the records of a part of the index.
func (b *book) inPart(n int) []journal.Record {
	b.trace.Ask(askPart, strconv.Itoa(n))
	for _, r := range b.facts.shelved[n] {
		b.trace.Record(r)
	}
	return b.facts.shelved[n]
}

// searchedNames are the features and tags, as they are searched.
func (d desk) searchedNames() []search.Page {
	d.trace.Ask(askNames, "")
	features, tags := d.names()
	var pages []search.Page
	for _, name := range features {
		pages = append(pages, search.Page{Path: address.Feature(name), Title: show.Sentence(name), Kind: "Feature"})
	}
	for _, tag := range tags {
		pages = append(pages, search.Page{Path: tagPath(tag), Title: tag, Kind: "Tag"})
	}
	return pages
}

func tagPath(tag string) string { return address.Tags + "#" + address.Anchor("tag", tag) }

// names returns the features that have a page, and the tags, each once.
func (b *book) names() (features, tags []string) {
	for _, f := range b.facts.evidence.Features {
		features = append(features, f.Name)
	}
	for _, r := range b.facts.tagged {
		for _, t := range r.Head().Tags {
			tags = append(tags, t.Text)
		}
	}
	slices.Sort(tags)
	return features, slices.Compact(tags)
}

// searched is a record as it is searched.
func (d desk) searched(r journal.Record) search.Page {
	page := r.Head()
	out := search.Page{Path: d.href(r, ""), Title: page.Title, Kind: shelfOf(page.Kind).One}
	switch r := r.(type) {
	case *journal.Note:
		out.Day = show.Day(r.Date)
		if r.Stage != "" {
			out.Kind += ", " + string(r.Stage)
		}
		if r.Of != nil {
			out.Of = r.Of.Title
		}
	case *journal.Occasion:
		out.Day = show.Day(r.Date)
	}
	say := func(label, anchor, text string, names bool) {
		if text != "" {
			out.Lines = append(out.Lines, search.Line{Label: label, Anchor: anchor, Text: text, Names: names})
		}
	}
	say("", "", d.opening(r), false)
	for _, f := range d.particulars(r) {
		say(f.Name, "", f.Value, true)
	}
	say("Tags", "", words(page.Tags), true)
	lessons, decisions := d.writtenIn(r)
	for _, c := range decisions {
		var said []string
		for _, words := range []string{d.Journal.Titled(c.Question), d.Journal.Titled(c.Chose), c.Because} {
			if words != "" {
				said = append(said, words)
			}
		}
		say("Decided", c.Anchor, strings.Join(said, " – "), false)
	}
	for _, l := range lessons {
		say("Next time", l.Anchor, d.Journal.Titled(l.Text), false)
	}
	return out
}

// particulars are the names of things by which a record is looked for.
func (d desk) particulars(r journal.Record) []theme.Fact {
	var s show.Facts
	switch r := r.(type) {
	case *journal.Build:
		s.Say("Garment", r.Garment)
		if p, ok := d.Journal.Named(r.For.To, journal.KindPerson); ok {
			s.Say("For", p.Head().Title)
		}
		var features []journal.Word
		for _, f := range r.Features {
			features = append(features, f.What)
		}
		s.Say("Features", words(features))
		s.Say("Fit", measures(r.Fit, func(w journal.Want) measure.Point { return w.Point }))
	case *journal.Note:
		s.Say("Measured", measures(r.Measured, pointOf))
		s.Say("Body measures", sessionMeasures(r.Body))
	case *journal.Person:
		s.Say("Measured", sessionMeasures(r.Measured))
	case *journal.Pattern:
		s.Say("Garment", r.Garment)
		s.Say("From", r.From)
	case *journal.Reference:
		s.Say("Kind", string(r.Type))
		s.Say("Holder", r.Holder)
		s.Say("Number", r.Accession)
		s.Say("Shows", words(r.Shows))
		s.Say("Lacks", words(r.Lacks))
	case *journal.Material:
		s.Say("What", r.What)
		s.Say("Fibre", r.Fibre)
		s.Say("Weave", r.Weave)
		s.Say("Colour", r.Colour)
	case *journal.Technique:
		s.Say("Tools", strings.Join(r.Tools, ", "))
	case *journal.Occasion:
		s.Say("Place", r.Place)
	}
	return s
}

func pointOf(r journal.Reading) measure.Point { return r.Point }

// measures names the measures that a list is of, each once.
func measures[T any](list []T, point func(T) measure.Point) string {
	var names []string
	for _, one := range list {
		if name := point(one).String(); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

func sessionMeasures(sessions []journal.Session) string {
	var all journal.Readings
	for _, s := range sessions {
		all = append(all, s.Readings...)
	}
	return measures(all, pointOf)
}
