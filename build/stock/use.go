package stock

import (
	"slices"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/near"
	"hussif/content/quantity"
)

// A Use is what one build used of one lot of a material.
type Use struct {
	Build   journal.ID // empty for notes that belong to no build
	Lot     string     // as written; empty where none is named
	Amounts []quantity.Amount
	Pieces  int // used by size
	Since   edtf.Day
}

// uses gathers the rows of use by build and lot.
func (b *bookkeeper) uses() []Use {
	var out []Use
	for i := range b.rows {
		r := &b.rows[i]
		if r.Way != Used {
			continue
		}
		lot := r.Lot
		if lot == "" {
			lot = b.nameOf(b.lot)
		}
		at := slices.IndexFunc(out, func(u Use) bool { return u.Build == r.Build && near.Folded(u.Lot) == near.Folded(lot) })
		if at < 0 {
			at = len(out)
			out = append(out, Use{Build: r.Build, Lot: lot, Since: r.Day})
		}
		u := &out[at]
		u.Pieces += r.Pieces
		if r.Amount.Kind != quantity.Nothing {
			u.Amounts = b.addTo(u.Amounts, r)
		}
	}
	return out
}

// nameOf returns a lot as it was first written.
func (b *bookkeeper) nameOf(key string) string {
	for i := range b.rows {
		if key != "" && near.Folded(b.rows[i].Lot) == key {
			return b.rows[i].Lot
		}
	}
	return ""
}

// addTo adds a row to the sum of its kind among several.
func (b *bookkeeper) addTo(sums []quantity.Amount, r *Row) []quantity.Amount {
	for i := range sums {
		if kindOf(sums[i]) == kindOf(r.Amount) {
			sums[i] = b.add(sums[i], r)
			return sums
		}
	}
	return append(sums, r.Amount)
}

// used returns what a build used of the kind of an amount, and whether it used
// anything of another kind or by size.
func (s Sheet) used(build journal.ID, k kind) (sum quantity.Amount, otherwise bool) {
	sum = k.zero()
	for _, u := range s.Builds {
		if u.Build != build {
			continue
		}
		otherwise = otherwise || u.Pieces > 0
		for _, a := range u.Amounts {
			if kindOf(a) != k {
				otherwise = true
			} else if total, err := sum.Add(a); err == nil {
				sum = total
			}
		}
	}
	return sum, otherwise
}
