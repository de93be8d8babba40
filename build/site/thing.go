package site

import (
	"fmt"
	"slices"

	"hussif/build/address"
	"hussif/build/agenda"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/theme"
)

// thing returns what the pages of patterns, references, materials, techniques and
// occasions have in common.
func (d desk) thing(r journal.Record) theme.Thing {
	page := r.Head()
	s := shelfOf(page.Kind)
	return theme.Thing{
		Frame:     d.frameOf(r, s.One, s.section(), d.shelfLink(page.Kind)),
		Photos:    d.photos(r),
		Body:      d.body(r),
		Next:      append(d.ownNext(r), d.next(notOwn(d.lessonsFor(page.ID), r))...),
		Backlinks: d.backlinks(r),
		Tags:      d.tagLinks(page.Tags),
	}
}

// buildsLinking returns the builds that link to a record by one of some fields, the
// one worked on last first.
func (b *book) buildsLinking(id journal.ID, fields ...string) []*journal.Build {
	return newestFirst(b.Journal.BuildsLinking(id, fields...))
}

func (b *book) pattern(r *journal.Pattern) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	view.Facts = d.patternFacts(r)
	view.Sheets = b.sheets([]theme.Link{{Href: d.root + address.Under(r.ID, address.Remake), Text: "Before a remake"}}, nil)
	builds := b.buildsLinking(r.ID, "pattern")
	view.Builds = d.cards(records(builds))
	view.Fit = d.fitGrid("Across builds", b.then(builds), "Every build cut from this pattern, on the day it was first finished.")
	view.FitNow = d.fitGrid("Fit today", b.now(builds), "As of "+show.Day(b.Today)+".")
	view.Changes = d.patternChanges(r, builds)
	view.Advances = d.patternAdvances(r, builds)
	view.Decisions = d.decisionList(b.decisionsFor(r.ID))
	return view
}

func (d desk) patternFacts(r *journal.Pattern) []theme.Fact {
	var s show.Facts
	s.Say("Garment", r.Garment)
	s.Say("Era", r.Era.String())
	s.Say("From", r.From)
	s.Say("Size", r.Size)
	s.Link("After", d.refs(r.After)...)
	return s
}

// patternChanges shows what was changed on a pattern, for good on its own page and
// while cutting in the notes of its builds.
func (d desk) patternChanges(r *journal.Pattern, builds []*journal.Build) *theme.Table {
	var rows [][]theme.Link
	add := func(when theme.Link, what string, changes journal.Changes, onPattern journal.Answer) {
		rows = append(rows, []theme.Link{when, show.Cell(what), show.Cell(d.changes(changes)), show.Cell(yes(onPattern, "on the pattern", "not on the pattern yet"))})
	}
	for _, c := range r.Changed {
		when := theme.Link{}
		if c.Has("date") {
			when = show.Cell(show.Day(c.Date))
		}
		add(when, c.What, c.Measures, c.OnPattern)
	}
	for _, build := range builds {
		for _, n := range build.Notes {
			if len(n.PatternChanged) > 0 {
				add(theme.Link{Href: d.href(n, ""), Text: show.Day(n.Date)}, "while cutting "+build.Title, n.PatternChanged, n.OnPattern)
			}
		}
	}
	return show.Table([]string{"Day", "What", "Measures", "Reached the paper"}, []bool{false, false, false, false}, rows)
}

func (b *book) reference(r *journal.Reference) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	view.Facts, view.Features = show.Reference(r)
	return view
}

func (b *book) material(r *journal.Material) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	f := b.Journal.Settings.Format
	var s show.Facts
	s.Say("What", r.What)
	s.Say("Fibre", r.Fibre)
	s.Say("Weave", r.Weave)
	s.Say("Colour", r.Colour)
	if r.Has("width") {
		s.Say("Width", f.Length(r.Width))
	}
	if r.Has("thickness") {
		s.Say("Thickness", fmt.Sprintf("%.1f mm", millimetres(r.Thickness)))
	}
	s.Say("Weight", r.Weight)
	s.Say("Shrinks", r.Shrinks)
	s.Say("Date of the cloth", r.Made.String())
	s.Say("From", r.From)
	s.Say("Price", money(r.Price))
	view.Facts = s
	view.Movements = d.materialTable(b.movementsOf(r), false)
	view.Builds = d.cards(records(b.buildsLinking(r.ID, "needs", "pieces")))
	return view
}

func (b *book) technique(r *journal.Technique) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	var s show.Facts
	s.Say("Era", r.Era.String())
	var tools []theme.Link
	for _, t := range r.Tools {
		tools = append(tools, theme.Link{Text: t})
	}
	s.Link("Tools", tools...)
	s.Link("After", d.refs(r.After)...)
	view.Facts = s
	view.Cautions = r.Cautions
	view.Builds = d.cards(records(b.buildsLinking(r.ID, "techniques")))
	return view
}

func (b *book) occasion(r *journal.Occasion) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	var s show.Facts
	s.Say("Day", show.Day(r.Date))
	if r.Has("until") {
		s.Say("Until", show.Day(r.Until))
	}
	s.Say("Place", r.Place)
	s.Say("Portrays", r.Portrays.String())
	s.Say("Weather", r.Weather)
	view.Facts = s
	view.Builds = d.cards(records(b.wornAt(r)))
	outing := b.outing(r)
	for _, w := range outing.Wearers {
		name := "Nobody named"
		if p, ok := b.Journal.Named(string(w.Person)); ok {
			name = p.Head().Title
		}
		group := theme.CardGroup{Title: name}
		for _, l := range w.Layers {
			card := theme.Card{Link: theme.Link{Text: l.Name}}
			if build, ok := b.Journal.Named(string(l.Build)); ok {
				card.Link = d.to(build)
			}
			group.Cards = append(group.Cards, card)
		}
		view.Dressing = append(view.Dressing, group)
		for _, h := range w.Help {
			view.Hands = append(view.Hands, theme.Fact{Name: name, Value: d.helpWords(h)})
		}
		for _, g := range w.Garments {
			if build, ok := b.Journal.Named(string(g.Build)); ok && !b.shared() && !outing.Passed && g.Trouble() {
				view.NotReady = append(view.NotReady, build.Head().Title+": "+g.Fits.Words(b.Journal.Settings.Format))
			}
		}
	}
	return view
}

// helpWords says what a wearer cannot do alone, and with which garment.
func (d desk) helpWords(h agenda.Help) string {
	words := h.Words()
	if build, ok := d.Journal.Named(string(h.Build)); ok {
		words = build.Head().Title + ": " + words
	}
	return words
}

// wornAt returns the builds that an occasion names, and those that name it.
func (b *book) wornAt(o *journal.Occasion) []*journal.Build {
	builds := b.buildsLinking(o.ID, "occasion")
	for _, ref := range o.Worn {
		if build := b.Journal.Build(ref); build != nil && !slices.Contains(builds, build) {
			builds = append(builds, build)
		}
	}
	return builds
}
