package edtf

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"
)

// The calendar is checked against package time, which counts the same
// proleptic Gregorian days.
func TestDayAgainstTime(t *testing.T) {
	random := rand.New(rand.NewPCG(1784, 5))
	for range 100_000 {
		n := random.IntN(8_000_000) - 4_000_000
		want := time.Unix(0, 0).UTC().AddDate(0, 0, n)
		y, m, d := Day(n).Date()
		if y != want.Year() || m != int(want.Month()) || d != want.Day() {
			t.Fatalf("Day(%d) is %d-%d-%d, package time has %s", n, y, m, d, want)
		}
		if got := DayOf(y, m, d); got != Day(n) {
			t.Fatalf("DayOf(%d, %d, %d) = %d, want %d", y, m, d, got, n)
		}
		if got := DayFromTime(want); got != Day(n) {
			t.Fatalf("DayFromTime(%s) = %d, want %d", want, got, n)
		}
		if got, want := daysIn(y, m), time.Date(y, time.Month(m+1), 0, 0, 0, 0, 0, time.UTC).Day(); got != want {
			t.Fatalf("month %d of %d has %d days, package time has %d", m, y, got, want)
		}
		month, day := random.IntN(60)-30, random.IntN(200)-100
		carried := time.Date(y, time.Month(month), day, 0, 0, 0, 0, time.UTC)
		if got := DayOf(y, month, day); got != DayFromTime(carried) {
			t.Fatalf("DayOf(%d, %d, %d) = %s, package time has %s", y, month, day, got, carried)
		}
	}
}

func TestDayAtTheEdges(t *testing.T) {
	for _, year := range []int{-yearLimit, yearLimit} {
		for _, date := range [][2]int{{1, 1}, {2, 28}, {12, 31}} {
			y, m, d := DayOf(year, date[0], date[1]).Date()
			if y != year || m != date[0] || d != date[1] {
				t.Errorf("%d-%d-%d came back as %d-%d-%d", year, date[0], date[1], y, m, d)
			}
		}
	}
	for _, day := range []Day{math.MinInt, math.MaxInt} {
		if _, m, d := day.Date(); m < 1 || m > 12 || d < 1 || d > 31 {
			t.Errorf("Day(%d) has month %d and day %d", day, m, d)
		}
	}
}

func TestDayFromTimeKeepsItsZone(t *testing.T) {
	late := time.Date(2026, 2, 14, 23, 30, 0, 0, time.FixedZone("", -5*3600))
	if got := DayFromTime(late).String(); got != "2026-02-14" {
		t.Errorf("got %s", got)
	}
}

func TestDayString(t *testing.T) {
	for want, day := range map[string]Day{
		"1970-01-01":  0,
		"1784-05-17":  DayOf(1784, 5, 17),
		"0000-02-29":  DayOf(0, 2, 29),
		"-0044-03-15": DayOf(-44, 3, 15),
		"10000-01-01": DayOf(10_000, 1, 1),
	} {
		if got := day.String(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

func TestParseDay(t *testing.T) {
	got, err := ParseDay("2024-02-29")
	if err != nil || got != DayOf(2024, 2, 29) {
		t.Errorf("2024-02-29: %v, %v", got, err)
	}
	for _, c := range []struct {
		text, reason string
		instead      []string
	}{
		{"2026-2-3", dayForm, []string{"2026-02-03"}},
		{"14/02/2026", dayForm, []string{"2026-02-14"}},
		{"02/14/2026", dayForm, []string{"2026-02-14"}},
		{"2026/02/14", dayForm, []string{"2026-02-14"}},
		{"14.02.2026", dayForm, []string{"2026-02-14"}},
		{"14 February 2026", dayForm, []string{"2026-02-14"}},
		{" 2026-02-14", dayForm, []string{"2026-02-14"}},
		{"2026-14-02", dayForm, []string{"2026-02-14"}},
		{"03/03/2026", dayForm, []string{"2026-03-03"}},
		{"03/04/2026", "this may be 3 April 2026 or 4 March 2026", []string{"2026-04-03", "2026-03-04"}},
		{"2026-02-30", "February 2026 has only 28 days", []string{"2026-02-28"}},
		{"1900-02-29", "February 1900 has only 28 days", []string{"1900-02-28"}},
		{"14/02/26", "the year needs four digits; " + dayForm, nil},
		{"13/13/2026", "there is no such day; " + dayForm, nil},
		{"", "a day is missing; " + dayForm, nil},
		{"2026-02", dayForm, nil},
		{"soon", dayForm, nil},
	} {
		_, err := ParseDay(c.text)
		checkRefused(t, c.text, err, c.reason, c.instead)
	}
}
