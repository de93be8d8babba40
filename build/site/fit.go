package site

import (
	"fmt"
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/theme"
)

// length shows a length with the same in the other system.
func (b *book) length(l quantity.Length) theme.Value {
	f := b.Journal.Settings.Format
	return theme.Value{Text: f.Length(l), Other: f.Other(l)}
}

// signed shows a length with its sign.
func (b *book) signed(l quantity.Length) theme.Value {
	f := b.Journal.Settings.Format
	return theme.Value{Text: f.Signed(l), Other: f.Other(l)}
}

// between shows a range of lengths.
func (b *book) between(r quantity.Range) theme.Value {
	f := b.Journal.Settings.Format
	v := theme.Value{Text: f.Range(r), Other: f.Other(r.Least)}
	if r.Least != r.Most {
		v.Other += " to " + f.Other(r.Most)
	}
	return v
}

// estimate shows a length with what is said of how sure it is.
func (b *book) estimate(e quantity.Estimate) theme.Value {
	v := theme.Value{Text: b.Journal.Settings.Format.Estimate(e)}
	if e.Known() {
		v.Other = b.Journal.Settings.Format.Other(e.Length)
	}
	return v
}

// marks are the words by which the style knows a verdict.
func mark(v fit.Verdict) string {
	switch v {
	case fit.Fits:
		return "fits"
	case fit.Short:
		return "short"
	case fit.Ample:
		return "ample"
	case fit.TooClose:
		return "close"
	}
	return "unknown"
}

func (b *book) verdict(r fit.Row) theme.Verdict {
	m := mark(r.Verdict)
	if r.Accepted {
		m = "fits"
	}
	return theme.Verdict{Mark: m, Words: r.Words(b.Journal.Settings.Format)}
}

// fitTable shows how one garment fits on one day.
func (d desk) fitTable(title string, t fit.Table) *theme.FitTable {
	if len(t.Rows) == 0 {
		return nil
	}
	out := &theme.FitTable{Title: title, Rests: d.rests(t)}
	for _, r := range t.Rows {
		out.Rows = append(out.Rows, d.fitRow(r))
	}
	out.Rests = append(out.Rests, shareNotes(out.Rows)...)
	for _, m := range t.Missed {
		out.Missed = append(out.Missed, m.Words())
	}
	return out
}

// fitTold shows how a build fits, as its wearer lets others know; nil where there is
// nothing to tell.
func (d desk) fitTold(build journal.ID) *theme.FitTable {
	told := d.told(build)
	if len(told.Rows) == 0 {
		return nil
	}
	out := &theme.FitTable{Title: "Fit today", Rests: []string{"As of " + show.Day(told.Day), "as its wearer lets others know"}}
	for _, r := range told.Rows {
		out.Rows = append(out.Rows, theme.FitRow{Measure: theme.Link{Text: r.Measure}, Verdict: theme.Verdict{Mark: mark(r.Verdict), Words: r.Words}})
	}
	return out
}

// shareNotes takes out of the rows what all those with notes say alike, and
// returns it to be said once.
func shareNotes(rows []theme.FitRow) []string {
	count := make(map[string]int)
	var order []string
	noted := 0
	for _, r := range rows {
		if len(r.Notes) > 0 {
			noted++
		}
		for _, n := range r.Notes {
			if count[n] == 0 {
				order = append(order, n)
			}
			count[n]++
		}
	}
	if noted < 2 {
		return nil
	}
	shared := func(n string) bool { return count[n] == noted }
	for i := range rows {
		rows[i].Notes = slices.DeleteFunc(rows[i].Notes, shared)
	}
	return slices.DeleteFunc(order, func(n string) bool { return !shared(n) })
}

// rests says what the verdicts of a table rest on.
func (d desk) rests(t fit.Table) []string {
	said := []string{"As of " + show.Day(t.Day), "worn over " + t.Foundation.String()}
	if r, ok := d.Journal.Named(string(t.Wearer)); ok {
		said[0] += " for " + r.Head().Title
	}
	return said
}

func (d desk) fitRow(r fit.Row) theme.FitRow {
	row := theme.FitRow{Measure: theme.Link{Text: r.Point.String()}, Verdict: d.verdict(r)}
	if r.Garment.Measured.State != quantity.NotMeasured {
		row.Garment = d.garmentValue(r.Garment)
	}
	if r.Body.Read.State != quantity.NotMeasured {
		row.Body = d.bodyValue(r.Body)
		row.Notes = append(row.Notes, d.bodyNotes(r.Body)...)
	}
	if r.Wanted != nil && r.Wanted.Named {
		row.Wanted = d.between(r.Wanted.Ease)
	}
	if r.Verdict.Compared() {
		row.Had = d.between(r.Had)
		row.Error = d.length(r.Error)
	}
	if r.Verdict.Judged() {
		row.Delta = d.signed(r.Delta)
	}
	for _, why := range r.Garment.Unsure {
		row.Notes = append(row.Notes, "altered on "+d.dayOf(why)+", by how much is not known")
	}
	for _, s := range r.Suggested {
		row.Notes = append(row.Notes, d.suggestion(s))
	}
	if c := r.Caution(); c != "" {
		row.Notes = append(row.Notes, c)
	}
	return row
}

func (b *book) garmentValue(g fit.GarmentValue) theme.Value {
	v := b.estimate(g.Measured)
	if g.Measured.Known() {
		about := g.Measured
		about.Length = g.Length
		v = b.estimate(about)
	}
	v.Notes = append(v.Notes, "measured "+show.Day(g.Day))
	if g.MockUp {
		v.Notes = append(v.Notes, "on the mock-up")
	}
	for _, since := range g.Since {
		v.Notes = append(v.Notes, "expected: altered "+b.dayOf(since)+", not measured since")
	}
	return v
}

func (b *book) bodyValue(body fit.BodyValue) theme.Value {
	v := b.estimate(body.Read)
	if body.Read.Known() {
		about := body.Read
		about.Length = body.Length
		v = b.estimate(about)
	}
	v.Notes = append(v.Notes, "measured "+show.Day(body.Day))
	return v
}

func (b *book) bodyNotes(body fit.BodyValue) []string {
	f := b.Journal.Settings.Format
	var notes []string
	if body.Estimated() {
		notes = append(notes, fmt.Sprintf("body estimated: %s over %s, %s for the other layers", f.Estimate(body.Read), body.Over, f.Signed(body.Offset.By)),
			"the difference between the layers is from "+daysOf(body.Offset.Days)+", when both were measured")
	}
	switch {
	case body.Alone:
		notes = append(notes, "measured by the wearer alone, which is a known cause of slips")
	case body.By != "":
		notes = append(notes, "measured by "+b.titleOf(body.By))
	}
	for _, apart := range body.Apart {
		notes = append(notes, "a newer measure over "+apart.String()+" cannot be compared")
	}
	return notes
}

func (b *book) suggestion(s measure.Suggestion) string {
	f := b.Journal.Settings.Format
	ease := f.Range(s.Ease)
	if s.AtLeast {
		ease = "at least " + f.Length(s.Ease.Least)
	}
	garment := s.Garment
	if garment == "" {
		garment = "garment"
	}
	return fmt.Sprintf("for a %s, %s is suggested (%s)", garment, ease, s.Source)
}

func daysOf(days []edtf.Day) string {
	var out []string
	for _, d := range days {
		out = append(out, show.Day(d))
	}
	return strings.Join(out, " and ")
}

// titleOf returns the title of the page called so, or the name itself.
func (b *book) titleOf(name string) string {
	if r, ok := b.Journal.Named(name, journal.KindPerson); ok {
		return r.Head().Title
	}
	return name
}

// dayOf returns the day of the note that a reason points at.
func (b *book) dayOf(r fit.Reason) string {
	if n, ok := b.recordOf(r).(*journal.Note); ok {
		return show.Day(n.Date)
	}
	return string(r.Record)
}

func (b *book) recordOf(r fit.Reason) journal.Record {
	record, _ := b.Journal.Find(string(r.Record))
	return record
}

// fitGrid sets the fits of several garments side by side. Measures that none of
// them has a verdict for are left out.
// The day of each is left out where rests says it of all, and the wearer on the
// wearer's own page.
func (d desk) fitGrid(title string, tables []fit.Table, rests ...string) *theme.FitGrid {
	grid := &theme.FitGrid{Title: title, Rests: rests}
	var points []measure.Point
	for _, t := range tables {
		for _, r := range t.Rows {
			if r.Verdict.Compared() && !slices.Contains(points, r.Point) {
				points = append(points, r.Point)
			}
		}
	}
	if len(points) == 0 {
		return nil
	}
	for _, p := range points {
		grid.Measures = append(grid.Measures, p.String())
	}
	oneDay := true
	for _, t := range tables {
		grid.Rows = append(grid.Rows, d.fitGridRow(t, points))
		oneDay = oneDay && t.Day == tables[0].Day
	}
	for i := range grid.Rows {
		if oneDay && len(rests) > 0 {
			grid.Rows[i].Day = ""
		}
		if grid.Rows[i].Who.Href == "#" {
			grid.Rows[i].Who = theme.Link{}
		}
	}
	return grid
}

func (d desk) fitGridRow(t fit.Table, points []measure.Point) theme.FitGridRow {
	row := theme.FitGridRow{Day: show.Day(t.Day), Cells: make([]theme.FitCell, len(points))}
	if r, ok := d.Journal.Named(string(t.Build)); ok {
		row.Build = d.to(r)
	}
	if r, ok := d.Journal.Named(string(t.Wearer)); ok {
		row.Who = d.to(r)
	}
	for _, r := range t.Rows {
		i := slices.Index(points, r.Point)
		if i < 0 {
			continue
		}
		row.Cells[i].Verdict = d.verdict(r)
		if r.Verdict.Judged() {
			row.Cells[i].Delta = d.signed(r.Delta)
		}
	}
	return row
}

// now and then return the tables of builds as they are today, and as they were
// when each was first finished.
func (b *book) now(builds []*journal.Build) []fit.Table {
	var tables []fit.Table
	for _, build := range builds {
		tables = append(tables, b.fit(build).now)
	}
	return tables
}

func (b *book) then(builds []*journal.Build) []fit.Table {
	var tables []fit.Table
	for _, build := range builds {
		if t := b.fit(build).then; t != nil {
			tables = append(tables, *t)
		}
	}
	return tables
}

// gravest returns the verdict on a build that a maker must hear first, or nil
// where there is none at all.
func (b *book) gravest(build *journal.Build) *theme.Verdict {
	var worst *fit.Row
	t := b.fit(build).now
	for i := range t.Rows {
		r := &t.Rows[i]
		if r.Verdict.Judged() && (worst == nil || gravity(*r) > gravity(*worst)) {
			worst = r
		}
	}
	if worst == nil {
		return nil
	}
	v := b.verdict(*worst)
	if v.Mark != "fits" {
		v.Words = worst.Point.String() + " " + v.Words
	}
	return &v
}

// gravity puts what is short before what is ample, and more of either before less.
func gravity(r fit.Row) quantity.Length {
	const step = quantity.Length(1) << 50
	switch {
	case r.Verdict == fit.Short:
		return 3*step - r.Delta
	case r.Verdict == fit.Ample && !r.Accepted:
		return 2*step + r.Delta
	case r.Verdict == fit.TooClose:
		return step
	}
	return 0
}

// ledger shows what was altered on a build and whether it did what it should.
func (d desk) ledger(book fit.Book, only func(fit.Reason) bool) *theme.Ledger {
	out := &theme.Ledger{}
	for _, e := range book.Entries {
		if only(e.From) {
			out.Rows = append(out.Rows, d.ledgerRow(e))
		}
	}
	for _, c := range book.Checks {
		if only(c.From) {
			out.Checks = append(out.Checks, d.ledgerCheck(c))
		}
	}
	if len(out.Rows)+len(out.Checks) == 0 {
		return nil
	}
	return out
}

func (d desk) dayLink(on edtf.Day, from fit.Reason) theme.Link {
	return theme.Link{Href: d.href(d.recordOf(from), ""), Text: show.Day(on)}
}

func (d desk) ledgerRow(e fit.Entry) theme.LedgerRow {
	row := theme.LedgerRow{
		Day: d.dayLink(e.Day, e.From), What: e.Words(d.Journal.Settings.Format),
		Where: e.Row.Place, Because: e.Row.Because,
	}
	for _, effect := range e.Effects {
		row.Effects = append(row.Effects, theme.Fact{Name: effect.Point.String(), Value: d.Journal.Settings.Format.Signed(effect.By)})
	}
	if e.Why != "" {
		row.Effects = append(row.Effects, theme.Fact{Name: "not worked out", Value: e.Why})
	}
	return row
}

func (d desk) ledgerCheck(c fit.Check) theme.LedgerCheck {
	f := d.Journal.Settings.Format
	out := theme.LedgerCheck{
		Day: d.dayLink(c.Day, c.From), Measure: c.Point.String(),
		Expected: d.length(c.Expected), Measured: d.estimate(c.Measured),
	}
	switch {
	case c.Held():
		out.Verdict = theme.Verdict{Mark: "fits", Words: "as expected"}
	case c.Off < 0:
		out.Verdict = theme.Verdict{Mark: "short", Words: f.Length(-c.Off) + " less than expected"}
	default:
		out.Verdict = theme.Verdict{Mark: "ample", Words: f.Length(c.Off) + " more than expected"}
	}
	out.Rests = "error of the two readings " + f.Length(c.Error)
	if len(c.Rows) == 0 {
		out.Rests = "nothing was altered in between; " + out.Rests
	}
	return out
}
