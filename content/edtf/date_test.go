package edtf

import (
	"math"
	"testing"
)

func TestPadded(t *testing.T) {
	for _, row := range []want{
		{"1785", "1785-01-01", "1785-12-31", ""},
		{"1785?", "1785-01-01", "1785-12-31", "?"},
		{"1785~", "1780-01-01", "1790-12-31", "~"},
		{"1784-02-29~", "1779-02-28", "1789-02-28", "~"},
		{"~1784-05", "1779-05-01", "1789-05-31", "~"},
		// The year is known: the month may be any of it.
		{"1784-~05", "1784-01-01", "1784-12-31", "~"},
		{"1784-05-~17", "1784-05-01", "1784-05-31", "~"},
		{"1784-~25", "1784-01-01", "1784-12-31", "~"},
		// Only the end that is approximate moves, and never the other way.
		{"1784~/1789", "1779-01-01", "1789-12-31", ""},
		{"1784~/1785", "1779-01-01", "1785-12-31", ""},
		{"1784/1785~", "1784-01-01", "1790-12-31", ""},
		{"[1784~..]", "1779-01-01", "", "~"},
		{"{1784,1790~}", "1784-01-01", "1795-12-31", ""},
	} {
		strict := mustParse(t, row.text)
		padded := strict.Padded(Customs{})
		checkDate(t, padded, row)
		if padded.Padded(Customs{}) != padded {
			t.Errorf("%s is widened twice", row.text)
		}
		if !strict.Within(padded) {
			t.Errorf("%s is not within its padded span", row.text)
		}
	}
	if far := mustParse(t, "Y170000002~"); far.Padded(Customs{Circa: math.MaxInt}) != far {
		t.Error("a day is moved beyond the calendar")
	}
	if !(Date{}).Padded(Customs{}).IsZero() {
		t.Error("the zero date is widened to something")
	}
}

func TestRelations(t *testing.T) {
	for _, c := range []struct {
		d, e                            string
		within, overlaps, before, after bool
	}{
		{"1784", "1780/1789", true, true, false, false},
		{"1780/1789", "1784", false, true, false, false},
		{"1784", "1784", true, true, false, false},
		{"1779", "1780/1789", false, false, true, false},
		{"1790", "1780/1789", false, false, false, true},
		{"1789/1790", "1780/1789", false, true, false, false},
		{"1784", "../1789", true, true, false, false},
		{"../1789", "1784", false, true, false, false},
		{"../1789", "../1790", true, true, false, false},
		{"../1790", "../1789", false, true, false, false},
		{"1780/..", "1784/..", false, true, false, false},
		{"1784/..", "1780/..", true, true, false, false},
		{"1780/..", "../1779", false, false, false, true},
		{"../1779", "1780/..", false, false, true, false},
		{"../1779", "1780", false, false, true, false},
		{"1790/..", "../1789", false, false, false, true},
		{"1784/..", "[..1760,1780..]", true, true, false, false},
	} {
		d, e := mustParse(t, c.d), mustParse(t, c.e)
		if d.Within(e) != c.within || d.Overlaps(e) != c.overlaps || d.Before(e) != c.before || d.After(e) != c.after {
			t.Errorf("%s and %s: within %t, overlaps %t, before %t, after %t",
				c.d, c.e, d.Within(e), d.Overlaps(e), d.Before(e), d.After(e))
		}
		if d.Overlaps(e) != e.Overlaps(d) || d.Before(e) != e.After(d) {
			t.Errorf("%s and %s: the relations differ by their order", c.d, c.e)
		}
	}
	none, some := Date{}, mustParse(t, "1784")
	for _, pair := range [][2]Date{{none, some}, {some, none}, {none, none}} {
		if d, e := pair[0], pair[1]; d.Within(e) || d.Overlaps(e) || d.Before(e) || d.After(e) {
			t.Errorf("%q and %q are related", d.Text, e.Text)
		}
	}
}

func TestWords(t *testing.T) {
	for text, want := range map[string]string{
		"1784":                   "1784",
		"-0043":                  "44 BC",
		"Y17840":                 "17840",
		"1784-05":                "May 1784",
		"1784-05-17":             "17 May 1784",
		"1785~":                  "about 1785",
		"1784?":                  "1784, uncertain",
		"1784%":                  "about 1784, uncertain",
		"1784?-05":               "May 1784, year uncertain",
		"1784-~05":               "May 1784, month approximate",
		"1784-~21":               "spring 1784, season approximate",
		"2004-06~-11":            "11 June 2004, year and month approximate",
		"?2004-06-~11":           "11 June 2004, year uncertain, day approximate",
		"1780/1789":              "1780 to 1789",
		"1784~/1789?":            "about 1784 to 1789 (uncertain)",
		"1780/..":                "from 1780 on",
		"../1789":                "up to 1789",
		"1780/":                  "from 1780, end unknown",
		"/1789":                  "up to 1789, start unknown",
		"[1784..1787]":           "one of 1784 to 1787",
		"[1784,1786]":            "1784 or 1786",
		"[1667,1668,1670..1672]": "one of 1667, 1668 or 1670 to 1672",
		"[1667,1670..1672]":      "one of 1667 or 1670 to 1672",
		"[..1790]":               "1790 or earlier",
		"[1784..]":               "1784 or later",
		"{1784,1786}":            "1784 and 1786",
		"{..1984}":               "1984 and all before",
		"{1984..}":               "1984 and all after",
		"178X":                   "1780s",
		"170X":                   "1700 to 1709",
		"17XX":                   "1700 to 1799",
		"-00XX":                  "100 BC to 1 BC",
		"1X84":                   "a year like 1X84",
		"1784-XX":                "some month of 1784",
		"1784-XX-XX":             "some day of 1784",
		"1784-05-XX":             "some day of May 1784",
		"1784-XX-10":             "day 10 of some month, 1784",
		"156X-12-25":             "25 December, 1560s",
		"1984-1X":                "October to December 1984",
		"1984-0X":                "January to September 1984",
		"1984-X0":                "October 1984",
		"1984-X1":                "January or November 1984",
		"1984-X2":                "February or December 1984",
		"1784-05-1X":             "1X May 1784",
		"-1X84":                  "a year like -1X84",
		"1984-X3":                "March 1984",
		"1950S2":                 "1900 to 1999, put at 1950",
		"1784-25":                "northern spring 1784",
		"1784-34":                "second quarter of 1784",
		"late 18th century":      "late 18th century",
		"  CA. 1785 ":            "CA. 1785",
	} {
		if got := mustRead(t, text, Customs{}).String(); got != want {
			t.Errorf("%s in words: %q, want %q", text, got, want)
		}
	}
	if got := (Date{}).String(); got != "" {
		t.Errorf("the zero date in words: %q", got)
	}
}
