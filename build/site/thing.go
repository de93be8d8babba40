package site

import (
	"fmt"
	"hussif/build/address"
	"hussif/build/agenda"
	"slices"

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
	view.FitNow = d.fitGrid("Fit today", b.now(builds), "As of "+day(b.Today)+".")
	view.Changes = d.patternChanges(r, builds)
	view.Advances = d.patternAdvances(r, builds)
	view.Decisions = d.decisionList(b.decisionsFor(r.ID))
	return view
}

func (d desk) patternFacts(r *journal.Pattern) []theme.Fact {
	var s sheet
	s.say("Garment", r.Garment)
	s.say("Era", r.Era.String())
	s.say("From", r.From)
	s.say("Size", r.Size)
	s.link("After", d.refs(r.After)...)
	return s
}

// patternChanges shows what was changed on a pattern, for good on its own page and
// while cutting in the notes of its builds.
func (d desk) patternChanges(r *journal.Pattern, builds []*journal.Build) *theme.Table {
	var rows [][]theme.Link
	add := func(when theme.Link, what string, changes journal.Changes, onPattern journal.Answer) {
		rows = append(rows, []theme.Link{when, cell(what), cell(d.changes(changes)), cell(yes(onPattern, "on the pattern", "not on the pattern yet"))})
	}
	for _, c := range r.Changed {
		when := theme.Link{}
		if c.Has("date") {
			when = cell(day(c.Date))
		}
		add(when, c.What, c.Measures, c.OnPattern)
	}
	for _, build := range builds {
		for _, n := range build.Notes {
			if len(n.PatternChanged) > 0 {
				add(theme.Link{Href: d.href(n, ""), Text: day(n.Date)}, "while cutting "+build.Title, n.PatternChanged, n.OnPattern)
			}
		}
	}
	return columns([]string{"Day", "What", "Measures", "Reached the paper"}, []bool{false, false, false, false}, rows)
}

func (b *book) reference(r *journal.Reference) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	var s sheet
	s.say("Type", string(r.Type))
	s.say("Date", r.Date.String())
	s.say("Creator", r.Creator)
	s.say("Publisher", r.Publisher)
	s.say("Holder", r.Holder)
	s.say("Accession number", r.Accession)
	if r.Address != "" {
		s.link("Address", theme.Link{Href: string(r.Address), Text: string(r.Address)})
	}
	view.Facts = s
	var rows [][]theme.Link
	for _, w := range r.Shows {
		rows = append(rows, []theme.Link{cell(w.Text), cell("shows it")})
	}
	for _, w := range r.Lacks {
		rows = append(rows, []theme.Link{cell(w.Text), cell("lacks it")})
	}
	view.Features = columns([]string{"Feature", "Here"}, []bool{false, false}, rows)
	return view
}

func (b *book) material(r *journal.Material) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	f := b.Journal.Settings.Format
	var s sheet
	s.say("What", r.What)
	s.say("Fibre", r.Fibre)
	s.say("Weave", r.Weave)
	s.say("Colour", r.Colour)
	if r.Has("width") {
		s.say("Width", f.Length(r.Width))
	}
	if r.Has("thickness") {
		s.say("Thickness", fmt.Sprintf("%.1f mm", millimetres(r.Thickness)))
	}
	s.say("Weight", r.Weight)
	s.say("Shrinks", r.Shrinks)
	s.say("Date of the cloth", r.Made.String())
	s.say("From", r.From)
	s.say("Price", money(r.Price))
	view.Facts = s
	view.Movements = d.materialTable(b.movementsOf(r), false)
	view.Builds = d.cards(records(b.buildsLinking(r.ID, "needs", "pieces")))
	return view
}

func (b *book) technique(r *journal.Technique) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	var s sheet
	s.say("Era", r.Era.String())
	var tools []theme.Link
	for _, t := range r.Tools {
		tools = append(tools, theme.Link{Text: t})
	}
	s.link("Tools", tools...)
	s.link("After", d.refs(r.After)...)
	view.Facts = s
	view.Cautions = r.Cautions
	view.Builds = d.cards(records(b.buildsLinking(r.ID, "techniques")))
	return view
}

func (b *book) occasion(r *journal.Occasion) any {
	d := b.at(address.Of(r.ID))
	view := d.thing(r)
	var s sheet
	s.say("Day", day(r.Date))
	if r.Has("until") {
		s.say("Until", day(r.Until))
	}
	s.say("Place", r.Place)
	s.say("Portrays", r.Portrays.String())
	s.say("Weather", r.Weather)
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
