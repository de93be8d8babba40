package audience

import (
	"strings"
	"time"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// fitWords returns how a build fits, as its wearer lets others know, to stand below its
// text; nothing where its measures are there to work it out from.
func (s *sight) fitWords(r journal.Record, day edtf.Day) []byte {
	b, ok := r.(*journal.Build)
	if !ok {
		return nil
	}
	wearer := s.full.Person(b.For)
	if wearer == nil || !s.allows(wearer, journal.OfFit) || s.allows(wearer, journal.OfBody) {
		return nil
	}
	if !s.mayField(b, "fit") {
		return nil
	}
	var rows []string
	for _, row := range fit.Of(s.full, b, day).Rows {
		words := verdict(row)
		if words != "" && s.allows(wearer, journal.OfChange) {
			words = row.Words(s.full.Settings.Format)
		}
		if words != "" {
			rows = append(rows, "- "+row.Point.String()+": "+words+"\n")
		}
	}
	if len(rows) == 0 {
		return nil
	}
	year, month, dayOfMonth := day.Date()
	on := time.Date(year, time.Month(month), dayOfMonth, 0, 0, 0, 0, time.UTC).Format("2 January 2006")
	return []byte("\n\n## How it fits on " + on + "\n\n" + strings.Join(rows, ""))
}

// verdict says how a garment fits at a measure and no figure; nothing where that is not
// known.
func verdict(r fit.Row) string {
	switch r.Verdict {
	case fit.Fits:
		return "fits"
	case fit.Short:
		return "short"
	case fit.Ample:
		if r.Accepted {
			return "ample, and that is accepted"
		}
		return "ample"
	case fit.TooClose:
		return "too close to call"
	}
	return ""
}
