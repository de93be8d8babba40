package site

import (
	"slices"
	"strings"

	"hussif/build/export"
	"hussif/build/fit"
	"hussif/build/lesson"
	"hussif/build/show"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/prose"
	"hussif/theme"
)

// export is what the site holds for a program to read that makes one site of several.
// It is gathered from what the pages are gathered from.
func (b *book) export() ([]byte, error) {
	d := b.at("") // addresses from the site's top folder
	log := export.Log{
		Day: b.Today.String(), Maker: b.Journal.Settings.Maker, Title: b.Journal.Settings.Title,
		Site: string(b.Journal.Settings.Address),
	}
	for _, r := range newestFirst(slices.Clone(b.Journal.Builds())) {
		log.Builds = append(log.Builds, d.exportedBuild(r))
	}
	for _, r := range b.Journal.Patterns() {
		log.Patterns = append(log.Patterns, export.Pattern{
			ID: string(r.ID), Page: d.href(r, ""), Title: r.Title, Garment: r.Garment, Era: exportedDate(r.Era), From: r.From, About: d.exportedBody(r),
		})
	}
	for _, r := range b.Journal.Techniques() {
		log.Techniques = append(log.Techniques, export.Technique{
			ID: string(r.ID), Page: d.href(r, ""), Title: r.Title, Era: exportedDate(r.Era), Tools: r.Tools, Cautions: r.Cautions, About: d.exportedBody(r),
		})
	}
	for _, r := range b.Journal.References() {
		log.References = append(log.References, export.Reference{
			ID: string(r.ID), Page: d.href(r, ""), Title: r.Title, Type: string(r.Type), Date: exportedDate(r.Date),
			Creator: r.Creator, Publisher: r.Publisher, Holder: r.Holder, Accession: r.Accession, Address: string(r.Address),
			Shows: texts(r.Shows), Lacks: texts(r.Lacks),
		})
	}
	for _, l := range b.allLessons().All {
		if next, ok := d.exportedNext(l); ok {
			log.Next = append(log.Next, next)
		}
	}
	return export.Write(log)
}

func (d desk) exportedBuild(r *journal.Build) export.Build {
	out := export.Build{
		ID: string(r.ID), Page: d.href(r, ""), Title: r.Title, Garment: r.Garment, Era: exportedDate(r.Era),
		State: string(stateOf(r)), Finished: isoOf(r.Finished), Hours: hoursOf(r).Hours(),
		Patterns: d.exportedRefs(r.Pattern, journal.KindPattern), About: d.exportedBody(r), Fit: d.exportedFit(r),
	}
	if p := d.Journal.Person(r.For); p != nil {
		out.For = p.Title
	}
	techniques := r.Techniques
	for _, n := range r.Notes {
		techniques = append(techniques[:len(techniques):len(techniques)], n.Techniques...)
	}
	out.Techniques = d.exportedRefs(techniques, journal.KindTechnique)
	for _, f := range r.Features {
		out.Features = append(out.Features, export.Feature{
			What: f.What.Text, RestsOn: d.exportedRefs(f.RestsOn, journal.KindReference), Departs: f.Departs,
		})
	}
	shown := make(map[string]bool)
	picture := func(r journal.Record) {
		for _, p := range journal.Pictures(r) {
			copies := d.picturesOf(p.Path)
			if len(copies) == 0 || shown[p.Path] {
				continue
			}
			shown[p.Path] = true
			out.Photos = append(out.Photos, export.Photo{File: show.PicturePath(copies[len(copies)-1]), Alt: p.Alt, Caption: p.Caption})
		}
	}
	picture(r)
	for _, n := range slices.Backward(r.Notes) {
		picture(n)
		out.Log = append(out.Log, export.Entry{
			Page: d.href(n, ""), Title: n.Title, Day: n.Date.String(), Stage: string(n.Stage), Hours: n.Hours.Hours(), Text: d.opening(n),
		})
	}
	return out
}

// exportedFit is how a build fits today: as its wearer lets others know, or by the
// measures that they see.
func (d desk) exportedFit(r *journal.Build) *export.Fit {
	var out export.Fit
	add := func(measure string, verdict fit.Verdict, words string) {
		if word := verdict.Word(); word != "" {
			out.Rows = append(out.Rows, export.FitRow{Measure: measure, Verdict: word, Words: words})
		}
	}
	for _, row := range d.told(r.ID).Rows {
		add(row.Measure, row.Verdict, row.Words)
	}
	if len(out.Rows) == 0 {
		for _, row := range d.fit(r).now.Rows {
			add(row.Point.String(), row.Verdict, row.Words(d.Journal.Settings.Format))
		}
	}
	if len(out.Rows) == 0 {
		return nil
	}
	return &out
}

func (d desk) exportedNext(l lesson.Lesson) (export.Next, bool) {
	from, ok := d.Journal.Named(string(l.From))
	if !ok {
		return export.Next{}, false
	}
	return export.Next{
		Text: d.Journal.Titled(l.Text), Page: d.href(from, l.Anchor), From: from.Head().Title, Day: isoOf(l.Day), State: string(l.State()),
		Build: string(l.Build), Patterns: idsOf(l.Patterns), Techniques: idsOf(l.Techniques), Garments: l.Garments,
	}, true
}

// exportedRefs returns the IDs of what references lead to, each once.
func (d desk) exportedRefs(refs []journal.Ref, k journal.Kind) []string {
	var ids []string
	for _, ref := range refs {
		if r, ok := d.Journal.Named(ref.To, k); ok && !slices.Contains(ids, string(r.Head().ID)) {
			ids = append(ids, string(r.Head().ID))
		}
	}
	return ids
}

func idsOf(ids []journal.ID) []string {
	var out []string
	for _, id := range ids {
		out = append(out, string(id))
	}
	return out
}

func texts(list []journal.Word) []string {
	var out []string
	for _, w := range list {
		out = append(out, w.Text)
	}
	return out
}

func exportedDate(d edtf.Date) *export.Date {
	if d.IsZero() || strings.Contains(d.EDTF, "Y") { // of a year that no garment is of
		return nil
	}
	out := export.Date{EDTF: d.EDTF, Words: d.Text}
	if out.Words == out.EDTF {
		out.Words = ""
	}
	return &out
}

// exportedBody prints a record's text for where the journal's other pages are not.
func (d desk) exportedBody(r journal.Record) string {
	return string(d.bodyWith(r, outward{linker{d, r}}))
}

// An outward linker answers for the links of a text that is read elsewhere: they lead to
// the site on the web, where that is known, and else are words. Pictures and worksheets
// are not shown there.
type outward struct{ linker }

// Tie implements [theme.Linker].
func (o outward) Tie(link prose.Link) (href, text string, ok bool) {
	href, text, ok = o.linker.Tie(link)
	href = o.onTheWeb(href)
	return href, text, ok && href != "" && link.To != ""
}

// Picture implements [theme.Linker].
func (outward) Picture(prose.Picture) (theme.Photo, bool) { return theme.Photo{}, false }

// Worksheet implements [theme.Linker].
func (outward) Worksheet(prose.Work) (theme.Worksheet, bool) { return theme.Worksheet{}, false }
