package circle

import (
	"cmp"
	"fmt"
	"slices"

	"hussif/build/address"
	"hussif/build/search"
	"hussif/build/show"
	"hussif/theme"
)

// unanswered is the state of a lesson of which nothing has become yet.
const unanswered = "open"

// next shows a next-time note.
func (d desk) next(l *Lesson) theme.Next {
	n := theme.Next{Text: l.Text, Day: dayOf(l.Day), From: abroad(l.By, l.Page, l.From)}
	if l.Build != nil {
		n.From = d.to(l.Build.Path, l.Build.Title)
	}
	n.From.Note = "by " + l.By.Name
	if l.State != unanswered {
		n.State = l.State
	}
	n.About = append(toCommon(d, l.Patterns), toCommon(d, l.Techniques)...)
	for _, g := range l.Garments {
		n.About = append(n.About, theme.Link{Text: g})
	}
	return n
}

// mostNext is how many lessons a page lists, the newest.
const mostNext = 300

func (d desk) nexts(lessons []*Lesson) []theme.Next {
	var out []theme.Next
	for _, l := range lessons[:min(len(lessons), mostNext)] {
		out = append(out, d.next(l))
	}
	return out
}

// With more lessons than manyLessons the page of all of them shows fewOfGroup of each
// group, and leads to the page that has the rest.
const (
	manyLessons = 500
	fewOfGroup  = 10
)

// nextTime gathers the next-time notes of all makers.
func (b *book) nextTime() any {
	d := b.at(address.NextTime)
	view := theme.NextTime{Frame: d.frame("Next time", "", "next time"), Empty: "Nothing here."}
	add := func(title string, keys func(*Lesson) []theme.Link) {
		groups := d.grouped(keys)
		if len(groups) > 0 {
			view.Sections = append(view.Sections, theme.NextSection{Title: title, Anchor: address.Slug(title), Groups: groups})
		}
	}
	add("By pattern", func(l *Lesson) []theme.Link { return toCommon(d, l.Patterns) })
	add("By technique", func(l *Lesson) []theme.Link { return toCommon(d, l.Techniques) })
	add("By garment", func(l *Lesson) []theme.Link {
		var out []theme.Link
		for _, g := range l.Garments {
			out = append(out, theme.Link{Text: show.Sentence(folded(g))})
		}
		return out
	})
	add("By maker", func(l *Lesson) []theme.Link { return []theme.Link{d.toMaker(l.By)} })
	return view
}

// grouped puts lessons below what they are about, by name.
func (d desk) grouped(keys func(*Lesson) []theme.Link) []theme.Group {
	var groups []theme.Group
	var lessons [][]*Lesson
	at := make(map[theme.Link]int)
	for _, l := range d.Lessons {
		for _, key := range keys(l) {
			i, ok := at[key]
			if !ok {
				i = len(groups)
				at[key] = i
				groups, lessons = append(groups, theme.Group{Title: key}), append(lessons, nil)
			}
			lessons[i] = append(lessons[i], l)
		}
	}
	for i := range groups {
		shown := lessons[i]
		if more := len(shown) - fewOfGroup; len(d.Lessons) > manyLessons && more > 0 {
			shown = shown[:fewOfGroup]
			groups[i].More = theme.Link{Text: fmt.Sprintf("%d older", more)}
			if href := groups[i].Title.Href; href != "" {
				groups[i].More.Href = href + "#section-next-time"
			}
		}
		groups[i].Next = d.nexts(shown)
	}
	slices.SortStableFunc(groups, func(a, b theme.Group) int {
		return cmp.Or(cmp.Compare(search.Fold(a.Title.Text), search.Fold(b.Title.Text)), cmp.Compare(a.Title.Href, b.Title.Href))
	})
	return groups
}
