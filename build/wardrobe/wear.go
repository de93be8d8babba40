package wardrobe

import (
	"hussif/build/fit"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// wear returns how to close each adjustment for the measures that fit: one setting
// for all of them where some setting suits all, else each measure's own.
func wear(rows []fit.Row) []Wear {
	var order []fit.Reason
	byAdjust := make(map[fit.Reason][]Wear)
	for i := range rows {
		r := &rows[i]
		if r.Verdict != fit.Fits || r.Adjusted == nil {
			continue
		}
		for _, s := range r.Adjusted.Settings {
			from := s.Adjust.From
			if byAdjust[from] == nil {
				order = append(order, from)
			}
			byAdjust[from] = append(byAdjust[from], Wear{s, sizes(r, s), []measure.Point{r.Point}})
		}
	}
	var out []Wear
	for _, from := range order {
		if one, ok := together(byAdjust[from]); ok {
			out = append(out, one)
		} else {
			out = append(out, byAdjust[from]...)
		}
	}
	return out
}

// sizes returns the gaps or laps with which a row fits. Where several adjustments
// share the row, that is the one they were set to together.
func sizes(r *fit.Row, s fit.Setting) quantity.Range {
	if len(r.Adjusted.Settings) > 1 {
		return quantity.Range{Least: s.Size, Most: s.Size}
	}
	had := r.Garment.Length - r.Body.Length
	least, most := r.Wanted.Ease.Least-had, r.Wanted.Ease.Most-had // to add
	if s.Adjust.Lap {
		least, most = -most, -least
	}
	return quantity.Range{
		Least: max(s.Adjust.Size.Least, s.Adjust.MeasuredAt+least),
		Most:  min(s.Adjust.Size.Most, s.Adjust.MeasuredAt+most),
	}
}

// together returns the one setting that suits all.
func together(each []Wear) (Wear, bool) {
	one := each[0]
	one.Points = nil
	for _, w := range each {
		one.Sizes.Least = max(one.Sizes.Least, w.Sizes.Least)
		one.Sizes.Most = min(one.Sizes.Most, w.Sizes.Most)
		one.Points = append(one.Points, w.Points...)
	}
	one.Setting.Size = one.Sizes.Least + (one.Sizes.Most-one.Sizes.Least)/2
	return one, one.Sizes.Least <= one.Sizes.Most
}

// needsAdjusting reports whether a garment does not fit closed as it was measured.
func needsAdjusting(all []Wear) bool {
	for _, w := range all {
		at := w.Setting.Adjust.MeasuredAt
		if at < w.Sizes.Least || at > w.Sizes.Most {
			return true
		}
	}
	return false
}
