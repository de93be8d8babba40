package site

import (
	"cmp"
	"hussif/build/address"
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/theme"
)

func (b *book) note(r *journal.Note) any {
	d := b.at(address.Of(r.ID))
	crumbs := []theme.Link{d.shelfLink(journal.KindNote)}
	section := "notes"
	if r.Of != nil {
		crumbs = []theme.Link{d.shelfLink(journal.KindBuild), d.to(r.Of)}
		section = "builds"
	}
	view := theme.Note{
		Frame:     d.frameOf(r, cmp.Or(string(r.Stage), "Note"), section, crumbs...),
		Day:       show.Day(r.Date),
		Facts:     d.noteFacts(r),
		Body:      d.body(r),
		Measured:  d.readings(r.Measured),
		Decisions: d.ownDecisions(r),
		TurnedOut: d.turnedOut(r),
		Carried:   d.carried(r.Carries, r.SetAside),
		Next:      d.ownNext(r),
		Material:  d.materialTable(movements(r), true),
		Moves:     moves(r.Moves),
		Photos:    d.photos(r),
		Backlinks: d.backlinks(r),
		Tags:      d.tagLinks(r.Tags),
	}
	for _, session := range r.Body {
		view.Bodies = append(view.Bodies, d.session(session, cmp.Or(session.Date, r.Date)))
	}
	for _, f := range r.Fitted {
		view.Faults = append(view.Faults, theme.Fact{Name: cmp.Or(f.At, "Seen"), Value: f.Fault})
	}
	if r.Of != nil {
		view.Of = d.to(r.Of)
		if l := d.ledger(b.ledgerOf(r.Of), func(from fit.Reason) bool { return from.Record == r.ID }); l != nil {
			view.Altered, view.Checks = l.Rows, l.Checks
		}
		view.Earlier, view.Later = d.neighbours(r)
	}
	return view
}

func (d desk) noteFacts(r *journal.Note) []theme.Fact {
	var s show.Facts
	s.Say("Hours", show.Hours(r.Hours))
	var spent []string
	for _, paid := range r.Spent {
		line := money(paid.Amount)
		if paid.What != "" {
			line += " for " + paid.What
		}
		spent = append(spent, line)
	}
	s.Say("Spent", strings.Join(spent, ", "))
	s.Say("Opened", words(r.Opened))
	s.Say("Sewed", words(r.Sewed))
	s.Link("Techniques", d.refs(r.Techniques, journal.KindTechnique)...)
	s.Link("Worn at", d.refOrNone(r.Occasion))
	s.Say("Pattern changed", d.changes(r.PatternChanged))
	s.Say("On the pattern", yes(r.OnPattern, "yes", "not yet"))
	s.Say("May be seen by", d.seenBy(r.Share))
	return s
}

// changes shows what is added to each measure.
func (b *book) changes(list journal.Changes) string {
	var out []string
	for _, c := range list {
		out = append(out, c.Point.String()+" "+b.Journal.Settings.Format.Signed(c.By))
	}
	return strings.Join(out, ", ")
}

func moves(m journal.Moves) []string {
	var out []string
	say := func(a journal.Answer, can, cannot string) {
		if words := yes(a, can, cannot); words != "" {
			out = append(out, words)
		}
	}
	say(m.Reach, "the wearer can reach up", "the wearer cannot reach up")
	say(m.Sit, "can sit", "cannot sit")
	say(m.Walk, "can walk", "cannot walk well")
	say(m.DressAlone, "can dress alone", "needs help to dress")
	return out
}

// neighbours links to the notes before and after one in its build.
func (d desk) neighbours(r *journal.Note) (earlier, later *theme.Link) {
	notes := r.Of.Notes
	link := func(i int) *theme.Link {
		if i < 0 || i >= len(notes) {
			return nil
		}
		l := d.to(notes[i])
		l.Note = show.Day(notes[i].Date)
		return &l
	}
	i := slices.Index(notes, r)
	return link(i - 1), link(i + 1)
}
