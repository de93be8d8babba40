package fit

import (
	"testing"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
)

const (
	inch = quantity.Inch
	mm   = quantity.Millimetre
)

var (
	inches = quantity.Format{Unit: quantity.Inches, Fraction: 16}
	bust   = measure.Point{Measure: "bust girth"}
	waist  = measure.Point{Measure: "natural waist girth"}
	arm    = measure.Point{Measure: "upper arm girth"}
	left   = measure.Point{Measure: "upper arm girth", Side: measure.Left}
	right  = measure.Point{Measure: "upper arm girth", Side: measure.Right}
)

func day(text string) edtf.Day {
	d, err := edtf.ParseDay(text)
	if err != nil {
		panic(err)
	}
	return d
}

func build(t testing.TB, j *journal.Journal, name string) *journal.Build {
	t.Helper()
	b := j.Build(journal.Ref{To: name})
	if b == nil {
		t.Fatalf("no build %q", name)
	}
	return b
}

func row(t testing.TB, table Table, p measure.Point) Row {
	t.Helper()
	for _, r := range table.Rows {
		if r.Point == p {
			return r
		}
	}
	t.Fatalf("no row for %s among %d", p, len(table.Rows))
	return Row{}
}

func exactly(l quantity.Length) quantity.Estimate { return quantity.Estimate{Length: l} }
