package journal

import (
	"time"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/content/source"
)

// A Build is a garment that is planned, being made, worn or altered.
type Build struct {
	Page       `noun:"a build"`
	For        Ref        `field:"for" to:"person"`
	Garment    string     `field:"garment"` // its kind in a word or two: jacket, petticoat, stays
	Era        edtf.Date  `field:"era"`     // the date portrayed
	Pattern    []Ref      `field:"pattern" to:"pattern"`
	Techniques []Ref      `field:"techniques" to:"technique"`
	Remakes    Ref        `field:"remakes" to:"build"` // made anew, the old one stays or goes
	Reworks    Ref        `field:"reworks" to:"build"` // made out of the old one
	Occasion   []Ref      `field:"occasion" to:"occasion"`
	Over       []Word     `field:"over"` // the foundation, in dressing order
	State      State      `field:"state"`
	Finished   edtf.Day   `field:"finished"` // when it was first fit to be worn
	Planned    Plan       `field:"planned"`
	Fit        Wants      `field:"fit"`
	Adjusts    []Adjust   `field:"adjusts"`
	Closures   []Closure  `field:"closures"`
	Seams      []Seam     `field:"seams"`
	Pieces     []Piece    `field:"pieces"`
	Features   []Feature  `field:"features"`
	Needs      []Need     `field:"needs"`
	Carries    []Ref      `field:"carries"`   // next-time notes that it answers
	SetAside   []SetAside `field:"set aside"` // and those that it does not, with the reason
	Photos     []Photo    `field:"photos"`

	Notes []*Note // computed by Resolve: its notes, oldest first
}

// Foundation returns what the garment is worn over.
func (b *Build) Foundation() measure.Foundation { return foundation(b.Over) }

// A State is where a build stands.
type State string

// States of a build.
const (
	StatePlanned  State = "planned"
	StateUnderWay State = "under way"
	StateFinished State = "finished"
	StateRepair   State = "waiting for repair"
	StateApart    State = "taken apart"
	StateGone     State = "gone" // given away, sold, worn out
)

// A Plan is what a build was thought to take before it was begun.
type Plan struct {
	front.Where `noun:"a plan"`
	Hours       time.Duration  `field:"hours"`
	Cost        quantity.Money `field:"cost"`
}

// A Want is the ease wanted at one measure.
type Want struct {
	front.Where `noun:"a wanted fit"`
	Point       measure.Point
	Name        source.Span    // of the measure's name
	Ease        quantity.Range `field:"ease,short"`
	Accepts     Accepts        `field:"accepts"`
}

// Wants are the wanted eases of a garment, in the order written.
type Wants []Want

// Accepts is what the maker is content with beside a fit.
type Accepts string

// AcceptsAmple says that a garment may be larger than wanted.
const AcceptsAmple Accepts = "ample"

// An Adjust gives a garment a range of sizes instead of one: a lacing gap that
// may be wider or narrower, a front pinned with more or less lap.
type Adjust struct {
	front.Where `noun:"an adjustment"`
	How         string          `field:"how,needed"`  // lacing, pins, drawstring, ties
	At          string          `field:"where"`       // centre back, front
	Gap         quantity.Range  `field:"gap"`         // from edge to edge when worn
	Lap         quantity.Range  `field:"lap"`         // of one edge over the other when worn
	MeasuredAt  quantity.Length `field:"measured at"` // the gap or lap at which the garment was measured; 0 where not given
	Changes     []PointRef      `field:"changes"`     // the measures that it changes
}

// A PointRef is a measure's name written as a value.
type PointRef struct {
	Point measure.Point
	Span  source.Span
}

// A Closure is an opening that is closed to wear the garment.
type Closure struct {
	front.Where `noun:"a closure"`
	Name        Word            `field:"name,needed"`
	How         string          `field:"kind"` // hooks, buttons, lacing, pins
	At          string          `field:"where"`
	Overlap     quantity.Length `field:"overlap"`
	Keep        quantity.Length `field:"keep"` // the least overlap that must stay
	Crosses     []PointRef      `field:"crosses"`
	Alone       Answer          `field:"alone"` // whether the wearer can fasten it
}

// A Seam is a seam, or a set of equal ones, that holds the garment together.
type Seam struct {
	front.Where `noun:"a seam"`
	Name        Word            `field:"name,needed"`
	Count       int             `field:"count"` // how many of it; 1 where not given
	Joins       []Word          `field:"joins"` // pieces
	Crosses     Crossings       `field:"crosses"`
	Now         quantity.Length `field:"now"`  // allowance on each edge
	Keep        quantity.Length `field:"keep"` // least allowance that must stay on each edge
	TrimmedTo   quantity.Length `field:"trimmed to"`
	Clipped     Answer          `field:"clipped"`
	Piped       Answer          `field:"piped"`
	Length      quantity.Length `field:"length"` // of one of them
	Sewn        string          `field:"sewn"`   // stitch and thread
	CaughtBy    []Caught        `field:"caught by"`
}

// A Crossing is a measure that a seam lies across, with the allowance there.
type Crossing struct {
	front.Where `noun:"a crossing"`
	Point       measure.Point
	Name        source.Span     // of the measure's name
	Now         quantity.Length `field:"now,short"`
	Keep        quantity.Length `field:"keep"`
	At          quantity.Length `field:"at"`    // height along the seam
	Times       int             `field:"times"` // how often the seams cross one reading, where it is not their count
}

// Crossings are the measures that a seam crosses, in the order written.
type Crossings []Crossing

// Caught is a seam sewn later across this one, which must be opened first.
type Caught struct {
	front.Where `noun:"a catching seam"`
	Seam        Word   `field:"seam,needed,short"`
	At          Extent `field:"at"`
}

// An Extent is how much of a seam another one catches.
type Extent string

// Extents; the whole where not said.
const (
	ExtentWhole Extent = "whole"
	ExtentEnds  Extent = "ends"
)

// A Piece is a part cut from cloth.
type Piece struct {
	front.Where `noun:"a piece"`
	Name        Word     `field:"name,needed,short"`
	Cut         int      `field:"cut"` // how many; 1 where not given
	Of          Ref      `field:"of" to:"material"`
	Grain       string   `field:"grain"`
	Front       string   `field:"front"`      // which edge faces the wearer's front
	RightSide   string   `field:"right side"` // how to tell it
	Marks       []string `field:"marks"`
	Lined       string   `field:"lined"`
}

// A Feature is a detail of the garment with what it rests on.
type Feature struct {
	front.Where `noun:"a feature"`
	What        Word   `field:"what,needed,short"`
	RestsOn     []Ref  `field:"rests on"`
	Departs     string `field:"departs"` // why it knowingly differs from the period
}

// A Need is material that the build asks for.
type Need struct {
	front.Where `noun:"a wanted material"`
	Material    Ref             `field:"material,needed,short" to:"material"`
	Amount      quantity.Amount `field:"amount"`
}
