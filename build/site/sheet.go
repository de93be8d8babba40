package site

import (
	"cmp"
	"fmt"
	"hussif/build/address"
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/build/show"
	"hussif/build/wardrobe"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/theme"
)

// sheetOf returns what the before-a-remake sheets have in common.
func (b *book) sheetOf(r journal.Record) (desk, theme.Sheet) {
	page := r.Head()
	d := b.at(address.Under(page.ID, address.Remake))
	s := shelfOf(page.Kind)
	return d, theme.Sheet{
		Frame: b.frame(d.path, page.Title, "Before a remake", s.section(), d.shelfLink(page.Kind), d.to(r)),
		Of:    d.to(r),
		Next:  d.next(b.lessonsFor(page.ID)),
	}
}

// buildSheet is all that the record knows of a build before it is made again.
func (b *book) buildSheet(r *journal.Build) any {
	d, view := b.sheetOf(r)
	fits := b.fit(r)
	view.Photo = d.face(r)
	view.Facts = d.buildFacts(r)
	view.Fit = d.fitTable("Fit today", fits.now)
	view.Tapes = d.tapes(fits.now)
	view.Room = d.room(r)
	view.Ledger = d.ledger(b.ledgerOf(r), anywhere)
	view.Seams, view.Closures, view.Pieces = d.seams(r.Seams), d.closures(r), d.pieces(r.Pieces)
	view.Needs = d.needs(r.Needs)
	view.Left = d.leftTable(r)
	view.Hours = d.hoursOf(r)
	open, all := b.openFor(r)
	if rest := all - mostOpen; rest > 0 {
		view.Empty = append(view.Empty, fmt.Sprintf("%d older next-time notes of its patterns and techniques are open too and stand on their pages", rest))
	}
	view.Next = append(d.next(open), view.Next...)
	view.Features = d.features(r)
	view.Decisions = d.decisionList(d.decisionsFor(r.ID))
	for _, ref := range r.Pattern {
		if p := d.Journal.Pattern(ref); p != nil {
			if a := d.advance(p.Title, d.taughtBy(p, d.Journal.Person(r.For))); a != nil {
				view.Advances = append(view.Advances, *a)
			}
		}
	}
	view.Fit, view.ToDo = told(view.Fit)
	if len(r.Seams) > 0 {
		view.TakeDown = &theme.Link{Href: d.root + address.Under(r.ID, address.TakeDown), Text: "Take-down sheet"}
	}
	if len(r.Seams) == 0 {
		view.Empty = append(view.Empty, "no seams are listed, so what they can give and what must be opened cannot be told: add `seams:` to the build")
	}
	if len(r.Pieces) == 0 {
		view.Empty = append(view.Empty, "no pieces are listed, so what comes loose cannot be told: add `pieces:` to the build")
	}
	return view
}

// mostOpen is how many open notes of patterns and techniques a sheet lists to be
// ticked off: more than anybody reads before a remake.
const mostOpen = 40

// told takes what is still to be measured out of a table of fit, to be ticked off
// elsewhere on the page.
func told(t *theme.FitTable) (*theme.FitTable, []string) {
	if t == nil {
		return nil, nil
	}
	without := *t
	without.Missed = nil
	return &without, t.Missed
}

// leftTable shows the pieces left over of a build's materials.
func (d desk) leftTable(r *journal.Build) *theme.Table {
	var rows [][]theme.Link
	for _, l := range d.leftOvers(r) {
		since := theme.Link{}
		if l.piece.Day != 0 {
			since = show.Cell(show.Day(l.piece.Day))
		}
		rows = append(rows, []theme.Link{d.to(l.material), show.Cell(d.Journal.Settings.Format.Size(l.piece.Size)), show.Cell(l.piece.Grain), since})
	}
	return show.Table([]string{"Material", "Size", "Grain", "Left over"}, []bool{false, true, false, false}, rows)
}

// hoursOf shows what a build took by stage of the work, and what is still to come.
func (d desk) hoursOf(r *journal.Build) []theme.Fact {
	work := d.workOn(r.ID)
	var s show.Facts
	for _, stage := range work.Stages {
		s.Say(show.Sentence(cmp.Or(string(stage.Stage), "other work")), show.Hours(stage.Made+stage.Since))
	}
	s.Say("In all", work.HoursWords())
	s.Say("Forecast", plainDays(work.Forecast.Words()))
	s.Say("Cost", work.Cost.Words())
	s.Say("Worn", work.WearingWords())
	return s
}

// patternSheet is all that the record knows of a pattern before it is cut again.
func (b *book) patternSheet(r *journal.Pattern) any {
	d, view := b.sheetOf(r)
	builds := b.buildsLinking(r.ID, "pattern")
	view.Facts = d.patternFacts(r)
	view.Grid = d.fitGrid("Across builds", b.then(builds), "Every build cut from this pattern, on the day it was first finished.")
	view.Advances = d.patternAdvances(r, builds)
	view.Changes = d.patternChanges(r, builds)
	view.Decisions = d.decisionList(d.decisionsFor(r.ID))
	if len(builds) == 0 {
		view.Empty = append(view.Empty, "nothing was cut from it yet")
	}
	return view
}

// personSheet is all that the record knows of a wearer before something is made.
func (b *book) personSheet(r *journal.Person) any {
	d, view := b.sheetOf(r)
	builds := b.madeFor(r)
	var s show.Facts
	s.Say("Usual changes", strings.Join(r.Usual, "; "))
	view.Facts = append(s, b.personFacts(r)...)
	view.Grid = d.fitGrid("Fit today", b.now(builds), "As of "+show.Day(b.Today)+".")
	for _, g := range wardrobe.Of(b.Journal, r, b.Today).Garments {
		view.Wardrobe = append(view.Wardrobe, d.answer(g))
	}
	var seen []measure.Foundation
	for _, s := range slices.Backward(fit.Sessions(b.Journal, r)) {
		if slices.ContainsFunc(seen, s.Over.Same) {
			continue
		}
		seen = append(seen, s.Over)
		view.Bodies = append(view.Bodies, d.measuring(s))
	}
	view.Advances = d.garmentAdvances(r, builds)
	if len(seen) == 0 {
		view.Empty = append(view.Empty, "nothing was measured yet: add `measured:` to the page of "+r.Title)
	}
	return view
}

func (b *book) personFacts(r *journal.Person) []theme.Fact {
	var s show.Facts
	s.Say("May be seen by", b.seenBy(r.Share))
	s.Say("Shows of the fit", string(r.ShowsFit))
	return s
}

// takeDown is the sheet for opening a garment by the best plan.
func (b *book) takeDown(r *journal.Build) any {
	d := b.at(address.Under(r.ID, address.TakeDown))
	view := theme.TakeDown{
		Frame: b.frame(d.path, r.Title, "Take-down", "builds", d.shelfLink(journal.KindBuild), d.to(r)),
		Of:    d.to(r),
	}
	plan := b.fit(r).plan
	if plan == nil || len(plan.Options) == 0 {
		view.Empty = "Nothing has to be opened by what the journal knows today. For the way in to any seam, ask `hussif takedown " + r.ID.Name() + " SEAM`."
		if plan != nil {
			view.Closures = d.moves(plan)
		}
		return view
	}
	best := plan.Options[0]
	view.Why = planTitle(best)
	view.Before = []string{
		"photograph the inside and the outside, with a tape in the picture",
		"have thread, needles, a seam ripper and bags with labels at hand",
	}
	view.WayIn = d.wayIn(best.Way)
	view.Mark = view.WayIn.Loose
	view.WayIn.Loose = nil // told above
	if len(view.Mark) > 0 {
		view.Before = append(view.Before, "mark what is listed below with thread, and write down which way round each piece goes")
	} else {
		view.Before = append(view.Before, "no piece comes loose by this, so there is nothing to mark")
	}
	view.Closures = d.moves(plan)
	view.Gives = d.gives(best)
	view.Panels = d.panelViews(r)
	view.Cautions = append(best.Cautions(),
		"Cut away from your hand and from the cloth; a seam ripper slips. Work in good light and rest your eyes.",
		"Old stiffening may be wire, whalebone or something unknown; old dyes and dressings may be harmful. Wear gloves where in doubt and ask a conservator about anything old or of value.",
	)
	return view
}
