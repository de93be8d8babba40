package site

import (
	"fmt"
	"strings"

	"hussif/build/room"
	"hussif/build/show"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/theme"
)

// room shows what there is to give where a build is short and what can be done; nil
// where nothing is short. The way in and the panels are those of the best plan.
func (d desk) room(b *journal.Build) *theme.Room {
	p := d.fit(b).plan
	if p == nil {
		return nil
	}
	f := d.Journal.Settings.Format
	out := &theme.Room{There: d.there(p), Rests: []string{
		"Allowances as of " + show.Day(d.fit(b).now.Day) + ", less what must stay by the seam, the journal or common practice",
	}}
	for _, n := range p.Needs {
		out.Needs = append(out.Needs, theme.Fact{Name: n.Point.String(), Value: f.Length(n.By)})
	}
	for _, u := range p.Unmet {
		out.Nothing = append(out.Nothing, u.Words(f))
	}
	if p.Greedy {
		out.Rests = append(out.Rests, "too many seams to try all together: each measure was met by itself")
	}
	if p.ByHours {
		out.Rests = append(out.Rests, "plans are compared by hours of opening and sewing again")
	} else if len(p.Options) > 1 {
		out.Rests = append(out.Rests, "plans are compared by length to open, for not all hours are known")
	}
	if len(p.Options) == 0 && len(p.Moves) > 0 {
		out.Plans = []theme.Plan{{Title: "Move the closing", Why: "no seam has to be opened", Closures: d.moves(p)}}
	}
	for i := range p.Options {
		out.Plans = append(out.Plans, d.plan(b, p, i))
	}
	if p.Others > 0 {
		out.Rests = append(out.Rests, fmt.Sprintf("%d more plans are as near the best as these", p.Others))
	}
	return out
}

// there shows what each closing and seam can give where the build is short, or why
// it cannot.
func (d desk) there(p *room.Plan) *theme.Table {
	f := d.Journal.Settings.Format
	var rows [][]theme.Link
	for _, h := range p.Holdings() {
		for i, s := range h.From {
			at := theme.Link{}
			if i == 0 {
				at = show.Cell(h.Point.String())
			}
			rows = append(rows, []theme.Link{at, show.Cell(s.Name), show.Cell(s.Words(f))})
		}
	}
	return show.Table([]string{"At", "Seam or closing", "Can give"}, []bool{false, false, false}, rows)
}

// moves shows the closings to move.
func (d desk) moves(p *room.Plan) []theme.Fact {
	var facts []theme.Fact
	for _, m := range p.Moves {
		facts = append(facts, theme.Fact{Name: m.Closure, Value: m.Words(d.Journal.Settings.Format)})
	}
	return facts
}

func (d desk) plan(b *journal.Build, p *room.Plan, i int) theme.Plan {
	o := p.Options[i]
	f := d.Journal.Settings.Format
	plan := theme.Plan{Title: planTitle(o), Why: p.Why(i, f), Closures: d.moves(p)}
	if len(o.Or) > 0 {
		plan.Why += "; it comes to the same to open " + strings.Join(o.Or, ", or ")
	}
	if t := d.gives(o); t != nil {
		plan.Gives = *t
	}
	if i == 0 {
		plan.WayIn = d.wayIn(o.Way)
		plan.Panels = d.panelViews(b)
		plan.Warnings = o.Cautions()
	} else {
		for _, p := range o.Panels {
			plan.Panels = append(plan.Panels, theme.Panel{Name: p.Words(f), Count: p.Count})
		}
	}
	for _, w := range o.Warnings {
		plan.Warnings = append(plan.Warnings, w.Words(f))
	}
	for _, s := range o.Seams {
		if s.Piped {
			plan.Warnings = append(plan.Warnings, s.Seam+" seam: its piping is taken out and laid in again")
		}
	}
	return plan
}

// planTitle says in a line what a plan does.
func planTitle(o room.Option) string {
	var letOut, panels []string
	for _, s := range o.Seams {
		if len(s.Levels) > 0 {
			letOut = append(letOut, s.Seam)
		}
	}
	for _, p := range o.Panels {
		panels = append(panels, p.Seam)
	}
	switch {
	case len(panels) == 0:
		return "Let out: " + strings.Join(letOut, ", ")
	case len(letOut) == 0:
		return "Let panels into: " + strings.Join(panels, ", ")
	}
	return "Let out: " + strings.Join(letOut, ", ") + "; let panels into: " + strings.Join(panels, ", ")
}

// gives shows the new allowances.
func (d desk) gives(o room.Option) *theme.Table {
	f := d.Journal.Settings.Format.Finer()
	var rows [][]theme.Link
	for _, s := range o.Seams {
		for i, l := range s.Levels {
			name := theme.Link{}
			if i == 0 {
				name = show.Cell(s.Seam)
			}
			rows = append(rows, []theme.Link{
				name, show.Cell(l.Point.String()), show.Cell(f.Length(l.Gives())), show.Cell(f.Length(l.By)), show.Cell(f.Length(l.Was)), show.Cell(f.Length(l.Now)),
			})
		}
	}
	return show.Table([]string{"Seam", "At", "Adds", "Each edge", "Allowance was", "Allowance will be"},
		[]bool{false, false, true, true, true, true}, rows)

}

// wayIn shows what must be opened, in which order, and what comes loose.
func (d desk) wayIn(w wayin.Way) *theme.WayIn {
	f := d.Journal.Settings.Format
	out := &theme.WayIn{Length: w.Load.Words(f)}
	if len(w.LengthUnknown) > 0 {
		out.Hours = "length not noted: " + strings.Join(w.LengthUnknown, ", ")
	}
	for _, s := range w.Out {
		out.Out = append(out.Out, d.wayStep(s))
	}
	for _, s := range w.Back {
		out.Back = append(out.Back, d.wayStep(s))
	}
	for _, l := range w.Loose {
		out.Loose = append(out.Loose, loosePiece(l))
	}
	for _, fault := range w.Faults {
		out.Faults = append(out.Faults, fault.Text())
	}
	return out
}

func (d desk) wayStep(s wayin.Step) theme.WayStep {
	return theme.WayStep{Seam: s.Seam.Name.Text, What: s.Words(d.Journal.Settings.Format), Sewn: s.Seam.Sewn}
}

func loosePiece(l wayin.Loose) theme.LoosePiece {
	out := theme.LoosePiece{Piece: l.Name}
	for _, m := range l.Recorded {
		out.Recorded = append(out.Recorded, m.String())
	}
	for _, m := range l.Missing {
		out.Missing = append(out.Missing, m.String())
	}
	return out
}
