package fit

import (
	"hussif/content/measure"
	"hussif/content/quantity"
)

// garmentValue returns what the garment measures on the day: the value last
// measured and the effects of all alterations since.
func (c *computation) garmentValue(p measure.Point) GarmentValue {
	value := GarmentValue{Measured: quantity.Estimate{State: quantity.NotMeasured}}
	for _, e := range c.garment {
		if e.Day > c.Day {
			if v, ok := find(e.Measured, p); ok && v.Known() && value.Later == 0 && !value.Measured.Known() {
				value.Later = e.Day
			}
			continue
		}
		value.take(e, p)
	}
	value.Error = reading(c.Errors.Garment(c.class(p)), value.Measured)
	return value
}

// take brings a value up to date with one more event.
func (g *GarmentValue) take(e Event, p measure.Point) {
	if v, ok := find(e.Measured, p); ok && v.State != quantity.NotMeasured {
		*g = GarmentValue{Length: v.Length, Measured: v, Day: e.Day, From: e.From, MockUp: e.MockUp}
	}
	if !g.Measured.Known() {
		return
	}
	touched := false
	for _, f := range e.Effects {
		if covers(f.Point, p) {
			g.Length += f.By
			touched = true
		}
	}
	if touched {
		g.Since = append(g.Since, e.From)
	}
	for _, u := range e.Unsure {
		if covers(u, p) {
			g.Unsure = append(g.Unsure, e.From)
			break
		}
	}
}
