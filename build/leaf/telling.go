package leaf

import (
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
)

// piecesToTell names the pieces of which the build's page does not say how they lie.
func (s *sheet) piecesToTell() {
	var told []string
	for _, p := range s.Build.Pieces {
		var missing []string
		for _, m := range []struct {
			what string
			said bool
		}{
			{"front edge", p.Front != ""}, {"right side", p.RightSide != ""}, {"grain", p.Grain != ""}, {"marks", len(p.Marks) > 0},
		} {
			if !m.said {
				missing = append(missing, m.what)
			}
		}
		if len(missing) > 0 {
			told = append(told, oneLine(p.Name.Text)+" ("+strings.Join(missing, ", ")+")")
		}
	}
	s.notYet(told)
}

// seamsToTell names the seams of which the build's page does not say how they are
// sewn.
func (s *sheet) seamsToTell() {
	var told []string
	for _, seam := range s.Build.Seams {
		var missing []string
		if seam.Sewn == "" {
			missing = append(missing, "sewn")
		}
		if seam.Piped == journal.Unsaid {
			missing = append(missing, "piped")
		}
		if !seam.Has("now") && !seam.Has("trimmed to") && !slices.ContainsFunc(seam.Crosses, func(c journal.Crossing) bool { return c.Has("now") }) {
			missing = append(missing, "allowance now")
		}
		if len(missing) > 0 {
			told = append(told, oneLine(seam.Name.Text)+" ("+strings.Join(missing, ", ")+")")
		}
	}
	s.notYet(told)
}

func (s *sheet) notYet(told []string) {
	if len(told) > 0 {
		s.ask("Not yet on the page: " + strings.Join(told, "; ") + ".")
	}
}

// Follow returns the stage that follows from the last note of a build that names
// one, and that note; planning, and nil, where there is none. Work that takes many
// days goes on: sewing follows sewing.
func Follow(b *journal.Build, day edtf.Day) (journal.Stage, *journal.Note) {
	var last *journal.Note
	mocked := false
	for _, n := range b.Notes {
		if n.Date == 0 || n.Date > day || n.Stage == "" {
			continue
		}
		last = n
		mocked = mocked || n.Stage == "mock-up"
	}
	if last == nil {
		return "planning", nil
	}
	finished, isFinished := fit.FirstFinish(b)
	isFinished = isFinished && finished <= day
	switch last.Stage {
	case "planning":
		if len(b.Fit) > 0 && !mocked {
			return "mock-up", last
		}
		return "cutting", last
	case "mock-up":
		return "cutting", last
	case "fitting":
		if isFinished {
			return "altering", last
		}
		return "sewing", last
	case "unpicking":
		return "altering", last
	case "altering":
		return "fitting", last
	case "finishing", "cleaned":
		return "worn", last
	case "worn":
		return "cleaned", last
	}
	return "sewing", last // after cutting, and while there is sewing to be done
}

// LastWorked returns the builds with the newest dated note up to a day, in the order
// of their IDs: one as a rule, several where that day saw work on several, none
// where no build has a note.
func LastWorked(j *journal.Journal, day edtf.Day) ([]*journal.Build, edtf.Day) {
	var builds []*journal.Build
	var newest edtf.Day
	for _, b := range j.Builds() {
		for _, n := range b.Notes {
			switch {
			case n.Date == 0 || n.Date > day || len(builds) > 0 && n.Date < newest:
			case len(builds) > 0 && n.Date == newest:
				if builds[len(builds)-1] != b {
					builds = append(builds, b)
				}
			default:
				builds, newest = []*journal.Build{b}, n.Date
			}
		}
	}
	return builds, newest
}
