package site

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
)

// sheet gathers the facts of a page; those without a value are left out.
type sheet []theme.Fact

func (s *sheet) say(name, value string) {
	if value != "" {
		*s = append(*s, theme.Fact{Name: name, Value: value})
	}
}

func (s *sheet) link(name string, links ...theme.Link) {
	var given []theme.Link
	for _, l := range links {
		if l.Text != "" {
			given = append(given, l)
		}
	}
	if len(given) > 0 {
		*s = append(*s, theme.Fact{Name: name, Links: given})
	}
}

// columns makes a table, or none where it has no rows. A column of which every
// cell is empty is left out.
func columns(heads []string, numeric []bool, rows [][]theme.Link) *theme.Table {
	if len(rows) == 0 {
		return nil
	}
	t := &theme.Table{Rows: make([][]theme.Link, len(rows))}
	for c, head := range heads {
		used := false
		for _, r := range rows {
			used = used || r[c] != (theme.Link{})
		}
		if !used {
			continue
		}
		t.Heads = append(t.Heads, head)
		t.Numeric = append(t.Numeric, numeric[c])
		for i, r := range rows {
			t.Rows[i] = append(t.Rows[i], r[c])
		}
	}
	return t
}

func cell(text string) theme.Link { return theme.Link{Text: text} }

// size shows a length that may not be given.
func (b *book) size(l quantity.Length, given bool) theme.Link {
	if !given {
		return theme.Link{}
	}
	return cell(b.Journal.Settings.Format.Length(l))
}

func count(n int) theme.Link {
	if n == 0 {
		return theme.Link{}
	}
	return cell(strconv.Itoa(n))
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

func hours(d time.Duration) string {
	if d == 0 {
		return ""
	}
	return quantity.FormatDuration(d)
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
			cell(s.Name.Text), count(max(1, s.Count)), cell(words(s.Joins)), d.size(s.Length, s.Has("length")),
			{}, d.size(s.Now, s.Has("now")), d.size(s.Keep, s.Has("keep")),
			cell(s.Sewn), cell(strings.Join(caught, ", ")), cell(strings.Join(notes, ", ")),
		}
		if len(s.Crosses) == 0 {
			rows = append(rows, row)
		}
		for i, c := range s.Crosses {
			if i > 0 {
				row = make([]theme.Link, len(row))
			}
			row[4] = cell(c.Point.String())
			if c.Has("now") {
				row[5] = d.size(c.Now, true)
			}
			if c.Has("keep") {
				row[6] = d.size(c.Keep, true)
			}
			rows = append(rows, row)
		}
	}
	return columns(
		[]string{"Seam", "How many", "Joins", "Length", "Crosses", "Allowance now", "Must keep", "Sewn", "Caught by", "Notes"},
		[]bool{false, true, false, true, false, true, true, false, false, false}, rows)
}

func (d desk) closures(b *journal.Build) *theme.Table {
	var rows [][]theme.Link
	for _, c := range b.Closures {
		rows = append(rows, []theme.Link{
			cell(c.Name.Text), cell(c.How), cell(c.At), d.size(c.Overlap, c.Has("overlap")), d.size(c.Keep, c.Has("keep")),
			{}, cell(yes(c.Alone, "alone", "with help")),
		})
	}
	for _, a := range b.Adjusts {
		size := a.Gap
		kind := "gap "
		if a.Has("lap") {
			size, kind = a.Lap, "lap "
		}
		rows = append(rows, []theme.Link{
			cell(a.How), {}, cell(a.At), {}, {}, cell(kind + d.Journal.Settings.Format.Range(size)), {},
		})
	}
	return columns([]string{"Closure", "Kind", "Where", "Overlap", "Must keep", "Worn with", "Fastened"},
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
			cell(p.Name.Text), count(max(1, p.Cut)), d.refOrNone(p.Of), cell(p.Grain), cell(p.Front), cell(p.RightSide), cell(marks), cell(p.Lined),
		})
	}
	return columns([]string{"Piece", "Cut", "Of", "Grain", "Front edge", "Right side", "Marks", "Lined"},
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
		rows = append(rows, []theme.Link{d.ref(n.Material, journal.KindMaterial), cell(amount)})
	}
	return columns([]string{"Material", "Amount"}, []bool{false, true}, rows)
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
			{}, {}, cell(m.what), {}, {}, count(m.Pieces), cell(m.Grain), cell(money(m.Cost)), cell(m.From), cell(m.Lot),
		}
		if ofNote {
			row[1] = d.ref(m.Material, journal.KindMaterial)
		} else {
			row[0] = theme.Link{Href: d.href(m.note, ""), Text: day(m.note.Date)}
		}
		if m.Has("amount") {
			row[3] = cell(f.Amount(m.Amount))
		}
		if m.Has("size") {
			row[4] = cell(f.Size(m.Size))
		}
		rows = append(rows, row)
	}
	return columns([]string{"Day", "Material", "What", "Amount", "Size", "Pieces", "Grain", "Cost", "From", "Lot"},
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
		rows = append(rows, []theme.Link{cell(r.Point.String()), {Text: v.Text, Note: v.Other}})
	}
	return columns([]string{"Measure", "Reading"}, []bool{false, true}, rows)
}
