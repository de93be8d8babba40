package fit

import (
	"slices"
	"strings"

	"hussif/content/measure"
	"hussif/content/quantity"
)

// Adjusted is what lacings, laps and the like can do at one measure.
type Adjusted struct {
	Garment  quantity.Range  // what the garment can be made to measure
	Had      quantity.Length // the ease when worn as Settings say
	Settings []Setting       // none where no ease is named
}

// A Setting is one adjustment with the gap or lap to wear.
type Setting struct {
	Adjust Adjust
	Size   quantity.Length
}

// Laced reports whether an adjustment is a lacing.
func (a Adjust) Laced() bool { return strings.Contains(strings.ToLower(a.How), "lac") }

// adjusts returns what adjusts the garment at a point.
func (c *computation) adjusts(p measure.Point) []Adjust {
	var found []Adjust
	for _, a := range c.Adjusts {
		if slices.ContainsFunc(a.Points, func(changed measure.Point) bool { return covers(changed, p) }) {
			found = append(found, a)
		}
	}
	return found
}

// span returns the least and the most that an adjustment adds to the garment as
// it was measured.
func (a Adjust) span() (least, most quantity.Length) {
	if a.Lap {
		return a.MeasuredAt - a.Size.Most, a.MeasuredAt - a.Size.Least
	}
	return a.Size.Least - a.MeasuredAt, a.Size.Most - a.MeasuredAt
}

func reach(adjusts []Adjust) (least, most quantity.Length) {
	for _, a := range adjusts {
		l, m := a.span()
		least += l
		most += m
	}
	return least, most
}

// wear chooses how to wear a garment that has so much ease as measured, so that
// it has the ease aimed at, or as near to that as its adjustments go. Nothing is
// ever set outside its own range. The change is made at the first adjustment as
// far as that goes, then at the next.
func (a *Adjusted) wear(adjusts []Adjust, had, aim quantity.Length) {
	added := make([]quantity.Length, len(adjusts))
	rest := aim - had
	for i, adjust := range adjusts {
		added[i] = adjust.near(0)
		rest -= added[i]
	}
	for i, adjust := range adjusts {
		now := adjust.near(added[i] + rest)
		rest -= now - added[i]
		size := adjust.MeasuredAt + now
		if adjust.Lap {
			size = adjust.MeasuredAt - now
		}
		a.Settings = append(a.Settings, Setting{adjust, size})
	}
	a.Had = aim - rest
}

// near returns what an adjustment can add that is nearest to by.
func (a Adjust) near(by quantity.Length) quantity.Length {
	least, most := a.span()
	return min(max(by, least), most)
}

// middle is the ease aimed at where an adjustment leaves the choice: as far from
// too tight as from too loose.
func middle(r quantity.Range) quantity.Length { return r.Least + (r.Most-r.Least)/2 }
