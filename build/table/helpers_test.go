package table

import (
	"bytes"
	"testing"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/testdata/demo"
)

var today = edtf.DayOf(2026, 11, 25)

func readDemo(t *testing.T) *journal.Journal {
	t.Helper()
	j, _, err := journal.Open(demo.Journal())
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func subject(t *testing.T, name string) Subject {
	t.Helper()
	for _, s := range Subjects() {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("no subject is called %q", name)
	return Subject{}
}

func csvOf(t *testing.T, table Table) string {
	t.Helper()
	var out bytes.Buffer
	if err := table.CSV(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func jsonOf(t *testing.T, table Table) string {
	t.Helper()
	var out bytes.Buffer
	if err := table.JSON(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}
