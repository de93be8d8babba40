package site

import (
	"hussif/build/across"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/theme"
)

// advance shows what several builds of a pattern teach about the next one; nil
// where they teach nothing.
func (d desk) advance(title string, s across.Sheet) *theme.Advance {
	f := d.Journal.Settings.Format
	out := d.lessonsOf(title, s)
	for _, r := range s.Rows {
		if len(r.Builds) == 0 {
			continue
		}
		row := theme.AdvanceRow{
			Measure: r.Point.String(), Words: r.Words(f), Pattern: d.length(r.Pattern.Median), Builds: d.restsOn(r),
		}
		if !r.OneOnly() {
			row.Spread = d.length(r.Pattern.Spread)
		}
		if r.Body.Read.Known() {
			row.Body = d.bodyValue(r.Body)
		}
		if r.Wanted != nil && r.Wanted.Named {
			row.Wanted = d.between(r.Wanted.Ease)
		}
		if r.Verdict != across.Untold {
			row.Change, row.Error = d.signed(r.Change), d.length(r.Error)
		}
		out.Rows = append(out.Rows, row)
	}
	if len(out.Rows) == 0 {
		return nil
	}
	return out
}

// cameOut shows how the garments of one kind came out for a wearer; nil where none
// could be judged.
func (d desk) cameOut(title string, s across.Sheet) *theme.Advance {
	f := d.Journal.Settings.Format
	var rows [][]theme.Link
	for _, r := range s.Rows {
		if r.Judged == 0 {
			continue
		}
		names := d.restsOn(r)
		for i, name := range names {
			row := []theme.Link{{}, {}, {}, {}, name}
			if i == 0 {
				row = []theme.Link{show.Cell(r.Point.String()), show.Cell(r.OffWords(f)), show.Cell(f.Signed(r.Off.Median)), show.Cell(f.Length(r.OffError)), name}
			}
			rows = append(rows, row)
		}
	}
	out := d.lessonsOf(title, s)
	out.Came = show.Table([]string{"Measure", "At first finish", "Off by", "Error of measuring", "Rests on"},
		[]bool{false, false, true, true, false}, rows)

	if out.Came == nil {
		return nil
	}
	out.Came.Title = title
	return out
}

// lessonsOf returns what stands round the rows of a sheet.
func (d desk) lessonsOf(title string, s across.Sheet) *theme.Advance {
	out := &theme.Advance{Title: title, Rests: []string{"As known on " + show.Day(s.Day), "for wear over " + s.Over.String()}}
	for _, n := range s.NotCounted {
		where := string(n.From.Record)
		if r, ok := d.Journal.Named(where); ok {
			where = r.Head().Title
		}
		out.Out = append(out.Out, where+": "+n.Words())
	}
	return out
}

func (d desk) restsOn(r across.Row) []theme.Link {
	var links []theme.Link
	for _, b := range r.Builds {
		if build, ok := d.Journal.Find(string(b.Build)); ok {
			l := d.to(build)
			l.Note = show.Day(b.Day)
			links = append(links, l)
		}
	}
	return links
}

// patternAdvances shows what to change on a pattern for each wearer it was cut for.
func (d desk) patternAdvances(p *journal.Pattern, builds []*journal.Build) []theme.Advance {
	var out []theme.Advance
	for _, wearer := range wearersOf(d.Journal, builds) {
		if a := d.advance("For "+wearer.Title, d.taughtBy(p, wearer)); a != nil {
			out = append(out, *a)
		}
	}
	return out
}

func wearersOf(j *journal.Journal, builds []*journal.Build) []*journal.Person {
	var out []*journal.Person
	for _, p := range j.People() {
		for _, b := range builds {
			if j.Person(b.For) == p {
				out = append(out, p)
				break
			}
		}
	}
	return out
}

// garmentAdvances shows for each kind of garment that a wearer has more than one
// of how they came out.
func (d desk) garmentAdvances(p *journal.Person, builds []*journal.Build) []theme.Advance {
	count := make(map[string]int)
	var kinds []string
	for _, b := range builds {
		if b.Garment == "" {
			continue
		}
		if count[b.Garment]++; count[b.Garment] == 2 {
			kinds = append(kinds, b.Garment)
		}
	}
	var out []theme.Advance
	for _, kind := range kinds {
		if a := d.cameOut(show.Sentence(kind), across.Garment(d.Journal, kind, p, d.Today)); a != nil {
			out = append(out, *a)
		}
	}
	return out
}
