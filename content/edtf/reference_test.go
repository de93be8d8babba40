package edtf

import (
	"encoding/json"
	"os"
	"testing"
)

// The table was made with a general-purpose library that is named in its first
// line. Its notes name two faults of that library, which
// [TestFaultsOfTheReference] covers.
func TestReference(t *testing.T) {
	data, err := os.ReadFile("testdata/edtf-reference.json")
	if err != nil {
		t.Fatal(err)
	}
	var table struct {
		Accepted []struct {
			EDTF                   string
			Earliest, Latest       *string
			Uncertain, Approximate bool
		}
		Refused []string
	}
	if err := json.Unmarshal(data, &table); err != nil {
		t.Fatal(err)
	}
	if len(table.Accepted) == 0 || len(table.Refused) == 0 {
		t.Fatal("the table is empty")
	}
	for _, row := range table.Accepted {
		want := want{text: row.EDTF}
		if row.Earliest != nil {
			want.earliest = *row.Earliest
		}
		if row.Latest != nil {
			want.latest = *row.Latest
		}
		var m marks
		if row.Uncertain {
			m |= uncertain
		}
		if row.Approximate {
			m |= approximate
		}
		want.marks = m.String()
		got := mustParse(t, row.EDTF)
		checkDate(t, got, want)
		if read := mustRead(t, row.EDTF, Customs{}); read != got {
			t.Errorf("%s is read as %+v and parsed as %+v", row.EDTF, read, got)
		}
	}
	for _, text := range table.Refused {
		if d, err := Parse(text); err == nil {
			t.Errorf("%s is taken for %s", text, d)
		}
		if d, err := Read(text, Customs{}); err == nil {
			t.Errorf("%s is taken for %s in a caption", text, d)
		}
	}
}

func TestFaultsOfTheReference(t *testing.T) {
	checkDate(t, mustParse(t, "[1784..1787]"), want{"[1784..1787]", "1784-01-01", "1787-12-31", ""})
	_, err := Parse("1900-02-29")
	checkRefused(t, "1900-02-29", err, "February 1900 has only 28 days", []string{"1900-02-28", "1900-02"})
}
