package site

import (
	"cmp"
	"slices"

	"hussif/build/lesson"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/theme"
)

// card stands for a record in a list. Lists are long, and most of what a record holds
// shows on no card: so a page asks for the card, and the card for the rest.
func (d desk) card(r journal.Record) theme.Card {
	d.trace.Ask(askCard, string(r.Head().ID))
	return d.traced(nil).at(d.path).drawCard(r)
}

func (d desk) drawCard(r journal.Record) theme.Card {
	page := r.Head()
	c := theme.Card{Link: d.to(r), Kind: shelfOf(page.Kind).One, Photo: d.face(r), NextUp: d.open(page.ID)}
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
		say(show.Day(r.Date), r.Place)
	case *journal.Note:
		c = theme.Card{Link: d.to(r), Kind: string(r.Stage), Photo: d.face(r), Lines: []string{show.Day(r.Date)}}
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
	out := make([]theme.Next, 0, len(lessons))
	for _, l := range lessons {
		n := theme.Next{Text: d.Journal.Titled(l.Text)}
		if l.Day != 0 {
			n.Day = show.Day(l.Day)
		}
		if from, ok := d.Journal.Named(string(l.From)); ok {
			n.From = theme.Link{Href: d.href(from, l.Anchor), Text: from.Head().Title}
		}
		n.About = d.ids(l.Patterns, l.Techniques, l.Materials, l.People, l.Others)
		for _, g := range l.Garments {
			n.About = append(n.About, theme.Link{Text: g})
		}
		n.State, n.Answer = d.answered(l)
		out = append(out, n)
	}
	return out
}

// answered says what was made of a lesson: by the newest that carries it, or else by
// who set it aside.
func (d desk) answered(l lesson.Lesson) (state string, answer theme.Link) {
	for _, a := range slices.Backward(l.Answers) {
		if a.State != l.State() {
			continue
		}
		from, ok := d.Journal.Named(string(a.From))
		if !ok {
			continue
		}
		answer = d.to(from)
		if a.State == lesson.SetAside {
			answer.Note = answer.Text
			answer.Text = a.Because
			return "set aside:", answer
		}
		return "carried into", answer
	}
	return "", theme.Link{}
}

// carried shows the next-time notes that a record answers.
func (d desk) carried(refs []journal.Ref, aside []journal.SetAside) []theme.Next {
	var out []theme.Next
	add := func(ref journal.Ref) {
		r, ok := d.Journal.Named(ref.To)
		if !ok {
			return
		}
		anchor, _ := journal.Anchor(r, ref.Anchor)
		for _, l := range d.lessonsFrom(r.Head().ID) {
			if l.Anchor == anchor {
				out = append(out, d.next([]lesson.Lesson{l})...)
			}
		}
	}
	for _, ref := range refs {
		add(ref)
	}
	for _, s := range aside {
		add(s.Note)
	}
	return out
}

// ownNext shows the next-time notes of a record's front matter, whose anchors are
// parts of its page. Those in its text stand there.
func (d desk) ownNext(r journal.Record) []theme.Next {
	var own []lesson.Lesson
	for _, l := range d.lessonsFrom(r.Head().ID) {
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
		anchors = append(anchors, r.Head().Next[i].Anchor)
	}
	return anchors
}

// entry stands for a dated note in a list.
func (d desk) entry(n *journal.Note, withBuild bool) theme.Entry {
	e := theme.Entry{Link: d.to(n), Day: show.Day(n.Date), Stage: string(n.Stage), Hours: show.Hours(n.Hours), Text: d.opening(n), Photo: d.face(n)}
	if withBuild && n.Of != nil {
		e.Of = d.to(n.Of)
	}
	return e
}

// opening returns how a record's text begins.
func (d desk) opening(r journal.Record) string { return d.Journal.Titled(r.Head().Text.Opening) }

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
	"carries":    "Carried by",
	"set aside":  "Set aside in",
	"turned out": "Judged in",
	"decided":    "Decided in",
	"body":       "Measured in",
	"work":       "Worked with in",
}

// backlinks shows what links to a record, by how it does.
func (d desk) backlinks(r journal.Record) theme.Backlinks {
	var groups theme.Backlinks
	type said struct{ words, href string }
	seen := make(map[said]bool)
	for _, tie := range d.linksTo(r.Head().ID) {
		words := cmp.Or(how[tie.Field], "By "+tie.Field)
		link := d.to(tie.From)
		if n, ok := tie.From.(*journal.Note); ok {
			link.Note = show.Day(n.Date)
		}
		if seen[said{words, link.Href}] {
			continue
		}
		seen[said{words, link.Href}] = true
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
