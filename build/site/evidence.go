package site

import (
	"strings"

	"hussif/build/address"
	"hussif/build/citation"
	"hussif/build/show"
	"hussif/content/journal"
	"hussif/theme"
)

// feature links to the page of a feature; features that no reference and no build
// names have none.
func (d desk) feature(name string) theme.Link {
	l := theme.Link{Text: name}
	if d.attested(name) {
		l.Href = d.root + address.Feature(name)
	}
	return l
}

// exhibits shows evidence with the links of the page.
func (d desk) exhibits() show.Exhibits {
	return show.Exhibits{
		To:      d.to,
		Ref:     func(ref journal.Ref) theme.Link { return d.ref(ref) },
		Feature: d.feature, Customs: d.Journal.Settings.Customs,
	}
}

// features shows the features of a build with what they rest on.
func (d desk) features(b *journal.Build) []theme.Feature { return d.exhibits().Features(d.claims(b)) }

func (b *book) evidencePage() any {
	d := b.at(address.Evidence)
	view := d.exhibits().Book(b.allEvidence(), b.Journal.References())
	view.Frame = b.frame(d.path, "Evidence", "", "evidence")
	if len(view.Features) == 0 {
		view.Empty = b.empty("Nothing yet. Add `shows: [...]` to a reference, with the details that it shows.")
	}
	return view
}

// featurePage is what the references say of one feature.
func (b *book) featurePage(name string) any {
	f, _ := b.featureNamed(name)
	d := b.at(address.Feature(f.Name))
	x := d.exhibits()
	view := x.Page(f)
	view.Frame = b.frame(d.path, show.Sentence(f.Name), "Feature", "evidence", theme.Link{Href: d.root + address.Evidence, Text: "Evidence"})
	for _, build := range f.Claimed {
		for _, c := range b.claims(build) {
			if named, ok := b.featureNamed(c.What.Text); ok && named.Name == f.Name {
				view.Claims = append(view.Claims, x.Claim(c, d.to(build)))
			}
		}
	}
	return view
}

// documentation is the sheet of a build for a show that judges by evidence.
func (b *book) documentation(r *journal.Build) any {
	d := b.at(address.Under(r.ID, address.Documentation))
	view := theme.Documentation{
		Frame: b.frame(d.path, r.Title, "Documentation", "builds", d.shelfLink(journal.KindBuild), d.to(r)),
		Of:    d.to(r), Photo: d.face(r), About: d.body(r),
		Made:     d.decisionList(b.decisionsFor(r.ID)),
		NextTime: d.next(b.lessonsFor(r.ID)),
	}
	var s show.Facts
	s.Link("For", d.refOrNone(r.For))
	s.Say("Era", r.Era.String())
	s.Link("Pattern", d.refs(r.Pattern, journal.KindPattern)...)
	s.Link("Occasion", d.refs(r.Occasion, journal.KindOccasion)...)
	view.Facts = s
	sources := make(map[*journal.Reference]bool)
	cite := func(ref journal.Ref) {
		if found, ok := b.Journal.Find(ref.To, journal.KindReference); ok {
			sources[found.(*journal.Reference)] = true
		}
	}
	for _, c := range b.claims(r) {
		view.Claims = append(view.Claims, d.exhibits().Claim(c, theme.Link{})) // the page is about it
		for _, rest := range c.RestsOn {
			cite(rest.Ref)
		}
	}
	for _, c := range b.decisionsFor(r.ID) {
		for _, ref := range c.RestsOn {
			cite(ref)
		}
	}
	for _, ref := range r.Pattern {
		if p := b.Journal.Pattern(ref); p != nil {
			for _, after := range p.After {
				cite(after)
			}
		}
	}
	for _, ref := range b.Journal.References() {
		if sources[ref] {
			view.Sources = append(view.Sources, theme.Source{Link: d.to(ref), Citation: citation.Cite(ref), Address: string(ref.Address)})
		}
	}
	view.Methods = d.methods(r)
	view.Short = d.short(r)
	if b.shared() {
		return view
	}
	if len(view.Claims) == 0 {
		view.Empty = append(view.Empty, "no features are claimed: add `features:` to the build")
	}
	if r.Era.IsZero() {
		view.Empty = append(view.Empty, "no era is named, so nothing can be judged by it: add `era:` to the build")
	}
	return view
}

// methods returns the techniques that a build and its notes name, each once.
func (d desk) methods(r *journal.Build) []theme.Link {
	refs := append([]journal.Ref{}, r.Techniques...)
	for _, n := range r.Notes {
		refs = append(refs, n.Techniques...)
	}
	seen := make(map[*journal.Technique]bool)
	var out []theme.Link
	for _, ref := range refs {
		if t := d.Journal.Technique(ref); t != nil && !seen[t] {
			seen[t] = true
			out = append(out, d.to(t))
		}
	}
	return out
}

// short fills the short form that challenges among makers ask for.
func (d desk) short(r *journal.Build) []theme.Fact {
	work := d.workOn(r.ID)
	var s show.Facts
	titles := func(links []theme.Link) string {
		var out []string
		for _, l := range links {
			out = append(out, l.Text)
		}
		return strings.Join(out, ", ")
	}
	var materials []theme.Link
	for _, n := range r.Needs {
		materials = append(materials, d.ref(n.Material, journal.KindMaterial))
	}
	s.Say("Garment", r.Title)
	s.Say("Material", titles(materials))
	s.Say("Pattern", titles(d.refs(r.Pattern, journal.KindPattern)))
	s.Say("Year", r.Era.String())
	var accurate []string
	for _, c := range d.claims(r) {
		accurate = append(accurate, c.What.Text+": "+string(c.Verdict))
	}
	s.Say("How accurate", strings.Join(accurate, "; "))
	s.Say("Hours", work.HoursWords())
	s.Say("First worn", d.firstWorn(r))
	if !d.shared() || len(spentOn(r)) > 0 { // to others nothing paid may be what they do not see
		s.Say("Cost", work.Cost.Words())
	}
	return s
}

func (d desk) firstWorn(r *journal.Build) string {
	for _, n := range r.Notes {
		if n.Stage == "worn" {
			words := show.Day(n.Date)
			if o := d.Journal.Occasion(n.Occasion); o != nil {
				words += ", " + o.Title
			}
			return words
		}
	}
	return ""
}
