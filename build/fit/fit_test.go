package fit

import (
	"strings"
	"testing"
	"testing/fstest"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
	"hussif/content/quantity"
	"hussif/content/source"
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

// open reads a journal out of a text with a line "-- path --" before each file.
func open(t testing.TB, archive string) *journal.Journal {
	t.Helper()
	files := fstest.MapFS{}
	var name string
	for line := range strings.Lines(archive) {
		if path, ok := strings.CutPrefix(strings.TrimSpace(line), "-- "); ok {
			name = strings.TrimSuffix(path, " --")
			files[name] = &fstest.MapFile{}
		} else if name != "" {
			files[name].Data = append(files[name].Data, line...)
		}
	}
	j, findings, err := journal.Open(files)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range findings {
		if f.Level == source.Error {
			t.Fatalf("%s: %s", f.Span.Text(), f.Text)
		}
	}
	return j
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
