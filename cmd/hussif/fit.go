package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"hussif/build/fit"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

func fitCommand(say *voice) *cobra.Command {
	var dir string
	var asJSON bool
	c := &cobra.Command{
		Use:   "fit [build or person]",
		Short: "Say what fits, where it is short, and by how much",
		Long: `fit compares what each garment measures with what its wearer measures over the
same layers. A difference smaller than the error of measuring is not called a
fault. With the name of a build it says all about that one, with what its seams can
still give and the plan of least work; with the name of a person, about all that
is made for them.`,
		Example: `  hussif fit
  hussif fit grey-jacket
  hussif fit ada --on 2026-03-01
  hussif fit --json`,
		Args: atMostOne("build or person"),
	}
	c.Flags().StringVarP(&dir, "journal", "j", "", "the journal's `folder`")
	c.Flags().BoolVar(&asJSON, "json", false, "print as JSON")
	on := onFlag(c, today())
	c.RunE = func(_ *cobra.Command, args []string) error {
		w, err := openJournal(dir)
		if err != nil {
			return err
		}
		say.warn(w)
		builds, err := w.buildsOf(firstArg(args))
		if err != nil {
			return err
		}
		if asJSON {
			return say.json(w.fitJSON(builds, on.day))
		}
		for i, b := range builds {
			if i > 0 {
				say.sayf("")
			}
			t := fit.Of(w.journal, b, on.day)
			say.fit(w.journal, b, t)
			if len(builds) == 1 {
				say.plan(w.journal, b, t)
				say.ledger(w.journal, b)
			}
		}
		return nil
	}
	c.ValidArgsFunction = completeNames(&dir, journal.KindBuild, journal.KindPerson)
	return c
}

// buildsOf returns the build of that name, or all builds for a person of that
// name, or all of the journal for "".
func (w *workroom) buildsOf(name string) ([]*journal.Build, error) {
	if name == "" {
		if len(w.journal.Builds()) == 0 {
			return nil, fmt.Errorf("the journal has no builds yet")
		}
		return w.journal.Builds(), nil
	}
	r, err := w.called(name, journal.KindBuild, journal.KindPerson)
	if err != nil {
		return nil, err
	}
	if b, ok := r.(*journal.Build); ok {
		return []*journal.Build{b}, nil
	}
	var builds []*journal.Build
	for _, b := range w.journal.Builds() {
		if p := w.journal.Person(b.For); p != nil && p == r {
			builds = append(builds, b)
		}
	}
	if len(builds) == 0 {
		return nil, fmt.Errorf("nothing is made for %s yet", r.Head().Title)
	}
	return builds, nil
}

// fit prints how one garment fits.
func (v *voice) fit(j *journal.Journal, b *journal.Build, t fit.Table) {
	f := j.Settings.Format
	wearer := "nobody named"
	if p := j.Person(b.For); p != nil {
		wearer = p.Title
	}
	v.sayf("%s", v.bold(fmt.Sprintf("%s, for %s, over %s, as of %s", b.Title, wearer, t.Foundation, t.Day)))
	rows := [][]string{{"measure", "body", "garment", "ease", "wanted", "verdict"}}
	for _, r := range t.Rows {
		row := []string{r.Point.String(), "-", "-", "-", "-", r.Words(f)}
		if r.Body.Read.Known() {
			row[1] = f.Length(r.Body.Length) + marked(r.Body.Estimated(), " est.") + marked(r.Body.Read.State == quantity.About, " ca.")
		}
		if r.Garment.Measured.Known() {
			row[2] = f.Length(r.Garment.Length) + marked(r.Garment.Expected(), " exp.") + marked(r.Garment.Measured.State == quantity.About, " ca.")
		}
		if r.Verdict.Compared() {
			row[3] = f.Range(r.Had)
		}
		switch {
		case r.Wanted != nil && r.Wanted.Named:
			row[4] = f.Range(r.Wanted.Ease)
		case r.Wanted != nil && r.Wanted.Unread:
			row[4] = "unreadable"
		}
		rows = append(rows, row)
	}
	if len(t.Rows) == 0 {
		v.sayf("  nothing measured and nothing wanted yet")
		return
	}
	v.columns(rows)
	said := make(map[string]bool)
	for _, r := range t.Rows {
		if c := r.Caution(); c != "" && !said[c] {
			v.sayf("take care: %s", c)
			said[c] = true
		}
	}
	for _, m := range t.Missed {
		v.sayf("to do: %s", m.Words())
	}
}

func marked(b bool, mark string) string {
	if b {
		return mark
	}
	return ""
}

// ledger prints what was altered on a garment and whether it did what it should.
func (v *voice) ledger(j *journal.Journal, b *journal.Build) {
	f := j.Settings.Format
	book := fit.Ledger(j, b)
	if len(book.Entries)+len(book.Checks) == 0 {
		return
	}
	v.sayf("")
	v.sayf("%s", v.bold("Ledger"))
	for _, e := range book.Entries {
		var effects []string
		for _, effect := range e.Effects {
			effects = append(effects, effect.Point.String()+" "+f.Signed(effect.By))
		}
		if e.Why != "" {
			effects = append(effects, e.Why)
		}
		v.sayf("%s  %s: %s", e.Day, e.Words(f), strings.Join(effects, ", "))
	}
	for _, c := range book.Checks {
		verdict := "as expected"
		if !c.Held() {
			verdict = "not as expected"
		}
		v.sayf("%s  %s expected %s, measured %s: %s", c.Day, c.Point, f.Length(c.Expected), f.Estimate(c.Measured), verdict)
	}
}

// Lengths are given to programs in millimetres, and as the journal shows them.
type fitJSON struct {
	Build      journal.ID `json:"build" doc:"the build, by its ID"`
	Wearer     journal.ID `json:"wearer,omitempty" doc:"who wears it, by the ID"`
	Day        string     `json:"day" doc:"the day it is worked out for"`
	Foundation []string   `json:"over" doc:"the foundation, in dressing order"`
	Rows       []rowJSON  `json:"rows" doc:"a row for each measure"`
	Missing    []string   `json:"missing,omitempty" doc:"what should be measured to know more"`
	Plan       *planJSON  `json:"plan,omitempty" doc:"where it is short, what there is to give and what can be done"`
}

type rowJSON struct {
	Measure  string   `json:"measure" doc:"the measure"`
	Body     *float64 `json:"body_mm,omitempty" doc:"what the body measures"`
	Garment  *float64 `json:"garment_mm,omitempty" doc:"what the garment measures"`
	Expected bool     `json:"garment_expected,omitempty" doc:"whether that follows from alterations and has not been measured since"`
	Estimate bool     `json:"body_estimated,omitempty" doc:"whether that was worked out from a measuring over other layers"`
	Ease     *spanMM  `json:"ease_mm,omitempty" doc:"the garment less the body"`
	Wanted   *spanMM  `json:"wanted_mm,omitempty" doc:"the ease that is wanted"`
	Delta    *float64 `json:"delta_mm,omitempty" doc:"how far the ease is from what is wanted; less than nothing is short"`
	Error    *float64 `json:"error_mm,omitempty" doc:"the error of measuring, below which nothing is judged"`
	Verdict  string   `json:"verdict" doc:"the verdict in words"`
}

type spanMM struct {
	Least float64 `json:"least" doc:"the least"`
	Most  float64 `json:"most" doc:"the most"`
}

func millimetres(l quantity.Length) float64 { return float64(l) / float64(quantity.Millimetre) }

func spanOf(r quantity.Range) *spanMM { return &spanMM{millimetres(r.Least), millimetres(r.Most)} }

func (w *workroom) fitJSON(builds []*journal.Build, day edtf.Day) []fitJSON {
	out := []fitJSON{}
	for _, b := range builds {
		t := fit.Of(w.journal, b, day)
		j := fitJSON{Build: t.Build, Wearer: t.Wearer, Day: t.Day.String(), Foundation: append([]string{}, t.Foundation...), Rows: []rowJSON{}}
		for _, r := range t.Rows {
			row := rowJSON{
				Measure: r.Point.String(), Expected: r.Garment.Expected(), Estimate: r.Body.Estimated(),
				Verdict: r.Words(w.journal.Settings.Format),
			}
			if r.Body.Read.Known() {
				row.Body = new(millimetres(r.Body.Length))
			}
			if r.Garment.Measured.Known() {
				row.Garment = new(millimetres(r.Garment.Length))
			}
			if r.Verdict.Compared() {
				row.Ease, row.Error = spanOf(r.Had), new(millimetres(r.Error))
			}
			if r.Wanted != nil && r.Wanted.Named {
				row.Wanted = spanOf(r.Wanted.Ease)
			}
			if r.Verdict.Judged() {
				row.Delta = new(millimetres(r.Delta))
			}
			j.Rows = append(j.Rows, row)
		}
		for _, m := range t.Missed {
			j.Missing = append(j.Missing, m.Words())
		}
		j.Plan = planOf(w.journal, b, t)
		out = append(out, j)
	}
	return out
}
