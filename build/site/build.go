package site

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"time"

	"hussif/build/address"
	"hussif/build/fit"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
)

func (b *book) build(r *journal.Build) any {
	d := b.at(address.Of(r.ID))
	fits := b.fit(r)
	view := theme.Build{
		Frame: d.frameOf(r, cmp.Or(r.Garment, "Build"), "builds", d.shelfLink(journal.KindBuild)),
		Photo: d.opener(r),
		State: string(stateOf(r)),
		Facts: d.buildFacts(r),
		Body:  d.body(r),
		Sheets: b.sheets(
			[]theme.Link{{Href: d.root + address.Under(r.ID, address.Remake), Text: "Before a remake"}},
			[]theme.Link{{Href: d.root + address.Under(r.ID, address.Documentation), Text: "Documentation"}}),
		FitNow:    cmp.Or(d.fitTable("Fit today", fits.now), d.fitTold(r.ID)),
		Tapes:     d.tapes(fits.now),
		Room:      d.room(r),
		Time:      d.garmentOverTime(r),
		Across:    d.across(r),
		Ledger:    d.ledger(b.ledgerOf(r), anywhere),
		Seams:     d.seams(r.Seams),
		Closures:  d.closures(r),
		Pieces:    d.pieces(r.Pieces),
		Needs:     d.needs(r.Needs),
		Next:      append(d.ownNext(r), d.next(notOwn(d.lessonsFor(r.ID), r))...),
		Features:  d.features(r),
		Decisions: d.decisionList(d.decisionsFor(r.ID)),
		Carried:   d.carried(r.Carries, r.SetAside),
		Log:       d.entries(r.Notes, false),
		Hours:     show.Hours(hoursOf(r)),
		Photos:    d.photos(r),
		Backlinks: d.backlinks(r),
		Tags:      d.tagLinks(r.Tags),
	}
	if len(r.Seams) > 0 && !b.shared() {
		view.Sheets = append(view.Sheets, theme.Link{Href: d.root + address.Under(r.ID, address.TakeDown), Text: "Take-down"})
	}
	for _, layer := range r.Over {
		view.Dressing = append(view.Dressing, layer.Text)
	}
	if fits.then != nil && fits.then.Day != fits.now.Day {
		view.FitThen = d.fitTable("Fit when first finished", *fits.then)
	}
	return view
}

func anywhere(fit.Reason) bool { return true }

func hoursOf(b *journal.Build) time.Duration {
	var sum time.Duration
	for _, n := range b.Notes {
		sum += n.Hours
	}
	return sum
}

func (d desk) buildFacts(r *journal.Build) []theme.Fact {
	var s show.Facts
	s.Link("For", d.refOrNone(r.For))
	s.Say("Era", r.Era.String())
	s.Link("Pattern", d.refs(r.Pattern, journal.KindPattern)...)
	s.Link("Techniques", d.refs(r.Techniques, journal.KindTechnique)...)
	s.Link("Remakes", d.refOrNone(r.Remakes))
	s.Link("Reworks", d.refOrNone(r.Reworks))
	s.Link("Occasion", d.refs(r.Occasion, journal.KindOccasion)...)
	if r.Finished != 0 {
		s.Say("First finished", show.Day(r.Finished))
	}
	if worked := hoursOf(r); worked > 0 || r.Planned.Hours > 0 {
		s.Say("Hours", plannedAgainst(show.Hours(worked), show.Hours(r.Planned.Hours)))
	}
	s.Say("Spent", plannedAgainst(strings.Join(spentOn(r), " and "), money(r.Planned.Cost)))
	s.Say("May be seen by", d.seenBy(r.Share))
	return s
}

func plannedAgainst(actual, planned string) string {
	switch {
	case planned == "":
		return actual
	case actual == "":
		return "none yet, " + planned + " planned"
	}
	return actual + " of " + planned + " planned"
}

// spentOn adds up what the notes of a build say was paid, by currency.
func spentOn(b *journal.Build) []string {
	var sums []quantity.Money
	add := func(m quantity.Money) {
		for i := range sums {
			if sum, err := sums[i].Add(m); err == nil {
				sums[i] = sum
				return
			}
		}
		sums = append(sums, m)
	}
	for _, n := range b.Notes {
		for _, s := range n.Spent {
			add(s.Amount)
		}
		for _, m := range n.Bought {
			if m.Has("cost") {
				add(m.Cost)
			}
		}
	}
	var out []string
	for _, m := range sums {
		out = append(out, m.String())
	}
	return out
}

// seenBy says who may see a page that says so itself: never more than may see the
// journal.
func (b *book) seenBy(a journal.Audience) string {
	whole := b.Journal.Settings.Share
	if a == "" {
		return ""
	}
	if whole == journal.Self || a == journal.Public {
		a = whole
	}
	switch a {
	case journal.Circle:
		return "the sewing circle"
	case journal.Public:
		return "anyone"
	case journal.Self:
		return "the maker alone"
	}
	return ""
}

// across sets a build beside those that share a pattern with it and those that
// it was remade from or into.
func (d desk) across(r *journal.Build) *theme.FitGrid {
	kin := d.kin(r)
	if len(kin) < 2 {
		return nil
	}
	return d.fitGrid("Across builds", d.then(kin),
		"Each on the day it was first finished, with the builds that share its pattern or were remade from one another.")
}

// kin returns a build with those that it was remade from or into, and those that
// share a pattern with it, in the journal's order.
func (d desk) kin(r *journal.Build) []*journal.Build {
	related := map[journal.ID]bool{r.ID: true}
	for _, ref := range []journal.Ref{r.Remakes, r.Reworks} {
		if from := d.Journal.Build(ref); from != nil {
			related[from.ID] = true
		}
	}
	for _, into := range d.buildsLinking(r.ID, "remakes", "reworks") {
		related[into.ID] = true
	}
	for _, ref := range r.Pattern {
		if p := d.Journal.Pattern(ref); p != nil {
			for _, other := range d.buildsLinking(p.ID, "pattern") {
				related[other.ID] = true
			}
		}
	}
	var kin []*journal.Build
	for _, id := range slices.Sorted(maps.Keys(related)) {
		kin = append(kin, d.Journal.Build(journal.Ref{To: string(id)}))
	}
	return kin
}

func (d desk) shelfLink(k journal.Kind) theme.Link {
	s := shelfOf(k)
	return theme.Link{Href: d.root + s.path(), Text: s.Title}
}
