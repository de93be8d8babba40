package audience

import (
	"path"
	"strings"

	"hussif/content/journal"
)

// A sight is a journal as an audience looks at it.
type sight struct {
	full   *journal.Journal
	who    journal.Audience
	seen   map[journal.Record]bool
	photos photos
	left   *journal.Journal // the smaller one as it was put together before, or nil
	pages  []written        // by the place of their records in the full journal
	frank  bool             // bodies, and what tells of them, are not hidden
	asked  bool             // what is left, since this was last unset
}

func newSight(j *journal.Journal, who journal.Audience) *sight {
	s := &sight{full: j, who: who, seen: make(map[journal.Record]bool)}
	with := make(map[journal.Record]journal.Audience)
	at := make(map[string]journal.Record)
	for _, r := range j.Records() {
		at[strings.ToLower(string(r.Head().ID))] = r
	}
	var of func(journal.Record) journal.Audience
	of = func(r journal.Record) journal.Audience {
		if a, ok := with[r]; ok {
			return a
		}
		a := journal.Narrowest(j.Settings.Share, r.Head().Share)
		if j.Faulty(r) {
			a = journal.Self // what it says of sharing may be among what could not be read
		}
		with[r] = a // a page that holds itself, by slip of its links, adds nothing
		for _, holder := range holders(j, r) {
			a = journal.Narrowest(a, of(holder))
		}
		for dir := path.Dir(strings.ToLower(string(r.Head().ID))); dir != "."; dir = path.Dir(dir) {
			if above := at[dir]; above != nil {
				a = journal.Narrowest(a, of(above))
			}
		}
		with[r] = a
		return a
	}
	for _, r := range j.Records() {
		s.seen[r] = who.MaySee(of(r))
	}
	s.photos = s.photosOf()
	return s
}

// holders returns the records that a record belongs to.
func holders(j *journal.Journal, r journal.Record) []journal.Record {
	switch r := r.(type) {
	case *journal.Note:
		if r.Of != nil {
			return []journal.Record{r.Of}
		}
	case *journal.Build:
		if p := j.Person(r.For); p != nil {
			return []journal.Record{p}
		}
	}
	return nil
}

// wearers returns the people whose body or money a page may tell of. That of a
// material or an occasion is nobody's.
func (s *sight) wearers(r journal.Record) []*journal.Person {
	var builds []*journal.Build
	switch r := r.(type) {
	case *journal.Person:
		return []*journal.Person{r}
	case *journal.Build:
		builds = append(builds, r)
	case *journal.Note:
		if r.Of != nil {
			builds = append(builds, r.Of)
		}
	case *journal.Pattern:
		builds = s.full.BuildsFrom(r)
	}
	var people []*journal.Person
	for _, b := range builds {
		people = append(people, s.full.Person(b.For)) // nil where nobody is named
	}
	return people
}

// allowed reports whether the audience may know a matter, by the word of all that it
// is about.
func (s *sight) allowed(about journal.Matter, of []*journal.Person) bool {
	switch about {
	case "":
		return true
	case journal.OfSharing:
		return false
	case journal.OfPlace:
		return s.who != journal.Public
	case journal.OfBody, journal.OfChange, journal.OfFit:
		if s.frank {
			return true
		}
	}
	for _, p := range of {
		if p == nil || !s.allows(p, about) {
			return false
		}
	}
	return len(of) > 0
}

// allowedOn reports likewise what the audience may know by a page. Where a wearer says
// how the fit of her garments is shown, that alone counts for what pages other than her
// own tell of it, even where her measures are shown.
func (s *sight) allowedOn(r journal.Record, about journal.Matter, of []*journal.Person) bool {
	if _, own := r.(*journal.Person); !own && !s.frank {
		for _, p := range of {
			if p != nil && p.ShowsFit != "" && !shownOfFit(p.ShowsFit, about) {
				return false
			}
		}
	}
	return s.allowed(about, of)
}

// shownOfFit reports whether what a wearer lets others see of the fit of her garments
// holds a matter, where it concerns the fit.
func shownOfFit(shows journal.FitShown, about journal.Matter) bool {
	switch about {
	case journal.OfBody:
		return false
	case journal.OfChange:
		return shows == journal.FitDeltas
	case journal.OfFit:
		return shows != journal.FitNothing
	}
	return true
}

// allows reports whether a person lets the audience know a matter.
func (s *sight) allows(p *journal.Person, about journal.Matter) bool {
	says := func(a journal.Audience) bool { return a != "" && s.who.MaySee(a) }
	if about == journal.OfMoney {
		return says(p.Money)
	}
	if says(p.Measures) {
		return true
	}
	switch about {
	case journal.OfChange:
		return p.ShowsFit == journal.FitDeltas
	case journal.OfFit:
		return p.ShowsFit == journal.FitDeltas || p.ShowsFit == journal.FitWords
	}
	return false
}

// part reports whether a page will have a part by that name, and what the part is
// called there: a place in a count would count what is hidden.
func (s *sight) part(r journal.Record, written string) (name string, ok bool) {
	if written == "" {
		return "", true
	}
	s.asked = true
	name, ok = journal.Anchor(r, written)
	if !ok || s.left == nil {
		return name, ok
	}
	left, found := s.left.Named(string(r.Head().ID))
	if !found {
		return "", false
	}
	return journal.Anchor(left, name)
}

func compare(a, b string) int { return strings.Compare(a, b) }
