package site

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"hussif/build/show"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
)

// size shows a length that may not be given.
func (b *book) size(l quantity.Length, given bool) theme.Link {
	if !given {
		return theme.Link{}
	}
	return show.Cell(b.Journal.Settings.Format.Length(l))
}

func count(n int) theme.Link {
	if n == 0 {
		return theme.Link{}
	}
	return show.Cell(strconv.Itoa(n))
}

func yes(a journal.Answer, yes, no string) string {
	switch a {
	case journal.Yes:
		return yes
	case journal.No:
		return no
	}
	return ""
}

func money(m quantity.Money) string {
	if m.Currency == "" {
		return ""
	}
	return m.String()
}

func (d desk) seams(seams []journal.Seam) *theme.Table {
	var rows [][]theme.Link
	for _, s := range seams {
		var notes []string
		if s.Piped == journal.Yes {
			notes = append(notes, "piped")
		}
		if s.Clipped == journal.Yes {
			notes = append(notes, "clipped")
		}
		if s.Has("trimmed to") {
			notes = append(notes, "trimmed to "+d.Journal.Settings.Format.Length(s.TrimmedTo))
		}
		var caught []string
		for _, c := range s.CaughtBy {
			name := c.Seam.Text
			if c.At == journal.ExtentEnds {
				name += " (at the ends)"
			}
			caught = append(caught, name)
		}
		row := []theme.Link{
			show.Cell(s.Name.Text), count(max(1, s.Count)), show.Cell(words(s.Joins)), d.size(s.Length, s.Has("length")),
			{}, d.size(s.Now, s.Has("now")), d.size(s.Keep, s.Has("keep")),
			show.Cell(s.Sewn), show.Cell(strings.Join(caught, ", ")), show.Cell(strings.Join(notes, ", ")),
		}
		if len(s.Crosses) == 0 {
			rows = append(rows, row)
		}
		for i, c := range s.Crosses {
			if i > 0 {
				row = make([]theme.Link, len(row))
			}
			row[4] = show.Cell(c.Point.String())
			if c.Has("now") {
				row[5] = d.size(c.Now, true)
			}
			if c.Has("keep") {
				row[6] = d.size(c.Keep, true)
			}
			rows = append(rows, row)
		}
	}
	return show.Table(
		[]string{"Seam", "How many", "Joins", "Length", "Crosses", "Allowance now", "Must keep", "Sewn", "Caught by", "Notes"},
		[]bool{false, true, false, true, false, true, true, false, false, false}, rows)

}

func (d desk) closures(b *journal.Build) *theme.Table {
	var rows [][]theme.Link
	for _, c := range b.Closures {
		rows = append(rows, []theme.Link{
			show.Cell(c.Name.Text), show.Cell(c.How), show.Cell(c.At), d.size(c.Overlap, c.Has("overlap")), d.size(c.Keep, c.Has("keep")),
			{}, show.Cell(yes(c.Alone, "alone", "with help")),
		})
	}
	for _, a := range b.Adjusts {
		size := a.Gap
		kind := "gap "
		if a.Has("lap") {
			size, kind = a.Lap, "lap "
		}
		rows = append(rows, []theme.Link{
			show.Cell(a.How), {}, show.Cell(a.At), {}, {}, show.Cell(kind + d.Journal.Settings.Format.Range(size)), {},
		})
	}
	return show.Table([]string{"Closure", "Kind", "Where", "Overlap", "Must keep", "Worn with", "Fastened"},
		[]bool{false, false, false, true, true, true, false}, rows)

}

func (d desk) pieces(pieces []journal.Piece) *theme.Table {
	var rows [][]theme.Link
	for _, p := range pieces {
		marks := strings.Join(p.Marks, "; ")
		if marks == "" {
			marks = "none recorded"
		}
		rows = append(rows, []theme.Link{
			show.Cell(p.Name.Text), count(max(1, p.Cut)), d.refOrNone(p.Of), show.Cell(p.Grain), show.Cell(p.Front), show.Cell(p.RightSide), show.Cell(marks), show.Cell(p.Lined),
		})
	}
	return show.Table([]string{"Piece", "Cut", "Of", "Grain", "Front edge", "Right side", "Marks", "Lined"},
		[]bool{false, true, false, false, false, false, false, false}, rows)

}

func (d desk) refOrNone(ref journal.Ref) theme.Link {
	if ref.IsZero() {
		return theme.Link{}
	}
	return d.ref(ref)
}

func (d desk) needs(needs []journal.Need) *theme.Table {
	var rows [][]theme.Link
	for _, n := range needs {
		amount := ""
		if n.Has("amount") {
			amount = d.Journal.Settings.Format.Amount(n.Amount)
		}
		rows = append(rows, []theme.Link{d.ref(n.Material, journal.KindMaterial), show.Cell(amount)})
	}
	return show.Table([]string{"Material", "Amount"}, []bool{false, true}, rows)
}

// A movement is a material entry with where it stands.
type movement struct {
	journal.Movement
	what string // bought, used, left over
	note *journal.Note
}

func movements(n *journal.Note) []movement {
	var all []movement
	add := func(what string, list []journal.Movement) {
		for _, m := range list {
			all = append(all, movement{m, what, n})
		}
	}
	add("bought", n.Bought)
	add("used", n.Used)
	add("left over", n.LeftOver)
	return all
}

// movementsOf returns all entries of a material, oldest first.
func (b *book) movementsOf(of *journal.Material) []movement {
	var notes []*journal.Note
	for _, tie := range b.Journal.LinkedFrom(of.ID) {
		if n, ok := tie.From.(*journal.Note); ok && (len(notes) == 0 || notes[len(notes)-1] != n) {
			notes = append(notes, n)
		}
	}
	slices.SortStableFunc(notes, func(a, b *journal.Note) int { return cmp.Compare(a.Date, b.Date) })
	var moved []movement
	for _, n := range notes {
		for _, m := range movements(n) {
			if b.Journal.Material(m.Material) == of {
				moved = append(moved, m)
			}
		}
	}
	return moved
}

// materialTable shows what came in, went into the work or was left over. Where
// the page is about one material the column that names it stays empty.
func (d desk) materialTable(all []movement, ofNote bool) *theme.Table {
	f := d.Journal.Settings.Format
	var rows [][]theme.Link
	for _, m := range all {
		row := []theme.Link{
			{}, {}, show.Cell(m.what), {}, {}, count(m.Pieces), show.Cell(m.Grain), show.Cell(money(m.Cost)), show.Cell(m.From), show.Cell(m.Lot),
		}
		if ofNote {
			row[1] = d.ref(m.Material, journal.KindMaterial)
		} else {
			row[0] = theme.Link{Href: d.href(m.note, ""), Text: show.Day(m.note.Date)}
		}
		if m.Has("amount") {
			row[3] = show.Cell(f.Amount(m.Amount))
		}
		if m.Has("size") {
			row[4] = show.Cell(f.Size(m.Size))
		}
		rows = append(rows, row)
	}
	return show.Table([]string{"Day", "Material", "What", "Amount", "Size", "Pieces", "Grain", "Cost", "From", "Lot"},
		[]bool{false, false, false, true, true, true, false, true, false, false}, rows)

}

func words(list []journal.Word) string {
	var out []string
	for _, w := range list {
		out = append(out, w.Text)
	}
	return strings.Join(out, ", ")
}

// readings shows the measures taken at one time.
func (b *book) readings(readings journal.Readings) *theme.Table {
	var rows [][]theme.Link
	for _, r := range readings {
		v := b.estimate(r.Value)
		rows = append(rows, []theme.Link{show.Cell(r.Point.String()), {Text: v.Text, Note: v.Other}})
	}
	return show.Table([]string{"Measure", "Reading"}, []bool{false, true}, rows)
}
