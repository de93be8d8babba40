package fit

import (
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Table is how a garment fits a wearer on one day.
type Table struct {
	Build      journal.ID
	Wearer     journal.ID // empty where nobody is named
	Day        edtf.Day
	Foundation measure.Foundation
	Rows       []Row     // measures in the order wanted, then as measured on the garment
	Wear       []Wear    // how to wear what can be adjusted, for the rows that fit
	Missed     []Missing // what to measure or write down for more verdicts
}

// A Row is the fit at one measure.
type Row struct {
	Point     measure.Point
	Over      measure.Foundation
	Garment   GarmentValue
	Body      BodyValue
	Wanted    *Wanted        // nil where the build says nothing of this measure
	Had       quantity.Range // ease there is; both ends the same where nothing adjusts
	Delta     quantity.Length
	Error     quantity.Length // of Had, and so of Delta
	Verdict   Verdict
	Accepted  bool                 // ample, and the maker is content with that
	Adjusted  *Adjusted            // nil where nothing adjusts this measure
	Suggested []measure.Suggestion // where no ease is named and one can be offered
}

// A GarmentValue is what a garment measures at one point.
type GarmentValue struct {
	Length   quantity.Length   // measured, and altered since; 0 unless Measured is known
	Measured quantity.Estimate // NotMeasured where it never was
	Day      edtf.Day
	From     Reason
	MockUp   bool            // read on the mock-up
	Since    []Reason        // alterations after it, counted in Length
	Unsure   []Reason        // alterations after it that Length knows nothing of
	Later    edtf.Day        // where not measured by the day: when it first was, or 0
	Error    quantity.Length // of Measured
}

// Expected reports whether the value has not been measured since an alteration.
func (g GarmentValue) Expected() bool { return len(g.Since) > 0 }

// A BodyValue is what a body measures at one point over one foundation.
type BodyValue struct {
	Length quantity.Length   // as read, with the offset; 0 unless Read is known
	Read   quantity.Estimate // NotMeasured where no reading counts
	Day    edtf.Day
	From   Reason
	Over   measure.Foundation // what it was read over
	By     string
	Alone  bool                 // taken by the wearer herself
	Offset *Offset              // nil where read over the foundation asked for
	Apart  []measure.Foundation // later readings, over these, cannot be compared
	Later  edtf.Day             // where not measured by the day: when it first was over the foundation, or 0
	Error  quantity.Length      // of Read
}

// Estimated reports whether the value was carried over from other layers.
func (b BodyValue) Estimated() bool { return b.Offset != nil }

// An Offset is how much more a body measures over one foundation than over
// another.
type Offset struct {
	By    quantity.Length
	Error quantity.Length
	Days  []edtf.Day // on which both were read
}

// A Verdict is what can be said of the fit at one measure.
type Verdict int

// Verdicts. Those after TooClose say what is missing.
const (
	Fits Verdict = iota + 1
	Short
	Ample
	TooClose       // to call: the difference is no larger than the error
	NoWearer       // nobody is named
	NoGarment      // the garment was never measured here
	GarmentLater   // it was, but only after the day
	UnknownGarment // its measure is noted as unknown
	UnsureGarment  // it was altered since, by how much cannot be told
	NoBody         // the body was never measured here
	NoBodyOver     // it was, but over nothing that can be compared
	BodyLater      // it was, but only after the day
	UnknownBody    // its measure is noted as unknown
	NoEase         // both are known, but no ease is named as wanted
	UnreadEase     // one is, but it could not be read
)

// Judged reports whether garment, body and wanted ease were all known.
func (v Verdict) Judged() bool { return Fits <= v && v <= TooClose }

// Compared reports whether garment and body were both known, so that there is an
// ease to show.
func (v Verdict) Compared() bool { return v.Judged() || v == NoEase || v == UnreadEase }

// Missing is what has to be measured or written down before a verdict can be
// given at some measures.
type Missing struct {
	Why    Verdict
	Points []measure.Point
	Over   measure.Foundation
}
