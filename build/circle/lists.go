package circle

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"hussif/build/address"
	"hussif/build/evidence"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/theme"
)

// newest is how many of the newest things the start page shows.
const newest = 6

func (b *book) start() any {
	d := b.at(address.Start)
	view := theme.Start{
		Frame: d.frame(b.title, "", "start"), Newest: d.newestEntries(), NextAll: d.to(address.NextTime, "All next-time notes"),
		Intro: template.HTML("<p>" + template.HTMLEscapeString("What "+named(b.Makers)+" show one another, put together on "+show.Day(b.today)+".") + "</p>"),
	}
	for _, build := range b.Builds {
		if build.State == string(journal.StateUnderWay) || build.State == string(journal.StateRepair) {
			view.OnTable = append(view.OnTable, d.card(build))
		}
	}
	for _, l := range b.Lessons {
		if l.State == unanswered && len(view.NextTime) < newest {
			view.NextTime = append(view.NextTime, d.next(l))
		}
	}
	count := func(n int, one, many, section string) {
		if n > 0 {
			view.Counts = append(view.Counts, d.to(address.List(section), number(n, one, many)))
		}
	}
	count(len(b.Makers), "maker", "makers", "makers")
	count(len(b.Builds), "build", "builds", "builds")
	count(len(b.Patterns), "pattern", "patterns", "patterns")
	count(len(b.Techniques), "technique", "techniques", "techniques")
	count(len(b.References), "reference", "references", "references")
	return view
}

// newestEntries lists the newest dated notes of all logs.
func (d desk) newestEntries() []theme.Entry {
	type dated struct {
		day string
		theme.Entry
	}
	var all []dated
	for _, b := range d.Builds {
		for i, e := range d.entries(b) {
			e.Of = d.to(b.Path, b.Title)
			e.Of.Note = "by " + b.Maker.Name
			all = append(all, dated{b.Log[i].Day, e})
		}
	}
	slices.SortStableFunc(all, func(a, b dated) int { return strings.Compare(b.day, a.day) })
	var out []theme.Entry
	for _, e := range all[:min(newest, len(all))] {
		out = append(out, e.Entry)
	}
	return out
}

// byEra lists builds by the date that they portray.
func (b *book) byEra() any {
	d := b.at(address.List("builds"))
	view := theme.List{Frame: d.frame("Builds by era", "", "builds"), Beside: []theme.Link{
		d.to(address.List("makers"), "By maker"), d.to(address.List("patterns"), "By pattern"), d.to(address.List("techniques"), "By technique"),
	}}
	builds := slices.Clone(b.Builds)
	slices.SortStableFunc(builds, func(a, b *Build) int {
		return cmp.Or(cmp.Compare(undated(a.Era), undated(b.Era)), cmp.Compare(a.Era.Earliest, b.Era.Earliest), cmp.Compare(a.Era.Latest, b.Era.Latest))
	})
	for _, build := range builds {
		view.Groups = show.Under(view.Groups, eraOf(build.Era), d.card(build))
	}
	if len(view.Groups) == 0 {
		view.Empty = "Nothing here."
	}
	return view
}

// undated puts builds without an era last, and those from an open beginning first.
func undated(d edtf.Date) int {
	switch {
	case d.IsZero():
		return 2
	case d.OpenStart:
		return 0
	}
	return 1
}

// eraOf is the heading for builds of an era: its decade, where it lies within one, and
// else its years.
func eraOf(d edtf.Date) string {
	if d.IsZero() {
		return "No era given"
	}
	from, _, _ := d.Earliest.Date()
	to, _, _ := d.Latest.Date()
	if !d.OpenStart && !d.OpenEnd && from > 0 && from/10 == to/10 {
		return fmt.Sprintf("%ds", from/10*10)
	}
	return show.Sentence(evidence.Years(d))
}

func (b *book) makers() any {
	d := b.at(address.List("makers"))
	view := theme.List{Frame: d.frame("Makers", "", "makers")}
	var group theme.CardGroup
	for _, m := range b.Makers {
		card := theme.Card{Link: d.toMaker(m), Lines: given(m.Log.Title, number(len(m.Builds), "build", "builds"))}
		for _, build := range m.Builds {
			if card.Photo == nil {
				card.Photo = d.face(build)
			}
		}
		group.Cards = append(group.Cards, card)
	}
	view.Groups = append(view.Groups, group)
	return view
}

func (b *book) maker(m *Maker) any {
	d := b.at(m.Path)
	view := theme.Thing{Frame: d.frame(m.Name, "Maker", "makers"), Builds: d.cards(m.Builds)}
	var s show.Facts
	s.Say("Journal", m.Log.Title)
	if m.Log.Site != "" {
		s.Link("Site", theme.Link{Href: m.Log.Site, Text: m.Log.Site})
	}
	s.Say("Told on", dayOf(m.Log.Day))
	view.Facts = s
	view.Next = d.nexts(m.Next)
	return view
}
