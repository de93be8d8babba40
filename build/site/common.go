package site

import (
	"cmp"
	"slices"
	"strings"

	"hussif/build/lesson"
	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/theme"
)

// card stands for a record in a list.
func (d desk) card(r journal.Record) theme.Card {
	page := r.Head()
	c := theme.Card{Link: d.to(r), Kind: shelfOf(page.Kind).One, Photo: d.face(r), NextUp: len(d.lessons.For(page.ID))}
	say := func(lines ...string) {
		for _, line := range lines {
			if line != "" {
				c.Lines = append(c.Lines, line)
			}
		}
	}
	switch r := r.(type) {
	case *journal.Build:
		c.Kind = cmp.Or(r.Garment, c.Kind)
		c.State = string(stateOf(r))
		c.Fit = d.gravest(r)
		if p := d.Journal.Person(r.For); p != nil {
			say("for " + p.Title)
		}
		say(r.Era.String())
	case *journal.Pattern:
		say(r.Garment, r.From)
	case *journal.Reference:
		say(string(r.Type), r.Date.String(), r.Holder)
	case *journal.Material:
		say(r.What, r.Fibre, r.Colour)
	case *journal.Technique:
		say(r.Era.String())
	case *journal.Occasion:
		say(day(r.Date), r.Place)
	case *journal.Note:
		c = theme.Card{Link: d.to(r), Kind: string(r.Stage), Photo: d.face(r), Lines: []string{day(r.Date)}}
	}
	say(d.opening(r))
	return c
}

func (d desk) cards(records []journal.Record) []theme.Card {
	var cards []theme.Card
	for _, r := range records {
		cards = append(cards, d.card(r))
	}
	return cards
}

// records turns a slice of one kind of record into one of any.
func records[T journal.Record](list []T) []journal.Record {
	out := make([]journal.Record, len(list))
	for i, r := range list {
		out[i] = r
	}
	return out
}

// stateOf returns where a build stands: as its page says, or as its notes show.
func stateOf(b *journal.Build) journal.State {
	switch {
	case b.State != "":
		return b.State
	case b.Finished != 0:
		return journal.StateFinished
	case len(b.Notes) == 0:
		return journal.StatePlanned
	}
	for _, n := range b.Notes {
		if n.Stage == "worn" {
			return journal.StateFinished
		}
	}
	if slices.ContainsFunc(b.Notes, func(n *journal.Note) bool { return n.Stage != "planning" }) {
		return journal.StateUnderWay
	}
	return journal.StatePlanned
}

// next shows next-time notes on a page that may be the one they were written on.
func (d desk) next(lessons []lesson.Lesson) []theme.Next {
	var out []theme.Next
	for _, l := range lessons {
		n := theme.Next{Text: d.titled(l.From, l.Text)}
		if l.Day != 0 {
			n.Day = day(l.Day)
		}
		if from, ok := d.Journal.Find(string(l.From)); ok {
			n.From = theme.Link{Href: d.href(from, l.Anchor), Text: from.Head().Title}
		}
		n.About = slices.Concat(d.ids(l.Patterns), d.ids(l.Techniques), d.ids(l.Materials), d.ids(l.People), d.ids(l.Others))
		for _, g := range l.Garments {
			n.About = append(n.About, theme.Link{Text: g})
		}
		out = append(out, n)
	}
	return out
}

// ownNext shows the next-time notes of a record's front matter, whose anchors are
// parts of its page. Those in its text stand there.
func (d desk) ownNext(r journal.Record) []theme.Next {
	var own []lesson.Lesson
	for _, l := range d.lessons.From(r.Head().ID) {
		if slices.Contains(frontAnchors(r), l.Anchor) {
			own = append(own, l)
		}
	}
	shown := d.next(own)
	for i := range shown {
		shown[i].Anchor = own[i].Anchor
		shown[i].From = theme.Link{}
	}
	return shown
}

func frontAnchors(r journal.Record) []string {
	var anchors []string
	for i := range r.Head().Next {
		anchors = append(anchors, journal.NextAnchor(i))
	}
	return anchors
}

// decisions shows what a note decided: in its fields, and in its text, where the
// text itself says the rest.
func (d desk) decisions(n *journal.Note, own bool) []theme.Decision {
	var out []theme.Decision
	for i, c := range n.Decided {
		a := journal.DecisionAnchor(i)
		decision := theme.Decision{
			Question: c.Question, Chose: c.Chose, InsteadOf: c.InsteadOf, Because: c.Because, RestsOn: d.refs(c.RestsOn),
		}
		if own {
			decision.Anchor = a
		} else {
			decision.From = theme.Link{Href: d.href(n, a), Text: day(n.Date)}
		}
		out = append(out, decision)
	}
	for _, remark := range n.Text.Remarks {
		if remark.Kind == prose.Decided && !own {
			out = append(out, theme.Decision{Chose: d.titled(n.ID, remark.Text), From: theme.Link{Href: d.href(n, remark.Anchor), Text: day(n.Date)}})
		}
	}
	return out
}

// entry stands for a dated note in a list.
func (d desk) entry(n *journal.Note, withBuild bool) theme.Entry {
	e := theme.Entry{Link: d.to(n), Day: day(n.Date), Stage: string(n.Stage), Hours: hours(n.Hours), Text: d.opening(n), Photo: d.face(n)}
	if withBuild && n.Of != nil {
		e.Of = d.to(n.Of)
	}
	return e
}

// opening returns how a record's text begins.
func (d desk) opening(r journal.Record) string {
	return d.titled(r.Head().ID, r.Head().Text.Opening)
}

// titled returns words of a record's text in which ties without words of their own
// read as the titles of what they lead to.
func (d desk) titled(id journal.ID, words string) string {
	r, ok := d.Journal.Find(string(id))
	if !ok {
		return words
	}
	for _, l := range r.Head().Text.Links {
		if l.Form != prose.Tie || l.Text != "" {
			continue
		}
		if to, ok := d.Journal.Find(l.To); ok {
			words = strings.Replace(words, l.To, to.Head().Title, 1)
		}
	}
	return words
}

// entries lists notes, the newest first.
func (d desk) entries(notes []*journal.Note, withBuild bool) []theme.Entry {
	var out []theme.Entry
	for _, n := range slices.Backward(notes) {
		out = append(out, d.entry(n, withBuild))
	}
	return out
}

// how puts into words how a page links to another, by the field that does.
var how = map[string]string{
	"":           "Mentioned in",
	"for":        "Wears",
	"pattern":    "Cut from it",
	"remakes":    "Remade as",
	"reworks":    "Reworked into",
	"occasion":   "Made for it, or worn there",
	"techniques": "Used in",
	"rests on":   "Rested on by",
	"after":      "Followed by",
	"needs":      "Needed by",
	"used":       "Used in",
	"bought":     "Bought in",
	"left over":  "Left over in",
	"next time":  "Next-time notes in",
	"pieces":     "Cut of it",
	"build":      "Notes",
	"worn":       "Worn at",
	"body":       "Measured in",
}

// backlinks shows what links to a record, by how it does.
func (d desk) backlinks(r journal.Record) theme.Backlinks {
	var groups theme.Backlinks
	seen := make(map[string]bool)
	for _, tie := range d.Journal.LinkedFrom(r.Head().ID) {
		words := cmp.Or(how[tie.Field], "By "+tie.Field)
		link := d.to(tie.From)
		if n, ok := tie.From.(*journal.Note); ok {
			link.Note = day(n.Date)
		}
		key := words + "\x00" + link.Href
		if seen[key] {
			continue
		}
		seen[key] = true
		i := slices.IndexFunc(groups, func(g theme.BacklinkGroup) bool { return g.How == words })
		if i < 0 {
			i = len(groups)
			groups = append(groups, theme.BacklinkGroup{How: words})
		}
		groups[i].Links = append(groups[i].Links, link)
	}
	return groups
}

// notOwn leaves out the next-time notes that a record's own front matter holds.
func notOwn(lessons []lesson.Lesson, r journal.Record) []lesson.Lesson {
	return slices.DeleteFunc(slices.Clone(lessons), func(l lesson.Lesson) bool { return l.From == r.Head().ID })
}
