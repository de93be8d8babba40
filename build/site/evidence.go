package site

import (
	"fmt"
	"html/template"
	"strings"

	"hussif/build/address"
	"hussif/build/citation"
	"hussif/build/evidence"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/theme"
	"hussif/theme/draw"
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

// claim shows one feature of a build with the verdict on its evidence.
func (d desk) claim(c evidence.Claim, b *journal.Build) theme.Claim {
	out := theme.Claim{
		Feature: d.feature(c.What.Text), Build: d.to(b), Mark: claimMark(c.Verdict), Words: c.Words(), Departs: c.Departs,
	}
	for _, r := range c.RestsOn {
		l := d.ref(r.Ref)
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

// features shows the features of a build with what they rest on.
func (d desk) features(b *journal.Build) []theme.Feature {
	var out []theme.Feature
	for _, c := range d.claims(b) {
		shown := d.claim(c, b)
		out = append(out, theme.Feature{
			What: shown.Feature.Text, Href: shown.Feature.Href, Mark: shown.Mark, Words: shown.Words,
			RestsOn: shown.RestsOn, Departs: shown.Departs,
		})
	}
	return out
}

// evidenceRests says by what rules evidence is judged.
func (b *book) evidenceRests() []string {
	circa := b.Journal.Settings.Customs.Circa
	if circa <= 0 {
		circa = 5
	}
	return []string{
		fmt.Sprintf("\"ca.\" is taken for %d years on either side", circa),
		"several pages about one object count once",
		"references that were found are no fair draw from all there were: the intervals only say how little a few can tell",
	}
}

func (b *book) evidencePage() any {
	d := b.at(address.Evidence)
	view := theme.Evidence{
		Frame: b.frame(d.path, "Evidence", "", "evidence"), Rests: b.evidenceRests(),
	}
	if len(b.allEvidence().Features) == 0 {
		view.Empty = b.empty("Nothing yet. Add `shows: [...]` to a reference, with the details that it shows.")
	}
	for _, f := range b.allEvidence().Features {
		line := theme.FeatureLine{Feature: d.feature(f.Name), Shows: len(f.Shown), Lacks: len(f.Lacked)}
		if span := f.Attested(); !span.IsZero() {
			line.Span = evidence.Years(span)
		}
		for _, build := range f.Claimed {
			line.Claims = append(line.Claims, d.to(build))
		}
		view.Features = append(view.Features, line)
	}
	for _, r := range b.allEvidence().Undated() {
		view.Undated = append(view.Undated, d.to(r))
	}
	var all []draw.Thing
	for _, r := range b.Journal.References() {
		if !r.Date.IsZero() {
			all = append(all, thing(r.Title, r.Date, r.Date.Padded(b.Journal.Settings.Customs)))
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

// featurePage is what the references say of one feature.
func (b *book) featurePage(name string) any {
	f, _ := b.featureNamed(name)
	d := b.at(address.Feature(f.Name))
	view := theme.FeaturePage{
		Frame: b.frame(d.path, sentence(f.Name), "Feature", "evidence", theme.Link{Href: d.root + address.Evidence, Text: "Evidence"}),
		Rests: b.evidenceRests(), Scale: d.scale(f),
	}
	var s sheet
	s.say("In all", f.Words())
	view.Facts = s
	var rows [][]theme.Link
	add := func(objects []*evidence.Object, says string) {
		for _, o := range objects {
			rows = append(rows, []theme.Link{d.to(o.References[0]), cell(o.Words()), cell(says)})
		}
	}
	add(f.Shown, "shows it")
	add(f.Lacked, "lacks it")
	add(f.Disputed, "said both to show and to lack it")
	view.Table = columns([]string{"Reference", "Date", "Here"}, []bool{false, false, false}, rows)
	for _, build := range f.Claimed {
		for _, c := range b.claims(build) {
			if named, ok := b.featureNamed(c.What.Text); ok && named.Name == f.Name {
				view.Claims = append(view.Claims, d.claim(c, build))
			}
		}
	}
	return view
}

// scale draws what shows a feature and what lacks it; empty where nothing does.
func (d desk) scale(f evidence.Feature) template.HTML {
	scale := draw.Scale{Words: draw.Words{ID: "scale", Title: sentence(f.Name) + " in dated references", Desc: f.Words()}}
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

// documentation is the sheet of a build for a show that judges by evidence.
func (b *book) documentation(r *journal.Build) any {
	d := b.at(address.Under(r.ID, address.Documentation))
	view := theme.Documentation{
		Frame: b.frame(d.path, r.Title, "Documentation", "builds", d.shelfLink(journal.KindBuild), d.to(r)),
		Of:    d.to(r), Photo: d.face(r), About: d.body(r),
		Made:     d.decisionList(b.decisionsFor(r.ID)),
		NextTime: d.next(b.lessonsFor(r.ID)),
	}
	var s sheet
	s.link("For", d.refOrNone(r.For))
	s.say("Era", r.Era.String())
	s.link("Pattern", d.refs(r.Pattern, journal.KindPattern)...)
	s.link("Occasion", d.refs(r.Occasion, journal.KindOccasion)...)
	view.Facts = s
	sources := make(map[*journal.Reference]bool)
	cite := func(ref journal.Ref) {
		if found, ok := b.Journal.Find(ref.To, journal.KindReference); ok {
			sources[found.(*journal.Reference)] = true
		}
	}
	for _, c := range b.claims(r) {
		claim := d.claim(c, r)
		claim.Build = theme.Link{} // the page is about it
		view.Claims = append(view.Claims, claim)
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
	var s sheet
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
	s.say("Garment", r.Title)
	s.say("Material", titles(materials))
	s.say("Pattern", titles(d.refs(r.Pattern, journal.KindPattern)))
	s.say("Year", r.Era.String())
	var accurate []string
	for _, c := range d.claims(r) {
		accurate = append(accurate, c.What.Text+": "+string(c.Verdict))
	}
	s.say("How accurate", strings.Join(accurate, "; "))
	s.say("Hours", work.HoursWords())
	s.say("First worn", d.firstWorn(r))
	s.say("Cost", work.Cost.Words())
	return s
}

func (d desk) firstWorn(r *journal.Build) string {
	for _, n := range r.Notes {
		if n.Stage == "worn" {
			words := day(n.Date)
			if o := d.Journal.Occasion(n.Occasion); o != nil {
				words += ", " + o.Title
			}
			return words
		}
	}
	return ""
}
