package wayin

import (
	"slices"
	"time"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Load is how much there is to unpick and to sew again.
type Load struct {
	Length  quantity.Length // of the seams whose length is known
	Unknown int             // seams whose length is not
	Opening Time
	Sewing  Time // back again
}

// A Time is how long work takes, if that can be told.
type Time struct {
	For   time.Duration
	Known bool
}

// longestWork is more than any seam takes; a rate that says otherwise rests on a
// slip.
const longestWork = 100_000 * time.Hour

// add adds the time for a length at a rate.
func (t *Time) add(l quantity.Length, known bool, r Rate) {
	if !t.Known {
		return
	}
	work := float64(l) / float64(r.Hourly) * float64(time.Hour)
	if !known || r.Hourly <= 0 || work > float64(longestWork) {
		*t = Time{}
		return
	}
	t.For += time.Duration(work)
}

// A Target is a seam to reach: all of its count, or those on one side of the body.
type Target struct {
	Entry int // its place in the build's list
	Side  measure.Side
}

// Load returns how much there is to do to open some seams, and all that must be
// opened for that.
func (g *Garment) Load(targets ...Target) Load {
	var few [64]opened
	return g.load(g.open(few[:0], targets))
}

func (g *Garment) load(state []opened) Load {
	load := Load{Opening: Time{Known: true}, Sewing: Time{Known: true}}
	for i := range state {
		if state[i].how == shut {
			continue
		}
		length, known := g.length(state, i)
		if known {
			load.Length += length
		} else {
			load.Unknown++
		}
		load.Opening.add(length, known, g.seams[i].opening)
		load.Sewing.add(length, known, g.seams[i].sewing)
	}
	return load
}

// opened is how far a seam is opened.
type opened struct {
	how   extent
	sides sides
	short quantity.Length // at the crossings in all
}

type extent uint8

const (
	shut extent = iota
	crossings
	whole
)

// sides are the sides of the body on which a pair of seams is opened, a bit each.
type sides uint8

const (
	left sides = 1 << iota
	right
	both = left | right
)

func sidesOf(s measure.Side) sides {
	switch s {
	case measure.Left:
		return left
	case measure.Right:
		return right
	}
	return both
}

func (s sides) side() measure.Side {
	switch s {
	case left:
		return measure.Left
	case right:
		return measure.Right
	}
	return measure.Both
}

// part returns so much of a length as lies on some sides, where it is shared
// between two.
func (s *seam) part(of quantity.Length, on sides) quantity.Length {
	if s.paired && on != both {
		return of / 2
	}
	return of
}

// open returns how far each seam is opened so that some of them are opened whole.
// It uses the room of state where that is enough.
func (g *Garment) open(state []opened, targets []Target) []opened {
	if cap(state) < len(g.seams) {
		state = make([]opened, len(g.seams))
	}
	state = state[:len(g.seams)]
	for _, t := range targets {
		g.widen(state, t.Entry, whole, sidesOf(t.Side))
	}
	for _, i := range slices.Backward(g.order) {
		if state[i].how == shut {
			continue
		}
		for _, c := range g.seams[i].caught {
			if state[i].how == whole {
				state[c.by].short += g.seams[i].part(c.short, state[i].sides)
			} else {
				short, _ := g.length(state, i)
				state[c.by].short += short
			}
		}
	}
	return state
}

// widen opens a seam at least so far, and what catches it. Seams are only ever
// opened further, so it ends even where they catch each other in a circle. What is
// no pair is opened on both sides of the body where it is opened at all.
func (g *Garment) widen(state []opened, i int, to extent, on sides) {
	if !g.seams[i].paired {
		on = both
	}
	now := &state[i]
	if now.how >= to && now.sides|on == now.sides {
		return
	}
	now.how, now.sides = max(now.how, to), now.sides|on
	for _, c := range g.seams[i].caught {
		if now.how == whole && c.whole {
			g.widen(state, c.by, whole, now.sides)
		} else {
			g.widen(state, c.by, crossings, now.sides)
		}
	}
}

// length returns how much of a seam is opened. At crossings that is known even
// where the seam's own length is not, unless seams catch each other in a circle.
func (g *Garment) length(state []opened, i int) (quantity.Length, bool) {
	s := &g.seams[i]
	all := s.part(s.length, state[i].sides)
	switch {
	case state[i].how == whole:
		return all, s.known
	case s.known && state[i].short > all:
		return all, true
	}
	return state[i].short, state[i].short > 0
}
