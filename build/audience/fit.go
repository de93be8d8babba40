package audience

import (
	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// A Fit is how a build fits on a day, as far as its wearer lets others know, where they
// do not see the measures to work it out from.
type Fit struct {
	Day  edtf.Day
	Rows []FitRow // never empty
}

// A FitRow is the fit at one measure.
type FitRow struct {
	Measure string
	Verdict fit.Verdict
	Words   string // "short", or for a wearer who shows deltas "short by 1 1/4 in"
}

// fits returns how each build fits that the audience sees, by its ID.
func (s *sight) fits(day edtf.Day) map[journal.ID]Fit {
	out := make(map[journal.ID]Fit)
	for _, b := range s.full.Builds() {
		if f := s.fit(b, day); len(f.Rows) > 0 {
			out[b.ID] = f
		}
	}
	return out
}

func (s *sight) fit(b *journal.Build, day edtf.Day) Fit {
	told := Fit{Day: day}
	wearer := s.full.Person(b.For)
	if !s.seen[b] || wearer == nil || !s.allows(wearer, journal.OfFit) || s.allows(wearer, journal.OfBody) || !s.mayField(b, "fit") {
		return told
	}
	for _, row := range fit.Of(s.full, b, day).Rows {
		words := row.Word()
		if words != "" && s.allows(wearer, journal.OfChange) {
			words = row.Words(s.full.Settings.Format)
		}
		if words != "" {
			told.Rows = append(told.Rows, FitRow{row.Point.String(), row.Verdict, words})
		}
	}
	return told
}
