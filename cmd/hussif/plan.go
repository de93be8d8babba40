package main

import (
	"fmt"
	"strings"

	"hussif/build/fit"
	"hussif/build/room"
	"hussif/build/wayin"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// plan prints what can be done about what is short.
func (v *voice) plan(j *journal.Journal, t fit.Table, b *journal.Build) {
	p := room.For(j, b, t, wayin.RatesOf(j))
	if len(p.Needs) == 0 {
		return
	}
	f := j.Settings.Format
	v.sayf("")
	v.sayf("%s", v.bold("Room and plan"))
	for _, m := range p.Moves {
		for _, l := range m.Levels {
			v.sayf("move %s: gives %s at %s, leaving %s", m.Closure, f.Length(l.By), l.Point, f.Length(l.Now))
		}
	}
	for i, o := range p.Options {
		why := p.Why(i, f)
		if why != "" {
			why = " (" + why + ")"
		}
		v.sayf("plan %d%s:", i+1, why)
		v.option(f, o)
	}
	if p.Others > 0 {
		v.sayf("%s as near the best", number(p.Others, "more plan"))
	}
	if p.Greedy {
		v.sayf("too many seams to try all together: each measure was met by itself")
	}
	for _, u := range p.Unmet {
		v.sayf("%s stays short by %s: %s", u.Point, f.Length(u.By), u.Why)
	}
}

func (v *voice) option(f quantity.Format, o room.Option) {
	for _, s := range o.Seams {
		for _, l := range s.Levels {
			edge := f.Finer()
			v.sayf("  let out %s at %s: %s on each edge, from %s to %s, gives %s", s.Seam, l.Point,
				edge.Length(l.By), edge.Length(l.Was), edge.Length(l.Now), edge.Length(l.Gives()))
		}
		if s.Piped {
			v.sayf("  take out the piping of %s and lay it in again", s.Seam)
		}
	}
	for _, p := range o.Panels {
		var widths []string
		for _, w := range p.Widths {
			widths = append(widths, f.Length(w.Width)+" at "+w.Point.String())
		}
		v.sayf("  let into %s: %s, finished %s", p.Seam, number(p.Count, "panel"), strings.Join(widths, ", "))
		if p.Slight {
			v.sayf("  that is no more than the error of measuring: try the garment on before cutting it")
		}
	}
	for _, w := range o.Warnings {
		v.sayf("  mind: %s", w.Words(f))
	}
	v.sayf("  way in: %s", loadWords(f, o.Way.Load))
}

// loadWords says how much there is to open and how long it takes.
func loadWords(f quantity.Format, l wayin.Load) string {
	words := f.Length(l.Length) + " to open"
	switch {
	case l.Unknown > 0 && l.Length == 0:
		words = number(l.Unknown, "seam") + " of unknown length to open"
	case l.Unknown > 0:
		words += ", and " + number(l.Unknown, "seam") + " of unknown length"
	}
	if l.Opening.Known && l.Sewing.Known {
		words += fmt.Sprintf(", %s to open and %s to sew again", quantity.FormatDuration(l.Opening.For), quantity.FormatDuration(l.Sewing.For))
	}
	return words
}

type planJSON struct {
	Needs   []needJSON   `json:"needs"`
	Moves   []moveJSON   `json:"moves,omitempty"`
	Options []optionJSON `json:"options,omitempty"`
	Others  int          `json:"others,omitempty"`
	Unmet   []needJSON   `json:"unmet,omitempty"`
	Greedy  bool         `json:"greedy,omitempty"`
}

type needJSON struct {
	Measure string  `json:"measure"`
	By      float64 `json:"by_mm"`
	Why     string  `json:"why,omitempty"`
}

type moveJSON struct {
	Closure string  `json:"closure"`
	Measure string  `json:"measure"`
	By      float64 `json:"by_mm"`
	Leaves  float64 `json:"leaves_mm"`
}

type optionJSON struct {
	Seams  []edgeJSON  `json:"seams,omitempty"`
	Panels []panelJSON `json:"panels,omitempty"`
	Way    wayJSON     `json:"way_in"`
	Why    string      `json:"why,omitempty"`
}

type edgeJSON struct {
	Seam     string  `json:"seam"`
	Measure  string  `json:"measure"`
	EachEdge float64 `json:"each_edge_mm"`
	Was      float64 `json:"was_mm"`
	Now      float64 `json:"now_mm"`
	Gives    float64 `json:"gives_mm"`
}

type panelJSON struct {
	Seam   string      `json:"seam"`
	Count  int         `json:"count"`
	Widths []widthJSON `json:"widths"`
}

type widthJSON struct {
	Measure string   `json:"measure"`
	Width   float64  `json:"width_mm"`
	At      *float64 `json:"at_mm,omitempty"`
}

func planOf(j *journal.Journal, b *journal.Build, t fit.Table) *planJSON {
	p := room.For(j, b, t, wayin.RatesOf(j))
	if len(p.Needs) == 0 {
		return nil
	}
	out := &planJSON{Others: p.Others, Greedy: p.Greedy}
	for _, n := range p.Needs {
		out.Needs = append(out.Needs, needJSON{Measure: n.Point.String(), By: millimetres(n.By)})
	}
	for _, u := range p.Unmet {
		out.Unmet = append(out.Unmet, needJSON{u.Point.String(), millimetres(u.By), u.Why})
	}
	for _, m := range p.Moves {
		for _, l := range m.Levels {
			out.Moves = append(out.Moves, moveJSON{m.Closure, l.Point.String(), millimetres(l.By), millimetres(l.Now)})
		}
	}
	for i, o := range p.Options {
		option := optionJSON{Way: wayOf(o.Way), Why: p.Why(i, j.Settings.Format)}
		for _, s := range o.Seams {
			for _, l := range s.Levels {
				option.Seams = append(option.Seams, edgeJSON{
					s.Seam, l.Point.String(), millimetres(l.By), millimetres(l.Was), millimetres(l.Now), millimetres(l.Gives()),
				})
			}
		}
		for _, p := range o.Panels {
			panel := panelJSON{Seam: p.Seam, Count: p.Count}
			for _, w := range p.Widths {
				width := widthJSON{Measure: w.Point.String(), Width: millimetres(w.Width)}
				if w.Placed {
					width.At = new(millimetres(w.At))
				}
				panel.Widths = append(panel.Widths, width)
			}
			option.Panels = append(option.Panels, panel)
		}
		out.Options = append(out.Options, option)
	}
	return out
}
