package theme

import "html/template"

// Decisions is the page of all decisions.
type Decisions struct {
	Frame
	Sections []DecisionSection // by garment, by technique, by outcome
	Empty    string
}

// A DecisionSection is all groups of one sort.
type DecisionSection struct {
	Title  string
	Anchor string
	Groups []DecisionGroup
}

// A DecisionGroup is the decisions under one heading.
type DecisionGroup struct {
	Title     Link
	Decisions []Decision
}

// An Outcome is how a decision turned out. Mark is "kept", "regretted" or
// "changed" and only repeats Words for the style.
type Outcome struct {
	Mark    string
	Words   string
	Because string
	From    Link
}

// Evidence is the page of all features, each with what the references say of it.
type Evidence struct {
	Frame
	Scale    template.HTML // all dated references on a scale of time
	Features []FeatureLine
	Undated  []Link // references that cannot be counted
	Rests    []string
	Empty    string
}

// A FeatureLine is one feature in the list of all.
type FeatureLine struct {
	Feature Link
	Span    string // "1775 to 1790"
	Shows   int
	Lacks   int
	Claims  []Link // builds that claim it
}

// FeaturePage is what the references say of one feature.
type FeaturePage struct {
	Frame
	Facts  []Fact
	Scale  template.HTML
	Table  *Table // references with their dates, and whether they show or lack it
	Claims []Claim
	Rests  []string
}

// A Claim is one feature of a build with the verdict on its evidence. Mark is
// "supported", "thin", "earlier", "later", "contradicted", "none" or "departs" and
// only repeats Words for the style.
type Claim struct {
	Feature Link
	Build   Link
	Mark    string
	Words   string // "supported: 5 of 6 inside the era (44-97 %)"
	RestsOn []Link
	Departs string
	Notes   []string
}

// Documentation is the sheet of a build for a show that judges by evidence.
type Documentation struct {
	Frame
	Of       Link
	Photo    *Photo
	Facts    []Fact
	About    template.HTML
	Claims   []Claim
	Methods  []Link     // techniques used
	Made     []Decision // decisions with their reasons
	Sources  []Source
	NextTime []Next
	Short    []Fact // the short form that many challenges ask for
	Empty    []string
}

// A Source is one reference in the citation form of the journal.
type Source struct {
	Link     Link // to its page
	Citation string
	Address  string
}

// Stash is the page of all materials on hand.
type Stash struct {
	Frame
	Rows  []StashRow
	Lacks []StashLack
	Rests []string
	Empty string
}

// A StashRow is one material, or one lot of it.
type StashRow struct {
	Material Link
	Lot      string
	Bought   string
	Used     string
	OnHand   string
	Pieces   []string // left-over pieces: "9 x 31 in, straight, two"
	Builds   []Link
	Notes    []string
}

// A StashLack is what a build is short of.
type StashLack struct {
	Build Link
	Words []string
}

// ToDo is the page of all that is planned, under way or waits.
type ToDo struct {
	Frame
	Jobs  []Job
	Empty string
}

// A Job is one build with what holds it up. Mark is "in time", "tight", "late" or
// "unknown" and only repeats Ready for the style.
type Job struct {
	Build   Link
	State   string
	For     Link // the occasion
	Away    string
	Mark    string
	Ready   string // "ready about 9 February 2027, in time"
	Stopped Entry  // its last note
	HeldUp  []string
	Next    []Next // open ones
}
