package table

import (
	"encoding/csv"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"hussif/build/evidence"
	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/content/edtf"
	"hussif/content/journal/journaltest"
	"hussif/content/quantity"
)

var update = flag.Bool("update", false, "write the goldens anew")

const workroom = `
-- journal.yaml --
unit: in
currency: EUR
-- people/ada.md --
---
measured:
  - {date: 2026-01-10, over: [shift, stays], by: ottilie, bust girth: 36 in, waist: about 28 3/4 in, hip girth: unknown, wrist girth: not measured}
  - {date: 2026-01-10, bust girth: 36 1/2 in}
  - {date: 2026-06-01, bust girth: 37 1/2 in}
---
-- patterns/jacket-draft.md --
-- materials/wool.md --
-- references/green-jacket.md --
---
title: Green jacket
type: surviving garment
date: ca. 1785
holder: A county collection
accession number: "-17"
shows: [piped seams, pinned front]
lacks: waist binding
---
-- references/market-cries.md --
---
date: ../1789
shows: piped seams
---
-- builds/jacket/build.md --
---
title: Grey jacket
for: ada
garment: jacket
era: 1780/1789
pattern: jacket-draft
over: [shift, stays]
fit: {bust girth: 0 to 1 in, waist: 0 to 1/2 in}
features:
  - {what: piped seams, rests on: green-jacket}
  - {what: zip, departs: "+ quick to dress"}
---
-- builds/jacket/2026-02-01-cut.md --
---
stage: cutting
hours: 3h 20m
bought:
  - {material: wool, amount: 2 1/4 yd, cost: 54 EUR, from: "=the mill", lot: B7}
  - {material: wool, amount: 1/2 skein}
used: {material: wool, amount: 2 yd}
left over:
  - {material: wool, size: 9 in x 31 in, grain: straight, pieces: 2}
  - {material: wool, amount: 4 in x 12 in}
decided:
  - {question: "Piped?", chose: "yes, back only", instead of: ["no", all round], because: "- seen", rests on: [green-jacket]}
next time: {do: "- cut the collar larger", pattern: jacket-draft}
---
Decided: fell the lining over the waist.

- Private: of her family
  - Decided: never again for her sister
-- builds/jacket/2026-03-01-fitting.md --
---
stage: fitting
hours: 45 min
measured: {bust girth: 37 in, waist: 28 in}
turned out: {decision: 2026-02-01-cut#decided-1, how: regretted, because: too stiff}
---
-- builds/jacket/2026-03-08-taken-in.md --
---
stage: altering
altered: {what: taken in for a stiffer pair of stays, changes: {waist: -1/4 in}}
---
-- builds/jacket/2026-04-01-worn.md --
---
stage: worn
turned out: {decision: 2026-02-01-cut#decided-1, how: kept}
carries: 2026-02-01-cut#next-1
---
`

// TestRows compares each table of a small journal with its golden.
func TestRows(t *testing.T) {
	j := journaltest.OpenClean(t, workroom)
	for _, s := range Subjects() {
		t.Run(s.Name, func(t *testing.T) {
			got := strings.ReplaceAll(csvOf(t, s.Of(j, today)), "\r\n", "\n")
			file := filepath.Join("testdata", s.Name+".csv")
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf("otherwise than %s (-update renews it):\n%s", file, diff)
			}
			if strings.Contains(got, "sister") {
				t.Error("a private remark is in it")
			}
		})
	}
}

var (
	columnName = regexp.MustCompile(`^[a-z]+(_[a-z]+)*$`)
	// RFC 8259, 6.
	jsonNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`)
)

// TestSubjectsAreTold holds the tables of the demo against what every table
// promises: rows as wide as the head, named columns that say what they hold, numbers
// in the columns for numbers, and the same in JSON as in CSV.
func TestSubjectsAreTold(t *testing.T) {
	j := readDemo(t)
	for _, s := range Subjects() {
		t.Run(s.Name, func(t *testing.T) {
			if s.Doc == "" || strings.Contains(s.Doc, "\n") {
				t.Errorf("it is told of by %q", s.Doc)
			}
			seen := map[string]bool{}
			for _, c := range s.Columns {
				if !columnName.MatchString(c.Name) || c.Doc == "" || seen[c.Name] {
					t.Errorf("column %q is told of by %q, twice: %v", c.Name, c.Doc, seen[c.Name])
				}
				seen[c.Name] = true
			}
			table := s.Of(j, today)
			if len(table.Rows) == 0 {
				t.Fatal("the demo has no rows")
			}
			for _, row := range table.Rows {
				if len(row) != len(s.Columns) {
					t.Fatalf("%d cells for %d columns: %v", len(row), len(s.Columns), row)
				}
				for i, c := range s.Columns {
					if (c.Name == "mm" || strings.HasSuffix(c.Name, "_mm")) && row[i].text != "" && !row[i].number {
						t.Errorf("%s is no number but %q", c.Name, row[i].text)
					}
					if row[i].number && !jsonNumber.MatchString(row[i].text) {
						t.Errorf("%s is no number of JSON: %q", c.Name, row[i].text)
					}
				}
			}
			mustAgree(t, table)
		})
	}
}

// mustAgree reads a table back from CSV and from JSON.
func mustAgree(t *testing.T, table Table) {
	t.Helper()
	records, err := csv.NewReader(strings.NewReader(csvOf(t, table))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	d := json.NewDecoder(strings.NewReader(jsonOf(t, table)))
	d.UseNumber()
	var objects []map[string]any
	if err := d.Decode(&objects); err != nil {
		t.Fatal(err)
	}
	if len(records) != len(table.Rows)+1 || len(objects) != len(table.Rows) {
		t.Fatalf("%d records and %d objects for %d rows", len(records), len(objects), len(table.Rows))
	}
	for i, object := range objects {
		if len(object) != len(table.Columns) {
			t.Errorf("object %d has %d members", i, len(object))
		}
		for k, name := range records[0] {
			var words string
			switch v := object[name].(type) {
			case string:
				words = v
			case json.Number:
				words = v.String()
			case []any:
				var names []string
				for _, n := range v {
					names = append(names, n.(string))
				}
				words = strings.Join(names, "; ")
			}
			if got := plain(records[i+1][k]); got != words {
				t.Errorf("row %d, %s is %q as CSV and %q as JSON", i, name, got, words)
			}
		}
	}
}

// TestNothingIsLost counts the records of the demo once more.
func TestNothingIsLost(t *testing.T) {
	j := readDemo(t)
	want := map[string]int{"next": len(lesson.Gather(j).All)}
	for _, p := range j.People() {
		for _, s := range fit.Sessions(j, p) {
			want["measures"] += len(s.Readings)
		}
	}
	for _, n := range j.Notes() {
		want["measures"] += len(n.Measured)
		want["materials"] += len(n.Bought) + len(n.Used) + len(n.LeftOver)
		want["decisions"] += len(n.Decided)
		if n.Hours > 0 {
			want["hours"]++
		}
	}
	for _, r := range j.Records() {
		for _, remark := range r.Head().Text.Remarks {
			if remark.Kind.String() == "decided" && !remark.Private {
				want["decisions"]++
			}
		}
	}
	for _, b := range j.Builds() {
		want["fit"] += len(fit.Of(j, b, today).Rows)
		want["evidence"] += len(evidence.Gather(j).Claims(b))
	}
	for _, r := range j.References() {
		want["evidence"] += len(r.Shows) + len(r.Lacks)
	}
	for _, s := range Subjects() {
		if got := len(s.Of(j, today).Rows); got != want[s.Name] {
			t.Errorf("%s has %d rows for %d entries", s.Name, got, want[s.Name])
		}
	}
}

// TestFitIsOfADay: before anybody was measured there is nothing to compare.
func TestFitIsOfADay(t *testing.T) {
	j := journaltest.OpenClean(t, workroom)
	fits := subject(t, "fit")
	column := func(name string) int {
		for i, c := range fits.Columns {
			if c.Name == name {
				return i
			}
		}
		t.Fatalf("no column is called %s", name)
		return 0
	}
	then, now := fits.Of(j, edtf.DayOf(2025, 1, 1)).Rows[1], fits.Of(j, today).Rows[1]
	if got := now[column("delta_mm")].csv(); got != "-25.4" { // 28 in, less the 1/4 in taken in, less 28 3/4 in
		t.Errorf("short by %s mm now", got)
	}
	if got := now[column("ease_shown")].csv(); got != j.Settings.Format.Length(-quantity.Inch) {
		t.Errorf("the ease is shown as %s", got)
	}
	for _, name := range []string{"body_mm", "garment_mm", "ease_least_mm", "delta_mm", "error_mm"} {
		if got := then[column(name)].csv(); got != "" {
			t.Errorf("%s was %s before anything was measured", name, got)
		}
	}
	for _, s := range Subjects() {
		early, late := csvOf(t, s.Of(j, edtf.DayOf(2025, 1, 1))), csvOf(t, s.Of(j, today))
		if (early != late) != s.AsOf {
			t.Errorf("%s depends on the day: %v", s.Name, early != late)
		}
	}
}

func TestTablesAreTheSameEveryTime(t *testing.T) {
	for _, s := range Subjects() {
		first := csvOf(t, s.Of(readDemo(t), today))
		for range 5 {
			if csvOf(t, s.Of(readDemo(t), today)) != first {
				t.Fatalf("%s differs", s.Name)
			}
		}
	}
}
