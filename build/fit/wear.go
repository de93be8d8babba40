package fit

import (
	"hussif/content/measure"
	"hussif/content/quantity"
)

// A Wear is how far to close one adjustment. One lacing, or one lap, serves all
// measures that it changes: where some setting suits all of those that fit, the
// middle of such settings is named for them all; where none does, each measure has
// its own, for a lacing may gape more at one end than at the other (common
// practice).
type Wear struct {
	Setting Setting
	Sizes   quantity.Range  // all gaps or laps that suit these measures
	Points  []measure.Point // that it serves
}

// AsMeasured reports whether the measures fit with the adjustment closed as it was
// under the tape.
func (w Wear) AsMeasured() bool {
	at := w.Setting.Adjust.MeasuredAt
	return w.Sizes.Least <= at && at <= w.Sizes.Most
}

// wear returns how to close each adjustment for the rows that fit, and sets these
// rows so.
func wear(rows []Row) []Wear {
	var order []Reason
	of := make(map[Reason][]*Row)
	for i := range rows {
		r := &rows[i]
		if r.Verdict != Fits || r.Adjusted == nil {
			continue
		}
		for _, s := range r.Adjusted.Settings {
			if of[s.Adjust.From] == nil {
				order = append(order, s.Adjust.From)
			}
			of[s.Adjust.From] = append(of[s.Adjust.From], r)
		}
	}
	var out []Wear
	for _, from := range order {
		var each []Wear
		for _, r := range of[from] {
			s := r.setting(from)
			each = append(each, Wear{*s, r.sizes(*s), []measure.Point{r.Point}})
		}
		one, ok := together(each)
		if !ok {
			out = append(out, each...)
			continue
		}
		for _, r := range of[from] {
			r.set(from, one.Setting.Size)
		}
		out = append(out, one)
	}
	return out
}

// setting returns the setting of one adjustment of a row that has it.
func (r *Row) setting(from Reason) *Setting {
	for i := range r.Adjusted.Settings {
		if s := &r.Adjusted.Settings[i]; s.Adjust.From == from {
			return s
		}
	}
	return nil
}

// set closes one adjustment of a row to a size.
func (r *Row) set(from Reason, size quantity.Length) {
	s := r.setting(from)
	wider := size - s.Size
	if s.Adjust.Lap {
		wider = -wider
	}
	r.Adjusted.Had += wider
	s.Size = size
}

// sizes returns the gaps or laps with which a row fits. Where several adjustments
// share the row, that is the one they were set to together.
func (r *Row) sizes(s Setting) quantity.Range {
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
	if len(each) == 1 {
		return one, true
	}
	one.Points = nil
	for _, w := range each {
		one.Sizes.Least = max(one.Sizes.Least, w.Sizes.Least)
		one.Sizes.Most = min(one.Sizes.Most, w.Sizes.Most)
		one.Points = append(one.Points, w.Points...)
	}
	one.Setting.Size = middle(one.Sizes)
	return one, one.Sizes.Least <= one.Sizes.Most
}
