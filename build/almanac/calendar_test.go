package almanac

import (
	"bytes"
	"flag"
	"os"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	outside "github.com/emersion/go-ical"
	"github.com/google/go-cmp/cmp"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/journal/journaltest"
	"hussif/content/source"
)

var update = flag.Bool("update", false, "write the goldens anew")

const market = `
-- journal.yaml --
title: Needle; thread, and \ more
-- people/ada.md --
-- builds/jacket/build.md --
---
title: Grey jacket
for: ada
---
-- builds/jacket/2027-01-09-cut.md --
Cut out.
-- builds/stays/build.md --
---
title: Stays
occasion: market
---
-- occasions/market.md --
---
title: Market day, with a bread stall; rain or shine and whatever else the weather may bring
date: 2027-04-24
until: 2027-04-25
place: the old corn yard, by the north gate
portrays: 1780/1789
worn: jacket
---
Bread and small beer – “très chaud”.

Private: the gate key is under the trough.
-- occasions/tea.md --
---
date: 2027-12-31
---
`

// parsed reads a calendar with a parser from outside.
func parsed(t *testing.T, data []byte) *outside.Calendar {
	t.Helper()
	cal, err := outside.NewDecoder(bytes.NewReader(data)).Decode()
	if err != nil {
		t.Fatalf("%v in\n%s", err, data)
	}
	// Its encoder refuses what lacks a property that RFC 5545, 3.6 and 3.6.1, demand.
	if err := outside.NewEncoder(new(bytes.Buffer)).Encode(cal); err != nil {
		t.Errorf("%v in\n%s", err, data)
	}
	return cal
}

func text(t *testing.T, props outside.Props, name string) string {
	t.Helper()
	s, err := props.Text(name)
	if err != nil {
		t.Error(err)
	}
	return s
}

func TestCalendarSaysWhatTheJournalSays(t *testing.T) {
	tomorrow := edtf.DayOf(2027, 1, 11)
	ready := []Ready{
		{
			Build: "builds/stays", Reckoned: edtf.DayOf(2027, 1, 10),
			Earliest: edtf.DayOf(2027, 2, 20), Likely: edtf.DayOf(2027, 2, 28), Latest: edtf.DayOf(2027, 3, 15),
		},
		{Build: "builds/jacket", Reckoned: edtf.DayOf(2027, 1, 10), Earliest: tomorrow, Likely: tomorrow, Latest: tomorrow},
	}
	data, err := Calendar(journaltest.OpenClean(t, market), ready, onWeb(t))
	if err != nil {
		t.Fatal(err)
	}
	cal := parsed(t, data)
	if got, want := text(t, cal.Props, "NAME"), `Needle; thread, and \ more`; got != want {
		t.Errorf("the calendar is called %q, want %q", got, want)
	}
	type event struct{ Start, End, Stamp, Summary, Place, Words, Address, Status string }
	var got []event
	for _, e := range cal.Events() {
		first, err := e.DateTimeStart(time.UTC)
		if err != nil {
			t.Error(err)
		}
		end, err := e.DateTimeEnd(time.UTC)
		if err != nil {
			t.Error(err)
		}
		stamp, err := e.Props.DateTime("DTSTAMP", time.UTC)
		if err != nil {
			t.Error(err)
		}
		if v := e.Props.Get("DTSTART").Params.Get("VALUE"); v != "DATE" {
			t.Errorf("DTSTART is a %q", v)
		}
		if v := e.Props.Get("DTEND").Params.Get("VALUE"); v != "DATE" {
			t.Errorf("DTEND is a %q", v)
		}
		got = append(got, event{
			first.Format(time.DateOnly), end.Format(time.DateOnly), stamp.Format(time.RFC3339),
			text(t, e.Props, "SUMMARY"), text(t, e.Props, "LOCATION"), text(t, e.Props, "DESCRIPTION"),
			e.Props.Get("URL").Value, text(t, e.Props, "STATUS"),
		})
	}
	// The end of a day-long event is the day after it: RFC 5545, 3.6.1, whose example
	// is a festival of 28 June to 8 July 2007 with DTEND;VALUE=DATE:20070709.
	want := []event{
		{
			"2027-04-24", "2027-04-26", "2027-01-09T00:00:00Z",
			"Market day, with a bread stall; rain or shine and whatever else the weather may bring",
			"the old corn yard, by the north gate",
			"Bread and small beer – “très chaud”.\nPortrays: 1780 to 1789\nWorn: Grey jacket\nMeant for it: Stays",
			"https://needle.example/journal/occasions/market.html", "",
		},
		{"2027-12-31", "2028-01-01", "2027-01-09T00:00:00Z", "Tea", "", "", "https://needle.example/journal/occasions/tea.html", ""},
		{
			"2027-02-28", "2027-03-01", "2027-01-10T00:00:00Z", "Stays ready (forecast)", "",
			"Between 2027-02-20 and 2027-03-15, as reckoned on 2027-01-10",
			"https://needle.example/journal/builds/stays.html", "TENTATIVE",
		},
		{
			"2027-01-11", "2027-01-12", "2027-01-10T00:00:00Z", "Grey jacket ready (forecast)", "", "Reckoned on 2027-01-10",
			"https://needle.example/journal/builds/jacket.html", "TENTATIVE",
		},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("events (-want +got):\n%s", diff)
	}
}

// RFC 5545, 3.1: lines end in CRLF and have no more than 75 octets before it; a fold
// keeps a character whole. 3.8.4.7 and 3.6.1: each event has a UID of its own and a
// DTSTAMP in UTC.
func TestCalendarIsWrittenAsPublished(t *testing.T) {
	for name, j := range map[string]*journal.Journal{"market": journaltest.OpenClean(t, market), "demo": readDemo(t)} {
		data, err := Calendar(j, nil, onWeb(t))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasPrefix(string(data), "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:") || !strings.HasSuffix(string(data), "END:VCALENDAR\r\n") {
			t.Errorf("%s begins or ends otherwise:\n%s", name, data)
		}
		if strings.Count(string(data), "\n") != strings.Count(string(data), "\r\n") || strings.Count(string(data), "\r") != strings.Count(string(data), "\r\n") {
			t.Errorf("%s has bare line breaks", name)
		}
		folded := 0
		for line := range strings.SplitSeq(string(data), "\r\n") {
			if len(line) > 75 {
				t.Errorf("%s: %d octets in %q", name, len(line), line)
			}
			if !utf8.ValidString(line) {
				t.Errorf("%s: a character is cut in %q", name, line)
			}
			if strings.HasPrefix(line, " ") {
				folded++
			}
		}
		if folded == 0 {
			t.Errorf("%s has no folded line to look at", name)
		}
		seen := map[string]bool{}
		for _, e := range parsed(t, data).Events() {
			uid := text(t, e.Props, "UID")
			if uid == "" || seen[uid] {
				t.Errorf("%s: UID %q is empty or taken", name, uid)
			}
			seen[uid] = true
		}
		if len(seen) != len(j.Occasions()) {
			t.Errorf("%s: %d events for %d occasions", name, len(seen), len(j.Occasions()))
		}
	}
}

// The escapes are those of RFC 5545, 3.3.11; the text of several lines is its example.
func TestCalendarEscapes(t *testing.T) {
	j, _ := journal.Resolve(&journal.Settings{}, []journal.Draft{{File: &source.File{}, Record: &journal.Occasion{
		Page: journal.Page{ID: "occasions/a", Title: "Project XYZ Final Review\r\nConference Room - 3B\rCome Prepared.\x00\x07"},
		Date: edtf.DayOf(2027, 1, 1), Place: `a\b;c,d:e"f` + "\xff",
	}}}, nil)
	data, err := Calendar(j, nil, fromDisk)
	if err != nil {
		t.Fatal(err)
	}
	unfolded := strings.ReplaceAll(string(data), "\r\n ", "")
	for _, line := range []string{
		`SUMMARY:Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`,
		`LOCATION:a\\b\;c\,d:e"f` + "\uFFFD",
		`DTSTART;VALUE=DATE:20270101`,
	} {
		if !strings.Contains(unfolded, "\r\n"+line+"\r\n") {
			t.Errorf("no line %q in\n%s", line, unfolded)
		}
	}
	if strings.Contains(unfolded, "URL") {
		t.Error("there is an address, though none is known")
	}
}

func TestCalendarRefuses(t *testing.T) {
	j := journaltest.OpenClean(t, market)
	d := edtf.DayOf(2027, 1, 1)
	for name, c := range map[string]struct {
		ready Ready
		at    Pages
		want  string
	}{
		"a forecast of nothing":   {Ready{"builds/cloak", d, d, d, d}, fromDisk, `"builds/cloak", which is no build`},
		"a forecast of a day":     {Ready{"occasions/tea", d, d, d, d}, fromDisk, "no build"},
		"a backward forecast":     {Ready{"builds/stays", d, d + 1, d, d}, fromDisk, "runs backwards"},
		"an address without host": {Ready{"builds/stays", d, d, d, d}, Pages{Base: address(t, "journal/"), Path: fromDisk.Path}, "no whole address"},
	} {
		_, err := Calendar(j, []Ready{c.ready}, c.at)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

// A day that was never written, or that has no four digits, stands in no calendar;
// one that ends before it begins lasts a day.
func TestCalendarOddDays(t *testing.T) {
	occasion := func(id journal.ID, first, until edtf.Day) journal.Draft {
		return journal.Draft{
			File:   &source.File{Name: string(id) + ".md"},
			Record: &journal.Occasion{Page: journal.Page{ID: id, Title: string(id)}, Date: first, Until: until},
		}
	}
	j, _ := journal.Resolve(&journal.Settings{}, []journal.Draft{
		occasion("occasions/never", 0, 0),
		occasion("occasions/old", edtf.DayOf(-44, 3, 15), 0),
		occasion("occasions/far", edtf.DayOf(12000, 1, 1), 0),
		occasion("occasions/back", edtf.DayOf(2027, 3, 2), edtf.DayOf(2027, 3, 1)),
	}, nil)
	data, err := Calendar(j, nil, fromDisk)
	if err != nil {
		t.Fatal(err)
	}
	events := parsed(t, data).Events()
	if len(events) != 1 {
		t.Fatalf("%d events:\n%s", len(events), data)
	}
	if end := events[0].Props.Get("DTEND").Value; end != "20270303" {
		t.Errorf("it ends before %s", end)
	}
	if stamp := events[0].Props.Get("DTSTAMP").Value; stamp != "20270302T000000Z" {
		t.Errorf("without notes it is stamped %s", stamp)
	}
}

func TestCalendarGolden(t *testing.T) {
	data, err := Calendar(journaltest.OpenClean(t, market), nil, fromDisk)
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "testdata/market.ics", data)
}

// golden compares bytes with a file. The file has bare line breaks.
func golden(t *testing.T, file string, got []byte) {
	t.Helper()
	got = bytes.ReplaceAll(got, []byte("\r\n"), []byte("\n"))
	if *update {
		if err := os.WriteFile(file, got, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("otherwise than %s (-update renews it):\n%s", file, diff)
	}
}
