package room

import (
	"hussif/build/wayin"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Plan is what can be done so that a garment is short nowhere.
type Plan struct {
	Input
	Moves   []Move   // closings to move, whatever seams are opened
	Options []Option // best first; none where no seam has to be opened, or could help
	Others  int      // more of them, as near the best as these
	Next    *Option  // the best of those too long to be told that do not open all that the first does; nil where there is none
	Beyond  []Need   // what all seams together cannot give, and panels must
	Unmet   []Unmet  // what no closing and no seam can meet
	ByHours bool     // ways in were compared by hours, else by length
	Greedy  bool     // too many seams to try all: measure by measure, one option
}

// shown is how many options are told one by one. They are those whose way in is
// no more than a fifth longer than the best one's, with as few panels.
const shown = 20

// A Move is a closing to be closed with less of a lap.
type Move struct {
	Closure string
	Levels  []Lapped
}

// Lapped is a closing at one measure.
type Lapped struct {
	Point measure.Point
	By    quantity.Length
	Now   quantity.Length // the overlap after
}

// An Option is one way of meeting all that seams can meet.
type Option struct {
	Seams    []Change // by name
	Panels   []Panel  // by name of the seam
	Way      wayin.Way
	Warnings []Blend
	Largest  quantity.Length // change of allowance on any edge
	Or       []string        // others that come to the same, by the seams that they open
}

// A Change is a seam let out; one without levels is opened for a panel only.
type Change struct {
	Seam   string
	Count  int          // how many are opened
	Side   measure.Side // on which; Both where on either
	Piped  bool         // its piping is taken out and laid in again
	Levels []Edge
}

// An Edge is what happens to each edge of a seam at one measure.
type Edge struct {
	Point measure.Point
	Edges int             // that one reading crosses
	By    quantity.Length // let out on each
	Was   quantity.Length // allowance on each
	Now   quantity.Length // and after
}

// Gives returns how much is added to the measure.
func (e Edge) Gives() quantity.Length { return quantity.Length(e.Edges) * e.By }

// A Panel is a piece let into a seam, or into each of a set of equal ones.
type Panel struct {
	Seam   string
	Count  int
	Side   measure.Side // of the body that they are for; Both where for either
	Widths []Width      // at every measure that the seam crosses, by height
	Slight bool         // it adds no more than the error of measuring anywhere: try the garment on before cutting it
}

// A Width is the finished width of one panel at a measure; 0 where nothing is
// missing there.
type Width struct {
	Point  measure.Point
	Width  quantity.Length
	Times  int             // that one reading crosses such a panel
	At     quantity.Length // height along the seam
	Placed bool            // whether At is known
}

// Unmet is a measure that stays short.
type Unmet struct {
	Need
	Why string // "no seam crosses the back width"
}

// panels returns how many panels are to be cut.
func (o Option) panels() int {
	n := 0
	for _, p := range o.Panels {
		n += p.Count
	}
	return n
}

// count returns how many seams are let out or take a panel.
func (o Option) count() int {
	n := 0
	for _, s := range o.Seams {
		n += s.Count
	}
	return n
}
