package effort

import (
	"time"

	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/quantity"
)

// A Cost is what a build cost, by currency in the order of their codes.
type Cost struct {
	Planned  quantity.Money   // zero where none is planned
	Made     []quantity.Money // to its first finish
	Since    []quantity.Money // after it
	All      []quantity.Money
	Unpriced int // purchases in no sum, for they have no cost or make it too large to hold
}

// costs sums what the notes of a build spent and bought.
func costs(b *journal.Build, day, finished edtf.Day) Cost {
	c := Cost{Planned: b.Planned.Cost}
	for _, n := range b.Notes {
		if n.Date > day {
			continue
		}
		part := &c.Made
		if finished != 0 && n.Date > finished {
			part = &c.Since
		}
		add := func(m quantity.Money) {
			if !sumInto(part, m) || !sumInto(&c.All, m) {
				c.Unpriced++
			}
		}
		for i := range n.Spent {
			add(n.Spent[i].Amount)
		}
		for i := range n.Bought {
			if n.Bought[i].Cost == (quantity.Money{}) {
				c.Unpriced++
			}
			add(n.Bought[i].Cost)
		}
	}
	return c
}

// OverPlan returns how much more the making cost than planned, less than nothing
// where it cost less. It is false where nothing was planned or not all was paid in
// the currency of the plan.
func (c Cost) OverPlan() (quantity.Money, bool) {
	switch {
	case c.Planned == quantity.Money{} || len(c.Made) > 1:
		return quantity.Money{}, false
	case len(c.Made) == 0:
		return quantity.Money{Minor: -c.Planned.Minor, Currency: c.Planned.Currency}, true
	}
	over, err := c.Made[0].Add(quantity.Money{Minor: -c.Planned.Minor, Currency: c.Planned.Currency})
	return over, err == nil
}

// CostPerWearing returns all that a build cost for each time it was worn, by currency,
// to the nearest minor unit; nothing where it was never worn.
func (w Work) CostPerWearing() []quantity.Money {
	if w.Wearings == 0 {
		return nil
	}
	var out []quantity.Money
	for _, m := range w.Cost.All {
		out = append(out, quantity.Money{Minor: divide(m.Minor, int64(w.Wearings)), Currency: m.Currency})
	}
	return out
}

// HoursPerWearing returns the hours of work for each time a garment was worn; 0 where
// it never was.
func (w Work) HoursPerWearing() time.Duration {
	if w.Wearings == 0 {
		return 0
	}
	return (w.Made + w.Since) / time.Duration(w.Wearings)
}

// divide divides to the nearest whole number, halves away from zero.
func divide(n, by int64) int64 {
	whole, rest := n/by, n%by
	switch {
	case rest >= by-rest:
		return whole + 1
	case -rest >= by+rest:
		return whole - 1
	}
	return whole
}

// wearings counts how often each build was worn by a day: the days of its notes of the
// stage worn, and each occasion that lists it and has no such note. An occasion of
// several days without notes counts once.
func wearings(j *journal.Journal, day edtf.Day) map[journal.ID]int {
	out := make(map[journal.ID]int)
	for _, b := range j.Builds() {
		var last edtf.Day
		for _, n := range b.Notes {
			if n.Stage == "worn" && n.Date <= day && (n.Date == 0 || n.Date != last) {
				out[b.ID]++
				last = n.Date
			}
		}
	}
	for _, o := range j.Occasions() {
		if o.Date > day {
			continue
		}
		seen := make(map[*journal.Build]bool)
		for _, ref := range o.Worn {
			if b := j.Build(ref); b != nil && !seen[b] {
				seen[b] = true
				if !wornAt(j, b, o) {
					out[b.ID]++
				}
			}
		}
	}
	return out
}

// wornAt reports whether a note tells of a build's being worn at an occasion.
func wornAt(j *journal.Journal, b *journal.Build, o *journal.Occasion) bool {
	for _, n := range b.Notes {
		if n.Stage == "worn" && (j.Occasion(n.Occasion) == o || n.Date >= o.Date && n.Date <= max(o.Date, o.Until)) {
			return true
		}
	}
	return false
}
