package show

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"hussif/build/evidence"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/theme"
	"hussif/theme/draw"
)

// Exhibits show what references say of features, with links that lead to where the
// site has their pages.
type Exhibits struct {
	To      func(journal.Record) theme.Link
	Ref     func(journal.Ref) theme.Link
	Feature func(name string) theme.Link
	Customs edtf.Customs // by which dates are widened
}

// Claim shows a feature of a build with the verdict on its evidence. On a page that is
// about the build it needs no link.
func (x Exhibits) Claim(c evidence.Claim, build theme.Link) theme.Claim {
	out := theme.Claim{
		Feature: x.Feature(c.What.Text), Build: build, Mark: claimMark(c.Verdict), Words: c.Words(), Departs: c.Departs,
	}
	for _, r := range c.RestsOn {
		l := x.Ref(r.Ref)
		var notes []string
		if r.Says != "" {
			notes = append(notes, string(r.Says))
		}
		if r.When != "" {
			notes = append(notes, string(r.When))
		}
		l.Note = strings.Join(notes, ", ")
		out.RestsOn = append(out.RestsOn, l)
	}
	return out
}

func claimMark(v evidence.Verdict) string {
	switch v {
	case evidence.Supported:
		return "supported"
	case evidence.Thin:
		return "thin"
	case evidence.OnlyEarlier:
		return "earlier"
	case evidence.OnlyLater:
		return "later"
	case evidence.Contradicted:
		return "contradicted"
	case evidence.Departure:
		return "departs"
	}
	return "none"
}

// Features shows the features of a build with what they rest on.
func (x Exhibits) Features(claims []evidence.Claim) []theme.Feature {
	var out []theme.Feature
	for _, c := range claims {
		shown := x.Claim(c, theme.Link{})
		out = append(out, theme.Feature{
			What: shown.Feature.Text, Href: shown.Feature.Href, Mark: shown.Mark, Words: shown.Words,
			RestsOn: shown.RestsOn, Departs: shown.Departs,
		})
	}
	return out
}

// rests says by what rules evidence is judged.
func (x Exhibits) rests() []string {
	circa := x.Customs.Circa
	if circa <= 0 {
		circa = 5
	}
	return []string{
		fmt.Sprintf("\"ca.\" is taken for %d years on either side", circa),
		"several pages about one object count once",
		"references that were found are no fair draw from all there were: the intervals only say how little a few can tell",
	}
}

// Book shows all features, and references on a scale of years.
func (x Exhibits) Book(book *evidence.Book, references []*journal.Reference) theme.Evidence {
	view := theme.Evidence{Rests: x.rests()}
	for _, f := range book.Features {
		line := theme.FeatureLine{Feature: x.Feature(f.Name), Shows: len(f.Shown), Lacks: len(f.Lacked)}
		if span := f.Attested(); !span.IsZero() {
			line.Span = evidence.Years(span)
		}
		for _, build := range f.Claimed {
			line.Claims = append(line.Claims, x.To(build))
		}
		view.Features = append(view.Features, line)
	}
	for _, r := range book.Undated() {
		view.Undated = append(view.Undated, x.To(r))
	}
	var all []draw.Thing
	for _, r := range references {
		if !r.Date.IsZero() {
			all = append(all, thing(r.Title, r.Date, r.Date.Padded(x.Customs)))
		}
	}
	if len(all) > 0 {
		view.Scale = draw.DrawScale(draw.Scale{
			Words:  draw.Words{ID: "references", Title: "References on a scale of years", Desc: scaleWords(all)},
			Groups: []draw.Group{{Label: "references", Things: all}},
		})
	}
	return view
}

// thing is a dated thing to be drawn.
func thing(label string, stated, counted edtf.Date) draw.Thing {
	return draw.Thing{
		Label: label, Date: stated.String(), Stated: stretch(stated), Counted: stretch(counted),
		Unsure: stated.Uncertain, Known: !stated.IsZero(),
	}
}

func stretch(d edtf.Date) draw.Stretch {
	from, to := evidence.Extent(d)
	return draw.Stretch{From: from, To: to, OpenFrom: d.OpenStart, OpenTo: d.OpenEnd}
}

// scaleWords says what a scale of dated things shows.
func scaleWords(things []draw.Thing) string {
	var said []string
	for _, t := range things {
		said = append(said, t.Label+", "+t.Date)
	}
	return strings.Join(said, "; ") + "."
}

// Page shows what references say of one feature; who claims it is left to add.
func (x Exhibits) Page(f evidence.Feature) theme.FeaturePage {
	view := theme.FeaturePage{Rests: x.rests(), Scale: scale(f)}
	var s Facts
	s.Say("In all", f.Words())
	view.Facts = s
	var rows [][]theme.Link
	add := func(objects []*evidence.Object, says string) {
		for _, o := range objects {
			rows = append(rows, []theme.Link{x.To(o.References[0]), Cell(o.Words()), Cell(says)})
		}
	}
	add(f.Shown, "shows it")
	add(f.Lacked, "lacks it")
	for _, o := range f.Disputed {
		for _, r := range o.References {
			rows = append(rows, []theme.Link{x.To(r), Cell(o.Words()), Cell(disputed(f, r))})
		}
	}
	view.Table = Table([]string{"Reference", "Date", "Here"}, []bool{false, false, false}, rows)
	return view
}

// disputed is what one of several pages says of an object on which they differ.
func disputed(f evidence.Feature, r *journal.Reference) string {
	names := func(w journal.Word) bool { return near.Folded(w.Text) == near.Folded(f.Name) }
	shows, lacks := slices.ContainsFunc(r.Shows, names), slices.ContainsFunc(r.Lacks, names)
	switch {
	case shows && lacks:
		return "said both to show and to lack it"
	case shows:
		return "said to show it, and elsewhere to lack it"
	case lacks:
		return "said to lack it, and elsewhere to show it"
	}
	return "does not say"
}

// scale draws what shows a feature and what lacks it; empty where nothing does.
func scale(f evidence.Feature) template.HTML {
	scale := draw.Scale{Words: draw.Words{ID: "scale", Title: Sentence(f.Name) + " in dated references", Desc: f.Words()}}
	add := func(label string, objects []*evidence.Object) {
		group := draw.Group{Label: label}
		for _, o := range objects {
			group.Things = append(group.Things, thing(o.Title(), o.Date, o.Span))
		}
		if len(group.Things) > 0 {
			scale.Groups = append(scale.Groups, group)
		}
	}
	add("shown by", f.Shown)
	add("lacking in", f.Lacked)
	if len(scale.Groups) == 0 {
		return ""
	}
	return draw.DrawScale(scale)
}

// Reference says what a reference is, and which features it shows and lacks.
func Reference(r *journal.Reference) (Facts, *theme.Table) {
	var s Facts
	s.Say("Type", string(r.Type))
	s.Say("Date", r.Date.String())
	s.Say("Creator", r.Creator)
	s.Say("Publisher", r.Publisher)
	s.Say("Holder", r.Holder)
	s.Say("Accession number", r.Accession)
	if r.Address != "" {
		s.Link("Address", theme.Link{Href: string(r.Address), Text: string(r.Address)})
	}
	var rows [][]theme.Link
	for _, w := range r.Shows {
		rows = append(rows, []theme.Link{Cell(w.Text), Cell("shows it")})
	}
	for _, w := range r.Lacks {
		rows = append(rows, []theme.Link{Cell(w.Text), Cell("lacks it")})
	}
	return s, Table([]string{"Feature", "Here"}, []bool{false, false}, rows)
}
