package site

import (
	"fmt"
	"strings"

	"hussif/build/fit"
	"hussif/build/wardrobe"
	"hussif/content/journal"
	"hussif/theme"
)

// under returns the path of a page that belongs to the page of a record.
func under(r journal.Record, name string) string {
	return strings.TrimSuffix(pathOf(r.Head().ID), ".html") + "/" + name + ".html"
}

// mostPairs is how many garments are tried on how many bodies in all before the
// wardrobes leave out what could be borrowed.
const mostPairs = 4000

func (b *book) wardrobe(p *journal.Person) any {
	d := b.at(under(p, "wardrobe"))
	view := theme.Wardrobe{
		Frame: b.frame(d.path, "Wardrobe of "+p.Title, "Does it still fit", "people", d.shelfLink(journal.KindPerson), d.to(p)),
		Who:   d.to(p),
		Rests: []string{"Against the newest body measures over what each is worn with, as of " + day(b.Today)},
	}
	own := wardrobe.Of(b.Journal, p, b.Today)
	ready := 0
	for _, g := range own.Garments {
		if g.Ready() && g.Answer <= wardrobe.NeedsAdjusting {
			ready++
		}
		view.Own = append(view.Own, d.answer(g))
		if build, ok := b.Journal.Find(string(g.Build)); ok {
			if on, ok := fit.FirstFinish(build.(*journal.Build)); ok {
				view.Made = append(view.Made, d.madeAnswer(p, build.(*journal.Build), wardrobe.Of(b.Journal, p, on)))
			}
		}
	}
	if n := len(own.Garments); n > 0 {
		view.Words = fmt.Sprintf("%d of %d can be worn today.", ready, n)
	} else {
		view.Empty = "Nothing is made for " + p.Title + " yet."
	}
	if len(b.Journal.Builds)*len(b.Journal.People) <= mostPairs {
		for _, g := range wardrobe.Borrow(b.Journal, p, b.Today).Garments {
			view.Borrow = append(view.Borrow, d.answer(g))
		}
	}
	for _, other := range b.Journal.People {
		if other != p && len(b.madeFor[other]) > 0 {
			view.Others = append(view.Others, theme.Link{Href: d.root + under(other, "wardrobe"), Text: other.Title})
		}
	}
	return view
}

func (d desk) answer(g wardrobe.Garment) theme.Answer {
	f := d.Journal.Settings.Format
	out := theme.Answer{
		Verdict: theme.Verdict{Mark: answerMark(g.Answer), Words: g.Words(f)}, Waits: !g.Ready(),
	}
	if c := g.Caution(); c != "" {
		out.Notes = append(out.Notes, c)
	}
	if todo := g.ToDo(); todo != "" && g.Answer != wardrobe.Unknown {
		out.Notes = append(out.Notes, "to know more: "+todo)
	}
	if r, ok := d.Journal.Find(string(g.Build)); ok {
		build := r.(*journal.Build)
		out.Build = d.to(build)
		out.Photo = d.face(build)
		if owner := d.Journal.Person(build.For); owner != nil && owner.ID != g.Table.Wearer {
			out.Of = d.to(owner)
		}
	}
	return out
}

// madeAnswer is the answer for one garment on the day it was made.
func (d desk) madeAnswer(p *journal.Person, b *journal.Build, then wardrobe.Wardrobe) theme.Answer {
	for _, g := range then.Garments {
		if g.Build == b.ID {
			a := d.answer(g)
			a.Photo, a.Day = nil, day(g.Table.Day)
			return a
		}
	}
	return theme.Answer{Build: d.to(b)}
}

func answerMark(a wardrobe.Answer) string {
	switch a {
	case wardrobe.CanWear, wardrobe.NeedsAdjusting:
		return "fits"
	case wardrobe.CanWearAmple:
		return "ample"
	case wardrobe.TooClose:
		return "close"
	case wardrobe.Short:
		return "short"
	}
	return "unknown"
}
