package site

import (
	"hussif/build/address"
	"slices"

	"hussif/build/fit"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
)

func (b *book) person(r *journal.Person) any {
	d := b.at(address.Of(r.ID))
	builds := b.madeFor(r)
	view := theme.Person{
		Frame: d.frameOf(r, "Wearer", "people", d.shelfLink(journal.KindPerson)),
		Photo: d.opener(r),
		Body:  d.body(r),
		Sheets: b.sheets([]theme.Link{
			{Href: d.root + address.Under(r.ID, address.Wardrobe), Text: "Wardrobe: does it still fit"},
			{Href: d.root + address.Under(r.ID, address.Remake), Text: "Before a remake"},
		}, nil),
		Time:      d.bodyOverTime(r),
		Advances:  d.garmentAdvances(r, builds),
		Usual:     r.Usual,
		Fit:       d.fitGrid("Fit today", b.now(builds), "Against the newest body measures over what each is worn with, as of "+show.Day(b.Today)+"."),
		FitThen:   d.fitGrid("Fit when first finished", b.then(builds)),
		Builds:    d.cards(records(builds)),
		Next:      append(d.ownNext(r), d.next(notOwn(b.lessonsFor(r.ID), r))...),
		Backlinks: d.backlinks(r),
		Tags:      d.tagLinks(r.Tags),
	}
	view.Facts = b.personFacts(r)
	sessions := fit.Sessions(b.Journal, r)
	for _, session := range slices.Backward(sessions) {
		view.Sessions = append(view.Sessions, d.measuring(session))
	}
	for _, series := range fit.BodyChange(b.Journal, r) {
		if t := d.change(series); t != nil {
			view.Changes = append(view.Changes, *t)
		}
	}
	return view
}

func newestFirst(builds []*journal.Build) []*journal.Build {
	slices.SortStableFunc(builds, func(a, b *journal.Build) int { return int(lastWorked(b) - lastWorked(a)) })
	return builds
}

func lastWorked(b *journal.Build) edtf.Day {
	if len(b.Notes) == 0 {
		return b.Finished
	}
	return b.Notes[len(b.Notes)-1].Date
}

// session shows one measuring of a body as a note tells of it.
func (d desk) session(s journal.Session, on edtf.Day) theme.SessionTable {
	t := theme.SessionTable{Title: show.Day(on) + ", over " + s.Foundation().String()}
	if s.By.Text != "" {
		t.Rests = append(t.Rests, "measured by "+d.titleOf(s.By.Text))
	}
	if s.Remarks != "" {
		t.Rests = append(t.Rests, s.Remarks)
	}
	if table := d.readings(s.Readings); table != nil {
		t.Table = *table
	}
	return t
}

// measuring shows one measuring of a body on its person's page.
func (d desk) measuring(s fit.Session) theme.SessionTable {
	switch r := d.recordOf(s.From).(type) {
	case *journal.Note:
		t := d.session(r.Body[s.From.Entry], s.Day)
		t.From = d.dayLink(s.Day, s.From)
		return t
	case *journal.Person:
		return d.session(r.Measured[s.From.Entry], s.Day)
	}
	panic("site: a measuring session of neither a note nor a person")
}

// change shows how a body changed over one foundation, a column a session; none
// where it was measured once only.
func (d desk) change(series fit.Series) *theme.Table {
	if len(series.Sessions) < 2 {
		return nil
	}
	t := &theme.Table{Title: "Over " + series.Over.String(), Heads: []string{"Measure"}, Numeric: []bool{false}}
	for _, s := range series.Sessions {
		t.Heads = append(t.Heads, show.Day(s.Day))
		t.Numeric = append(t.Numeric, true)
	}
	for _, r := range series.Rows {
		row := []theme.Link{show.Cell(r.Point.String())}
		for _, step := range r.Steps {
			row = append(row, d.step(step))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func (d desk) step(s fit.Step) theme.Link {
	if s.Value.State == quantity.NotMeasured {
		return theme.Link{}
	}
	f := d.Journal.Settings.Format
	c := show.Cell(f.Estimate(s.Value))
	switch {
	case s.Since == 0 || s.By == 0:
	case s.Larger:
		c.Note = f.Signed(s.By)
	default:
		c.Note = f.Signed(s.By) + ", within the error"
	}
	return c
}
