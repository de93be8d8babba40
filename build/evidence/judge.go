package evidence

import "hussif/content/edtf"

// A When is where a date lies against an era.
type When string

// Where a date may lie.
const (
	Inside      When = "inside"
	Overlapping When = "overlapping"
	Before      When = "before"
	After       When = "after"
	Undated     When = "without a date"
)

// Counts are how many objects lie where against an era.
type Counts struct{ Inside, Overlapping, Before, After, Undated int }

// Dated returns how many have a date.
func (c Counts) Dated() int { return c.Inside + c.Overlapping + c.Before + c.After }

// Touching returns how many are, or may be, of the era.
func (c Counts) Touching() int { return c.Inside + c.Overlapping }

// A Verdict is what the references make of a feature in an era, or what becomes of
// a claim.
type Verdict string

// Verdicts, as the package comment defines them.
const (
	Supported       Verdict = "supported"
	Thin            Verdict = "thin"
	OnlyEarlier     Verdict = "only earlier"
	OnlyLater       Verdict = "only later"
	EarlierAndLater Verdict = "earlier and later"
	Contradicted    Verdict = "contradicted"
	WithoutEvidence Verdict = "without evidence"
	Departure       Verdict = "a stated departure" // of a claim only
	NoEra           Verdict = "no era to judge by"
)

// A Judgement is a feature held against an era. Its counts are of objects, without
// the disputed ones, and empty where there is no era.
type Judgement struct {
	Era           edtf.Date // as widened
	Shown, Lacked Counts
	Unsure        int // of those shown inside or overlapping, how many have an uncertain date
	Disputed      int
	Verdict       Verdict
}

// Share returns how many of the objects inside the era show the feature.
func (j Judgement) Share() Share {
	return Share{Of: j.Shown.Inside + j.Lacked.Inside, Shows: j.Shown.Inside}
}

// Judge holds a feature against an era by the customs of its journal.
func Judge(f Feature, era edtf.Date, customs edtf.Customs) Judgement {
	if era.IsZero() {
		return Judgement{Verdict: NoEra}
	}
	j := Judgement{Era: era.Padded(customs), Disputed: len(f.Disputed)}
	j.Shown, j.Lacked = count(f.Shown, j.Era), count(f.Lacked, j.Era)
	for _, o := range f.Shown {
		if o.Date.Uncertain && o.Span.Overlaps(j.Era) {
			j.Unsure++
		}
	}
	j.Verdict = verdict(j.Shown, j.Lacked)
	return j
}

func verdict(shown, lacked Counts) Verdict {
	switch {
	case lacked.Inside > shown.Inside:
		return Contradicted
	case shown.Dated() >= 2 && shown.Inside >= 1:
		return Supported
	case shown.Touching() >= 1:
		return Thin
	case shown.Before >= 1 && shown.After >= 1:
		return EarlierAndLater
	case shown.Before >= 1:
		return OnlyEarlier
	case shown.After >= 1:
		return OnlyLater
	}
	return WithoutEvidence
}

func count(objects []*Object, era edtf.Date) Counts {
	var c Counts
	for _, o := range objects {
		switch o.when(era) {
		case Inside:
			c.Inside++
		case Overlapping:
			c.Overlapping++
		case Before:
			c.Before++
		case After:
			c.After++
		case Undated:
			c.Undated++
		}
	}
	return c
}

// when returns where the object lies against an era, which is a date.
func (o *Object) when(era edtf.Date) When {
	switch {
	case o.Span.IsZero():
		return Undated
	case o.Span.Within(era):
		return Inside
	case o.Span.Before(era):
		return Before
	case o.Span.After(era):
		return After
	}
	return Overlapping
}
