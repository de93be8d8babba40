package room

import (
	"slices"

	"hussif/build/wayin"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// What stays where the journal says nothing.
const (
	Keep = quantity.Inch / 4 // on each edge of a seam (common practice)
	Lap  = quantity.Inch / 2 // of a closing (common practice: less gapes between the hooks)
)

// Input is all that [Solve] looks at.
type Input struct {
	Needs    []Need // what is short, each point once
	Closures []Closure
	Seams    []Seam
	Garment  *wayin.Garment // whose list of seams Seam.Entry counts in

	// Step is the finest that is marked on an edge. What seams and closings give is a
	// whole number of steps, and so is how wide panels are; 0 is to the nanometre.
	Step quantity.Length

	exact bool // what there is to give is not rounded down to what can be marked
}

// up and down round a length to what can be marked.
func (in *Input) up(l quantity.Length) quantity.Length {
	if in.Step <= 0 {
		return l
	}
	return (l + in.Step - 1) / in.Step * in.Step
}

func (in *Input) down(l quantity.Length) quantity.Length {
	if in.Step <= 0 || in.exact {
		return l
	}
	return l / in.Step * in.Step
}

// A Need is a measure with a length that it is short or ample by.
type Need struct {
	Point measure.Point
	By    quantity.Length // more than 0
	Error quantity.Length // of By, from measuring
}

// A Closure is an opening that laps and can be closed with less of a lap.
type Closure struct {
	Name    string
	Overlap quantity.Length
	Keep    quantity.Length
	Crosses []measure.Point
	InFit   []measure.Point // of these, where its range is among the adjustments and in the fit already
	Why     string          // it gives nothing anywhere; "" where it can
}

// crosses reports whether a closing has anything to do with a measure.
func (c *Closure) crosses(p measure.Point) bool {
	return slices.ContainsFunc(c.Crosses, func(said measure.Point) bool { return covers(said, p) })
}

// inFit reports whether what a closing gives at a measure is in the fit already.
func (c *Closure) inFit(p measure.Point) bool {
	return slices.ContainsFunc(c.InFit, func(said measure.Point) bool { return covers(said, p) })
}

// Room returns how much a closing can give at each measure that it crosses, but
// those InFit.
func (c Closure) Room() quantity.Length {
	if c.Why != "" {
		return 0
	}
	return max(0, c.Overlap-c.Keep)
}

// A Seam is a seam, or a set of equal ones, with what it has left.
type Seam struct {
	Name   string
	Entry  int // its place in the build's list
	Count  int // at least 1
	Piped  bool
	Levels []Level
}

// A Level is a seam where it crosses one measure.
type Level struct {
	Point  measure.Point
	Edges  int             // that one reading crosses, two a seam; 0 where that cannot be told
	Now    quantity.Length // allowance on each edge; 0 where it is not known
	Keep   quantity.Length
	At     quantity.Length // height along the seam
	Placed bool            // whether At is known
	Why    string          // it gives nothing; "" where it can
}

// Each returns how much each edge can give.
func (l Level) Each() quantity.Length {
	if l.Why != "" {
		return 0
	}
	return max(0, l.Now-l.Keep)
}

// Room returns how much the seam can add to the measure.
func (l Level) Room() quantity.Length { return quantity.Length(l.Edges) * l.Each() }

// covers reports whether what is said of one point holds for another: the plain
// name of a paired measure stands for both sides.
func covers(said, asked measure.Point) bool {
	return said.Measure == asked.Measure && (said.Side == measure.Both || said.Side == asked.Side)
}
