package site

import (
	"fmt"
	"hussif/build/address"

	"hussif/build/fit"
	"hussif/build/show"
	"hussif/build/wardrobe"
	"hussif/content/journal"
	"hussif/theme"
)

// mostPairs is how many garments are tried on how many bodies in all before the
// wardrobes leave out what could be borrowed.
const mostPairs = 4000

func (b *book) wardrobe(p *journal.Person) any {
	d := b.at(address.Under(p.ID, address.Wardrobe))
	view := theme.Wardrobe{
		Frame: b.frame(d.path, "Wardrobe of "+p.Title, "Does it still fit", "people", d.shelfLink(journal.KindPerson), d.to(p)),
		Who:   d.to(p),
		Rests: []string{"Against the newest body measures over what each is worn with, as of " + show.Day(b.Today)},
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
				then := wardrobe.One(b.Journal, build.(*journal.Build), p, on)
				made := d.answer(then)
				made.Photo, made.Day, made.Verdict.Words = nil, show.Day(on), then.PastWords(b.Journal.Settings.Format)
				view.Made = append(view.Made, made)
			}
		}
	}
	if n := len(own.Garments); n > 0 {
		view.Words = fmt.Sprintf("%d of %d can be worn today.", ready, n)
	} else {
		view.Empty = "Nothing is made for " + p.Title + " yet."
	}
	if b.borrows() {
		for _, g := range wardrobe.Borrow(b.Journal, p, b.Today).Garments {
			view.Borrow = append(view.Borrow, d.answer(g))
		}
	} else {
		view.Rests = append(view.Rests, "what could be borrowed is left out, for there is too much to try on: `hussif fit` tells of one garment")
	}
	for _, other := range b.Journal.People() {
		if other != p && b.dressed(other) {
			view.Others = append(view.Others, theme.Link{Href: d.root + address.Under(other.ID, address.Wardrobe), Text: other.Title})
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
