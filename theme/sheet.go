package theme

import "html/template"

// A Tape is one measure drawn on a tape, with a table that says the same.
type Tape struct {
	Measure string
	Drawing template.HTML
}

// A Change is a drawing of how measures changed over time, with the same as a
// table.
type Change struct {
	Title   string
	Drawing template.HTML
	Table   Table
}

// A Room is what can be done about the measures at which a garment is short.
type Room struct {
	Needs   []Fact   // by measure, what is missing
	There   *Table   // what each seam and closing can give there, or why not
	Plans   []Plan   // the best first
	Rests   []string // what the plans rest on: allowances as of which day, what must stay
	Nothing []string // measures at which nothing can be done, and why
}

// A Plan is one way to give a garment what it needs.
type Plan struct {
	Title    string // "Let out the side seams"
	Why      string // why it stands where it does: "opens 17 in less than the next"
	Closures []Fact // closures to move, and how far
	Gives    Table  // seam, measure, each edge, allowance before and after
	Panels   []Panel
	WayIn    *WayIn
	Warnings []string
}

// A Panel is a piece to let in.
type Panel struct {
	Name    string
	Count   int
	Widths  Table // at each level, finished
	Facts   []Fact
	Drawing template.HTML
	Layouts []Layout
	Prints  []Link // full-size prints: "A4", "Letter"
}

// A Layout is a left-over piece with panels laid on it, or why they were not.
type Layout struct {
	Piece   Link
	Words   string // "two panels come out of it, 3 in of length to spare", "not found: 2 in more width"
	Drawing template.HTML
}

// A WayIn is what must be opened to reach some seams, and what comes loose.
type WayIn struct {
	Out    []WayStep // in this order
	Back   []WayStep
	Length string // of seams to open; says what is not known
	Hours  string // to open and to sew, by the journal's own notes; says so where not known
	Loose  []LoosePiece
	Faults []string
}

// A WayStep is one seam to open or to sew.
type WayStep struct {
	Seam  string
	What  string // "whole", "2 in at the ends" ...
	Sewn  string // stitch and thread
	Notes []string
}

// A LoosePiece is a piece that comes loose and what is not yet recorded of it.
type LoosePiece struct {
	Piece    string
	Recorded []string
	Missing  []string // what to mark before the first stitch is cut
}

// An Advance is the change to make on a pattern next time, measure by measure.
type Advance struct {
	Title string
	Rests []string
	Rows  []AdvanceRow
	Came  *Table   // how garments of one kind came out, where no pattern is the matter
	Out   []string // builds not counted, and why
}

// An AdvanceRow is the change at one measure.
type AdvanceRow struct {
	Measure string
	Pattern Value // what the pattern measures, by its garments
	Spread  Value // among them; empty where there is one only
	Body    Value
	Wanted  Value
	Change  Value
	Error   Value
	Words   string // "add 7/8 in to each edge", "leave it"
	Builds  []Link
}

// A Sheet is the before-a-remake sheet of a build, a pattern or a wearer: all that
// the record knows, on one page to print. What one has not is empty.
type Sheet struct {
	Frame
	Of        Link
	Photo     *Photo
	Facts     []Fact
	Fit       *FitTable
	Tapes     []Tape
	Room      *Room
	Advances  []Advance      // of a pattern or of a kind of garment
	Changes   *Table         // of a pattern: what was changed on it
	Grid      *FitGrid       // of a pattern or a wearer
	Wardrobe  []Answer       // of a wearer
	Bodies    []SessionTable // of a wearer: the newest over each foundation
	Ledger    *Ledger
	Seams     *Table
	Closures  *Table
	Pieces    *Table
	Features  []Feature
	Decisions []Decision
	ToDo      []string // what holds it up, with boxes to tick
	Next      []Next   // the same
	Left      *Table   // materials left over
	Needs     *Table
	Hours     []Fact
	TakeDown  *Link
	Empty     []string // what is not known, and how to tell it
}

// TakeDown is the sheet for taking a garment apart, with boxes to tick.
type TakeDown struct {
	Frame
	Of       Link
	Why      string   // what it is opened for
	Before   []string // photographs, marks, what to have at hand
	Mark     []LoosePiece
	WayIn    *WayIn
	Panels   []Panel
	Closures []Fact
	Gives    *Table // new allowances for sewing back
	Cautions []string
	Empty    string // said where there is nothing to take down
}

// Wardrobe is the page of all garments against one body.
type Wardrobe struct {
	Frame
	Who    Link
	Words  string // the answer in a sentence: "Two of five can be worn."
	Rests  []string
	Own    []Answer // what can be worn first
	Made   []Answer // the same, each on the day it was made
	Borrow []Answer // garments of others against this body
	Others []Link   // wardrobes of others
	Empty  string
}

// An Answer says whether one garment can be worn.
type Answer struct {
	Build   Link
	Of      Link // its owner, where that is another
	Photo   *Photo
	Verdict Verdict
	Waits   bool   // it cannot be worn as it stands, whatever the verdict: unfinished, taken apart
	Basis   string // "fits where measured: 3 of 5"
	State   string
	Notes   []string
	Day     string
}

// Tiles is a drawing at full size, cut into sheets of paper.
type Tiles struct {
	Frame
	Of    Link
	Paper string   // "A4" or "Letter"
	Words []string // how to print, join and check it
	Pages []template.HTML
}
