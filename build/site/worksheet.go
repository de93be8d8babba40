package site

import (
	"fmt"
	"strings"

	"hussif/build/address"
	"hussif/build/show"
	"hussif/build/worked"
	"hussif/build/worksheet"
	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/theme"
	"hussif/theme/draw"
)

// workroom is where the worksheets of a page are worked.
func (b *book) workroom() worked.Room { return worked.Room{Journal: b.Journal, Stock: b.stockOf} }

// Worksheet implements [theme.Linker].
func (l linker) Worksheet(w prose.Work) (theme.Worksheet, bool) {
	written, ok := l.record.Head().Worked(w)
	if !ok {
		return theme.Worksheet{}, false
	}
	return l.worksheet(l.record, l.workroom().Sheet(l.record, written)), true
}

// worksheet shows a worksheet, or what is wrong with it.
func (d desk) worksheet(r journal.Record, s worked.Sheet) theme.Worksheet {
	p := s.Paper
	out := theme.Worksheet{ID: s.Work.Anchor, Name: p.Title, Typed: s.Work.Typed}
	for _, f := range s.Faults {
		line, _ := f.Span.Position()
		out.Faults = append(out.Faults, theme.WorkFault{Line: line, Words: f.Text, Advice: f.Advice()})
	}
	if len(out.Faults) > 0 {
		return out
	}
	for _, g := range p.Given {
		in := theme.WorkInput{Name: g.Name, Value: g.Value, From: g.From}
		for name, source := range s.Sources {
			if worksheet.Plain(name) == g.Name && source != r {
				in.Source = d.to(source)
			}
		}
		out.Given = append(out.Given, in)
	}
	for _, l := range p.Formula {
		out.Formula = append(out.Formula, theme.WorkLine(l))
	}
	for _, a := range p.Answers {
		fact := theme.Fact{Name: a.Name, Value: a.Words}
		if a.Main {
			out.Main = append(out.Main, fact)
		} else {
			out.Others = append(out.Others, fact)
		}
	}
	out.Cut, out.Cautions, out.Care = p.Cut, p.Cautions, p.Care
	for i, drawing := range p.Drawings {
		w := draw.Words{ID: fmt.Sprintf("%s-drawing-%d", workID(s), i+1), Title: drawing.Title, Desc: drawing.Desc}
		out.Drawings = append(out.Drawings, drawing.Draw(w))
	}
	for _, print := range p.Prints {
		if s.Work.Private {
			continue // a page of its own would be no part of the remark
		}
		out.PrintsOf = strings.ToLower(print.Title[:1]) + print.Title[1:]
		for _, paper := range papers() {
			out.Prints = append(out.Prints, theme.Link{Href: d.root + workPath(r, s, print, paper), Text: paper.Name})
		}
	}
	return out
}

// workID names a worksheet among those of its page.
func workID(s worked.Sheet) string {
	if s.Work.Anchor != "" {
		return address.Slug(s.Work.Anchor)
	}
	return fmt.Sprintf("work-at-%d", s.Work.Span.Start)
}

func workPath(r journal.Record, s worked.Sheet, print worksheet.Print, paper draw.Paper) string {
	return address.Under(r.Head().ID, workID(s)+"-"+print.Name+"-"+paper.Name)
}

// addWorkPages adds the full-size pages of the worksheets in a record's text.
func (b *book) addWorkPages(r journal.Record, add func(path string, view func(*book) any)) {
	for i, s := range b.workroom().Sheets(r) {
		if s.Work.Private || len(s.Faults) > 0 {
			continue
		}
		for j, print := range s.Paper.Prints {
			for _, paper := range papers() {
				path := workPath(r, s, print, paper)
				add(path, func(b *book) any { return b.workSheet(r, i, j, path, paper) })
			}
		}
	}
}

// workSheet is the page of what a worksheet has to print, cut into sheets of one
// paper.
func (b *book) workSheet(r journal.Record, i, j int, path string, paper draw.Paper) any {
	d := b.at(path)
	s := b.workroom().Sheets(r)[i]
	print := s.Paper.Prints[j]
	title := fmt.Sprintf("%s, on %s", print.Title, paper.Name)
	section := address.Section(r.Head().Kind)
	crumbs := []theme.Link{d.shelfLink(r.Head().Kind), d.to(r)}
	if n, ok := r.(*journal.Note); ok && n.Of != nil {
		section = "builds"
		crumbs = []theme.Link{d.shelfLink(journal.KindBuild), d.to(n.Of), d.to(r)}
	}
	of := d.to(r)
	of.Href = d.href(r, s.Work.Anchor)
	view := theme.Tiles{
		Frame: b.frame(path, title, "To print", section, crumbs...), Of: of, Paper: paper.Name,
		Words: append([]string{"Print at 100 %, with no fitting to the page.", "Measure the test squares before cutting: 5 cm and 2 in."}, print.Words...),
	}
	if s.Paper.Care != "" {
		view.Words = append(view.Words, s.Paper.Care)
	}
	sheets, err := print.Sheet(draw.Words{ID: "sheet", Title: title, Desc: print.Desc}, paper)
	if err != nil {
		view.Words = []string{show.Sentence(err.Error()) + "."}
		return view
	}
	view.Pages = sheets.Pages
	return view
}
