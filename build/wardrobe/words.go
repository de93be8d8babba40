package wardrobe

import (
	"fmt"
	"strings"

	"hussif/build/fit"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// Words says whether the garment can be worn, and on how much that rests: "fits
// where measured: 3 of 5", "short by 1 1/4 in at natural waist girth; judged at 4 of
// 6 measures". The fault is always the garment's.
func (g Garment) Words(f quantity.Format) string { return g.about(g.said(f)) }

// PastWords says so of a day that is over, of which nobody can measure anything any
// more: what is missing was "not measured by then".
func (g Garment) PastWords(f quantity.Format) string {
	if g.Answer != Unknown {
		return g.Words(f)
	}
	return g.about("cannot be told: " + g.missed())
}

// missed says what was not known on the day.
func (g Garment) missed() string {
	var body, garment, ease []string
	for _, m := range g.missing() {
		for _, p := range m.Points {
			switch m.Why {
			case fit.NoGarment, fit.UnsureGarment:
				garment = append(garment, p.String())
			case fit.NoEase, fit.UnreadEase:
				ease = append(ease, p.String())
			default:
				body = append(body, p.String())
			}
		}
	}
	var said []string
	if garment != nil {
		said = append(said, "the garment's "+strings.Join(garment, ", ")+" not measured by then")
	}
	if body != nil {
		said = append(said, strings.Join(body, ", ")+" not measured by then over what it is worn with")
	}
	if ease != nil {
		said = append(said, "no ease wanted at "+strings.Join(ease, ", "))
	}
	if said == nil {
		return "nothing was measured by then"
	}
	return strings.Join(said, "; ")
}

// about adds to an answer on what it rests.
func (g Garment) about(words string) string {
	if g.Estimated > 0 {
		words += fmt.Sprintf(", %s by an estimate", number(g.Estimated, g.Judged))
	}
	if g.MockUp > 0 {
		words += fmt.Sprintf(", %s on the mock-up", number(g.MockUp, g.Judged))
	}
	if !g.Ready() {
		words = stands(g.State) + "; " + words
	}
	return words
}

func (g Garment) said(f quantity.Format) string {
	switch g.Answer {
	case CanWear:
		switch {
		case g.Asked == 1:
			return fmt.Sprintf("fits at %s, the only measure asked for", g.onlyJudged().Point)
		case g.Judged == 1:
			return fmt.Sprintf("fits at %s, the only one of %d measures that could be judged", g.onlyJudged().Point, g.Asked)
		case g.Judged < g.Asked:
			return fmt.Sprintf("fits where measured: %d of %d", g.Judged, g.Asked)
		}
		return "fits at " + all(g.Asked)
	case CanWearAmple:
		return "can be worn, " + g.gravest(f) + "; " + g.extent()
	case NeedsAdjusting:
		words := g.WearWords(f)
		if g.Gravest != nil {
			words += ", " + g.gravest(f)
		}
		return words + "; " + g.extent()
	case TooClose, Short:
		return g.gravest(f) + "; " + g.extent()
	}
	return "cannot be told: " + g.ToDo()
}

// WearWords says how to close what can be adjusted: "lace to a 1 1/2 in gap". It is
// empty where nothing is adjusted or nothing fits. Show it with [Garment.Caution].
func (g Garment) WearWords(f quantity.Format) string {
	var said []string
	for i, w := range g.Wear {
		words := w.Setting.Words(f)
		if g.apart(i) {
			words += " at " + w.Points[0].String()
		}
		said = append(said, words)
	}
	return strings.Join(said, " and ")
}

// apart reports whether an adjustment is to be set otherwise at another measure.
func (g Garment) apart(i int) bool {
	for k, w := range g.Wear {
		if k != i && w.Setting.Adjust.From == g.Wear[i].Setting.Adjust.From {
			return true
		}
	}
	return false
}

// Caution is the usual caution for what the answer advises; empty where there is
// none.
func (g Garment) Caution() string {
	for _, r := range g.Table.Rows {
		if caution := r.Caution(); caution != "" {
			return caution
		}
	}
	return ""
}

// gravest says the gravest measure, and that there are others like it.
func (g Garment) gravest(f quantity.Format) string {
	words := g.Gravest.Words(f) + " at " + g.Gravest.Point.String()
	if g.Others > 0 {
		words += fmt.Sprintf(", and at %d more", g.Others)
	}
	return words
}

// extent says on how many of the measures asked for an answer rests.
func (g Garment) extent() string {
	switch {
	case g.Asked == 1:
		return "judged at the only measure asked for"
	case g.Judged == 1:
		return fmt.Sprintf("judged at only one of %d measures", g.Asked)
	case g.Judged < g.Asked:
		return fmt.Sprintf("judged at %d of %d measures", g.Judged, g.Asked)
	}
	return "judged at " + all(g.Asked)
}

func all(measures int) string {
	if measures == 2 {
		return "both measures"
	}
	return fmt.Sprintf("all %d measures", measures)
}

// onlyJudged returns the first measure that counts as judged.
func (g Garment) onlyJudged() fit.Row {
	for _, r := range g.Table.Rows {
		if r.Verdict.Judged() {
			return r
		}
	}
	return fit.Row{}
}

// number says how many of a few.
func number(n, of int) string {
	switch {
	case n == of && n == 1:
		return "and that"
	case n == of:
		return "all"
	}
	return fmt.Sprint(n, " of them")
}

func stands(s journal.State) string {
	if s == journal.StatePlanned {
		return "not begun"
	}
	return string(s)
}
