package across

import (
	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Sheet is what several builds teach about the next one.
type Sheet struct {
	Pattern    journal.ID         // empty on a sheet of a kind of garment
	Kind       string             // of garment; empty on a sheet of a pattern
	Wearer     journal.ID         // of the next build; empty where nobody is named
	Day        edtf.Day           // as known on
	Like       journal.ID         // the build that the next one is reckoned by; empty where there is none
	Over       measure.Foundation // of the next build
	Rows       []Row              // measures as wanted, then as measured
	NotCounted []NotCounted
}

// A Row is one measure in all builds. What is of the pattern is zero on a sheet of
// a kind of garment.
type Row struct {
	Point    measure.Point
	Over     measure.Foundation
	Builds   []BuildRow      // by their first finish
	Off      Figure          // how far those judged were off what was wanted, at first finish
	OffError quantity.Length // the largest error among them
	Judged   int             // how many were
	Body     fit.BodyValue   // of the wearer of the next build
	Wanted   *fit.Wanted     // nil where no build says anything of this measure

	Pattern Figure          // what the pattern measures
	Drawn   quantity.Length // of that, what was changed on it since it was first drawn
	Change  quantity.Length // to make on it for the next build
	Error   quantity.Length // of Change
	Edges   int             // seam edges that share it; 0 where their number is not noted
	PerEdge quantity.Length // to the nearest nanometre; 0 where Edges is
	Verdict Verdict
	Lacks   fit.Verdict // what is missing where Verdict is Untold, else 0
}

// OneOnly reports whether all that a row says rests on one build.
func (r Row) OneOnly() bool { return len(r.Builds) == 1 }

// A Figure is the middle of several values and how far they are apart.
type Figure struct {
	Median quantity.Length
	Spread quantity.Length // the largest less the smallest
}

// A BuildRow is one measure of one build at its first finish. The package comment
// tells what each part of Pattern is.
type BuildRow struct {
	Build   journal.ID
	Day     edtf.Day // of its first finish
	Then    fit.Row  // how it fitted its own wearer on that day
	Changed quantity.Length
	Altered quantity.Length
	Since   quantity.Length
	Closed  quantity.Length // what it would measure more if closed as the build it is compared with
	Pattern quantity.Length // what the pattern measures by this build
	Reasons []fit.Reason    // for Changed, Altered and Since
}

// Verdict is what to do about a measure on the pattern.
type Verdict int

// Verdicts. The zero value stands on a sheet of a kind of garment.
const (
	Add Verdict = iota + 1
	TakeOff
	Leave  // the change is no larger than its error
	Untold // something is missing
)

// NotCounted is a build, or a change to the pattern, that could not be counted.
type NotCounted struct {
	From   fit.Reason
	Build  journal.ID      // empty for a change on the pattern's page
	Points []measure.Point // at which; none where at all
	Why    Why
}

// Why is what keeps a build or a change from being counted.
type Why int

// Reasons for not counting.
const (
	Unfinished   Why = iota + 1 // on the day, or nobody knows since when
	NeverTaped                  // by its first finish
	MockUpOnly                  // what was taped was its mock-up
	UnsureChange                // altered by nobody knows how much
	Undated                     // a change to the pattern without a day
)
