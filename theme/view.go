package theme

import "html/template"

// A Frame is what every page has round its own matter.
type Frame struct {
	Site    string // the journal's title
	Title   string // the page's own
	Kind    string // what the page is, in a word, above its title; may be empty
	Root    string // relative way from the page to the site's top folder: "", "../" ...
	Section string // the entry of the menu that it belongs to: "builds", "people" ...
	Crumbs  []Link // the way down to it, without itself
	Feed    bool   // the site has a feed of its notes, at [FeedPath]
	Shared  bool   // the site is for others, and has no page of what check found
	Circle  bool   // the site is of what several makers share, and has a menu of its own
	About   string // how its text begins; may be empty
	URL     string // of the page on the web; empty where that is not known
	Day     string // of which it tells, of ISO 8601; may be empty
	Face    *Face  // may be nil
	Event   *Event // that it is about; nil for all but occasions
}

// A Link leads to another page or place. Text is never empty; Href may be, where
// there is nothing to lead to.
type Link struct {
	Href string
	Text string
	Note string // said after it in small type: a date, a kind, a count
}

// A Value is a quantity as it is shown, with the same in the other system of
// units, which stands below it in small type.
type Value struct {
	Text  string
	Other string
	Notes []string // "about", "expected, not measured since 14 Feb 2026" ...
}

// A Fact is a named value in a list of such.
type Fact struct {
	Name  string
	Value string
	Links []Link // shown in place of Value where there are any
}

// A Photo is a picture with its scaled copies.
type Photo struct {
	Src           string
	Srcset        string
	Sizes         string
	Width, Height int
	Alt           string
	Title         string
	Full          string // the largest copy
	Caption       string
	Piece         string
}

// A Card stands for a page in a list of pages.
type Card struct {
	Link   Link
	Kind   string
	State  string // "finished", "under way" ...
	Lines  []string
	Photo  *Photo
	Fit    *Verdict // the gravest of its fit, if it has any
	NextUp int      // how many next-time notes are open
}

// A Verdict says how something fits, in words first. Mark is one of "fits",
// "short", "ample", "close", "unknown" and only repeats them for the style.
type Verdict struct {
	Mark  string
	Words string // "short by 1 1/4 in"
}

// A FitTable is the fit of one garment on one day.
type FitTable struct {
	Title  string
	Rests  []string // what the verdicts rest on: day, wearer, foundation, measurer
	Rows   []FitRow
	Missed []string // what would have to be measured or written for more
}

// A FitRow is the fit at one measure.
type FitRow struct {
	Measure Link
	Body    Value
	Garment Value
	Had     Value // ease there is
	Wanted  Value // ease wanted
	Delta   Value
	Error   Value // of measuring, all in all
	Verdict Verdict
	Notes   []string // offsets, lacing gap, who measured, which rows of the ledger it rests on
}

// A FitGrid sets several garments side by side, a row each, a column a measure.
type FitGrid struct {
	Title    string
	Measures []string
	Rows     []FitGridRow
	Rests    []string
}

// A FitGridRow is one garment of a [FitGrid].
type FitGridRow struct {
	Build Link
	Who   Link
	Day   string
	Cells []FitCell // one a measure
}

// A FitCell is the fit of one garment at one measure; empty where the garment
// has no such measure.
type FitCell struct {
	Delta   Value
	Verdict Verdict
}

// A Ledger is what was done to a garment and whether it did what it should.
type Ledger struct {
	Rows   []LedgerRow
	Checks []LedgerCheck
}

// A LedgerRow is one alteration.
type LedgerRow struct {
	Day     Link
	What    string
	Where   string
	Effects []Fact // by measure, signed
	Because string
}

// A LedgerCheck sets an expected measure beside the one that was then taken.
type LedgerCheck struct {
	Day      Link
	Measure  string
	Expected Value
	Measured Value
	Verdict  Verdict // Mark "fits" where the two agree, "short" or "ample" where not
	Rests    string
}

// A Next is one next-time note.
type Next struct {
	Anchor string // its own on this page
	Text   string
	From   Link // the place where it was written
	Day    string
	About  []Link
	State  string // what was made of it, before the Answer: "carried into", "set aside:"; empty while it is open
	Answer Link   // the build that it was carried into, or why it was set aside
}

// A Group is a list of next-time notes under one heading.
type Group struct {
	Title Link
	Next  []Next
	More  Link // where there are more than are shown: "37 older ones"
}

// An Entry is a dated note in a list.
type Entry struct {
	Link  Link
	Day   string
	Stage string
	Hours string
	Text  string // how it begins
	Photo *Photo
	Of    Link // its build
}

// A Table is plain rows under headings. Cells that are links have an Href.
type Table struct {
	Title   string // may be empty
	Heads   []string
	Numeric []bool // which columns hold figures
	Rows    [][]Link
}

// A Decision is a settled question.
type Decision struct {
	Anchor    string
	Question  string
	Chose     string
	InsteadOf []string
	Because   string
	RestsOn   []Link
	From      Link
	Outcome   *Outcome // nil where no later note tells
}

// Backlinks are the pages that link to one, by how they do.
type Backlinks []BacklinkGroup

// A BacklinkGroup is the pages that link in one way: "remade by", "mentioned in".
type BacklinkGroup struct {
	How   string
	Links []Link
}

// Start is the first page.
type Start struct {
	Frame
	Intro    template.HTML
	OnTable  []Card // builds under way or waiting, most lately worked on first
	Next     *OccasionCard
	NotFit   []Card // builds that no longer fit
	Newest   []Entry
	NextTime []Next // newest ones
	NextAll  Link
	ToDo     Link   // where it says what holds each up
	Counts   []Link // "5 builds", "31 notes" ...
}

// An OccasionCard is an occasion with how far off it is.
type OccasionCard struct {
	Link  Link
	Day   string
	Away  string // "in 23 days"
	Wears []Card
}

// List is a page that lists pages of one kind.
type List struct {
	Frame
	Intro  string
	Beside []Link // what goes with the list: the stash, the calendar's file, the feed
	Groups []CardGroup
	Empty  string // said where there are none: how to add the first
}

// A CardGroup is cards under a heading; Title may be empty.
type CardGroup struct {
	Title string
	Cards []Card
}

// Build is the page of a build.
type Build struct {
	Frame
	Sheets    []Link // to print: before a remake, take-down
	Photo     *Photo
	State     string
	Facts     []Fact
	Body      template.HTML
	Dressing  []string // what it is worn over, in dressing order
	FitNow    *FitTable
	FitThen   *FitTable // on the day it was first finished
	Tapes     []Tape    // of the fit today
	Room      *Room     // what can be done about what is short
	Time      []Change  // how the garment changed
	Across    *FitGrid  // builds that it remakes, and that remake it or share its pattern
	Ledger    *Ledger
	Seams     *Table
	Closures  *Table
	Pieces    *Table
	Features  []Feature
	Needs     *Table
	Next      []Next
	Carried   []Next // those of others that it answers
	Decisions []Decision
	Log       []Entry // newest first
	Hours     string
	Photos    []Photo
	Backlinks Backlinks
	Tags      []Link
}

// A Feature is a detail of a garment with what it rests on. Mark and Words are
// those of its [Claim], empty where none was judged.
type Feature struct {
	What    string
	Href    string // the page of the feature; may be empty
	Mark    string
	Words   string
	RestsOn []Link
	Departs string
}

// Note is the page of a dated note.
type Note struct {
	Frame
	Day       string
	Of        Link
	Facts     []Fact
	Body      template.HTML
	Measured  *Table
	Bodies    []SessionTable
	Altered   []LedgerRow
	Checks    []LedgerCheck // of what was measured that day
	Decisions []Decision
	TurnedOut []Decision // earlier ones of which it tells how they turned out
	Next      []Next     // of the front matter; those in the text stand there
	Carried   []Next     // earlier ones that it answers
	Material  *Table
	Faults    []Fact
	Moves     []string
	Photos    []Photo
	Earlier   *Link
	Later     *Link
	Backlinks Backlinks
	Tags      []Link
}

// A SessionTable is one measuring of a body.
type SessionTable struct {
	From  Link   // the note that tells of it; empty on the note itself or where none does
	Title string // "10 January 2026, over shift and stays"
	Rests []string
	Table Table
}

// Person is the page of a wearer.
type Person struct {
	Frame
	Sheets    []Link // wardrobe, before a remake
	Photo     *Photo
	Facts     []Fact
	Body      template.HTML
	Usual     []string
	Fit       *FitGrid       // all builds of the wearer, as they fit today
	FitThen   *FitGrid       // and on the day each was first finished
	Sessions  []SessionTable // newest first
	Changes   []Table        // of the body, one for each foundation, a column a session
	Time      []Change       // how the body changed, drawn
	Advances  []Advance      // by kind of garment
	Builds    []Card
	Next      []Next
	Backlinks Backlinks
	Tags      []Link
}

// Thing is the page of a pattern, reference, material, technique or occasion.
// What a kind has not is empty.
type Thing struct {
	Frame
	Sheets    []Link    // of a pattern: before a remake
	Advances  []Advance // of a pattern: the change to make next time, by wearer
	Photos    []Photo
	Facts     []Fact
	Cautions  []string
	Body      template.HTML
	Features  *Table      // of a reference: what it shows and lacks
	Changes   *Table      // of a pattern: what was changed on it
	Fit       *FitGrid    // of a pattern: all builds made from it
	FitNow    *FitGrid    // the same as they fit today
	Movements *Table      // of a material
	NotReady  []string    // of an occasion: what is still to be made or mended
	Dressing  []CardGroup // of an occasion: who wears what over what
	Hands     []Fact      // of an occasion: by wearer, what wants a second pair of hands
	Next      []Next
	Decisions []Decision
	Builds    []Card
	Backlinks Backlinks
	Tags      []Link
}

// NextTime is the page of all next-time notes.
type NextTime struct {
	Frame
	Sections []NextSection
	Empty    string
}

// A NextSection is all groups of one sort: by pattern, by technique ...
type NextSection struct {
	Title  string
	Anchor string
	Groups []Group
}

// Tags is the page of all tags, and of what bears them.
type Tags struct {
	Frame
	Groups []TagGroup
}

// A TagGroup is one tag with the pages that bear it.
type TagGroup struct {
	Tag    string
	Anchor string
	Links  []Link
}

// Found is the page of what `check` found.
type Found struct {
	Frame
	Findings []Finding
}

// A Finding is one thing that `check` found.
type Finding struct {
	Level  string
	Place  string
	Page   Link
	Text   string
	Rule   string
	Line   string // of the file, where there is one
	Advice string
}
