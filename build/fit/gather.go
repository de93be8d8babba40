package fit

import (
	"cmp"
	"slices"
	"strings"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// Of returns how a garment fits its own wearer on a day.
func Of(j *journal.Journal, b *journal.Build, day edtf.Day) Table {
	return For(j, b, j.Person(b.For), day)
}

// For returns how a garment fits a person, its wearer or not, on a day. The person
// may be nil, of whom nothing is known.
func For(j *journal.Journal, b *journal.Build, p *journal.Person, day edtf.Day) Table {
	return Compute(InputFor(j, b, p, day))
}

// InputFor gathers what a journal says that bears on the fit of a garment. Notes
// and sessions without a date are left out.
func InputFor(j *journal.Journal, b *journal.Build, p *journal.Person, day edtf.Day) Input {
	in := Input{
		Build: b.ID, Day: day, Foundation: b.Foundation(), Kind: b.Garment,
		Garment: events(j, b), Body: Sessions(j, p), Wanted: wanted(j, b), Adjusts: adjustments(b),
		Errors: j.Settings.Errors, Catalogue: j.Settings.Catalogue,
	}
	if p != nil {
		in.Wearer = p.ID
	}
	return in
}

// FirstFinish returns the day on which a garment was first fit to be worn: as
// its page says, or else the first note of finishing it or of its being worn.
func FirstFinish(b *journal.Build) (edtf.Day, bool) {
	if b.Finished != 0 {
		return b.Finished, true
	}
	for _, n := range b.Notes {
		if n.Date != 0 && (n.Stage == "finishing" || n.Stage == "worn") {
			return n.Date, true
		}
	}
	return 0, false
}

// Latest returns the last day of which the journal knows anything of a garment or
// of its wearer's body; 0 where there is none.
func Latest(j *journal.Journal, b *journal.Build) edtf.Day {
	latest := b.Finished
	for _, n := range b.Notes {
		latest = max(latest, n.Date)
	}
	for _, s := range Sessions(j, j.Person(b.For)) {
		latest = max(latest, s.Day)
	}
	return latest
}

// Sessions returns a person's dated measuring sessions, oldest first: those of the
// person's page, and those in notes that name the person or belong to a build of
// theirs.
func Sessions(j *journal.Journal, p *journal.Person) []Session {
	if p == nil {
		return nil
	}
	notes := notesOn(j, p)
	out := make([]Session, 0, len(p.Measured)+len(notes))
	add := func(s *journal.Session, day edtf.Day, from Reason) {
		if day == 0 {
			return
		}
		by := s.By.Text
		out = append(out, Session{
			Day: day, From: from, Over: s.Foundation(), By: by, Readings: readings(s.Readings),
			Alone: by != "" && (strings.EqualFold(by, p.ID.Name()) || strings.EqualFold(by, p.Title)),
		})
	}
	for i := range p.Measured {
		s := &p.Measured[i]
		add(s, s.Date, Reason{p.ID, "measured", i})
	}
	for _, n := range notes {
		for i := range n.Body {
			s := &n.Body[i]
			if isOf(j, n, s, p) {
				add(s, cmp.Or(s.Date, n.Date), Reason{n.ID, "body", i})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Session) int { return cmp.Compare(a.Day, b.Day) })
	return out
}

// notesOn returns the notes that may hold a session of a person, oldest first: those
// that name the person beside one, and those of the person's builds. Looking
// through all notes for each build would cost more than all the rest.
func notesOn(j *journal.Journal, p *journal.Person) []*journal.Note {
	var notes []*journal.Note
	add := func(n *journal.Note) {
		if len(n.Body) > 0 {
			notes = append(notes, n)
		}
	}
	for _, tie := range j.LinkedFrom(p.ID) {
		switch from := tie.From.(type) {
		case *journal.Note:
			add(from)
		case *journal.Build:
			for _, n := range from.Notes {
				add(n)
			}
		}
	}
	slices.SortFunc(notes, func(a, b *journal.Note) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.ID, b.ID))
	})
	return slices.Compact(notes)
}

// isOf reports whether a session in a note is of a person.
func isOf(j *journal.Journal, n *journal.Note, s *journal.Session, p *journal.Person) bool {
	whose := s.Of
	if whose.IsZero() && n.Of != nil {
		whose = n.Of.For
	}
	return j.Person(whose) == p
}

func readings(written journal.Readings) []Reading {
	out := make([]Reading, len(written))
	for i, r := range written {
		out[i] = Reading{r.Point, r.Value}
	}
	return out
}

// events returns what befell a garment, oldest first.
func events(j *journal.Journal, b *journal.Build) []Event {
	sewing := sewing{b.Seams, j.Settings.Catalogue}
	count := 0
	for _, n := range b.Notes {
		count += min(len(n.Measured), 1) + len(n.Altered)
	}
	out := make([]Event, 0, count)
	for _, n := range b.Notes {
		if n.Date == 0 {
			continue
		}
		tape := func() {
			if len(n.Measured) > 0 {
				out = append(out, Event{Day: n.Date, From: Reason{n.ID, "measured", 0}, MockUp: n.Stage == "mock-up", Measured: readings(n.Measured)})
			}
		}
		last := tapeLast(n)
		if !last {
			tape()
		}
		for i := range n.Altered {
			o := sewing.outcome(&n.Altered[i])
			out = append(out, Event{Day: n.Date, From: Reason{n.ID, "altered", i}, Effects: o.effects, Unsure: o.unsure})
		}
		if last {
			tape()
		}
	}
	return out
}

// tapeLast reports whether a note's measures were taken after its alterations. A
// fitting measures what was tried on and then alters it; work that is done is
// measured when it is done.
func tapeLast(n *journal.Note) bool { return n.Stage == "altering" || n.Stage == "finishing" }

// wanted returns the eases that a build names, then those that the settings name
// for its kind of garment at other measures.
func wanted(j *journal.Journal, b *journal.Build) []Wanted {
	var out []Wanted
	add := func(w *journal.Want, from Reason) {
		out = append(out, Wanted{
			Point: w.Point, From: from, Ease: w.Ease, AcceptAmple: w.Accepts == journal.AcceptsAmple,
			Named: named(w), Unread: w.Unread("ease"),
		})
	}
	for i := range b.Fit {
		add(&b.Fit[i], Reason{b.ID, "fit", i})
	}
	defaults := j.Settings.Ease[strings.ToLower(b.Garment)]
	for i := range defaults {
		d := &defaults[i]
		at := slices.IndexFunc(out, func(w Wanted) bool { return w.Point.Measure == d.Point.Measure })
		switch {
		case at < 0:
			add(d, Reason{"", "ease", i})
		case out[at].Point == d.Point && !out[at].Named && !out[at].Unread:
			// The build names the measure, or that ample will do, but no ease.
			out[at].Ease, out[at].Named, out[at].Unread = d.Ease, named(d), d.Unread("ease")
		}
	}
	return out
}

// named reports whether a wanted fit names an ease that could be read.
func named(w *journal.Want) bool {
	return (w.Has("ease") || w.Ease != quantity.Range{}) && !w.Unread("ease")
}

func adjustments(b *journal.Build) []Adjust {
	var out []Adjust
	for i := range b.Adjusts {
		a := &b.Adjusts[i]
		adjust := Adjust{How: a.How, At: a.At, From: Reason{b.ID, "adjusts", i}, Size: a.Gap, MeasuredAt: a.MeasuredAt}
		gap, lap := a.Has("gap") || a.Gap != quantity.Range{}, a.Has("lap") || a.Lap != quantity.Range{}
		switch {
		case lap:
			adjust.Lap, adjust.Size = true, a.Lap
		case !gap:
			continue
		}
		for _, p := range a.Changes {
			adjust.Points = append(adjust.Points, p.Point)
		}
		out = append(out, adjust)
	}
	return out
}
