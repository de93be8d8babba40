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
	For        Ref        `field:"for" to:"person" doc:"who wears it" eg:"wren"`
	Garment    string     `field:"garment" doc:"its kind in a word or two: jacket, petticoat, stays" eg:"jacket"`
	Era        edtf.Date  `field:"era" doc:"the date portrayed" eg:"1780/1789"`
	Pattern    []Ref      `field:"pattern" to:"pattern" doc:"what it is cut after" eg:"jacket-draft"`
	Techniques []Ref      `field:"techniques" to:"technique" doc:"techniques used on it" eg:"[piping]"`
	Remakes    Ref        `field:"remakes" to:"build" doc:"the build that it makes anew; the old one stays or goes" eg:"blue-petticoat"`
	Reworks    Ref        `field:"reworks" to:"build" doc:"the build that it is made out of" eg:"blue-gown"`
	Occasion   []Ref      `field:"occasion" to:"occasion" doc:"what it is made for" eg:"market-day"`
	Over       []Word     `field:"over" doc:"the foundation it is worn over, in dressing order" eg:"[shift, stays]"`
	State      State      `field:"state" doc:"where it stands"`
	Finished   edtf.Day   `field:"finished" doc:"when it was first fit to be worn" eg:"2026-05-01"`
	Planned    Plan       `field:"planned" doc:"what it was thought to take before it was begun" eg:"{hours: 45, cost: 80 EUR}"`
	Fit        Wants      `field:"fit" tells:"body" doc:"the ease wanted at each measure" eg:"{bust girth: 0 to 1 in, waist girth: 1/2 in}"`
	Adjusts    []Adjust   `field:"adjusts" doc:"what gives it a range of sizes instead of one" eg:"[{how: lacing, where: centre back, gap: 0 to 2 in, changes: [bust girth]}]"`
	Closures   []Closure  `field:"closures" doc:"openings that are closed to wear it" eg:"[{name: front, kind: pins, overlap: 1 in, keep: 1/2 in}]"`
	Seams      []Seam     `field:"seams" doc:"its seams, each with what it could still give" eg:"[{name: side, count: 2, now: 5/8 in, keep: 1/4 in, crosses: [waist girth]}]"`
	Pieces     []Piece    `field:"pieces" doc:"the parts cut from cloth" eg:"[{name: sleeve, cut: 2, grain: bias}]"`
	Features   []Feature  `field:"features" doc:"its details with what each rests on" eg:"[{what: piped armhole, rests on: green-jacket}]"`
	Needs      []Need     `field:"needs" doc:"material that it asks for" eg:"[{material: striped-linen, amount: 2 yd}]"`
	Carries    []Ref      `field:"carries" doc:"next-time notes that it answers" eg:"[jacket-draft#next-cut-sleeve-wider]"`
	SetAside   []SetAside `field:"set aside" doc:"next-time notes that it does not answer, with the reason" eg:"[{note: jacket-draft#next-cut-sleeve-wider, because: it has no sleeves}]"`
	Photos     []Photo    `field:"photos" doc:"pictures of it" eg:"[{file: photos/back.jpg, alt: Seen from behind}]"`

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
	Hours       time.Duration  `field:"hours" doc:"hours of work" eg:"45"`
	Cost        quantity.Money `field:"cost" tells:"money" doc:"money for materials and notions" eg:"80 EUR"`
}

// A Want is the ease wanted at one measure.
type Want struct {
	front.Where `noun:"a wanted fit"`
	Point       measure.Point
	Name        source.Span    // of the measure's name
	Ease        quantity.Range `field:"ease,short" doc:"the garment's measure less the body's, from least to most" eg:"0 to 1 in"`
	Accepts     Accepts        `field:"accepts" doc:"what is well beside a fit: ample, where it may be larger"`
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
	How         string          `field:"how,needed" doc:"lacing, pins, drawstring, ties" eg:"lacing"`
	At          string          `field:"where" doc:"where on the garment" eg:"centre back"`
	Gap         quantity.Range  `field:"gap" doc:"from edge to edge when worn, from least to most" eg:"0 to 2 in"`
	Lap         quantity.Range  `field:"lap" doc:"of one edge over the other when worn, from least to most" eg:"1/2 to 1 in"`
	MeasuredAt  quantity.Length `field:"measured at" tells:"body" doc:"the gap or lap at which the garment was measured; none where not given" eg:"1 in"`
	Changes     []PointRef      `field:"changes" doc:"the measures that it changes" eg:"[bust girth, waist girth]"`
}

// A PointRef is a measure's name written as a value.
type PointRef struct {
	Point measure.Point
	Span  source.Span
}

// A Closure is an opening that is closed to wear the garment.
type Closure struct {
	front.Where `noun:"a closure"`
	Name        Word            `field:"name,needed" doc:"what it is called in this journal" eg:"front"`
	How         string          `field:"kind" doc:"hooks, buttons, lacing, pins" eg:"hooks"`
	At          string          `field:"where" doc:"where on the garment" eg:"centre front"`
	Overlap     quantity.Length `field:"overlap" doc:"how far one edge lies over the other now" eg:"1 in"`
	Keep        quantity.Length `field:"keep" doc:"the least overlap that must stay" eg:"1/2 in"`
	Crosses     []PointRef      `field:"crosses" doc:"the measures that it crosses" eg:"[bust girth, waist girth]"`
	Alone       Answer          `field:"alone" doc:"whether the wearer can fasten it alone"`
}

// A Seam is a seam, or a set of equal ones, that holds the garment together.
type Seam struct {
	front.Where `noun:"a seam"`
	Name        Word            `field:"name,needed" doc:"what it is called in this journal" eg:"side back"`
	Count       int             `field:"count" doc:"how many of it; 1 where not given" eg:"2"`
	Joins       []Word          `field:"joins" doc:"the pieces that it joins" eg:"[back, side back]"`
	Crosses     Crossings       `field:"crosses" doc:"the measures that it lies across, with the allowance there where that differs" eg:"{bust girth: 5/8 in, waist girth: 1/2 in}"`
	Now         quantity.Length `field:"now" doc:"allowance on each edge now" eg:"5/8 in"`
	Keep        quantity.Length `field:"keep" doc:"the least allowance that must stay on each edge" eg:"1/4 in"`
	TrimmedTo   quantity.Length `field:"trimmed to" doc:"what the allowance was trimmed to" eg:"1/4 in"`
	Clipped     Answer          `field:"clipped" doc:"whether the allowance was clipped"`
	Piped       Answer          `field:"piped" doc:"whether it is piped"`
	Length      quantity.Length `field:"length" tells:"body" doc:"how long one of them is" eg:"16 in"`
	Sewn        string          `field:"sewn" doc:"stitch and thread" eg:"backstitch, linen thread"`
	CaughtBy    []Caught        `field:"caught by" doc:"seams sewn across it later, which must be opened first" eg:"[armhole, {seam: waist binding, at: ends}]"`
}

// A Crossing is a measure that a seam lies across, with the allowance there.
type Crossing struct {
	front.Where `noun:"a crossing"`
	Point       measure.Point
	Name        source.Span     // of the measure's name
	Now         quantity.Length `field:"now,short" doc:"allowance on each edge there" eg:"5/8 in"`
	Keep        quantity.Length `field:"keep" doc:"the least allowance that must stay there" eg:"1/4 in"`
	At          quantity.Length `field:"at" tells:"body" doc:"how high along the seam the measure lies" eg:"6 in"`
	Times       int             `field:"times" doc:"how often the seams cross one reading, where it is not their count" eg:"2"`
}

// Crossings are the measures that a seam crosses, in the order written.
type Crossings []Crossing

// Caught is a seam sewn later across this one, which must be opened first.
type Caught struct {
	front.Where `noun:"a catching seam"`
	Seam        Word   `field:"seam,needed,short" doc:"the seam sewn across it" eg:"armhole"`
	At          Extent `field:"at" doc:"how much of it that seam catches; the whole where not said"`
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
	Name        Word     `field:"name,needed,short" doc:"what it is called in this journal" eg:"sleeve"`
	Cut         int      `field:"cut" doc:"how many of it; 1 where not given" eg:"2"`
	Of          Ref      `field:"of" to:"material" doc:"the material it is cut from" eg:"striped-linen"`
	Grain       string   `field:"grain" doc:"how it lies on the grain" eg:"bias"`
	Front       string   `field:"front" doc:"which edge faces the wearer's front" eg:"the notched edge"`
	RightSide   string   `field:"right side" doc:"how to tell the right side of the cloth" eg:"the brighter stripe"`
	Marks       []string `field:"marks" doc:"what was marked on it, and how" eg:"[two notches, thread cross at the elbow]"`
	Lined       string   `field:"lined" doc:"how it is lined" eg:"linen, caught at the seams"`
}

// A Feature is a detail of the garment with what it rests on.
type Feature struct {
	front.Where `noun:"a feature"`
	What        Word   `field:"what,needed,short" doc:"the detail, in the words that references show it by" eg:"piped armhole"`
	RestsOn     []Ref  `field:"rests on" doc:"references that it rests on" eg:"[green-jacket]"`
	Departs     string `field:"departs" doc:"why it knowingly differs from the period" eg:"the cord is cotton"`
}

// A Need is material that the build asks for.
type Need struct {
	front.Where `noun:"a wanted material"`
	Material    Ref             `field:"material,needed,short" to:"material" doc:"the material" eg:"striped-linen"`
	Amount      quantity.Amount `field:"amount" doc:"how much of it" eg:"2 1/4 yd"`
}
