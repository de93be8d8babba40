package room

import (
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
	Why     string // it gives nothing; "" where it can
}

// Room returns how much a closing can give at each measure that it crosses.
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
