package theme

import (
	"html/template"
	"strconv"
)

// few is how many sections a page may have before it lists them.
const few = 4

// A heading is a section that a page may have.
type heading struct {
	id, title string
	stands    bool // the page has it
}

// contents returns links to the sections that a page has, or nil where they are
// few enough to be seen without.
func contents(headings ...heading) []Link {
	var links []Link
	for _, h := range headings {
		if h.stands {
			links = append(links, Link{Href: "#section-" + h.id, Text: h.title})
		}
	}
	if len(links) <= few {
		return nil
	}
	return links
}

func body(id, title string, html template.HTML) heading { return heading{id, title, html != ""} }

func list[T any](id, title string, of []T) heading { return heading{id, title, len(of) > 0} }

func part[T any](id, title string, of *T) heading { return heading{id, title, of != nil} }

// Contents returns links to the sections of the page, nil where they are few.
func (s Start) Contents() []Link {
	return contents(
		list("on-the-table", "On the table", s.OnTable),
		part("next-occasion", "Next occasion", s.Next),
		list("no-longer-fits", "No longer fits", s.NotFit),
		list("newest-notes", "Newest notes", s.Newest),
		list("next-time", "Next time", s.NextTime),
		list("kept-here", "Kept here", s.Counts),
	)
}

// Contents returns links to the sections of the page, nil where they are few.
func (l List) Contents() []Link {
	headings := make([]heading, len(l.Groups))
	for i, group := range l.Groups {
		headings[i] = heading{"group-" + strconv.Itoa(i), group.Title, group.Title != ""}
	}
	return contents(headings...)
}

// Contents returns links to the sections of the page, nil where they are few.
func (b Build) Contents() []Link {
	return contents(
		body("about", "About", b.Body),
		part("fit-today", b.fitTitle(), b.FitNow),
		list("tapes", "On the tape", b.Tapes),
		part("room", "Room and plan", b.Room),
		part("fit-first-finished", "Fit when first finished", b.FitThen),
		list("next-time", "Next time", b.Next),
		list("carried", "Answered here", b.Carried),
		list("dressing", "Dressing order", b.Dressing),
		part("ledger", "Ledger", b.Ledger),
		list("time", "Change over time", b.Time),
		part("across-builds", "Across builds", b.Across),
		part("seams", "Seams", b.Seams),
		part("closures", "Closures", b.Closures),
		part("pieces", "Pieces", b.Pieces),
		list("features", "Features", b.Features),
		list("decided", "Decided", b.Decisions),
		part("needs", "Needs", b.Needs),
		list("log", "Log", b.Log),
		list("photos", "Photos", b.Photos),
		list("linked-from", "Linked from", b.Backlinks),
	)
}

// fitTitle is what the newest fit is called.
func (b Build) fitTitle() string {
	if b.FitNow == nil {
		return ""
	}
	return b.FitNow.Title
}

// Contents returns links to the sections of the page, nil where they are few.
func (n Note) Contents() []Link {
	return contents(
		body("what-was-done", "What was done", n.Body),
		list("ledger", "Ledger", n.Altered),
		part("measured", "Measured", n.Measured),
		list("checks", "Expected against measured", n.Checks),
		list("bodies", "Body measures", n.Bodies),
		list("faults", "Faults seen", n.Faults),
		list("moves", "Wearing it", n.Moves),
		list("decided", "Decided", n.Decisions),
		list("turned-out", "How it turned out", n.TurnedOut),
		list("next-time", "Next time", n.Next),
		list("carried", "Answered here", n.Carried),
		part("material", "Material", n.Material),
		list("photos", "Photos", n.Photos),
		list("linked-from", "Linked from", n.Backlinks),
	)
}

// Contents returns links to the sections of the page, nil where they are few.
func (p Person) Contents() []Link {
	return contents(
		body("about", "About", p.Body),
		list("usual-changes", "Usual changes", p.Usual),
		part("fit-today", "Fit today", p.Fit),
		part("fit-first-finished", "Fit when first finished", p.FitThen),
		list("advances", "How garments came out", p.Advances),
		list("next-time", "Next time", p.Next),
		list("builds", "Builds", p.Builds),
		list("time", "Change over time", p.Time),
		list("change", "Change between measurings", p.Changes),
		list("measured", "Measured", p.Sessions),
		list("linked-from", "Linked from", p.Backlinks),
	)
}

// Contents returns links to the sections of the page, nil where they are few.
func (t Thing) Contents() []Link {
	return contents(
		body("about", "About", t.Body),
		part("features", "What it shows", t.Features),
		part("changes", "Changed on the pattern", t.Changes),
		part("across-builds", "Across builds", t.Fit),
		part("fit-today", "Fit today", t.FitNow),
		list("advances", "To change next time", t.Advances),
		list("next-time", "Next time", t.Next),
		list("not-ready", "Not ready yet", t.NotReady),
		list("dressing", "Dressing list", t.Dressing),
		list("hands", "A second pair of hands", t.Hands),
		part("movements", "Bought and used", t.Movements),
		list("decided", "Decided", t.Decisions),
		list("builds", "Builds", t.Builds),
		list("photos", "Photos", t.Photos),
		list("linked-from", "Linked from", t.Backlinks),
	)
}

// Contents returns links to the sections of the page, nil where they are few.
func (n NextTime) Contents() []Link {
	headings := make([]heading, len(n.Sections))
	for i, section := range n.Sections {
		headings[i] = heading{section.Anchor, section.Title, true}
	}
	return contents(headings...)
}

// Contents returns links to the sections of the page, nil where they are few.
func (s Sheet) Contents() []Link {
	return contents(
		part("fit-today", "Fit today", s.Fit),
		list("wardrobe", "What can be worn", s.Wardrobe),
		list("tapes", "On the tape", s.Tapes),
		list("advances", "To change next time", s.Advances),
		part("changes", "Changed on the pattern", s.Changes),
		list("to-do", "To do first", s.ToDo),
		list("next-time", "Next time", s.Next),
		list("not-known", "Not known", s.Empty),
		part("room", "Room and plan", s.Room),
		part("across-builds", "Across builds", s.Grid),
		list("bodies", "Body measures", s.Bodies),
		part("seams", "Seams", s.Seams),
		part("closures", "Closures", s.Closures),
		part("pieces", "Pieces", s.Pieces),
		part("ledger", "Ledger", s.Ledger),
		part("left", "Left over", s.Left),
		part("needs", "Needs", s.Needs),
		list("features", "Features", s.Features),
		list("decided", "Decided", s.Decisions),
		list("hours", "Hours", s.Hours),
	)
}

// Contents returns links to the sections of the page, nil where they are few.
func (t TakeDown) Contents() []Link {
	return contents(
		list("mark", "Mark before the first stitch is cut", t.Mark),
		list("before", "Before you begin", t.Before),
		part("open", "Open, in this order", t.WayIn),
		list("panels", "Pieces to let in", t.Panels),
		list("closures", "Closures to move", t.Closures),
		part("gives", "New allowances", t.Gives),
		list("back", "Sew back, in this order", t.Back()),
	)
}

// Back returns the seams in the order in which they are sewn again.
func (t TakeDown) Back() []WayStep {
	if t.WayIn == nil {
		return nil
	}
	return t.WayIn.Back
}

// Contents returns links to the sections of the page, nil where they are few.
func (w Wardrobe) Contents() []Link {
	var headings []heading
	for _, group := range w.Groups() {
		headings = append(headings, heading{group.Anchor, group.Title, true})
	}
	return contents(append(headings,
		list("made", "On the day it was made", w.Alone()),
		list("borrow", "To borrow", w.Borrow),
	)...)
}

// Contents returns links to the sections of the page, nil where they are few.
func (d Decisions) Contents() []Link {
	headings := make([]heading, len(d.Sections))
	for i, section := range d.Sections {
		headings[i] = heading{section.Anchor, section.Title, true}
	}
	return contents(headings...)
}

// Contents returns links to the sections of the page, nil where they are few.
func (d Documentation) Contents() []Link {
	return contents(
		body("about", "About", d.About),
		list("claims", "Choices and their evidence", d.Claims),
		list("decided", "Decided", d.Made),
		list("methods", "Methods", d.Methods),
		list("next-time", "Next time", d.NextTime),
		list("sources", "Sources", d.Sources),
		list("short-form", "Short form", d.Short),
		list("not-known", "Not known", d.Empty),
	)
}

// Contents returns links to the sections of the page, nil where they are few.
func (t ToDo) Contents() []Link {
	var headings []heading
	for _, group := range t.Occasions() {
		headings = append(headings, heading{group.Anchor, group.Title, true})
	}
	return contents(headings...)
}
