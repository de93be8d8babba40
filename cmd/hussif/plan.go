package main

import (
	"hussif/build/fit"
	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// plan prints what there is to give where a garment is short, and what can be done.
func (v *voice) plan(j *journal.Journal, b *journal.Build, t fit.Table) {
	p := room.For(j, b, t, wayin.RatesOf(j))
	if len(p.Needs) == 0 {
		return
	}
	f := j.Settings.Format
	v.sayf("")
	v.sayf("%s", v.bold("Room and plan"))
	for _, h := range p.Holdings() {
		v.sayf("%s is short by %s; what there is:", h.Point, f.Finer().Length(h.By))
		if len(h.From) == 0 {
			v.sayf("  no closing and no seam crosses it")
		}
		for _, s := range h.From {
			v.sayf("  %s: %s", s.Name, s.Words(f))
		}
	}
	v.moves(f, p.Moves)
	for i, o := range p.Options {
		v.sayf("plan %d (%s):", i+1, p.Why(i, f))
		v.option(f, o)
		if i == 0 {
			v.sayf("  way in: %s", o.Way.Load.Words(f))
		}
	}
	if p.Others > 0 {
		v.sayf("%s as near the best", number(p.Others, "more plan"))
	}
	for _, u := range p.Unmet {
		v.sayf("%s", u.Words(f))
	}
	if len(p.Options) > 0 {
		for _, c := range p.Options[0].Cautions() {
			v.sayf("take care: %s", c)
		}
	}
}

func (v *voice) option(f quantity.Format, o room.Option) {
	for _, s := range o.Seams {
		v.sayf("  %s", s.Words(f))
	}
	for _, p := range o.Panels {
		v.sayf("  %s", p.Words(f))
	}
	for _, w := range o.Warnings {
		v.sayf("  mind: %s", w.Words(f))
	}
}

type planJSON struct {
	Needs   []needJSON   `json:"needs" doc:"the measures that are short"`
	Room    []roomJSON   `json:"room" doc:"what closings and seams could give"`
	Moves   []moveJSON   `json:"moves,omitempty" doc:"closings to be moved first"`
	Options []optionJSON `json:"options,omitempty" doc:"plans, the best first"`
	Others  int          `json:"others,omitempty" doc:"how many more are as near the best"`
	Unmet   []needJSON   `json:"unmet,omitempty" doc:"what no plan can give"`
	ByHours bool         `json:"by_hours" doc:"whether ways in are compared by hours, else by length"`
	Greedy  bool         `json:"greedy,omitempty" doc:"whether each measure was met by itself, for there are too many seams to try all sets of them"`
}

type needJSON struct {
	Measure string  `json:"measure" doc:"the measure"`
	By      float64 `json:"by_mm" doc:"by how much"`
	Why     string  `json:"why,omitempty" doc:"why it cannot be had"`
}

type roomJSON struct {
	Measure string       `json:"measure" doc:"the measure"`
	From    []sourceJSON `json:"from" doc:"what crosses it"`
}

type sourceJSON struct {
	Seam    string  `json:"seam,omitempty" doc:"the seam"`
	Closure string  `json:"closure,omitempty" doc:"or the closing"`
	Edges   int     `json:"edges,omitempty" doc:"how many edges cross the measure"`
	Now     float64 `json:"now_mm" doc:"allowance or lap now"`
	Keep    float64 `json:"keep_mm" doc:"what must stay of it"`
	Gives   float64 `json:"gives_mm" doc:"what that gives in all"`
	Why     string  `json:"why,omitempty" doc:"why it gives nothing"`
}

type moveJSON struct {
	Closure string  `json:"closure" doc:"the closing"`
	Measure string  `json:"measure" doc:"the measure"`
	By      float64 `json:"by_mm" doc:"how far it is moved"`
	Leaves  float64 `json:"leaves_mm" doc:"the lap that is left"`
}

type optionJSON struct {
	Seams    []edgeJSON  `json:"seams,omitempty" doc:"seams to let out, by measure"`
	Piped    []string    `json:"piped,omitempty" doc:"seams whose piping is taken out and laid in again"`
	Panels   []panelJSON `json:"panels,omitempty" doc:"pieces to let in"`
	Way      wayJSON     `json:"way_in" doc:"what to open to get there"`
	Why      string      `json:"why" doc:"how it compares with the others"`
	Or       []string    `json:"or,omitempty" doc:"other plans that come to the same, by the seams that they open"`
	Warnings []string    `json:"warnings,omitempty" doc:"what to mind"`
}

type edgeJSON struct {
	Seam     string  `json:"seam" doc:"the seam"`
	Side     string  `json:"side,omitempty" doc:"the side of the body; both where missing"`
	Measure  string  `json:"measure" doc:"the measure"`
	EachEdge float64 `json:"each_edge_mm" doc:"how much on each edge"`
	Was      float64 `json:"was_mm" doc:"allowance before"`
	Now      float64 `json:"now_mm" doc:"allowance after"`
	Gives    float64 `json:"gives_mm" doc:"what that gives in all"`
}

type panelJSON struct {
	Seam   string      `json:"seam" doc:"the seam it is let into"`
	Side   string      `json:"side,omitempty" doc:"the side of the body; both where missing"`
	Count  int         `json:"count" doc:"how many"`
	Widths []widthJSON `json:"widths" doc:"how wide it is, finished"`
	Slight bool        `json:"slight,omitempty" doc:"whether it is no wider anywhere than the error of measuring"`
}

type widthJSON struct {
	Measure string   `json:"measure" doc:"the measure"`
	Width   float64  `json:"width_mm" doc:"how wide it is there"`
	At      *float64 `json:"at_mm,omitempty" doc:"how high along the seam"`
}

func planOf(j *journal.Journal, b *journal.Build, t fit.Table) *planJSON {
	p := room.For(j, b, t, wayin.RatesOf(j))
	if len(p.Needs) == 0 {
		return nil
	}
	out := &planJSON{Others: p.Others, Greedy: p.Greedy, ByHours: p.ByHours, Moves: movesOf(p.Moves)}
	for _, n := range p.Needs {
		out.Needs = append(out.Needs, needJSON{Measure: n.Point.String(), By: millimetres(n.By)})
	}
	for _, h := range p.Holdings() {
		out.Room = append(out.Room, roomOf(h))
	}
	for _, u := range p.Unmet {
		out.Unmet = append(out.Unmet, needJSON{u.Point.String(), millimetres(u.By), u.Why})
	}
	for i, o := range p.Options {
		option := optionOf(o, j.Settings.Format)
		option.Why = p.Why(i, j.Settings.Format)
		out.Options = append(out.Options, option)
	}
	return out
}

func roomOf(h room.Holding) roomJSON {
	out := roomJSON{Measure: h.Point.String(), From: []sourceJSON{}}
	for _, s := range h.From {
		from := sourceJSON{Seam: s.Name, Edges: s.Edges, Now: millimetres(s.Now), Keep: millimetres(s.Keep), Gives: millimetres(s.Gives()), Why: s.Why}
		if s.Closing {
			from.Seam, from.Closure = "", s.Name
		}
		out.From = append(out.From, from)
	}
	return out
}

func movesOf(moves []room.Move) []moveJSON {
	var out []moveJSON
	for _, m := range moves {
		for _, l := range m.Levels {
			out = append(out, moveJSON{m.Closure, l.Point.String(), millimetres(l.By), millimetres(l.Now)})
		}
	}
	return out
}

func optionOf(o room.Option, f quantity.Format) optionJSON {
	out := optionJSON{Way: wayOf(o.Way), Or: o.Or}
	for _, s := range o.Seams {
		if s.Piped {
			out.Piped = append(out.Piped, s.Seam)
		}
		for _, l := range s.Levels {
			out.Seams = append(out.Seams, edgeJSON{
				s.Seam, sideOf(s.Side), l.Point.String(), millimetres(l.By), millimetres(l.Was), millimetres(l.Now), millimetres(l.Gives()),
			})
		}
	}
	for _, p := range o.Panels {
		panel := panelJSON{Seam: p.Seam, Side: sideOf(p.Side), Count: p.Count, Slight: p.Slight}
		for _, w := range p.Widths {
			width := widthJSON{Measure: w.Point.String(), Width: millimetres(w.Width)}
			if w.Placed {
				width.At = new(millimetres(w.At))
			}
			panel.Widths = append(panel.Widths, width)
		}
		out.Panels = append(out.Panels, panel)
	}
	for _, w := range o.Warnings {
		out.Warnings = append(out.Warnings, w.Words(f))
	}
	return out
}

// sideOf returns the side of the body that something is done on; "" for both.
func sideOf(s measure.Side) string {
	if s == measure.Both {
		return ""
	}
	return s.String()
}
