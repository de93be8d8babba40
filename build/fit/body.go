package fit

import (
	"math"
	"slices"

	"hussif/content/edtf"
	"hussif/content/measure"
	"hussif/content/quantity"
)

// bodyValue returns what the body measures over the garment's foundation, by the
// newest reading on or before the day that can be compared.
func (c *computation) bodyValue(p measure.Point) BodyValue {
	value := BodyValue{Read: quantity.Estimate{State: quantity.NotMeasured}}
	var failed []string
	for _, s := range slices.Backward(c.body) {
		v, ok := find(s.Readings, p)
		switch {
		case !ok || v.State == quantity.NotMeasured:
			continue
		case s.Day > c.Day:
			if s.key == c.key && v.Known() {
				value.Later = s.Day
			}
			continue
		case s.key == c.key:
		case !v.Known() || slices.Contains(failed, s.key):
			continue
		default:
			if value.Offset = c.offset(p, s.key, c.key); value.Offset == nil {
				failed = append(failed, s.key)
				value.Apart = append(value.Apart, s.Over)
				continue
			}
		}
		value.Read, value.Length, value.Later = v, v.Length, 0
		if value.Offset != nil {
			value.Length += value.Offset.By
		}
		value.Day, value.From, value.Over, value.By, value.Alone = s.Day, s.From, s.Over, s.By, s.Alone
		value.Error = reading(c.Errors.Body(c.class(p)), v)
		return value
	}
	return value
}

// offset returns how much more the body measures over one foundation than over
// another, by the days on which it was measured over both; nil where there are
// none. Of several sessions of a day over the same, the last counts.
func (c *computation) offset(p measure.Point, from, to string) *Offset {
	missing := quantity.Estimate{State: quantity.NotMeasured}
	before, after := missing, missing // of the day looked at
	var days []edtf.Day
	var differences []quantity.Length
	var spread quantity.Length
	for i, s := range c.body {
		if v, ok := find(s.Readings, p); ok && v.Known() {
			switch s.key {
			case from:
				before = v
			case to:
				after = v
			}
		}
		if i+1 < len(c.body) && c.body[i+1].Day == s.Day {
			continue
		}
		if before.Known() && after.Known() {
			days = append(days, s.Day)
			differences = append(differences, after.Length-before.Length)
			class := c.Errors.Body(c.class(p))
			spread = measure.RootSumSquares(reading(class, before), reading(class, after))
		}
		before, after = missing, missing
	}
	if len(days) == 0 {
		return nil
	}
	mean := differences[0]
	if len(days) > 1 {
		mean, spread = meanAndSpread(differences)
	}
	return &Offset{By: mean, Error: spread, Days: days}
}

// meanAndSpread returns the mean of at least two values and their experimental
// standard deviation, of n - 1 degrees of freedom (JCGM 100:2008, 4.2.1 and
// 4.2.2), to the nearest nanometre.
func meanAndSpread(values []quantity.Length) (mean, spread quantity.Length) {
	n := float64(len(values))
	var sum, squares float64
	for _, v := range values {
		sum += float64(v)
	}
	for _, v := range values {
		squares += (float64(v) - sum/n) * (float64(v) - sum/n)
	}
	return quantity.Length(math.Round(sum / n)), quantity.Length(math.Round(math.Sqrt(squares / (n - 1))))
}
