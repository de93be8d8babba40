package circle

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"hussif/build/export"
	"hussif/build/show"
	"hussif/theme"
)

// listed is the page that lists things several makers may use, those first that several
// do.
func listed[T any](b *book, section, title string, all []*Common[T], lines func(*Common[T]) []string) theme.List {
	d := b.at(section + "/index.html")
	view := theme.List{Frame: d.frame(title, "", section)}
	groups := []theme.CardGroup{{Title: "Used by several"}, {Title: "Used by one"}, {Title: "Not used yet"}}
	for _, c := range all {
		users, others := c.Users()
		card := theme.Card{Link: d.to(c.Path, c.Title), Lines: lines(c)}
		if len(users) > 0 {
			card.Lines = append(card.Lines, "used by "+named(users), number(len(c.Builds), "build", "builds"))
		}
		if len(others) > 0 {
			card.Lines = append(card.Lines, "known to "+named(others))
		}
		group := &groups[min(max(0, 2-len(users)), 2)]
		group.Cards = append(group.Cards, card)
	}
	view.Groups = slices.DeleteFunc(groups, func(g theme.CardGroup) bool { return len(g.Cards) == 0 })
	if len(view.Groups) == 0 {
		view.Empty = "Nothing here."
	}
	return view
}

func (b *book) patterns() any {
	return listed(b, "patterns", "Patterns", b.Patterns, func(p *Pattern) []string {
		return given(said(p, func(p *export.Pattern) string { return p.Garment }), said(p, func(p *export.Pattern) string { return p.From }))
	})
}

func (b *book) techniques() any {
	return listed(b, "techniques", "Techniques", b.Techniques, func(t *Technique) []string {
		return given(said(t, func(t *export.Technique) string { return dateOf(t.Era).String() }))
	})
}

func (b *book) pattern(p *Pattern) any {
	d := b.at(p.Path)
	view := theme.Thing{Frame: d.frame(p.Title, "Pattern", "patterns")}
	var s show.Facts
	s.Say("Garment", said(p, func(p *export.Pattern) string { return p.Garment }))
	s.Say("Era", said(p, func(p *export.Pattern) string { return dateOf(p.Era).String() }))
	s.Say("From", said(p, func(p *export.Pattern) string { return p.From }))
	useOf(d, &s, p)
	s.Link("On the makers' sites", onSites(p, func(p *export.Pattern) string { return p.Page })...)
	view.Facts = s
	view.Body = texts(p, func(p *export.Pattern) string { return p.About })
	if len(p.Builds) > 0 {
		view.Fit = d.fitGrid(p.Builds, mostRows, "Builds cut from this pattern, each as of the day on which its maker wrote her log.")
	}
	view.Builds = d.cards(p.Builds)
	view.Next = d.nexts(p.Next)
	return view
}

func (b *book) technique(t *Technique) any {
	d := b.at(t.Path)
	view := theme.Thing{Frame: d.frame(t.Title, "Technique", "techniques")}
	var s show.Facts
	s.Say("Era", said(t, func(t *export.Technique) string { return dateOf(t.Era).String() }))
	s.Say("Tools", said(t, func(t *export.Technique) string { return strings.Join(t.Tools, ", ") }))
	useOf(d, &s, t)
	s.Link("On the makers' sites", onSites(t, func(t *export.Technique) string { return t.Page })...)
	view.Facts = s
	for _, told := range t.Told {
		for _, c := range told.Says.Cautions {
			if len(t.Told) > 1 {
				c += " (" + told.By.Name + ")"
			}
			view.Cautions = append(view.Cautions, c)
		}
	}
	view.Body = texts(t, func(t *export.Technique) string { return t.About })
	view.Builds = d.cards(t.Builds)
	view.Next = d.nexts(t.Next)
	return view
}

// useOf says who uses a thing, and who knows of it.
func useOf[T any](d desk, s *show.Facts, c *Common[T]) {
	users, others := c.Users()
	s.Link("Used by", d.toMakers(users)...)
	s.Link("Known to", d.toMakers(others)...)
	var namesakes []theme.Link
	for _, other := range c.Namesakes {
		l := d.to(other.Path, other.Title)
		l.Note = "from " + cmp.Or(other.Source, "somewhere not said")
		namesakes = append(namesakes, l)
	}
	s.Link("Called the same", namesakes...)
}

// said returns what makers say of one thing: once, where all say the same, and else
// each with who says so.
func said[T any](c *Common[T], of func(*T) string) string {
	type saying struct {
		words string
		by    []*Maker
	}
	var all []saying
	for _, t := range c.Told {
		words := of(t.Says)
		if words == "" {
			continue
		}
		at := slices.IndexFunc(all, func(s saying) bool { return folded(s.words) == folded(words) })
		if at < 0 {
			at = len(all)
			all = append(all, saying{words: words})
		}
		all[at].by = append(all[at].by, t.By)
	}
	if len(all) == 1 {
		return all[0].words
	}
	var out []string
	for _, s := range all {
		out = append(out, fmt.Sprintf("%s (%s)", s.words, named(s.by)))
	}
	return strings.Join(out, "; ")
}

// onSites links to what makers have on the web of one thing.
func onSites[T any](c *Common[T], page func(*T) string) []theme.Link {
	var out []theme.Link
	for _, t := range c.Told {
		out = append(out, theirs(t.By, page(t.Says))...)
	}
	return out
}

// texts puts what several makers write of one thing below their names.
func texts[T any](c *Common[T], about func(*T) string) template.HTML {
	var b strings.Builder
	for _, t := range c.Told {
		text := about(t.Says)
		if text == "" {
			continue
		}
		if len(c.Told) > 1 {
			b.WriteString("<h3>" + template.HTMLEscapeString(t.By.Name) + " writes</h3>\n")
			text = below.Replace(text)
		}
		b.WriteString(string(scrolling(text)) + "\n")
	}
	return template.HTML(b.String())
}

// below puts the headings of clean HTML below one of h3.
var below = strings.NewReplacer(
	"<h2>", "<h4>", "</h2>", "</h4>", "<h3>", "<h4>", "</h3>", "</h4>", "<h4>", "<h5>", "</h4>", "</h5>", "<h5>", "<h6>", "</h5>", "</h6>",
)

// given leaves out what is empty.
func given(lines ...string) []string {
	return slices.DeleteFunc(lines, func(line string) bool { return line == "" })
}

// named joins the names of makers in a sentence.
func named(makers []*Maker) string {
	var names []string
	for _, m := range makers {
		names = append(names, m.Name)
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}

func number(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
