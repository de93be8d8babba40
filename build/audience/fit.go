package audience

import (
	"maps"
	"slices"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
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

// fits returns how each build fits that the audience sees, by its ID. What hidden pages
// and fields say does not count: a verdict would change with what it should not tell.
func (s *sight) fits(day edtf.Day) map[journal.ID]Fit {
	out := make(map[journal.ID]Fit)
	var seen *journal.Journal
	for _, b := range s.full.Builds() {
		if !s.tellsFit(b) {
			continue
		}
		if seen == nil {
			seen = s.measured()
		}
		if f := s.fit(b, seen, day); len(f.Rows) > 0 {
			out[b.ID] = f
		}
	}
	return out
}

// tellsFit reports whether the audience is told how a build fits, and has no measures to
// work that out from.
func (s *sight) tellsFit(b *journal.Build) bool {
	wearer := s.full.Person(b.For)
	if !s.seen[b] || wearer == nil || !s.mayField(b, "fit") {
		return false
	}
	of := []*journal.Person{wearer}
	return s.allowedOn(b, journal.OfFit, of) && !s.allowedOn(b, journal.OfBody, of)
}

// measured returns what is left of the journal with all measures in it, and no texts;
// the whole journal where nothing that bears on a fit is hidden.
func (s *sight) measured() *journal.Journal {
	frank := *s
	frank.frank = true
	var bearing []journal.Record
	hidden := false
	for _, r := range s.full.Records() {
		switch r.(type) {
		case *journal.Person, *journal.Build, *journal.Note:
			hidden = hidden || !s.seen[r] || len(r.Head().Fields) > 0
			if s.seen[r] {
				bearing = append(bearing, r)
			}
		}
	}
	if !hidden {
		return s.full
	}
	texts := map[string][]byte{journal.SettingsFile: frank.settings()}
	for _, r := range bearing {
		texts[r.Head().File.Name] = frank.front(r)
	}
	folder := &journal.Folder{Texts: texts}
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		folder.Entries = append(folder.Entries, source.Entry{Path: name, Size: int64(len(texts[name]))})
	}
	j, _ := folder.Journal(nil) // links to other pages lead nowhere, which nobody follows
	return j
}

// fit tells how a build fits by what is seen of the journal.
func (s *sight) fit(b *journal.Build, seen *journal.Journal, day edtf.Day) Fit {
	told := Fit{Day: day}
	left := seen.Build(journal.Ref{To: string(b.ID)})
	if left == nil {
		return told
	}
	deltas := s.allowedOn(b, journal.OfChange, []*journal.Person{s.full.Person(b.For)})
	for _, row := range fit.Of(seen, left, day).Rows {
		words := row.Word()
		if words != "" && deltas {
			words = row.Words(s.full.Settings.Format)
		}
		if words != "" {
			told.Rows = append(told.Rows, FitRow{row.Point.String(), row.Verdict, words})
		}
	}
	return told
}
