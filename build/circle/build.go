package circle

import (
	"cmp"
	"html/template"
	"slices"
	"strings"
	"time"

	"hussif/build/export"
	"hussif/build/show"
	"hussif/theme"
)

func (b *book) build(r *Build) any {
	d := b.at(r.Path)
	photos := d.photos(r)
	view := theme.Build{
		Frame: d.frame(r.Title, cmp.Or(r.Garment, "Build"), "builds", r.About),
		State: r.State, Facts: d.buildFacts(r), Body: scrolling(r.About), FitNow: d.fitTable(r),
		Across:   d.across(r),
		Features: d.exhibits().Features(r.Claims),
		Next:     d.nexts(r.Next), Log: d.entries(r), Photos: photos,
	}
	if len(photos) > 0 {
		view.Photo = &photos[0]
	}
	return view
}

func (d desk) buildFacts(r *Build) show.Facts {
	var s show.Facts
	s.Link("Maker", d.toMaker(r.Maker))
	s.Say("For", r.For)
	s.Say("Era", r.Era.String())
	s.Link("Pattern", toCommon(d, r.Patterns)...)
	s.Link("Techniques", toCommon(d, r.Techniques)...)
	s.Say("First finished", dayOf(r.Finished))
	s.Say("Hours", worked(r.Hours))
	s.Link("On the maker's site", theirs(r.Maker, r.Page)...)
	return s
}

// theirs links to a page of a maker's own site, where that is on the web.
func theirs(m *Maker, page string) []theme.Link {
	l := abroad(m, page, m.Name)
	if l.Href == "" {
		return nil
	}
	return []theme.Link{l}
}

// worked writes hours of work, to the minute.
func worked(hours float64) string {
	if hours <= 0 {
		return ""
	}
	return show.Hours(time.Duration(hours * float64(time.Hour)).Round(time.Minute))
}

// entries lists the dated notes of a build, which lie on its maker's own site.
func (d desk) entries(r *Build) []theme.Entry {
	var out []theme.Entry
	for _, e := range r.Log {
		out = append(out, theme.Entry{Link: abroad(r.Maker, e.Page, e.Title), Day: dayOf(e.Day), Stage: e.Stage, Hours: worked(e.Hours), Text: e.Text})
	}
	return out
}

// fitTable shows how a build fits; nil where its wearer lets nothing be known.
func (d desk) fitTable(r *Build) *theme.FitTable {
	if r.Fit == nil {
		return nil
	}
	out := &theme.FitTable{Title: "Fit", Rests: []string{"As of " + dayOf(r.Maker.Log.Day), "as its wearer lets others know"}}
	for _, row := range r.Fit.Rows {
		out.Rows = append(out.Rows, theme.FitRow{Measure: theme.Link{Text: row.Measure}, Verdict: verdict(row)})
	}
	return out
}

func verdict(r export.FitRow) theme.Verdict {
	mark := r.Verdict
	if mark == "too close to call" {
		mark = "close"
	}
	return theme.Verdict{Mark: mark, Words: r.Words}
}

// mostGrave is how many measures a card names.
const mostGrave = 3

// gravest returns the gravest of how a build fits; nil where nothing is said.
func (r *Build) gravest() *theme.Verdict {
	if r.Fit == nil {
		return nil
	}
	for _, grave := range []string{"short", "ample", "too close to call", "fits"} {
		var v theme.Verdict
		var words []string
		for _, row := range r.Fit.Rows {
			if row.Verdict == grave {
				v = verdict(row)
				words = append(words, row.Measure+" "+v.Words)
			}
		}
		if len(words) == 0 {
			continue
		}
		if v.Mark != "fits" {
			v.Words = strings.Join(words[:min(len(words), mostGrave)], ", ")
		}
		return &v
	}
	return nil
}

// across sets a build beside others of its patterns; nil where there are none.
func (d desk) across(r *Build) *theme.FitGrid {
	kin := []*Build{r}
	for _, p := range r.Patterns {
		for _, other := range p.Builds {
			if len(kin) <= mostBeside && !slices.Contains(kin, other) {
				kin = append(kin, other)
			}
		}
	}
	if len(kin) < 2 {
		return nil
	}
	return d.fitGrid(kin, mostBeside, "Builds cut from the same pattern, each as of the day on which its maker wrote her log.")
}

// A grid has no more rows than these on the pages of a build and of a pattern, and no
// more columns.
const (
	mostBeside   = 20
	mostRows     = 200
	mostMeasures = 40
)

// fitGrid sets side by side how the newest builds fit, and says of which nothing may be
// known.
func (d desk) fitGrid(builds []*Build, most int, rests string) *theme.FitGrid {
	out := &theme.FitGrid{Title: "Across builds", Rests: []string{rests}}
	if len(builds) > most {
		builds = builds[:most]
		out.Rests = append(out.Rests, "Others are not shown here.")
	}
	var silent []string
	for _, b := range builds {
		if b.Fit == nil {
			silent = append(silent, b.Title+" by "+b.Maker.Name)
			continue
		}
		for _, row := range b.Fit.Rows {
			if !slices.Contains(out.Measures, row.Measure) && len(out.Measures) < mostMeasures {
				out.Measures = append(out.Measures, row.Measure)
			}
		}
	}
	for _, b := range builds {
		if b.Fit == nil {
			continue
		}
		link := d.to(b.Path, b.Title)
		link.Note = "by " + b.Maker.Name
		row := theme.FitGridRow{Build: link, Who: theme.Link{Text: b.For}, Day: dayOf(b.Maker.Log.Day), Cells: make([]theme.FitCell, len(out.Measures))}
		for _, r := range b.Fit.Rows {
			if i := slices.Index(out.Measures, r.Measure); i >= 0 {
				row.Cells[i].Verdict = verdict(r)
			}
		}
		out.Rows = append(out.Rows, row)
	}
	if len(silent) > 0 {
		out.Rests = append(out.Rests, "Nothing may be known of how these fit: "+strings.Join(silent, ", ")+".")
	}
	return out
}

// scrolling puts the tables of clean HTML into parts that scroll by themselves.
func scrolling(clean string) template.HTML {
	return template.HTML(strings.NewReplacer(
		"<table>", `<div class="wide" tabindex="0" role="group" aria-label="table">`+"\n<table>", "</table>", "</table>\n</div>",
	).Replace(clean))
}
