package site

import (
	"fmt"
	"strings"

	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/quantity"
	"hussif/theme"
)

// room shows what can be done about what is short on a build; nil where nothing
// is. Only the best plan has its panels drawn.
func (d desk) room(b *journal.Build, p *room.Plan) *theme.Room {
	if p == nil {
		return nil
	}
	f := d.Journal.Settings.Format
	out := &theme.Room{Rests: []string{
		"Allowances as of " + day(d.fits[b].now.Day) + ", and what must stay as the seams, the journal or common practice say",
	}}
	for _, n := range p.Needs {
		out.Needs = append(out.Needs, theme.Fact{Name: n.Point.String(), Value: f.Length(n.By)})
	}
	for _, u := range p.Unmet {
		out.Nothing = append(out.Nothing, fmt.Sprintf("%s stays short by %s: %s", u.Point, f.Length(u.By), u.Why))
	}
	if p.Greedy {
		out.Rests = append(out.Rests, "too many seams to try all together: each measure was met by itself")
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

// moves shows the closings to move.
func (d desk) moves(p *room.Plan) []theme.Fact {
	f := d.Journal.Settings.Format
	var facts []theme.Fact
	for _, m := range p.Moves {
		for _, l := range m.Levels {
			facts = append(facts, theme.Fact{
				Name:  m.Closure,
				Value: fmt.Sprintf("gives %s at %s, leaving a lap of %s", f.Length(l.By), l.Point, f.Length(l.Now)),
			})
		}
	}
	return facts
}

func (d desk) plan(b *journal.Build, p *room.Plan, i int) theme.Plan {
	o := p.Options[i]
	f := d.Journal.Settings.Format
	plan := theme.Plan{Title: planTitle(o), Closures: d.moves(p), WayIn: d.wayIn(o.Way)}
	plan.Why = p.Why(i, f)
	if t := d.gives(o); t != nil {
		plan.Gives = *t
	}
	for k := range o.Panels {
		plan.Panels = append(plan.Panels, d.panel(b, o, k, i == 0))
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
				name = cell(s.Seam)
			}
			rows = append(rows, []theme.Link{
				name, cell(l.Point.String()), cell(f.Length(l.Gives())), cell(f.Length(l.By)), cell(f.Length(l.Was)), cell(f.Length(l.Now)),
			})
		}
	}
	return columns([]string{"Seam", "At", "Adds", "Each edge", "Allowance was", "Allowance will be"},
		[]bool{false, false, true, true, true, true}, rows)
}

// wayIn shows what must be opened, in which order, and what comes loose.
func (d desk) wayIn(w wayin.Way) *theme.WayIn {
	f := d.Journal.Settings.Format
	out := &theme.WayIn{Length: f.Length(w.Length), Hours: workTime(w.Load)}
	switch unknown := strings.Join(w.LengthUnknown, ", "); {
	case unknown != "" && w.Length == 0:
		out.Length = "length not noted: " + unknown
	case unknown != "":
		out.Length += ", and length not noted: " + unknown
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
	step := theme.WayStep{Seam: s.Seam.Name.Text, Sewn: s.Seam.Sewn, What: "whole"}
	if !s.Whole {
		step.What = "at the crossings with " + strings.Join(s.Across, " and ")
	}
	if s.Known {
		step.Notes = append(step.Notes, d.Journal.Settings.Format.Length(s.Length))
	}
	if n := s.Seam.Count; n > 1 {
		step.Notes = append(step.Notes, fmt.Sprintf("%d of them", n))
	}
	if s.Seam.Piped == journal.Yes {
		step.Notes = append(step.Notes, "piped")
	}
	if !s.Asked {
		step.Notes = append(step.Notes, "in the way")
	}
	return step
}

// workTime says how long opening and sewing again take by the journal's own notes.
func workTime(l wayin.Load) string {
	told := func(t wayin.Time, what string) string {
		if !t.Known {
			return "how long " + what + " takes is not known"
		}
		return quantity.FormatDuration(t.For) + " for " + what
	}
	return told(l.Opening, "opening") + ", " + told(l.Sewing, "sewing again")
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
