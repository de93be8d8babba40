package sitting

import (
	"slices"
	"strings"

	"hussif/build/fit"
	"hussif/build/slip"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/measure"
)

// An Item is one measure to take.
type Item struct {
	Point   measure.Point
	Name    string // as the person's page writes it, or else the measure's own
	Measure measure.Measure
	Before  slip.Before // over the same layers; or over others, where that is all there is
	By      string      // who took that
	Over    measure.Foundation
	For     []string // the titles of the garments that ask for it
}

// A Sitting is what can be asked of one person over one foundation on one day.
type Sitting struct {
	journal  *journal.Journal
	person   *journal.Person
	sessions []fit.Session // up to the day, oldest first
	over     measure.Foundation
	day      edtf.Day
}

// New prepares the measuring of a person.
func New(j *journal.Journal, p *journal.Person, over measure.Foundation, day edtf.Day) *Sitting {
	return &Sitting{journal: j, person: p, sessions: until(j, p, day), over: over, day: day}
}

// Last returns a person's last session up to a day, which tells what is likely worn
// and who may measure.
func Last(j *journal.Journal, p *journal.Person, day edtf.Day) (fit.Session, bool) {
	sessions := until(j, p, day)
	if len(sessions) == 0 {
		return fit.Session{}, false
	}
	return sessions[len(sessions)-1], true
}

func until(j *journal.Journal, p *journal.Person, day edtf.Day) []fit.Session {
	return slices.DeleteFunc(fit.Sessions(j, p), func(s fit.Session) bool { return s.Day > day })
}

// Items returns the measures to take, in order, none twice. A paired measure that is
// asked for on each side is not asked for plainly too.
func (s *Sitting) Items() []Item {
	var items []Item
	add := func(p measure.Point, asking string) {
		at := slices.IndexFunc(items, func(i Item) bool { return i.Point == p })
		if at < 0 && p.Side == measure.Both && has(items, p.Measure, measure.Left) && has(items, p.Measure, measure.Right) {
			return
		}
		if at < 0 {
			items = append(items, s.Item(p))
			at = len(items) - 1
		}
		if asking != "" && !slices.Contains(items[at].For, asking) {
			items[at].For = append(items[at].For, asking)
		}
	}
	for _, session := range slices.Backward(s.sessions) {
		if session.Over.Same(s.over) {
			for _, r := range session.Readings {
				add(r.Point, "")
			}
		}
	}
	for _, b := range s.builds() {
		for _, want := range fit.InputFor(s.journal, b, s.person, s.day).Wanted {
			add(want.Point, b.Title)
		}
		for _, seam := range b.Seams {
			for _, c := range seam.Crosses {
				add(c.Point, b.Title)
			}
		}
	}
	return items
}

func has(items []Item, name string, side measure.Side) bool {
	return slices.ContainsFunc(items, func(i Item) bool { return i.Point == measure.Point{Measure: name, Side: side} })
}

// builds returns the garments made for the person that are still about, those worn
// over the same layers first.
func (s *Sitting) builds() []*journal.Build {
	var same, others []*journal.Build
	for _, b := range s.journal.Builds() {
		switch {
		case s.journal.Person(b.For) != s.person || b.State == journal.StateGone || b.State == journal.StateApart:
		case b.Foundation().Same(s.over):
			same = append(same, b)
		default:
			others = append(others, b)
		}
	}
	return append(same, others...)
}

// Item returns what is to be known to take one measure.
func (s *Sitting) Item(p measure.Point) Item {
	item := Item{Point: p, Name: s.name(p)}
	item.Measure, _ = s.journal.Settings.Catalogue.Measure(p.Measure)
	for _, session := range slices.Backward(s.sessions) {
		same := session.Over.Same(s.over)
		v, ok := value(session.Readings, p)
		if !ok || !v.Value.Known() || !same && item.Before.Value.Length != 0 {
			continue
		}
		item.Before = slip.Before{Value: v.Value, Day: session.Day, Others: !same}
		item.By, item.Over = session.By, session.Over
		if same {
			break
		}
	}
	return item
}

// value returns a session's reading of a point: of its own side, or else of both.
func value(readings []fit.Reading, p measure.Point) (fit.Reading, bool) {
	both := measure.Point{Measure: p.Measure}
	for _, wanted := range []measure.Point{p, both} {
		if i := slices.IndexFunc(readings, func(r fit.Reading) bool { return r.Point == wanted }); i >= 0 {
			return readings[i], true
		}
	}
	return fit.Reading{}, false
}

// name returns how the person's page last named a point: a maker who writes "waist"
// shall go on finding "waist".
func (s *Sitting) name(p measure.Point) string {
	for i := len(s.person.Measured) - 1; i >= 0; i-- {
		for _, r := range s.person.Measured[i].Readings {
			if r.Point == p {
				return strings.Trim(r.Key.Text(), `'"`)
			}
		}
	}
	return p.String()
}

// Layers returns the names of all layers that the journal knows, as written first.
func Layers(j *journal.Journal) []string {
	var names []string
	add := func(words []journal.Word) {
		for _, w := range words {
			if !slices.ContainsFunc(names, func(n string) bool { return strings.EqualFold(n, w.Text) }) {
				names = append(names, w.Text)
			}
		}
	}
	for _, p := range j.People() {
		for i := range p.Measured {
			add(p.Measured[i].Over)
		}
	}
	for _, n := range j.Notes() {
		for i := range n.Body {
			add(n.Body[i].Over)
		}
	}
	for _, b := range j.Builds() {
		add(b.Over)
	}
	return names
}
