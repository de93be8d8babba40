package site

import (
	"fmt"
	"hussif/build/address"
	"time"

	"hussif/build/fit"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/theme"
	"hussif/theme/draw"
)

// tapes draws each measure of which body and garment are known on a tape.
func (d desk) tapes(t fit.Table) []theme.Tape {
	f := d.Journal.Settings.Format
	var out []theme.Tape
	for _, r := range t.Rows {
		if !r.Verdict.Compared() {
			continue
		}
		body, garment := r.Body.Length, quantity.Range{Least: r.Body.Length + r.Had.Least, Most: r.Body.Length + r.Had.Most}
		tape := draw.Tape{
			Words: draw.Words{
				ID: "tape-" + address.Slug(r.Point.String()), Title: show.Sentence(r.Point.String()) + " on the tape",
				Desc: fmt.Sprintf("Body %s, garment %s: %s.", f.Length(body), f.Range(garment), r.Words(f)),
			},
			Body:    draw.Mark{Least: millimetres(body), Most: millimetres(body), Error: millimetres(r.Body.Error), Label: "body " + f.Length(body)},
			Garment: draw.Mark{Least: millimetres(garment.Least), Most: millimetres(garment.Most), Error: millimetres(r.Garment.Error), Label: "garment " + f.Range(garment)},
			Metric:  d.metric(),
		}
		if r.Wanted != nil && r.Wanted.Named {
			least, most := body+r.Wanted.Ease.Least, body+r.Wanted.Ease.Most
			tape.Wanted = draw.Mark{Least: millimetres(least), Most: millimetres(most), Label: "wanted " + f.Range(quantity.Range{Least: least, Most: most})}
		}
		out = append(out, theme.Tape{Measure: r.Point.String(), Drawing: draw.DrawTape(tape)})
	}
	return out
}

// A strand is one measure of one thing through the years.
type strand struct {
	label   string
	stepped bool
	days    []edtf.Day
	values  []quantity.Estimate
}

// drawn draws strands on one scale of time, with a table that says the same. Those
// with fewer than two known values show no change and are left out.
func (d desk) drawn(id, title string, strands []strand) *theme.Change {
	f := d.Journal.Settings.Format
	series := draw.Series{Words: draw.Words{ID: id, Title: title}, Metric: d.metric()}
	var rows [][]theme.Link
	for _, s := range strands {
		run := draw.Run{Label: s.label, Stepped: s.stepped}
		known := 0
		for i, v := range s.values {
			year, month, dayOfMonth := s.days[i].Date()
			run.Values = append(run.Values, draw.Value{
				Day: time.Date(year, time.Month(month), dayOfMonth, 0, 0, 0, 0, time.UTC), Size: millimetres(v.Length), Known: v.Known(),
			})
			if v.Known() {
				known++
			}
		}
		if known < 2 {
			continue
		}
		series.Runs = append(series.Runs, run)
		series.Desc += show.Sentence(s.label) + ":"
		for i, v := range s.values {
			series.Desc += fmt.Sprintf(" %s on %s", f.Estimate(v), show.Day(s.days[i]))
			if i < len(s.values)-1 {
				series.Desc += ","
			}
			rows = append(rows, []theme.Link{show.Cell(show.Day(s.days[i])), show.Cell(s.label), show.Cell(f.Estimate(v))})
		}
		series.Desc += ". "
	}
	if len(series.Runs) == 0 {
		return nil
	}
	out := &theme.Change{Title: title, Drawing: draw.DrawSeries(series)}
	if t := show.Table([]string{"Day", "What", "Measure"}, []bool{false, false, true}, rows); t != nil {
		out.Table = *t
	}
	return out
}

// mostDrawn is how many measures are drawn through time on a page; the tables have
// them all.
const mostDrawn = 4

// bodyOverTime draws how a body's measures changed, each over every foundation it
// was taken over.
func (d desk) bodyOverTime(p *journal.Person) []theme.Change {
	all := fit.BodyChange(d.Journal, p)
	var points []measure.Point
	strands := make(map[measure.Point][]strand)
	for _, series := range all {
		for _, row := range series.Rows {
			s := strand{label: "over " + series.Over.String()}
			for i, step := range row.Steps {
				if step.Value.State != quantity.NotMeasured {
					s.days = append(s.days, series.Sessions[i].Day)
					s.values = append(s.values, step.Value)
				}
			}
			if strands[row.Point] == nil {
				points = append(points, row.Point)
			}
			strands[row.Point] = append(strands[row.Point], s)
		}
	}
	var out []theme.Change
	for _, p := range points {
		title := show.Sentence(p.String()) + " of the body"
		if c := d.drawn("body-"+address.Slug(p.String()), title, strands[p]); c != nil && len(out) < mostDrawn {
			out = append(out, *c)
		}
	}
	return out
}

// garmentOverTime draws how a garment's measures changed beside those of its
// wearer over what it is worn with.
func (d desk) garmentOverTime(b *journal.Build) []theme.Change {
	var points []measure.Point
	garment := make(map[measure.Point]*strand)
	for _, n := range b.Notes {
		for _, r := range n.Measured {
			s := garment[r.Point]
			if s == nil {
				s = &strand{label: "garment", stepped: true}
				garment[r.Point] = s
				points = append(points, r.Point)
			}
			s.days = append(s.days, n.Date)
			s.values = append(s.values, r.Value)
		}
	}
	body := make(map[measure.Point]strand)
	for _, session := range fit.Sessions(d.Journal, d.Journal.Person(b.For)) {
		if !session.Over.Same(b.Foundation()) {
			continue
		}
		for _, r := range session.Readings {
			s := body[r.Point]
			s.label = "body over the same layers"
			s.days = append(s.days, session.Day)
			s.values = append(s.values, r.Value)
			body[r.Point] = s
		}
	}
	var out []theme.Change
	for _, p := range points {
		strands := []strand{*garment[p]}
		if s, ok := body[p]; ok {
			strands = append(strands, s)
		}
		if c := d.drawn("garment-"+address.Slug(p.String()), show.Sentence(p.String()), strands); c != nil && len(out) < mostDrawn {
			out = append(out, *c)
		}
	}
	return out
}
