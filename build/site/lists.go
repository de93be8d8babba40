package site

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"hussif/build/address"
	"hussif/build/lesson"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/theme"
)

// howToAdd says on an empty shelf how to put the first thing there.
var howToAdd = map[journal.Kind]string{
	journal.KindBuild:     "No builds yet. Make a folder builds/NAME with a file build.md in it.",
	journal.KindPerson:    "Nobody yet. Make a file people/NAME.md with what was measured.",
	journal.KindPattern:   "No patterns yet. Make a file patterns/NAME.md.",
	journal.KindReference: "No references yet. Make a file references/NAME.md with a date and a holder.",
	journal.KindMaterial:  "No materials yet. Make a file materials/NAME.md.",
	journal.KindTechnique: "No techniques yet. Make a file techniques/NAME.md.",
	journal.KindOccasion:  "No occasions yet. Make a file occasions/NAME.md with a date.",
	journal.KindNote:      "No notes yet. Put a file with a date into the folder of a build.",
}

func (b *book) list(s shelf) any {
	d := b.at(s.path())
	view := theme.List{Frame: b.frame(d.path, s.Title, "", s.section())}
	switch s.Kind {
	case journal.KindMaterial:
		view.Beside = []theme.Link{{Href: d.root + address.Stash, Text: "What is on hand"}}
	case journal.KindOccasion:
		view.Beside = []theme.Link{{Href: d.root + address.Calendar, Text: "The same as a calendar"}}
	case journal.KindNote:
		view.Beside = []theme.Link{{Href: d.root + theme.FeedPath, Text: "The newest as a feed"}}
	}
	if groups := d.groups(s.Kind); len(groups) > 0 {
		view.Groups = groups
	} else {
		view.Empty = b.empty(howToAdd[s.Kind])
	}
	return view
}

// groups sorts the records of a kind under headings: builds by where they stand,
// notes by year, references by type.
func (d desk) groups(k journal.Kind) []theme.CardGroup {
	j := d.Journal
	switch k {
	case journal.KindBuild:
		return d.grouped(records(newestFirst(slices.Clone(j.Builds()))), func(r journal.Record) string {
			return show.Sentence(string(stateOf(r.(*journal.Build))))
		}, "Under way", "Planned", "Waiting for repair", "Finished")
	case journal.KindPerson:
		return d.grouped(records(j.People()), nil)
	case journal.KindPattern:
		return d.grouped(records(j.Patterns()), nil)
	case journal.KindReference:
		list := slices.Clone(j.References())
		slices.SortStableFunc(list, func(a, b *journal.Reference) int { return cmp.Compare(a.Date.Earliest, b.Date.Earliest) })
		return d.grouped(records(list), func(r journal.Record) string {
			return show.Sentence(cmp.Or(string(r.(*journal.Reference).Type), "other"))
		})
	case journal.KindMaterial:
		return d.grouped(records(j.Materials()), func(r journal.Record) string { return show.Sentence(r.(*journal.Material).What) })
	case journal.KindTechnique:
		return d.grouped(records(j.Techniques()), nil)
	case journal.KindOccasion:
		list := slices.Clone(j.Occasions())
		slices.Reverse(list)
		return d.grouped(records(list), func(r journal.Record) string {
			if o := r.(*journal.Occasion); max(o.Date, o.Until) >= d.Today {
				return "To come"
			}
			return "Past"
		}, "To come", "Past")
	}
	if years := d.allYears(); years != nil {
		return d.years(years)
	}
	return d.grouped(newestNotes(j.Notes()), yearOf)
}

// manyNotes is how many notes make one list too long to look through: with more,
// each year has a page of its own.
const manyNotes = 300

func newestNotes(notes []*journal.Note) []journal.Record {
	list := records(notes)
	slices.Reverse(list)
	return list
}

func yearOf(r journal.Record) string {
	year, _, _ := r.(*journal.Note).Date.Date()
	return fmt.Sprint(year)
}

// notesByYear sorts the notes of a journal under the page of their year; nil where
// one list holds them all.
func notesByYear(j *journal.Journal) map[string][]*journal.Note {
	if len(j.Notes()) <= manyNotes {
		return nil
	}
	years := make(map[string][]*journal.Note)
	for _, n := range j.Notes() {
		years[yearOf(n)] = append(years[yearOf(n)], n)
	}
	return years
}

// years lists the years that have a page of their own, the newest first.
func (d desk) years(years map[string][]*journal.Note) []theme.CardGroup {
	var group theme.CardGroup
	for _, year := range slices.Backward(slices.Sorted(maps.Keys(years))) {
		group.Cards = append(group.Cards, theme.Card{
			Link:  theme.Link{Href: d.root + address.Year(year), Text: year},
			Lines: []string{counted(len(years[year]), shelfOf(journal.KindNote))},
		})
	}
	return []theme.CardGroup{group}
}

// notesOf is the page of one year's notes, by month.
func (b *book) notesOf(year string) any {
	d := b.at(address.Year(year))
	view := theme.List{Frame: b.frame(d.path, "Notes of "+year, "", "notes", d.shelfLink(journal.KindNote))}
	view.Groups = d.grouped(newestNotes(b.notesIn(year)), func(r journal.Record) string {
		_, month, _ := r.(*journal.Note).Date.Date()
		return time.Month(month).String()
	})
	return view
}

// grouped makes a group for each heading, in the order given and then as they
// come up.
func (d desk) grouped(list []journal.Record, heading func(journal.Record) string, order ...string) []theme.CardGroup {
	var groups []theme.CardGroup
	for _, title := range order {
		groups = append(groups, theme.CardGroup{Title: title})
	}
	for _, r := range list {
		title := ""
		if heading != nil {
			title = heading(r)
		}
		groups = show.Under(groups, title, d.card(r))
	}
	return slices.DeleteFunc(groups, func(g theme.CardGroup) bool { return len(g.Cards) == 0 })
}

func (b *book) start() any {
	d := b.at(address.Start)
	view := theme.Start{
		Frame:   b.frame(d.path, cmp.Or(b.Journal.Settings.Title, "Workroom journal"), "", "start"),
		NextAll: theme.Link{Href: address.NextTime, Text: "All next-time notes"},
		ToDo:    theme.Link{Href: address.ToDo, Text: "What holds them up"},
	}
	for _, build := range newestFirst(slices.Clone(b.Journal.Builds())) {
		switch stateOf(build) {
		case journal.StateUnderWay, journal.StateRepair, journal.StatePlanned:
			view.OnTable = append(view.OnTable, d.card(build))
		case journal.StateFinished:
			if v := b.gravest(build); v != nil && v.Mark == "short" {
				view.NotFit = append(view.NotFit, d.card(build))
			}
		}
	}
	view.Next = d.nextOccasion()
	notes := b.Journal.Notes()
	view.Newest = d.entries(notes[max(0, len(notes)-newest):], true)
	all := b.allLessons().All
	view.NextTime = d.next(all[:min(newest, len(all))])
	for _, s := range shelves {
		if n := b.countOf(s.Kind); n > 0 {
			view.Counts = append(view.Counts, theme.Link{Href: s.path(), Text: counted(n, s)})
		}
	}
	return view
}

// newest is how many of the newest things the start page shows.
const newest = 6

func (b *book) countOf(k journal.Kind) int {
	n := 0
	for _, r := range b.Journal.Records() {
		if r.Head().Kind == k {
			n++
		}
	}
	return n
}

func counted(n int, s shelf) string {
	if n == 1 {
		return "1 " + strings.ToLower(s.One)
	}
	return fmt.Sprintf("%d %s", n, strings.ToLower(s.Title))
}

// nextOccasion returns the first occasion that is not over yet.
func (d desk) nextOccasion() *theme.OccasionCard {
	for _, o := range d.Journal.Occasions() {
		if max(o.Date, o.Until) < d.Today {
			continue
		}
		return &theme.OccasionCard{
			Link: d.to(o), Day: show.Day(o.Date), Away: away(o.Date, d.Today), Wears: d.cards(records(d.wornAt(o))),
		}
	}
	return nil
}

func away(on, today edtf.Day) string {
	switch n := int(on - today); {
	case n < 0:
		return "under way"
	case n == 0:
		return "today"
	case n == 1:
		return "tomorrow"
	default:
		return fmt.Sprintf("in %d days", n)
	}
}

func (b *book) nextTime() any {
	d := b.at(address.NextTime)
	view := theme.NextTime{
		Frame: b.frame(d.path, "Next time", "", "next time"),
		Empty: b.empty("Nothing yet. Begin a paragraph of a note with \"Next time:\" and it is gathered here."),
	}
	add := func(title string, groups []lesson.Group) {
		if len(groups) == 0 {
			return
		}
		section := theme.NextSection{Title: title, Anchor: address.Slug(title)}
		for _, g := range groups {
			section.Groups = append(section.Groups, d.nextGroup(g, len(b.allLessons().All) > manyLessons))
		}
		view.Sections = append(view.Sections, section)
	}
	add("By pattern", b.allLessons().ByPattern())
	add("By technique", b.allLessons().ByTechnique())
	add("By garment", b.allLessons().ByGarment())
	add("By person", b.allLessons().ByPerson())
	add("By material", b.allLessons().ByMaterial())
	return view
}

// With more lessons than manyLessons the page of all of them shows fewOfGroup of
// each group, and leads to the page that has the rest.
const (
	manyLessons = 500
	fewOfGroup  = 10
)

func (d desk) nextGroup(g lesson.Group, many bool) theme.Group {
	out := theme.Group{Title: theme.Link{Text: g.Name}}
	if r, ok := d.Journal.Named(string(g.ID)); ok {
		out.Title = d.to(r)
	}
	shown := g.Lessons
	if rest := len(shown) - fewOfGroup; many && rest > 0 {
		shown = shown[:fewOfGroup]
		out.More = theme.Link{Text: fmt.Sprintf("%d older", rest), Note: "listed by `hussif next`"}
		if out.Title.Href != "" {
			out.More.Href, out.More.Note = out.Title.Href+"#section-next-time", ""
		}
	}
	out.Next = d.next(shown)
	return out
}

func (b *book) tags() any {
	d := b.at(address.Tags)
	view := theme.Tags{Frame: b.frame(d.path, "Tags", "", "tags")}
	links := make(map[string][]theme.Link)
	for _, r := range b.tagged() {
		for _, t := range r.Head().Tags {
			l := d.to(r)
			l.Note = strings.ToLower(shelfOf(r.Head().Kind).One)
			key := strings.ToLower(t.Text)
			links[key] = append(links[key], l)
		}
	}
	for _, tag := range slices.Sorted(maps.Keys(links)) {
		view.Groups = append(view.Groups, theme.TagGroup{Tag: tag, Anchor: address.Anchor("tag", tag), Links: links[tag]})
	}
	return view
}

func (b *book) found() any {
	d := b.at(address.Found)
	view := theme.Found{Frame: b.frame(d.path, "What check found", "", "found")}
	for _, f := range b.findings() {
		shown := theme.Finding{Level: f.Level.String(), Place: "the journal", Text: f.Text, Rule: f.Rule, Advice: f.Advice()}
		if !f.Span.IsZero() {
			shown.Place = f.Span.String()
			shown.Line = strings.TrimSpace(f.Span.Line())
		}
		if r, ok := b.recordIn(f.Span.File); ok {
			shown.Page = d.to(r)
		}
		view.Findings = append(view.Findings, shown)
	}
	return view
}
