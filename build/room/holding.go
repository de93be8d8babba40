package room

import (
	"fmt"

	"hussif/content/quantity"
)

// A Holding is what a garment has to give at a measure that is short, whatever of
// it is needed.
type Holding struct {
	Need
	From []Source // closings, then seams, in the order of the build
}

// A Source is a closing or a seam that crosses the measure.
type Source struct {
	Name    string
	Closing bool
	Edges   int             // that one reading crosses; of a seam
	Now     quantity.Length // allowance on each edge, or the overlap of a closing
	Keep    quantity.Length // that stays of it
	Each    quantity.Length // that each edge, or the closing, can give
	Why     string          // it gives nothing; "" where it can
}

// Gives returns how much a source can add to the measure.
func (s Source) Gives() quantity.Length {
	if s.Closing {
		return s.Each
	}
	return quantity.Length(s.Edges) * s.Each
}

// Holdings returns what there is to give at each measure that is short.
func (in *Input) Holdings() []Holding {
	var out []Holding
	for _, n := range in.Needs {
		h := Holding{Need: n}
		for i := range in.Closures {
			c := &in.Closures[i]
			if !c.crosses(n.Point) {
				continue
			}
			s := Source{Name: c.Name, Closing: true, Now: c.Overlap, Keep: c.Keep, Each: in.down(c.Room()), Why: c.Why}
			if c.inFit(n.Point) {
				s.Each, s.Why = 0, adjustedAlready
			}
			h.From = append(h.From, s.told())
		}
		for i := range in.Seams {
			for _, l := range in.Seams[i].Levels {
				if l.Point == n.Point {
					s := Source{Name: in.Seams[i].Name, Edges: l.Edges, Now: l.Now, Keep: l.Keep, Each: in.down(l.Each()), Why: l.Why}
					h.From = append(h.From, s.told())
				}
			}
		}
		out = append(out, h)
	}
	return out
}

// told gives a reason to a source that gives nothing and has none.
func (s Source) told() Source {
	if s.Each == 0 && s.Why == "" {
		s.Why = "all there is has to stay"
	}
	return s
}

// Words says what a source can give: "1 1/2 in: 3/8 in on each of 4 edges (5/8 in, of
// which 1/4 in stays)"; "nothing: it is clipped".
func (s Source) Words(f quantity.Format) string {
	f = f.Finer()
	switch {
	case s.Each == 0:
		return "nothing: " + s.Why
	case s.Closing:
		return fmt.Sprintf("%s (a lap of %s, of which %s stays)", f.Length(s.Each), f.Length(s.Now), f.Length(s.Keep))
	}
	return fmt.Sprintf("%s: %s on each of %d edges (%s, of which %s stays)",
		f.Length(s.Gives()), f.Length(s.Each), s.Edges, f.Length(s.Now), f.Length(s.Keep))
}
