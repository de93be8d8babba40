package room

import (
	"fmt"
	"slices"
	"strings"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// Words says how a closing is moved: "move front pins by 1/2 in at bust girth, leaving
// a lap of 1/2 in". What is the same at several measures is one move.
func (m Move) Words(f quantity.Format) string {
	f = f.Finer()
	var said []string
	for i, l := range m.Levels {
		same := func(other Lapped) bool { return other.By == l.By }
		if slices.ContainsFunc(m.Levels[:i], same) {
			continue
		}
		var at []string
		for _, other := range m.Levels {
			if same(other) {
				at = append(at, other.Point.String())
			}
		}
		said = append(said, fmt.Sprintf("by %s at %s, leaving a lap of %s", f.Length(l.By), list(at), f.Length(l.Now)))
	}
	return "move " + m.Closure + " " + strings.Join(said, "; ")
}

// Words says what stays short: "back width stays short by 1 in: no seam crosses it".
func (u Unmet) Words(f quantity.Format) string {
	return fmt.Sprintf("%s stays short by %s: %s", u.Point, f.Length(u.By), u.Why)
}

// Words says what is done to a seam: "let out side at bust girth: 1/4 in on each edge,
// from 1 in to 3/4 in, gives 1 in". A seam is named once, with all its measures.
func (c Change) Words(f quantity.Format) string {
	edge := f.Finer()
	seam := c.Seam + onSide(c.Side)
	words := "open " + seam + " for the panel"
	if len(c.Levels) > 0 {
		var said []string
		for _, l := range c.Levels {
			said = append(said, fmt.Sprintf("at %s %s on each edge, from %s to %s, gives %s", l.Point,
				edge.Length(l.By), edge.Length(l.Was), edge.Length(l.Now), edge.Length(l.Gives())))
		}
		words = "let out " + seam + ": " + strings.Join(said, "; ")
	}
	if c.Piped {
		words += "; take out its piping and lay it in again"
	}
	return words
}

// Words says what is let in: "let 2 panels into side, finished 1 1/2 in at bust girth,
// coming to a point at natural waist girth".
func (p Panel) Words(f quantity.Format) string {
	f = f.Finer()
	panels := "a panel"
	if p.Count > 1 {
		panels = fmt.Sprintf("%d panels", p.Count)
	}
	var wide, points []string
	for i, w := range p.Widths {
		beside := i > 0 && p.Widths[i-1].Width > 0 || i+1 < len(p.Widths) && p.Widths[i+1].Width > 0
		switch {
		case w.Width > 0:
			wide = append(wide, f.Length(w.Width)+" at "+w.Point.String())
		case w.Placed && beside:
			points = append(points, w.Point.String())
		}
	}
	words := "let " + panels + " into " + p.Seam + onSide(p.Side) + ", finished " + list(wide)
	if points != nil {
		words += ", coming to a point at " + list(points)
	}
	if p.Slight {
		words += "; that is no more than the error of measuring: try the garment on before cutting it"
	}
	return words
}

// Cautions are the usual ones for what an option asks to be done beside opening seams;
// none where no panel is cut.
func (o Option) Cautions() []string {
	if len(o.Panels) == 0 {
		return nil
	}
	return []string{
		"cut the panels away from your hand and along a ruler with a guard; close a rotary cutter each time you lay it down",
		"try the iron on a scrap first, press from the wrong side, mind the steam, and never leave the iron face down or hot behind you",
	}
}

func onSide(s measure.Side) string {
	if s == measure.Both {
		return ""
	}
	return " (" + s.String() + " side only)"
}

// Words says what is too steep: "side seam: 1/2 in between bust girth and natural
// waist girth, which are 2 in apart; 1 in 8 lies flat".
func (b Blend) Words(f quantity.Format) string {
	return fmt.Sprintf("%s seam: %s between %s and %s, which are %s apart; 1 in %d lies flat",
		b.Seam, f.Finer().Length(b.By), b.From, b.To, f.Length(b.Over), Slope)
}

// list joins names: "back, shoulder and side".
func list(names []string) string {
	if n := len(names) - 1; n > 0 {
		return strings.Join(names[:n], ", ") + " and " + names[n]
	}
	return strings.Join(names, "")
}
