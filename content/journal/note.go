package journal

import (
	"time"

	"hussif/content/edtf"
	"hussif/content/front"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/content/source"
)

// A Note is what was done, seen or decided on one day.
type Note struct {
	Page           `noun:"a note"`
	Date           edtf.Day      `field:"date"`             // or the date that the file's name begins with
	Build          Ref           `field:"build" to:"build"` // where the folder does not tell
	Stage          Stage         `field:"stage"`
	Hours          time.Duration `field:"hours"`
	Spent          []Spending    `field:"spent"`
	Techniques     []Ref         `field:"techniques" to:"technique"`
	Occasion       Ref           `field:"occasion" to:"occasion"` // where it was worn
	Measured       Readings      `field:"measured"`               // of the garment
	Body           []Session     `field:"body"`
	Opened         []Word        `field:"opened"` // seams unpicked that day
	Sewed          []Word        `field:"sewed"`  // seams sewn that day
	Altered        []Altered     `field:"altered"`
	PatternChanged Changes       `field:"pattern changed"`
	OnPattern      Answer        `field:"on the pattern"` // whether the change reached the paper
	Decided        []Decision    `field:"decided"`
	TurnedOut      []Outcome     `field:"turned out"`
	Carries        []Ref         `field:"carries"`   // next-time notes that this work answers
	SetAside       []SetAside    `field:"set aside"` // and those that it does not, with the reason
	Used           []Movement    `field:"used"`
	Bought         []Movement    `field:"bought"`
	LeftOver       []Movement    `field:"left over"`
	Fitted         []Fault       `field:"fitted"`
	Moves          Moves         `field:"moves"`
	Photos         []Photo       `field:"photos"`

	Of *Build // computed by Resolve; nil for a note that belongs to no build
}

// A Stage is the kind of work that a note tells of.
type Stage string

// Stages, in the order in which a garment passes through them.
var Stages = []Stage{
	"planning", "mock-up", "cutting", "sewing", "fitting", "unpicking",
	"altering", "finishing", "worn", "cleaned",
}

// Spending is money paid.
type Spending struct {
	front.Where `noun:"an expense"`
	Amount      quantity.Money `field:"amount,needed,short"`
	What        string         `field:"what"`
}

// An Altered is a row of a garment's ledger: what was changed, and what that
// should have done to which measure.
type Altered struct {
	front.Where `noun:"an alteration"`
	What        string          `field:"what"` // in words, as in "hem let down"
	Seam        Word            `field:"seam"`
	Panel       string          `field:"panel"` // a piece let in
	Place       string          `field:"where"`
	At          Levels          `field:"at"`  // all that the seam crosses, where not given
	Was         quantity.Length `field:"was"` // allowance on each edge before
	Now         quantity.Length `field:"now"` // and after
	LetOut      quantity.Edges  `field:"let out"`
	TakenIn     quantity.Edges  `field:"taken in"`
	Count       int             `field:"count"`   // of panels; 1 where not given
	Times       int             `field:"times"`   // how often the seams cross one reading
	Widths      Changes         `field:"widths"`  // of one panel, finished, at each measure
	Changes     Changes         `field:"changes"` // what it does to each measure in all
	Because     string          `field:"because"`
}

// A Level is a measure at which a seam was re-sewn, with the allowances there
// where they differ from those of the whole row.
type Level struct {
	front.Where `noun:"a level"`
	Point       measure.Point
	Name        source.Span
	Was         quantity.Length `field:"was"`
	Now         quantity.Length `field:"now"`
}

// Levels are the measures at which a seam was re-sewn, in the order written.
type Levels []Level

// A Change is what is added to a measure; less than nothing makes it smaller.
type Change struct {
	Point measure.Point
	By    quantity.Length
	Key   source.Span
	Span  source.Span
}

// Changes are the changes of several measures, in the order written.
type Changes []Change

// A Decision is a question that was settled, and why.
type Decision struct {
	front.Where `noun:"a decision"`
	Question    string   `field:"question,short"`
	Chose       string   `field:"chose"`
	InsteadOf   []string `field:"instead of"`
	Because     string   `field:"because"`
	RestsOn     []Ref    `field:"rests on"`

	Anchor string // computed: names the part of the page that holds it
}

// An Outcome is how an earlier decision turned out.
type Outcome struct {
	front.Where `noun:"an outcome"`
	Decision    Ref     `field:"decision,needed"` // with its anchor, as in 2026-02-14-fitting#decided-keep-cuffs
	How         Verdict `field:"how,needed"`
	Because     string  `field:"because"`
}

// A Verdict is what became of a decision.
type Verdict string

// Verdicts on decisions.
const (
	Kept      Verdict = "kept"
	Regretted Verdict = "regretted"
	Changed   Verdict = "changed"
)

// A Movement is material that came in, went into the work, or was left over.
type Movement struct {
	front.Where `noun:"a material entry"`
	Material    Ref             `field:"material,needed,short" to:"material"`
	Amount      quantity.Amount `field:"amount"`
	Size        quantity.Size   `field:"size"` // of a piece
	Grain       string          `field:"grain"`
	Pieces      int             `field:"pieces"` // of that size; 1 where not given
	Cost        quantity.Money  `field:"cost"`
	From        string          `field:"from"`
	Lot         string          `field:"lot"`
}

// A Fault is what a fitting showed.
type Fault struct {
	front.Where `noun:"a fault"`
	At          string `field:"where"`
	Fault       string `field:"fault,needed,short"`
}

// Moves is what the wearer can do in the garment.
type Moves struct {
	front.Where `noun:"a group of moves"`
	Reach       Answer `field:"reach"`
	Sit         Answer `field:"sit"`
	Walk        Answer `field:"walk"`
	DressAlone  Answer `field:"dress alone"`
}

// A Photo is a picture with what it shows.
type Photo struct {
	front.Where `noun:"a photo"`
	File        Word     `field:"file,needed,short"` // from the note's folder
	Caption     string   `field:"caption"`
	Alt         string   `field:"alt"`
	Piece       Word     `field:"piece"`
	Face        Answer   `field:"face"` // whether somebody can be recognised
	Share       Audience `field:"share"`
}
